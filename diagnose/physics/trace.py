"""A recording (profile, indicator sweep, microphone, accelerometer): its waves and their sources.

Along the work the step is in metres and a wave has a spacing; in time the rate is in samples per
second and a wave has a frequency. Waves above 0.4 of the rate are refused, because what is faster
than half of it turns up at a false place.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from enum import Enum
from pathlib import Path

from diagnose.physics.arrays import Array, np
from diagnose.physics.errors import within
from diagnose.physics.readings import BadReadings, read_table
from diagnose.physics.sampling import SHARE_OF_RATE
from diagnose.physics.sources_of_vibration import Machine, Match, match_sources
from diagnose.physics.spectrum import find_waves, spectrum, without_bend

LEAST_SAMPLES = 64
MOST_SAMPLES = 1_000_000
PHONE_LIMIT = 50.0  # Hz to which a phone's accelerometer is good (read: structuresmmm.org)


class Pickup(Enum):
    """What made the recording."""

    PROFILE = "surface profile"
    INDICATOR = "indicator sweep"
    MICROPHONE = "microphone"
    ACCELEROMETER = "accelerometer"
    PHONE = "phone accelerometer"

    @property
    def along_the_work(self) -> bool:
        """Whether the samples lie along the work rather than in time."""
        return self in (Pickup.PROFILE, Pickup.INDICATOR)


@dataclass(frozen=True, eq=False)
class Trace:
    """Samples (any one unit) and the step between them: metres along the work, or seconds."""

    samples: Array
    step: float
    pickup: Pickup

    @property
    def highest(self) -> float:
        """The highest frequency read from it: per metre along the work, Hz in time."""
        limit = SHARE_OF_RATE / self.step
        return min(limit, PHONE_LIMIT) if self.pickup is Pickup.PHONE else limit


@dataclass(frozen=True)
class Peak:
    """A wave: `frequency` (per metre, or Hz), `spacing` (m or s), amplitude in the trace's unit.

    `plus_minus` bounds the frequency 19 times in 20; `above_floor` is its power over the noise.
    """

    frequency: float
    spacing: float
    amplitude: float
    plus_minus: float
    above_floor: float


@dataclass(frozen=True)
class Found:
    """The waves of a trace, strongest first; what was refused and why."""

    peaks: tuple[Peak, ...]
    periods_in_record: tuple[float, ...]
    highest: float
    refused: tuple[str, ...]


def trace(samples: Array, pickup: Pickup, step: float) -> Trace:
    """Make a trace. `step` is metres along the work or seconds (1 / sampling rate) in time.

    Raises BadReadings for too few or too many samples, or a gap; OutOfRange for the step.
    """
    within("step", step, "length" if pickup.along_the_work else "time", 1e-9, 1e3)
    values = np.asarray(samples, dtype=float)
    if values.ndim != 1 or not LEAST_SAMPLES <= len(values) <= MOST_SAMPLES:
        count = f"{LEAST_SAMPLES} to {MOST_SAMPLES}"
        raise BadReadings(f"A trace needs {count} samples.", "Record longer, or cut a piece out.")
    if not np.isfinite(values).all():
        raise BadReadings("The trace has gaps.", "Cut out a piece without a gap.")
    return Trace(values, step, pickup)


def read_trace(path: str | Path, pickup: Pickup, step: float, column: int | None = None) -> Trace:
    """Read a trace from a CSV: one number a row, or `column` (from 1) of several.

    The last column is taken when none is named. Raises BadReadings, OutOfRange.
    """
    table = read_table(path)
    width = len(table.rows[0])
    chosen = width if column is None else column
    if not 1 <= chosen <= width:
        mend = f"Name a column from 1 to {width}."
        raise BadReadings(f"There is no column {chosen}.", mend, str(path), table.lines[0])
    values = [row[chosen - 1] for row in table.rows]
    for value, line in zip(values, table.lines, strict=True):
        if not math.isfinite(value):
            raise BadReadings("The trace has a gap.", "Cut it out before.", str(path), line)
    try:
        return trace(np.array(values), pickup, step)
    except BadReadings as fault:
        raise BadReadings(fault.what, fault.mend, str(path)) from None


def find_peaks(recording: Trace) -> Found:
    """The waves that stand above the noise floor, with spacing and frequency."""
    top = recording.highest * recording.step
    waves = find_waves(recording.samples, top)
    peaks = tuple(
        Peak(
            frequency=wave.frequency / recording.step,
            spacing=recording.step / wave.frequency,
            amplitude=wave.amplitude,
            plus_minus=wave.plus_minus / recording.step,
            above_floor=wave.above_floor,
        )
        for wave in waves
    )
    periods = tuple(wave.frequency * len(recording.samples) for wave in waves)
    return Found(peaks, periods, recording.highest, _refused(recording, top))


def require_shown(recording: Trace, frequency: float) -> float:
    """The frequency itself when this trace can show it; else OutOfRange."""
    dimension = "count-per-length" if recording.pickup.along_the_work else "frequency"
    lowest = 4.0 / (len(recording.samples) * recording.step)
    return within("frequency", frequency, dimension, lowest, recording.highest)


def match_peak(
    peak: Peak,
    recording: Trace,
    machine: Machine,
    table_speed: float | None = None,
    speed_share: float = 0.0,
) -> Match:
    """The sources of the machine a wave fits.

    A wave along the work needs the `table_speed` (m/s) of the pass that cut it, known to
    `speed_share`; a wave in time needs none. Raises BadReadings without it, OutOfRange.
    """
    low, high = peak.frequency - peak.plus_minus, peak.frequency + peak.plus_minus
    if not recording.pickup.along_the_work:
        return match_sources(max(low, 1e-3), high, machine)
    if table_speed is None:
        mend = "Give the table speed of the pass that cut these marks."
        raise BadReadings("A spacing alone has no frequency.", mend)
    within("speed_share", speed_share, "ratio", 0.0, 0.9)
    low, high = low * table_speed * (1.0 - speed_share), high * table_speed * (1.0 + speed_share)
    return match_sources(max(low, 1e-3), high, machine, table_speed)


def envelope(recording: Trace, lowest: float, highest: float) -> Trace:
    """How the strength of what rings between two frequencies (Hz) rises and falls.

    A flaw in a rolling bearing strikes it like a bell: the ring is fast, the blows come at the
    bearing's fault frequency, and only the envelope shows them. Source: envelope analysis by the
    analytic signal (from memory, Randall, *Vibration-based Condition Monitoring*). Raises
    OutOfRange when the band does not lie below half the rate.
    """
    half_rate = 0.5 / recording.step
    within("highest", highest, "frequency", 0.0, half_rate)
    within("lowest", lowest, "frequency", 0.0, 0.999 * highest)
    n = len(recording.samples)
    lines = np.fft.fft(without_bend(recording.samples))
    at = np.fft.fftfreq(n, recording.step)
    ring = np.fft.ifft(np.where((at >= lowest) & (at <= highest), 2.0 * lines, 0.0))
    return replace(recording, samples=np.abs(ring))


def _refused(recording: Trace, top: float) -> tuple[str, ...]:
    whole = spectrum(without_bend(recording.samples))
    above = whole.frequencies > top
    below = ~above
    said = []
    if above.any() and whole.amplitudes[above].max() > 0.5 * whole.amplitudes[below].max():
        unit = "per metre" if recording.pickup.along_the_work else "Hz"
        said.append(
            f"There is something strong above {recording.highest:.4g} {unit}, where this recording "
            "cannot be trusted: record with a finer step or a higher rate."
        )
    if recording.pickup is Pickup.PHONE:
        said.append(
            "A phone's accelerometer is good to about 50 Hz; take its microphone, or a pickup "
            "that is screwed or waxed on."
        )
    return tuple(said)
