"""Roughness of a profile: Gaussian filter of ISO 16610-21, then Ra, Rq and Rz. Lengths in metres.

The ends: where the profile is long enough, the filter runs over all of it and half a cut-off at
each end is left out of what is evaluated, as a stylus instrument does. A shorter profile is
evaluated whole, with the filter's weights made up to 1 at the ends, and a note says so.

Sources: ISO 16610-21 (weighting function, 50 % at the cut-off), ISO 4287 and 4288 (Ra, Rq, Rz, five
sampling lengths): from memory of the standards.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.physics.arrays import Array, np
from diagnose.physics.errors import within
from diagnose.physics.grades import CUT_OFFS, CutOff, cut_off_row, what_the_ratio_says
from diagnose.physics.readings import BadReadings
from diagnose.physics.trace import Trace

ALPHA = math.sqrt(math.log(2.0) / math.pi)  # makes the filter pass one half at the cut-off
SAMPLING_LENGTHS = 5
LEAST_POINTS = 20  # in one cut-off
_ROUNDS = 6


@dataclass(frozen=True, eq=False)
class Roughness:
    """Ra, Rq, Rz and total height Rt (m), how they were taken, and the roughness profile."""

    ra: float
    rq: float
    rz: float
    rt: float
    cut_off: float
    sampling_lengths: int
    profile: Array
    notes: tuple[str, ...]

    @property
    def depth_ratio(self) -> float:
        """Rz over Ra; 0 for a profile without roughness."""
        return self.rz / self.ra if self.ra > 0.0 else 0.0


def mean_line(heights: Array, step: float, cut_off: float) -> Array:
    """The mean line of a profile by the Gaussian filter of ISO 16610-21 (same unit as heights).

    Weights exp(-pi (x / (alpha cut-off))^2), cut at one cut-off either side and made up to 1, also
    at the ends. Raises OutOfRange when a cut-off holds fewer than 20 points.
    """
    within("step", step, "length", 1e-10, cut_off / LEAST_POINTS)
    half = math.ceil(cut_off / step - 1e-6)
    x = step * np.arange(-half, half + 1)
    weights = np.exp(-math.pi * (x / (ALPHA * cut_off)) ** 2)
    # The shift keeps a high plateau from costing digits; it comes back at the end.
    level = float(np.mean(heights))
    summed = _convolved(heights - level, weights)
    line: Array = level + summed / _convolved(np.ones(len(heights)), weights)
    return line


def transmission(wavelength: float, cut_off: float) -> float:
    """Share of a wave's amplitude that stays in the mean line: exp(-pi (alpha lc / l)^2).

    Source: ISO 16610-21; one half at the cut-off. Raises OutOfRange.
    """
    within("wavelength", wavelength, "length", 1e-7, 10.0)
    within("cut_off", cut_off, "length", 1e-7, 1.0)
    return math.exp(-math.pi * (ALPHA * cut_off / wavelength) ** 2)


def roughness(profile: Trace, cut_off: float | None = None) -> Roughness:
    """Roughness of a surface profile with heights in metres.

    Without a `cut_off` (m) the one of ISO 4288 for the Ra found is taken. Raises BadReadings for
    a recording in time or a profile shorter than a cut-off; OutOfRange.
    """
    if not profile.pickup.along_the_work:
        mend = "Give a profile or a sweep with its step in mm."
        raise BadReadings("Roughness needs a profile along the work.", mend)
    if cut_off is not None:
        return _measured(profile, cut_off, ())
    return _by_table(profile)


def _by_table(profile: Trace) -> Roughness:
    """Measure, look the cut-off up for the Ra found, and again until the two agree."""
    row = CUT_OFFS[2]
    tried: list[CutOff] = []
    for _ in range(_ROUNDS):
        fitting = _fitting(profile, row)
        notes = () if fitting is row else (_too_short(row, fitting),)
        result = _measured(profile, fitting.cut_off, notes)
        wanted = cut_off_row(min(result.ra, CUT_OFFS[-1].ra))
        if wanted is row or fitting is not row:
            return result
        if wanted in tried:
            # Two rows that each call for the other: the longer cut-off leaves nothing out.
            longer = max(wanted, row, key=lambda each: each.cut_off)
            return _measured(profile, _fitting(profile, longer).cut_off, ())
        tried.append(row)
        row = wanted
    return result


def _fitting(profile: Trace, row: CutOff) -> CutOff:
    """The row itself, or the longest cut-off this profile has the length and the points for."""
    length = profile.step * (len(profile.samples) - 1)
    able = [
        each
        for each in CUT_OFFS
        if each.cut_off <= length * (1.0 + 1e-9) and profile.step <= each.cut_off / LEAST_POINTS
    ]
    if not able:
        raise BadReadings(
            "The profile is too short or too coarse for any cut-off.",
            f"Give at least {LEAST_POINTS} points in a cut-off, best 0.8 mm and 5 of them long.",
        )
    return row if row in able else min(able, key=lambda each: abs(each.cut_off - row.cut_off))


def _too_short(row: CutOff, used: CutOff) -> str:
    return (
        f"This roughness asks for a cut-off of {row.cut_off * 1e3:g} mm; the profile only allows "
        f"{used.cut_off * 1e3:g} mm."
    )


def _measured(profile: Trace, cut_off: float, notes: tuple[str, ...]) -> Roughness:
    heights, step = _level(profile.samples), profile.step
    within("cut_off", cut_off, "length", LEAST_POINTS * step, step * (len(heights) - 1) * 1.000001)
    rough = heights - mean_line(heights, step, cut_off)
    per_length = cut_off / step
    margin = math.ceil(per_length / 2.0)
    lengths = min(SAMPLING_LENGTHS, int((len(rough) - 2 * margin + 0.5) // per_length))
    said = list(notes)
    if lengths >= 1:
        count = round(lengths * per_length)
        start = (len(rough) - count) // 2
        rough = rough[start : start + count]
    else:
        lengths = 1
        said.append("Short profile: evaluated to its ends, where the filter sees only one side.")
    if lengths < SAMPLING_LENGTHS:
        said.append(f"Only {lengths} of {SAMPLING_LENGTHS} sampling lengths: Rz is less sure.")
    deviation = rough - rough.mean()
    parts = np.array_split(deviation, lengths)
    ra, rz = float(np.abs(deviation).mean()), float(np.mean([np.ptp(part) for part in parts]))
    if ra > 0.0:
        said.append(what_the_ratio_says(rz / ra))
    return Roughness(
        ra=ra,
        rq=float(np.sqrt((deviation**2).mean())),
        rz=rz,
        rt=float(np.ptp(deviation)),
        cut_off=cut_off,
        sampling_lengths=lengths,
        profile=deviation,
        notes=tuple(said),
    )


def _level(heights: Array) -> Array:
    """The profile less its least-squares line."""
    x = np.linspace(-1.0, 1.0, len(heights))
    columns = np.column_stack([np.ones_like(x), x])
    solution, *_ = np.linalg.lstsq(columns, heights, rcond=None)
    flat: Array = heights - columns @ solution
    return flat


def _convolved(values: Array, weights: Array) -> Array:
    """Sum of the neighbours by weight at every point; nothing lies beyond the ends."""
    size = len(values) + len(weights) - 1
    full = np.fft.irfft(np.fft.rfft(values, size) * np.fft.rfft(weights, size), size)
    half = len(weights) // 2
    summed: Array = full[half : half + len(values)]
    return summed
