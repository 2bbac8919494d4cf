"""What a learner has done, kept in the shop folder: one file a learner, written whole.

`drills/NAME.json` holds one record a drill, the oldest first. A file that cannot be read is named
with its mend and left as it is.
"""

from __future__ import annotations

import dataclasses
import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from diagnose.book.problems import BookError, Problem
from diagnose.book.slug import slug
from diagnose.book.writing import write_whole

FOLDER = "drills"
SCHEMA = 1


@dataclass(frozen=True)
class Done:
    """One drill that is over. `named` are the causes tried in vain; ids throughout."""

    seed: int
    level: int
    date: str
    complaint: str
    cause: str
    named: tuple[str, ...]
    passed: bool
    score: int
    minutes: float
    hints: int
    hazard: str
    caught: bool
    from_shop: bool = False


@dataclass(frozen=True)
class Learner:
    """A learner and every drill done, the oldest first."""

    name: str
    done: tuple[Done, ...] = ()


def path_of(shop: Path, name: str) -> Path:
    """The file of a learner. Raises BookError for a name without a letter."""
    stem = slug(name)
    if not stem:
        what = f"'{name}' is no name for a learner"
        raise BookError([Problem("command line", 0, 0, what, "write letters: --learner anna")])
    return shop / FOLDER / f"{stem}.json"


def load(shop: Path, name: str) -> Learner:
    """A learner, new when there is no file. Raises BookError when the file cannot be read."""
    path = path_of(shop, name)
    return _read(path) if path.exists() else Learner(name)


def everybody(shop: Path) -> tuple[Learner, ...]:
    """All learners of the shop, by name. Raises BookError for a file that cannot be read."""
    folder = shop / FOLDER
    paths = sorted(folder.glob("*.json")) if folder.is_dir() else []
    return tuple(_read(p) for p in paths if not p.name.startswith("."))


def keep(shop: Path, name: str, done: Done) -> Learner:
    """Add a drill to what is in the file now. Raises BookError."""
    learner = load(shop, name)
    learner = dataclasses.replace(learner, done=(*learner.done, done))
    data = {
        "schema": SCHEMA,
        "learner": learner.name,
        "drills": [dataclasses.asdict(d) for d in learner.done],
    }
    write_whole(path_of(shop, name), json.dumps(data, indent=1) + "\n")
    return learner


def _read(path: Path) -> Learner:
    try:
        data = json.loads(path.read_text(encoding="utf-8"))
        return Learner(str(data["learner"]), tuple(_done(d) for d in data["drills"]))
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        what = "this record of drills cannot be read"
        mend = "mend it, or move it away to begin anew; nothing was changed"
        raise BookError([Problem(path.as_posix(), 1, 1, what, mend)]) from None


def _done(data: dict[str, Any]) -> Done:
    return Done(
        int(data["seed"]), int(data["level"]), str(data["date"]), str(data["complaint"]),
        str(data["cause"]), tuple(str(n) for n in data["named"]), bool(data["passed"]),
        int(data["score"]), float(data["minutes"]), int(data["hints"]), str(data["hazard"]),
        bool(data["caught"]), bool(data.get("from_shop", False)),
    )  # fmt: skip
