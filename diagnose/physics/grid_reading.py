"""A grid of indicator readings as it is written in a case: typed, or the name of a CSV.

`0 1 2 / 3 4 5 / 6 7 8 um`: rows across with `/` between, columns along the travel, `-` for a gap.
`plate.csv um`: the numbers of a file beside the case; they are taken into the case. After a comma
come the things that were other than the check says: `against machine-travel`, `on chuck`, `magnet
on`, `ground here`, `not ground here`, `division 1 um`, `repeats within 0.5 um`.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from diagnose.physics.catalogue import near_names
from diagnose.physics.numerals import NumeralError, read_numeral
from diagnose.physics.quantities import QuantityError, read_quantity
from diagnose.physics.readings import BadReadings, read_table
from diagnose.physics.reference import Against, Conclusion, Setting, Surface

if TYPE_CHECKING:
    from diagnose.physics.shape import Split

UNITS = {"um": 1e-6, "mm": 1e-3, "in": 0.0254, "thou": 25.4e-6, "tenths": 2.54e-6}
AGAINST = {
    "machine-travel": Against.TRAVEL,
    "surface-plate": Against.PLATE,
    "micrometer": Against.MICROMETER,
    "straightedge": Against.STRAIGHTEDGE,
}
SURFACES = {"part": Surface.PART, "chuck": Surface.CHUCK, "known-flat": Surface.KNOWN_FLAT}
CONCLUSIONS = {
    "ways": Conclusion.WAYS,
    "chuck": Conclusion.CHUCK,
    "flat": Conclusion.FLAT,
    "parallel": Conclusion.PARALLEL,
}
TERMS = ("tilt-along", "tilt-across", "twist", "crown-along", "crown-across", "rest")
EXAMPLE = "0 1 2 / 3 4 5 / 6 7 8 um, or plate.csv um"
MOST = 400  # readings kept in a case
_GAPS = ("-", "x", "?")
_HOW_EXACT = {"division": "graduation", "repeats within": "repeatability"}


@dataclass(frozen=True)
class GridReading:
    """The readings of a grid with how they were taken; `unit` names one of UNITS.

    `rows` hold the numbers as written, NaN for a gap; `graduation` and `repeatability` in metres,
    None when nobody said.
    """

    rows: tuple[tuple[float, ...], ...]
    unit: str
    setting: Setting
    said: tuple[str, ...] = ()
    graduation: float = 0.0
    repeatability: float | None = None

    @property
    def text(self) -> str:
        """The answer as a case keeps it: the numbers, never the name of a file."""
        rows = " / ".join(" ".join(_written(v) for v in row) for row in self.rows)
        return ", ".join((f"{rows} {self.unit}", *self.said))

    def split(self) -> Split:
        """The parts of the shape (m). Raises BadReadings when there are too few readings."""
        from diagnose.physics.grids import grid
        from diagnose.physics.shape import split

        scale = UNITS[self.unit]
        heights = [[scale * value for value in row] for row in self.rows]
        return split(grid(heights, self.setting), self.repeatability, self.graduation)


def read_grid_reading(text: str, setting: Setting, folder: Path | None = None) -> GridReading:
    """The readings of an answer; `setting` is how they are taken unless it says otherwise.

    A file is looked for in `folder`, or where the program runs. Raises BadReadings.
    """
    first, *said = [part.strip() for part in re.split(r"[,;]\s+", text.strip())]
    words = first.split()
    unit = words[-1].lower().replace("µ", "u") if words else ""
    if unit not in UNITS:
        mend = f"Write um, mm, in, thou or tenths after them: {EXAMPLE}."
        raise BadReadings("The readings have no unit.", mend)
    body = first[: first.rindex(words[-1])].strip()
    rows = _typed(body) if _is_typed(body) else _from_file(body, folder)
    if sum(len(row) for row in rows) > MOST:
        mend = f"Keep every second or third: at most {MOST} in a case."
        raise BadReadings(f"There are {sum(len(r) for r in rows)} readings.", mend)
    made = GridReading(rows, unit, setting)
    for part in said:
        made = _told(made, " ".join(part.lower().split()))
    made.split()
    return made


def _is_typed(body: str) -> bool:
    cells = body.replace("/", " ").split()
    return bool(cells) and all(c in _GAPS or _number(c) is not None for c in cells)


def _typed(body: str) -> tuple[tuple[float, ...], ...]:
    rows = [row.split() for row in body.split("/") if row.strip()]
    for number, row in enumerate(rows, 1):
        if len(row) != len(rows[0]):
            what = f"Row {number} has {len(row)} readings, the first has {len(rows[0])}."
            raise BadReadings(what, "Put '-' where there is no reading.")
    values = ((_number(cell) for cell in row) for row in rows)
    return tuple(tuple(math.nan if v is None else v for v in row) for row in values)


def _from_file(name: str, folder: Path | None) -> tuple[tuple[float, ...], ...]:
    if not name:
        raise BadReadings("There is no reading before the unit.", f"Write it like {EXAMPLE}.")
    return read_table((folder or Path()) / name).rows


def _number(text: str) -> float | None:
    try:
        return read_numeral(text)
    except NumeralError:
        return None


def _written(value: float) -> str:
    return "-" if math.isnan(value) else f"{value:.10g}"


def _told(made: GridReading, part: str) -> GridReading:
    """The reading with one more thing said of how it was taken."""
    said = (*made.said, part)
    setting = _other_setting(made.setting, part)
    if setting is not None:
        return replace(made, setting=setting, said=said)
    for words, name in _HOW_EXACT.items():
        if part.startswith(words + " "):
            try:
                value = read_quantity(part[len(words) :], "length").value
            except QuantityError as error:
                raise BadReadings(str(error) + ".", f"Write it like '{words} 1 um'.") from None
            changed = {name: value}
            return replace(made, said=said, **changed)  # type: ignore[arg-type]  # a field named by a variable
    known = [*(f"against {a}" for a in AGAINST), *(f"on {s}" for s in SURFACES), "magnet on",
             "magnet off", "ground here", "not ground here", "division 1 um",
             "repeats within 1 um"]  # fmt: skip
    near = near_names(part, known, 1)
    mend = f"Did you mean '{near[0]}'?" if near else f"It can be: {', '.join(known)}."
    raise BadReadings(f"'{part}' says nothing of how a grid was taken.", mend)


def _other_setting(setting: Setting, part: str) -> Setting | None:
    first, _, rest = part.partition(" ")
    if first == "against" and rest.replace(" ", "-") in AGAINST:
        return replace(setting, against=AGAINST[rest.replace(" ", "-")])
    if first == "on" and rest.replace(" ", "-") in SURFACES:
        return replace(setting, surface=SURFACES[rest.replace(" ", "-")])
    if part in ("magnet on", "magnet off"):
        return replace(setting, magnet_on=part == "magnet on")
    if part in ("ground here", "not ground here"):
        return replace(setting, ground_here=part == "ground here")
    return None
