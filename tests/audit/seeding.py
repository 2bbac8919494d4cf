"""Seeds faults into copies of a knowledge and says which were found at the right line.

    python -m tests.audit.seeding 500

prints the figures and every miss.
"""

from __future__ import annotations

import random
import re
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from shutil import copytree
from unittest.mock import patch

from diagnose.audit.linting import Alarm, look_over, named
from diagnose.book import files, yaml_nodes
from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.book.nodes import Node
from diagnose.book.problems import BookError, Problem
from tests.audit.meaning import another_claim, meaning, same
from tests.audit.mutate import Change, mutate

SEED = 20260314


@dataclass(frozen=True)
class Seeded:
    """One change: what it does to the book, what was found, and whether at the right line."""

    file: str
    change: Change
    effect: str  # nothing | refused | fault | another claim: ...
    alarms: tuple[Alarm, ...]
    found: bool

    @property
    def is_fault(self) -> bool:
        return self.effect in ("refused", "fault")


def seeded(count: int, folder: Path | None = None, seed: int = SEED) -> Iterator[Seeded]:
    """`count` changes of a copy of the knowledge, each undone before the next."""
    chance = random.Random(seed)
    with tempfile.TemporaryDirectory() as place:
        base = Path(place) / "knowledge"
        copytree(folder or knowledge_folder(), base)
        names = sorted(p for p in base.rglob("*.yaml") if "schema" not in p.parts)
        before = load_book(base)
        usual = {_known(a) for a in look_over(before, [base], dear=False)}
        said = meaning(before)
        with _read_once():
            for _ in range(count):
                path = chance.choice(names)
                yield _one(base, path, said, usual, chance)


def _one(
    base: Path, path: Path, said: object, usual: set[tuple[str, ...]], chance: random.Random
) -> Seeded:
    text = path.read_text(encoding="utf-8")
    change = mutate(text, chance)
    name = f"{base.name}/{path.relative_to(base).as_posix()}"
    path.write_text(change.text, encoding="utf-8")
    try:
        book: Book | None = load_book(base)
        assert book is not None
        alarms = [a for a in look_over(book, [base], dear=False) if _known(a) not in usual]
    except BookError as error:
        book, alarms = None, named(error.problems)
    finally:
        path.write_text(text, encoding="utf-8")
    found = any(_right(a.problem, name, change) for a in alarms)
    return Seeded(name, change, _effect(book, said), tuple(alarms), found)


def _effect(book: Book | None, said: object) -> str:
    if book is None:
        return "refused"
    after = meaning(book)
    if same(said, after):
        return "nothing"
    claim = another_claim(said, after)
    return f"another claim: {claim}" if claim else "fault"


def _right(problem: Problem, name: str, change: Change) -> bool:
    """At the changed node, its parent's first line, or where a name it held is missed."""
    if problem.file == name and (problem.line in change.lines or problem.line == 0):
        return True
    told = set(re.findall(r"[a-z0-9-]+", f"{problem.what} {problem.suggestion}"))
    return bool({w for w in change.words if "-" in w or len(w) > 4} & told)


def _known(alarm: Alarm) -> tuple[str, ...]:
    return alarm.lint, alarm.problem.file, alarm.problem.what


@contextmanager
def _read_once() -> Iterator[None]:
    """Reads each text once: the files that were not changed need no second reading."""
    kept: dict[tuple[str, str], tuple[Node | None, list[Problem]]] = {}

    def read(path: Path, name: str = "") -> tuple[Node | None, list[Problem]]:
        key = name, path.read_text(encoding="utf-8")
        if key not in kept:
            kept[key] = yaml_nodes.read_tree(path, name)
        return kept[key]

    with patch.object(files, "read_tree", read):
        yield


def report(seeds: list[Seeded]) -> str:
    """The figures, and every fault that was missed."""
    faults = [s for s in seeds if s.is_fault]
    found = sum(s.found for s in faults)
    lines = [f"{len(seeds)} changes: {sum(s.effect == 'nothing' for s in seeds)} change nothing"]
    lines.append(f"  faults: {len(faults)}, found at the right line {found}")
    claims = Counter(s.effect for s in seeds if s.effect.startswith("another"))
    for effect, number in sorted(claims.items()):
        seen = sum(s.found for s in seeds if s.effect == effect)
        lines.append(f"  {effect}: {number}, of which found {seen}")
    changed = [s for s in seeds if s.effect != "nothing"]
    share = sum(s.found for s in changed) / max(1, len(changed))
    lines.append(f"  share found of the faults {found / max(1, len(faults)):.1%}")
    lines.append(f"  share found of all that changes the book {share:.1%}")
    for s in faults:
        if not s.found:
            first = s.alarms[0].render().splitlines()[0] if s.alarms else "nothing said"
            lines.append(f"  MISSED {s.file} ({s.effect}): {s.change.what}: {first}")
    return "\n".join(lines)


if __name__ == "__main__":
    print(report(list(seeded(int(sys.argv[1]) if len(sys.argv) > 1 else 500))))
