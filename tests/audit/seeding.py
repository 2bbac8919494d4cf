"""Seeds changes into copies of a knowledge and says which were found at the right line.

    python -m tests.audit.seeding 500

prints the figures and every miss. A fault is to be found by `knowledge test`, which looks at one
version. Another claim that a person could have meant is right by itself: it is to be found by
`knowledge compare BEFORE AFTER`, which looks at both.
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
from diagnose.audit.otherwise import Said, said_otherwise
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
    """One change: what it does to the book, what was found, and whether at the right line.

    `alarms` and `found` are of `knowledge test`; `told` and `pointed` of `knowledge compare`,
    which needs a change that loads.
    """

    file: str
    change: Change
    effect: str  # nothing | refused | fault | another claim: ...
    alarms: tuple[Alarm, ...]
    found: bool
    told: tuple[Said, ...] = ()
    pointed: bool = False

    @property
    def is_fault(self) -> bool:
        return self.effect in ("refused", "fault")

    @property
    def is_claim(self) -> bool:
        return self.effect.startswith("another claim")


def seeded(count: int, folder: Path | None = None, seed: int = SEED) -> Iterator[Seeded]:
    """`count` changes of a copy of the knowledge, each undone before the next."""
    chance = random.Random(seed)
    with tempfile.TemporaryDirectory() as place:
        kept, base = Path(place) / "before" / "knowledge", Path(place) / "after" / "knowledge"
        for copy in (kept, base):
            copytree(folder or knowledge_folder(), copy)
        names = sorted(p for p in base.rglob("*.yaml") if "schema" not in p.parts)
        before = load_book(base)
        usual = {_known(a) for a in look_over(before, [base], dear=False)}
        said = meaning(before)
        with _read_once():
            for _ in range(count):
                path = chance.choice(names)
                yield _one(kept, base, path, said, usual, chance)


def _one(
    kept: Path,
    base: Path,
    path: Path,
    said: object,
    usual: set[tuple[str, ...]],
    chance: random.Random,
) -> Seeded:
    text = path.read_text(encoding="utf-8")
    twin = kept / path.relative_to(base)
    change = mutate(text, chance)
    name = f"{base.name}/{path.relative_to(base).as_posix()}"
    path.write_text(change.text, encoding="utf-8")
    twin.write_text(change.plain, encoding="utf-8")
    told: tuple[Said, ...] = ()
    try:
        book: Book | None = load_book(base)
        assert book is not None
        alarms = [a for a in look_over(book, [base], dear=False) if _known(a) not in usual]
        told = said_otherwise(kept, base)
    except BookError as error:
        book, alarms = None, named(error.problems)
    finally:
        path.write_text(text, encoding="utf-8")
        twin.write_text(text, encoding="utf-8")
    found = any(_right(a.problem, name, change) for a in alarms)
    pointed = any(_points_at(t, name, change) for t in told)
    return Seeded(name, change, _effect(book, said), tuple(alarms), found, told, pointed)


def _points_at(told: Said, name: str, change: Change) -> bool:
    """At a line of the changed node itself, in the version that is named."""
    lines = change.is_at if told.version == "new" else change.was_at
    return told.file == name and told.line in lines


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
    """Three figures - faults, other claims, all changes of meaning - and every miss."""
    faults, claims = [s for s in seeds if s.is_fault], [s for s in seeds if s.is_claim]
    still = [s for s in seeds if s.effect == "nothing"]
    lines = [f"{len(seeds)} changes: {len(still)} change nothing"]
    lines.append(f"  faults found by knowledge test: {_share([s.found for s in faults])}")
    lines.append(
        f"  other claims found by knowledge compare: {_share([s.pointed for s in claims])}"
    )
    either = [s.found or s.pointed for s in (*faults, *claims)]
    lines.append(f"  changes of meaning found by the two together: {_share(either)}")
    for effect, number in sorted(Counter(s.effect for s in claims).items()):
        alone = sum(s.found for s in claims if s.effect == effect)
        lines.append(f"  {effect}: {number}, of which found by knowledge test alone {alone}")
    places = [len(s.told) for s in claims]
    if places:
        mean = sum(places) / len(places)
        lines.append(f"  places that compare tells a claim: {mean:.2f}, at most {max(places)}")
    lines.append(f"  changes of nothing that compare lists: {sum(bool(s.told) for s in still)}")
    lines += [f"  MISSED {_miss(s)}" for s in faults if not s.found]
    lines += [f"  NOT POINTED AT {_miss(s)}" for s in claims if not s.pointed]
    return "\n".join(lines)


def _share(found: list[bool]) -> str:
    return f"{sum(found)} of {len(found)}, {sum(found) / max(1, len(found)):.1%}"


def _miss(seed: Seeded) -> str:
    said = seed.alarms[0].render().splitlines()[0] if seed.alarms else "nothing said"
    told = "; ".join(f"{t.version} {t.line} {t.entry} {t.field} {t.what}" for t in seed.told)
    lines = f"lines before {sorted(seed.change.was_at)[:3]}, after {sorted(seed.change.is_at)[:3]}"
    where = f"{seed.file} ({seed.effect}): {seed.change.what}, {lines}"
    return f"{where}: test: {said}; compare: {told or 'nothing'}"


if __name__ == "__main__":
    print(report(list(seeded(int(sys.argv[1]) if len(sys.argv) > 1 else 500))))
