"""Files of numbers from the bench: rows of readings in a CSV, and one clear fault when they fail.

One file may use commas, semicolons, tabs or spaces between the numbers, and a decimal comma where
the comma is not the separator. Blank cells and a single `-`, `x` or `?` are gaps. Lines that start
with `#` are notes; `# name: value` notes are kept. One heading line above the numbers is allowed.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from pathlib import Path

LARGEST_FILE = 50_000_000  # bytes
_GAPS = frozenset({"", "-", "x", "?", "na", "nan"})


class BadReadings(ValueError):
    """Readings that cannot be used: where (`file`, `line`), what is wrong, and the mend."""

    def __init__(self, what: str, mend: str, file: str = "", line: int = 0) -> None:
        self.what = what
        self.mend = mend
        self.file = file
        self.line = line
        place = f"{file}:{line}: " if file and line else f"{file}: " if file else ""
        super().__init__(f"{place}{what} {mend}")


@dataclass(frozen=True)
class Table:
    """Numbers as read: `rows` (gaps are NaN), the line of each row, headings, and the notes."""

    rows: tuple[tuple[float, ...], ...]
    lines: tuple[int, ...]
    headings: tuple[str, ...]
    notes: dict[str, str]


def read_table(path: str | Path) -> Table:
    """Read a file of numbers, each row as long as the first.

    Raises BadReadings for a missing, huge, undecodable, empty or ragged file and for text where
    a number should be.
    """
    name = str(path)
    numbered = _content(_text(Path(path)), name)
    if not numbered.cells:
        raise BadReadings("There is no number in this file.", "Save the readings as CSV.", name)
    separator = _separator([text for _, text in numbered.cells], name, numbered.cells[0][0])
    return _table(numbered, separator, name)


@dataclass(frozen=True)
class _Content:
    cells: list[tuple[int, str]]
    notes: dict[str, str]


def _text(path: Path) -> str:
    name = str(path)
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE:
            raise BadReadings(
                f"The file holds {size / 1e6:.0f} MB; the most is {LARGEST_FILE / 1e6:.0f} MB.",
                "Cut a shorter piece out of the recording.",
                name,
            )
        raw = path.read_bytes()
    except FileNotFoundError:
        raise BadReadings(
            "There is no such file.", "Check the name and the folder.", name
        ) from None
    except OSError as fault:
        why = fault.strerror or "the system refused"
        raise BadReadings(f"The file cannot be read ({why}).", "Name a CSV file.", name) from None
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        line = raw[: fault.start].count(b"\n") + 1
        mend = "Save it again as 'CSV UTF-8'."
        raise BadReadings("This is not UTF-8 text.", mend, name, line) from None


def _content(text: str, name: str) -> _Content:
    cells: list[tuple[int, str]] = []
    notes: dict[str, str] = {}
    for number, line in enumerate(text.splitlines(), start=1):
        stripped = line.strip()
        if "\0" in line:
            raise BadReadings("This is not a text file.", "Save it as CSV.", name, number)
        if stripped.startswith("#"):
            key, colon, value = stripped[1:].partition(":")
            if colon:
                notes[key.strip().lower()] = value.strip()
        elif stripped:
            cells.append((number, line.rstrip()))
    return _Content(cells, notes)


def _separator(lines: list[str], name: str, first: int) -> str | None:
    """The sign between numbers: None stands for blanks, which also serves a single column."""
    for sign in (";", "\t"):
        if any(sign in line for line in lines):
            return sign
    if not any("," in line for line in lines):
        return None
    numbers = [line for line in lines if any(c.isdigit() for c in line)]
    if any("," in line for line in lines if line not in numbers):
        return ","
    # One comma in every row, and never a point, reads as "1,25" and as "1 and 25" alike.
    if all(re.fullmatch(r"\s*[+-]?\d+,\d+\s*", line) for line in numbers):
        raise BadReadings(
            "A single comma in each row may be a decimal comma or a separator.",
            "Write 1.25 for a decimal, or put ';' between the numbers.",
            name,
            first,
        )
    if any(re.search(r"\d,\d", line) and re.search(r"\S\s+\S", line) for line in numbers):
        return "," if any(", " in line or " ," in line for line in numbers) else None
    return ","


def _table(content: _Content, separator: str | None, name: str) -> Table:
    headings: tuple[str, ...] = ()
    rows: list[tuple[float, ...]] = []
    lines: list[int] = []
    for index, (number, text) in enumerate(content.cells):
        parts = [part.strip().strip('"') for part in text.split(separator)]
        if index == 0 and not any(_number(part) is not None for part in parts):
            headings = tuple(parts)
            continue
        row = tuple(_cell(part, name, number) for part in parts)
        if rows and len(row) != len(rows[0]):
            raise BadReadings(
                f"This row has {len(row)} readings, the first has {len(rows[0])}.",
                "Leave a cell blank (or put '-') where there is no reading.",
                name,
                number,
            )
        rows.append(row)
        lines.append(number)
    if not any(math.isfinite(value) for row in rows for value in row):
        raise BadReadings("There is no number in this file.", "Save the readings as CSV.", name)
    return Table(tuple(rows), tuple(lines), headings, content.notes)


def _cell(text: str, name: str, line: int) -> float:
    if text.lower() in _GAPS:
        return math.nan
    value = _number(text)
    if value is None:
        shown = text if len(text) <= 20 else text[:17] + "..."
        mend = "Put a number, or '-' where there is no reading; units go in the question, not here."
        raise BadReadings(f"'{shown}' is not a number.", mend, name, line)
    return value


def _number(text: str) -> float | None:
    plain = text.replace("\u2212", "-")
    try:
        value = float(plain.replace(",", "."))
    except ValueError:
        return None
    return value if math.isfinite(value) and "_" not in plain else None
