"""The worked answers `trace` and `roughness`: a file of samples into waves, or into Ra Rq Rz."""

from __future__ import annotations

from typing import Any

from diagnose.physics.catalogue import Answer, Input, Line, WordInput, Worked
from diagnose.physics.errors import within
from diagnose.physics.grades import GRADES, grade
from diagnose.physics.grid_reading import UNITS as FILE_UNITS
from diagnose.physics.quantities import Quantity
from diagnose.physics.readings import BadReadings
from diagnose.physics.roughness import SAMPLING_LENGTHS, Roughness, roughness
from diagnose.physics.sources_of_vibration import Machine
from diagnose.physics.trace import (
    Found,
    Peak,
    Pickup,
    Trace,
    find_peaks,
    match_peak,
    read_trace,
)
from diagnose.physics.worked_sources import MACHINE_INPUTS, machine_from, match_lines

MOST_WAVES = 8
_PICKUPS = {
    "profile": Pickup.PROFILE,
    "indicator": Pickup.INDICATOR,
    "microphone": Pickup.MICROPHONE,
    "accelerometer": Pickup.ACCELEROMETER,
    "phone": Pickup.PHONE,
}


def trace_answer(
    file: str,
    pickup: str,
    step: float | None = None,
    rate: float | None = None,
    column: float | None = None,
    table_speed: Quantity | None = None,
    **machine: Any,
) -> Answer:
    """The waves of a recording and the sources of the machine they fit.

    `step` in metres along the work, `rate` in samples a second. Raises BadReadings, OutOfRange.
    """
    kind = _PICKUPS[pickup]
    recording = read_trace(file, kind, _step(kind, step, rate), _column(column))
    known = machine_from(**machine)
    found = find_peaks(recording)
    lines: list[Line] = []
    for number, peak in enumerate(found.peaks[:MOST_WAVES], start=1):
        lines += _wave(number, peak, recording)
        lines += _sources(peak, recording, known, table_speed)
    per = "count-per-length" if kind.along_the_work else "frequency"
    lines.append(Line("read up to", value=found.highest, dimension=per))
    lines += [Line("refused", said) for said in found.refused]
    return Answer(tuple(lines), _meaning(found, recording))


def _step(kind: Pickup, step: float | None, rate: float | None) -> float:
    if kind.along_the_work:
        if step is None or rate is not None:
            mend = "Give step=0.5um, the way between two samples."
            raise BadReadings("A recording along the work needs its step, not a rate.", mend)
        return step
    if rate is None or step is not None:
        mend = "Give rate=8000Hz, the samples in a second."
        raise BadReadings("A recording in time needs its sampling rate, not a step.", mend)
    return 1.0 / within("rate", rate, "frequency", 1e-3, 1e7)


def _column(column: float | None) -> int | None:
    return None if column is None else round(within("column", column, "count", 1.0, 1000.0))


def _wave(number: int, peak: Peak, recording: Trace) -> list[Line]:
    strength = f"(height {peak.amplitude:.3g} in the file's unit, {peak.above_floor:.0f} x noise)"
    if not recording.pickup.along_the_work:
        return [Line(f"wave {number}", strength, value=peak.frequency, dimension="frequency",
                     plus_minus=peak.plus_minus)]  # fmt: skip
    give = peak.spacing * peak.plus_minus / peak.frequency
    return [Line(f"wave {number}", strength, value=peak.spacing, dimension="length",
                 plus_minus=give)]  # fmt: skip


def _sources(
    peak: Peak, recording: Trace, machine: Machine, table_speed: Quantity | None
) -> list[Line]:
    if machine == Machine(speed_share=machine.speed_share):
        return []
    if recording.pickup.along_the_work and table_speed is None:
        return [Line("sources", "give table_speed of the pass that cut it to match the machine")]
    speed = table_speed.value if table_speed else None
    share = (table_speed.uncertainty or 0.0) / table_speed.value if table_speed else 0.0
    match = match_peak(peak, recording, machine, speed, share)
    return [Line("sources", match.said), *match_lines(match)]


def _meaning(found: Found, recording: Trace) -> str:
    if not found.peaks:
        return "No wave stands clear of the noise in what this recording can show."
    what = "spacing" if recording.pickup.along_the_work else "frequency"
    count = len(found.peaks)
    said = f"{count} wave{'s stand' if count > 1 else ' stands'} clear of the noise, strongest "
    said += f"first, each with its {what}."
    if min(found.periods_in_record) < 12.0:
        said += " One comes fewer than 12 times in this record: record longer to be sure of it."
    return said


def roughness_answer(
    file: str,
    step: float,
    unit: str,
    column: float | None = None,
    cut_off: float | None = None,
) -> Answer:
    """Ra, Rq, Rz and the grade of a profile. Lengths in metres. Raises BadReadings, OutOfRange."""
    raw = read_trace(file, Pickup.PROFILE, step, _column(column))
    profile = Trace(FILE_UNITS[unit] * raw.samples, raw.step, raw.pickup)
    try:
        found = roughness(profile, cut_off)
    except BadReadings as fault:
        raise BadReadings(fault.what, fault.mend, file) from None
    lines = [
        Line(name, value=value, dimension="roughness")
        for name, value in (("Ra", found.ra), ("Rq", found.rq), ("Rz", found.rz))
    ]
    lines.append(Line("cut-off", value=found.cut_off, dimension="length"))
    lines.append(Line("sampling lengths", f"{found.sampling_lengths} of {SAMPLING_LENGTHS}"))
    lines += [Line("grade", _grade(found)), *(Line("note", note) for note in found.notes)]
    return Answer(tuple(lines), f"{_grade(found)} by its Ra. {_RATIO}")


_RATIO = "Compare with a face of the same lay; measure across the lay."


def _grade(found: Roughness) -> str:
    return f"N{grade(found.ra)}" if found.ra <= GRADES[-1][1] else "coarser than N12"


_FILE = WordInput("file", "CSV of samples, one row each", example="profile.csv")
_COLUMN = Input("column", "count", "column of the file, from 1; else the last", "")
_STEP = "way from sample to sample"

WORKED = (
    Worked(
        id="trace",
        name="waves in a recording, and the sources of the machine they fit",
        inputs=(
            _FILE,
            WordInput("pickup", "what recorded it", tuple(_PICKUPS)),
            Input("step", "length", f"{_STEP}, for a profile or an indicator", ""),
            Input("rate", "frequency", "samples a second, for a recording in time", ""),
            _COLUMN,
            Input("table_speed", "speed", "table speed of the pass that cut it", "", whole=True),
            *MACHINE_INPUTS,
        ),
        function=trace_answer,
        formula="strongest wave above the noise fitted and taken out, then the next, then all "
        "fitted together",
        source="periodogram (Harris 1978), waves by turns (Li & Stoica 1996), uncertainty (Rife & "
        "Boorstyn 1974)",
        standing="from memory",
        limits="Waves above 0.4 of the rate are refused; a phone's accelerometer is good to 50 Hz.",
    ),
    Worked(
        id="roughness",
        name="Ra, Rq, Rz and grade N of a profile",
        inputs=(
            _FILE,
            Input("step", "length", _STEP),
            WordInput("unit", "unit of the heights in the file", tuple(FILE_UNITS), "um"),
            _COLUMN,
            Input("cut_off", "length", "cut-off; else the one of ISO 4288 for the Ra found", ""),
        ),
        function=roughness_answer,
        formula="line taken off, Gaussian filter at the cut-off, then mean, root mean square, "
        "and peak to valley over five sampling lengths",
        source="ISO 16610-21, ISO 4287, ISO 4288, N grades of ISO 1302",
        standing="from memory",
        limits="A profile across the lay, at least a cut-off long; half a cut-off at each end is "
        "left out.",
    ),
)
