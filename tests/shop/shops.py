"""Shop folders for the tests, on the small knowledge."""

from __future__ import annotations

from pathlib import Path

from diagnose.case.entries import Case, Closed, Entry
from diagnose.case.files import save_case
from diagnose.shop.closed import close_case
from tests.small import SMALL

BARS = "even-bars-across-travel"
BELT = (SMALL / "causes/drive/lumpy-belt.yaml").read_text(encoding="utf-8")
MACHINE = "id: north\nname: the one by the north wall\nfacts: {drive-kind: belt}\n"


def put(shop: Path, name: str, text: str) -> Path:
    """A file of the shop."""
    path = shop / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def belt(name: str) -> str:
    """The cause of the lumpy belt under another id."""
    return BELT.replace("lumpy-belt", name)


def case(title: str = "plate, ripples", *answers: tuple[str, str], **more: str) -> Case:
    """A case of bars with these answers."""
    entries = tuple(Entry("answer", check, value) for check, value in answers)
    return Case(title, (BARS,), entries, **more)  # type: ignore[arg-type]  # passed on


def open_case(shop: Path, stem: str, told: Case) -> Path:
    """The case as an interview leaves it in the shop."""
    path = shop / "cases" / f"{stem}.yaml"
    save_case(told, path)
    return path


def closed(shop: Path, stem: str, told: Case, date: str, *causes: str, **more: object) -> Path:
    """The case closed in the shop."""
    path = open_case(shop, stem, told)
    return close_case(shop, told, path, Closed(date, causes, **more))  # type: ignore[arg-type]  # passed on
