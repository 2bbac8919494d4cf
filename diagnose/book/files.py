"""Which files of a knowledge folder hold which kind, and their records."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from diagnose.book.kinds import KINDS, ROOMS, Kind
from diagnose.book.near import listed, nearest
from diagnose.book.nodes import Items, Node
from diagnose.book.pages import shown
from diagnose.book.problems import Problem
from diagnose.book.records import Record
from diagnose.book.shapes import Reading
from diagnose.book.yaml_nodes import read_tree

ENDINGS = (".yaml", ".yml")
NOT_READ = ("tables", "schema")
PLACES = {kind.place: kind for kind in KINDS}


def knowledge_files(base: Path) -> list[Path]:
    """Every YAML file below the folder, sorted; hidden ones and other folders' own left out."""
    found = [p for p in base.rglob("*") if p.suffix in ENDINGS]
    return sorted(p for p in found if _wanted(p.relative_to(base)))


def _wanted(path: Path) -> bool:
    hidden = any(part.startswith((".", "_")) for part in path.parts)
    return not hidden and path.parts[0] not in NOT_READ


def kind_of(base: Path, path: Path) -> Kind | None:
    """The kind a file holds by its place: `causes/wheel/x.yaml`, `rules/x.yaml`, `rules.yaml`."""
    inside = path.relative_to(base)
    if len(inside.parts) == 1:
        kind = PLACES.get(inside.stem)
        return kind if kind and not kind.one_file_each else None
    return PLACES.get(inside.parts[0])


def display(base: Path, path: Path, *, own: bool = False) -> str:
    """A file as people see it; that of a shop's own folder with the shop's name before it."""
    return shown(path, base.parent if own else base)


def misplaced(base: Path, path: Path, name: str) -> Problem | None:
    """The fault of a file that lies where no kind is read, or in an unknown room."""
    inside = path.relative_to(base)
    kind = kind_of(base, path)
    if kind is None:
        word = inside.parts[0] if len(inside.parts) > 1 else inside.stem
        near = nearest(word, PLACES)
        mend = f"the folders are: {listed(PLACES)}"
        return Problem(name, 0, 0, "no kind of entry is read from here", mend, near)
    if kind.name == "cause" and (len(inside.parts) != 3 or inside.parts[1] not in ROOMS):
        room = inside.parts[1] if len(inside.parts) == 3 else ""
        what = f"there is no room '{room}' for causes" if room else "a cause lies in a room"
        near = nearest(room, ROOMS) if room else ""
        return Problem(name, 0, 0, what, f"the rooms are: {listed(ROOMS, 20)}", near)
    return None


def read_records(path: Path, kind: Kind, reading: Reading, name: str) -> Iterator[Record]:
    """The records of one file; a file that gives no tree is noted as unreadable."""
    root, problems = read_tree(path, name)
    reading.problems.extend(problems)
    if root is None:
        reading.unread.add((kind.name, path.stem if kind.one_file_each else ""))
        reading.blind = True
        if not problems:
            mend = f"write {kind.group.what} in it, or delete it"
            reading.problems.append(Problem(name, 0, 0, "this file is empty", mend))
        return
    if kind.one_file_each:
        record = kind.group.read(root, reading)
        if record is not None:
            _same_as_stem(record, path, kind, reading)
            yield record
        return
    for node in _entries(root, kind, reading):
        record = kind.group.read(node, reading)
        if record is not None:
            yield record


def _entries(root: Node, kind: Kind, reading: Reading) -> list[Node]:
    if isinstance(root, Items):
        return root.items
    mend = "start each entry with '- id: ...'"
    reading.fault(root, f"this file is a list; each entry is {kind.group.what}", mend)
    return []


def _same_as_stem(record: Record, path: Path, kind: Kind, reading: Reading) -> None:
    own = record.text("id")
    if own and own != path.stem:
        what = f"the id is '{own}' but the file is called {path.name}"
        reading.unread.add((kind.name, path.stem))
        reading.fault(record.at("id"), what, f"call the file {own}.yaml, or the id {path.stem}")
