"""Imports run one way through the house, and each heavy package has one importer."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

HOUSE = Path(__file__).parents[1] / "diagnose"

# A room may import its own modules and those of every room below it.
FLOORS = (
    ("cli",),
    ("report",),
    ("drill", "review", "lessons", "audit"),
    ("view",),
    ("reasoning",),
    ("shop",),
    ("case",),
    ("book",),
    ("physics",),
)
ALONE = {
    "experta": {"reasoning/forward.py"},
    "networkx": {"reasoning/graph.py"},
    "jinja2": {"report"},
}
FILES = sorted(HOUSE.rglob("*.py"))
AT_HAND = {"click", "yaml", "numpy", "jinja2", "experta", "networkx", "pint", "scipy"}


def floor(room: str) -> int:
    """How far down a room lies; the entry points of the package are above all rooms."""
    return next((n for n, rooms in enumerate(FLOORS) if room in rooms), -1)


def room_of(path: Path) -> str:
    """The room a file lies in; "" for the entry points."""
    parts = path.relative_to(HOUSE).parts
    return parts[0] if len(parts) > 1 else ""


def imports(path: Path, *, top_only: bool = False) -> Iterator[tuple[str, int]]:
    """(module, line) of every import; `top_only` leaves out functions and type checking."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    nodes = list(_at_import(tree.body)) if top_only else list(ast.walk(tree))
    for node in nodes:
        if isinstance(node, ast.Import):
            yield from ((alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno} is a relative import"
            yield node.module or "", node.lineno


def _at_import(body: list[ast.stmt]) -> Iterator[ast.AST]:
    for node in body:
        if isinstance(node, ast.If) and ast.unparse(node.test).endswith("TYPE_CHECKING"):
            continue
        if not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node
            for inner in ("body", "orelse", "finalbody"):
                yield from _at_import(getattr(node, inner, []))


def name_of(path: Path) -> str:
    """A file as the table of single importers names it."""
    return path.relative_to(HOUSE).as_posix()


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_a_room_imports_only_what_lies_below_it(path: Path) -> None:
    here = room_of(path)
    for module, line in imports(path):
        parts = module.split(".")
        if parts[0] != "diagnose" or len(parts) == 1 or parts[1] == here:
            continue
        assert floor(parts[1]) >= 0, f"{name_of(path)}:{line} imports an entry point"
        assert floor(parts[1]) > floor(here), f"{name_of(path)}:{line} imports {module}"


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_a_package_with_one_importer_has_no_other(path: Path) -> None:
    for module, line in imports(path):
        allowed = ALONE.get(module.split(".")[0])
        if allowed is not None:
            assert {name_of(path), room_of(path)} & allowed, f"{name_of(path)}:{line}: {module}"


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_only_packages_of_the_core_are_imported(path: Path) -> None:
    for module, line in imports(path):
        first = module.split(".")[0]
        known = first in AT_HAND or first in sys.stdlib_module_names or first == "diagnose"
        assert known, f"{name_of(path)}:{line} imports {module}"


@pytest.mark.parametrize("path", [p for p in FILES if room_of(p) in ("cli", "")], ids=name_of)
def test_nothing_but_click_is_imported_at_the_top_of_the_command_line(path: Path) -> None:
    for module, line in imports(path, top_only=True):
        first = module.split(".")[0]
        own = first in sys.stdlib_module_names or first in ("click", "diagnose")
        assert own, f"{name_of(path)}:{line} imports {module}"


@pytest.mark.parametrize("path", [p for p in FILES if room_of(p) == "reasoning"], ids=name_of)
def test_nothing_in_the_reasoning_prints(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    calls = {n.func.id for n in ast.walk(tree) if isinstance(n, ast.Call) and
             isinstance(n.func, ast.Name)}  # fmt: skip

    assert "print" not in calls


def test_every_room_has_its_floor() -> None:
    rooms = {p.name for p in HOUSE.iterdir() if (p / "__init__.py").is_file()}

    assert rooms == {room for rooms_ in FLOORS for room in rooms_}
