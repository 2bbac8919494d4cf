"""Balance on the machine by four runs: bare, then one trial weight at 0, 120 and 240 degrees."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.physics.catalogue import Answer, Input, Line, Worked
from diagnose.physics.errors import within

THIRD = 2 * math.pi / 3
AGREES = 0.15  # share by which the bare run may differ from what the other three say


class RunsError(ValueError):
    """The four readings cannot belong to one unbalance and one trial weight."""


@dataclass(frozen=True)
class Correction:
    """The weight (kg) to fix and its angle (rad, as the trial angles), and how well the runs agree.

    `mismatch` is the share by which the bare reading differs from what the three others imply.
    """

    mass: float
    angle: float
    mismatch: float


def correction(
    bare: float, at_0: float, at_120: float, at_240: float, trial_mass: float
) -> Correction:
    """Weight and angle from the shake of four runs (any one unit) and the trial weight (kg).

    Source: three-point method without phase, worked out from vectors: with the trial weight's
    share T, a_i^2 = U^2 + T^2 + 2 U T cos(angle - i 120 deg). Raises OutOfRange, RunsError.
    """
    runs = (at_0, at_120, at_240)
    for name, value in zip(("bare", "at_0", "at_120", "at_240"), (bare, *runs), strict=True):
        within(name, value, "number", 1e-9, 1e9)
    within("trial_mass", trial_mass, "mass", 1e-6, 10.0)
    mean = sum(a * a for a in runs) / 3
    east = sum(a * a * math.cos(i * THIRD) for i, a in enumerate(runs)) / 3
    north = sum(a * a * math.sin(i * THIRD) for i, a in enumerate(runs)) / 3
    trial = math.sqrt(mean - bare * bare) if mean > bare * bare else 0.0
    if trial < 0.02 * bare:
        raise RunsError(
            "the trial weight hardly changed the shake: use a heavier one, measure again"
        )
    unbalance = math.hypot(east, north) / trial
    angle = math.atan2(north, east) if unbalance > 0 else 0.0
    opposite = (angle + math.pi) % (2 * math.pi)
    mismatch = abs(unbalance - bare) / bare
    return Correction(trial_mass * bare / trial, opposite, mismatch)


def four_runs(bare: float, at_0: float, at_120: float, at_240: float, trial_mass: float) -> Answer:
    """The correction as lines. Raises OutOfRange, RunsError."""
    found = correction(bare, at_0, at_120, at_240, trial_mass)
    lines = (
        Line("weight to fix at the trial radius", value=found.mass, dimension="mass"),
        Line("at this angle, counted as the trial angles", value=found.angle, dimension="angle"),
        Line("the four runs disagree by", f"{found.mismatch:.0%}"),
    )
    return Answer(lines, _RIGHT if found.mismatch <= AGREES else _DOUBT)


_RIGHT = (
    "Take the trial weight off, fix this weight there, captive and inside the guard, guard shut, "
    "stand aside, run and measure again. Half the shake left: do it once more."
)
_DOUBT = (
    "The runs do not fit one unbalance: speed, place of the phone or the weight changed, or "
    "something else shakes too. Measure the four again before trusting it."
)
_SHAKE = "shake, in any one unit"

WORKED = (
    Worked(
        id="four-runs",
        name="balance weight and angle from four runs on the machine",
        inputs=(
            Input("bare", "number", f"{_SHAKE}, no trial weight"),
            Input("at_0", "number", f"{_SHAKE}, trial weight at 0 deg"),
            Input("at_120", "number", f"{_SHAKE}, trial weight at 120 deg"),
            Input("at_240", "number", f"{_SHAKE}, trial weight at 240 deg"),
            Input("trial_mass", "mass", "the trial weight"),
        ),
        function=four_runs,
        formula="three circles round the bare run, worked out by plain trigonometry",
        source="three-point balancing without phase, worked out from vectors",
        standing="derived",
        limits="Same speed and same place of phone or indicator for all runs; weights captive and "
        "inside the guard, else do not run.",
    ),
)
