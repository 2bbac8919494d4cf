"""The scale of words: what `usually` and `common` are worth, from words.yaml."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from diagnose.book.fields_signs import WORDS
from diagnose.book.pages import shown
from diagnose.book.problems import Problem
from diagnose.book.records import Record
from diagnose.book.scale import Words
from diagnose.book.shapes import Reading
from diagnose.book.yaml_nodes import read_tree

NO_WORDS = Words({}, {}, {}, 0.1, 0.3, 0.8)


def read_words(base: Path, reading: Reading) -> Words:
    """The scales of the folder's words.yaml; they become the scales of the reading.

    When the file cannot be used the faults are noted and no word is checked against it.
    """
    path = base / "words.yaml"
    root, problems = read_tree(path, shown(path, base))
    reading.problems.extend(problems)
    if root is None and not problems:
        reading.problems.append(Problem(shown(path, base), 0, 0, "this file is empty"))
    record = WORDS.read(root, reading) if root is not None else None
    if record is None:
        return NO_WORDS
    words = _words(record, reading)
    if words is not NO_WORDS:
        reading.scales = {
            "how_often": words.how_often,
            "how_common": words.how_common,
            "change": words.change,
        }
    return words


def _words(record: Record, reading: Reading) -> Words:
    before = len(reading.problems)
    for name, most in (("how_often", 1.0), ("how_common", 1.0), ("change", 1000.0)):
        scale: Mapping[str, float] = record.by_name(name)
        for word, value in scale.items():
            if not 0.0 < value < most:
                what = f"'{word}' of {name} is {value:g}: it must lie above 0 and below {most:g}"
                reading.fault(record.at(name), what)
    unlisted = record.by_name("unlisted")
    if set(unlisted) != {"prior", "strength"}:
        what = "a cause not in the book needs its prior and its strength"
        reading.fault(record.at("unlisted"), what, "write unlisted: {prior: 0.1, strength: 0.3}")
    faulty = len(reading.problems) > before or len(record.values) < 5
    if faulty:
        return NO_WORDS
    return Words(
        record.by_name("how_often"),
        record.by_name("how_common"),
        record.by_name("change"),
        unlisted["prior"],
        unlisted["strength"],
        record.number("think_so", 0.8),
    )
