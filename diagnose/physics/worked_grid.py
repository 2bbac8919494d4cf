"""The worked answer `grid`: a file of indicator readings into tilt, twist, dish and what is left.

The arithmetic stands in `shape`, the files in `grids`, the refusals in `reference`.
"""

from __future__ import annotations

from diagnose.physics.catalogue import Answer, Input, Line, WordInput, Worked
from diagnose.physics.grid_reading import AGAINST as _AGAINST
from diagnose.physics.grid_reading import SURFACES as _SURFACES
from diagnose.physics.grid_reading import UNITS as FILE_UNITS
from diagnose.physics.grids import Grid, difference, read_grid
from diagnose.physics.patches import Patch
from diagnose.physics.readings import BadReadings
from diagnose.physics.reference import Setting
from diagnose.physics.reversal import TurnedEndForEnd, turned_end_for_end
from diagnose.physics.shape import Split, Term, split

_YES_NO = {"yes": True, "no": False, "dont-know": None}
REST = "what is left, standard deviation of one reading"
WORDS = {
    "tilt-along": "tilt along, last reading above the first",
    "tilt-across": "tilt across, last row above the first",
    "twist": "twist, fourth corner above the plane of the other three",
    "crown-along": "middle above the ends along; below zero it is dished",
    "crown-across": "middle above the ends across; below zero it is dished",
}


def grid_answer(
    file: str,
    against: str,
    unit: str,
    surface: str,
    magnet: str,
    ground_here: str,
    before: str,
    turned: str,
    graduation: float = 0.0,
    repeatability: float | None = None,
) -> Answer:
    """The split of a grid, of the change from the file `before`, or with the part `turned`.

    Lengths in metres. Raises BadReadings for files that cannot be used.
    """
    if before and turned:
        raise BadReadings("Both 'before' and 'turned' are given.", "Give one of the two.")
    setting = Setting(_AGAINST[against], _SURFACES[surface], magnet == "on", _YES_NO[ground_here])
    scale = FILE_UNITS[unit]
    readings = _read(file, setting, scale)
    if turned:
        return _turned(turned_end_for_end(readings, _read(turned, setting, scale)))
    if before:
        readings = difference(readings, _read(before, setting, scale))
    try:
        return _said(readings, split(readings, repeatability, graduation))
    except BadReadings as fault:
        raise BadReadings(fault.what, fault.mend, file) from None


def _read(file: str, setting: Setting, scale: float) -> Grid:
    try:
        return read_grid(file, setting, scale)
    except BadReadings as fault:
        raise BadReadings(fault.what, fault.mend, fault.file or file, fault.line) from None


def _said(readings: Grid, found: Split) -> Answer:
    shape = [term for term in found.terms if term.name != "rest"]
    lines = [_line(term) for term in shape]
    lines += [_patch(patch) for patch in found.patches]
    rest = found.term("rest")
    lines.append(
        Line(REST, value=rest.value,
             dimension="deviation", plus_minus=rest.plus_minus or None)
    )  # fmt: skip
    lines += [Line("not measured", f"{name}: too few rows or columns")
              for name in found.not_measured]  # fmt: skip
    lines += [
        Line(f"cannot show that {each.conclusion.value}", f"{each.because} {each.instead}")
        for each in found.refused
    ]
    lines += [Line("note", note) for note in found.notes]
    return Answer(tuple(lines), meaning(shape, found.patches, readings.is_difference))


def _line(term: Term) -> Line:
    return Line(
        WORDS[term.name],
        "" if term.is_clear else "(not clear of the noise)",
        value=term.value,
        dimension="deviation",
        plus_minus=term.plus_minus,
    )


def _patch(patch: Patch) -> Line:
    (top, bottom), (first, last) = patch.rows, patch.columns
    if patch.is_single:
        label = f"odd reading in row {top}, column {first}, against the rest"
    else:
        label = f"step: rows {top} to {bottom}, columns {first} to {last}, against the rest"
    return Line(label, value=patch.height, dimension="deviation", plus_minus=patch.plus_minus)


def meaning(terms: list[Term], patches: tuple[Patch, ...], is_difference: bool) -> str:
    seen = [_plain(term) for term in terms if term.is_clear]
    seen += ["an odd reading: take it again" if patch.is_single else "a step: clean it and look"
             for patch in patches]  # fmt: skip
    what = "What changed" if is_difference else "In these readings"
    if not seen:
        return f"{what}: nothing stands clear of the noise of the readings."
    said = "; ".join(dict.fromkeys(seen))
    return f"{what}: {said}. Each range holds the truth 19 times in 20."


def _plain(term: Term) -> str:
    along = "along" if term.name.endswith("along") else "across"
    if term.name == "twist":
        return "twisted"
    if term.name.startswith("tilt"):
        return f"tilted {along}"
    return f"{'crowned' if term.value > 0 else 'dished'} {along}"


def _turned(found: TurnedEndForEnd) -> Answer:
    lines: list[Line] = []
    for owner, terms in (("the part", found.part), ("the machine", found.machine)):
        lines += [
            Line(f"{owner}: {WORDS[t.name]}", value=t.value, dimension="deviation",
                 plus_minus=t.plus_minus)
            for t in terms
        ]  # fmt: skip
    lines += [Line("cannot be split by this turn", WORDS[name]) for name in found.cannot_split]
    clear = [f"{owner} is {_plain(t)}" for owner, terms in
             (("the part", found.part), ("the machine", found.machine))
             for t in terms if t.is_clear]  # fmt: skip
    said = "; ".join(clear) if clear else "no tilt stands clear of the noise"
    return Answer(tuple(lines), f"By the turn end for end: {said}.")


WORKED = (
    Worked(
        id="grid",
        name="a grid of indicator readings split into tilt, twist, dish and what is left",
        inputs=(
            WordInput("file", "CSV, rows across, columns along the travel", example="plate.csv"),
            WordInput("against", "what it was measured against", tuple(_AGAINST)),
            WordInput("unit", "unit of the numbers in the file", tuple(FILE_UNITS), "um"),
            WordInput("surface", "what was touched", tuple(_SURFACES), "part"),
            WordInput("magnet", "the magnet while measuring", ("off", "on"), "off"),
            WordInput(
                "ground_here",
                "the surface was ground on this machine and not moved since",
                tuple(_YES_NO),
                "dont-know",
            ),
            WordInput("before", "CSV of the same places before: gives the change", default=""),
            WordInput("turned", "CSV after turning the part end for end", default=""),
            Input("graduation", "length", "smallest division of the dial", ""),
            Input("repeatability", "length", "scatter of readings repeated on one spot", ""),
        ),
        function=grid_answer,
        formula="level + tilts + twist + dish along and across, fitted by least squares",
        source="ordinary least squares with Student's t; reversal method for the turn",
        standing="derived",
        limits="A shape of the second order; a wave shows as what is left. What the reference "
        "cannot show is refused.",
    ),
)
