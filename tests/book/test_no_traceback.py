"""Whatever is done to a knowledge file, the loader answers with the book or with its faults."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import pytest
import yaml

from diagnose.book import yaml_loaders
from diagnose.book.loader import load_book
from diagnose.book.problems import BookError, Problem
from tests.small import SMALL, copy_small

FILES = sorted(p.relative_to(SMALL).as_posix() for p in SMALL.rglob("*.yaml"))
NONSENSE: tuple[Any, ...] = ("", "yes", "12", "-1", "nan", "8 mm", [], {}, [["x"]], {"above": "x"})


def spots(tree: Any, found: list[tuple[Any, Any]]) -> list[tuple[Any, Any]]:
    """Every (container, key) of the tree."""
    keys = tree.keys() if isinstance(tree, dict) else range(len(tree))
    for key in list(keys):
        found.append((tree, key))
        if isinstance(tree[key], (dict, list)):
            spots(tree[key], found)
    return found


def spoil(tree: Any, chance: random.Random) -> None:
    """Drop, retype, rename or double one node of the tree."""
    holder, key = chance.choice(spots(tree, []))
    how = chance.choice(("drop", "retype", "rename", "double"))
    if how == "drop":
        del holder[key]
    elif how == "retype":
        holder[key] = chance.choice(NONSENSE)
    elif how == "rename" and isinstance(holder, dict):
        holder[f"{key}x"] = holder.pop(key)
    elif isinstance(holder, list):
        holder.append(holder[key])
    else:
        holder[key] = [holder[key], holder[key]]


@pytest.mark.parametrize("file", FILES)
def test_a_spoiled_file_gives_a_book_or_faults_with_places(tmp_path: Path, file: str) -> None:
    folder, chance = copy_small(tmp_path), random.Random(file)
    text = (SMALL / file).read_text(encoding="utf-8")
    found: list[Problem] = []
    for _ in range(25):
        tree = yaml.load(text, Loader=yaml_loaders.PureText)
        spoil(tree, chance)
        (folder / file).write_text(yaml.safe_dump(tree), encoding="utf-8")
        try:
            load_book(folder)
        except BookError as error:
            found += error.problems
    assert len(found) > 5
    assert all(p.file.startswith("knowledge/") and p.what for p in found)
    assert not any("None" in p.render() or "object at" in p.render() for p in found)
