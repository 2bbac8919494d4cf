"""Waves hidden in evenly spaced samples: found one by one, fitted together, weighed against noise.

The strongest wave that stands above the noise floor is fitted and taken out, the next looked for
in what is left, and all are then fitted again together, so that two waves close to each other do
not pull at one another. All in samples: frequencies in cycles per sample, times in samples.

Source: periodogram with a Hann window (Harris, Proc. IEEE 66, 1978); fitting waves by turns (Li &
Stoica, IEEE Trans. Signal Process. 44, 1996); least uncertainty of a frequency (Rife & Boorstyn,
IEEE Trans. Inf. Theory 20, 1974). All from memory.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from diagnose.physics.arrays import Array, np

FALSE_ALARM = 0.01  # chance to see a wave in noise alone, over the whole spectrum
LEAST_PERIODS = 4.0  # below this many in the record it is a bend, not a wave
MOST_WAVES = 10
LEAST_SHARE = 0.02  # of the strongest amplitude
_FLOOR_REACH = 25  # most bins on either side the noise floor is taken from
_ROUNDS = 8
_TOP = 0.499  # cycles per sample; at a half a wave has no sine
_ROUNDING = 1e-10  # share of the samples that is nothing but rounding
_BLOCKS = 4000  # pieces a long record is summed into while one frequency is tuned
_NEAR = 30.0  # bins within which two waves pull at one another
_APART = 1.2  # bins two waves must lie apart; closer is one wave that wanders
_SKIRT = 2.5  # bins beside a stronger wave in which a weak one is its skirt


@dataclass(frozen=True)
class Wave:
    """A wave: cycles per sample, amplitude, phase at the first sample (rad).

    `plus_minus` bounds the frequency 19 times in 20; `above_floor` is its power over the noise.
    """

    frequency: float
    amplitude: float
    phase: float
    plus_minus: float
    above_floor: float


@dataclass(frozen=True, eq=False)
class Spectrum:
    """Amplitude at each frequency (cycles per sample) and the noise floor under it."""

    frequencies: Array
    amplitudes: Array
    floor: Array


def without_bend(samples: Array) -> Array:
    """The samples less their straight line and parabola."""
    columns = _bend(len(samples))
    solution, *_ = np.linalg.lstsq(columns, samples, rcond=None)
    flat: Array = samples - columns @ solution
    return flat


def spectrum(samples: Array, padding: int = 1) -> Spectrum:
    """Hann-windowed amplitude spectrum with its noise floor, of samples without bend.

    A pure wave in the middle of a bin shows its own amplitude. `padding` puts so many points on
    each bin.
    """
    n = len(samples)
    window = np.hanning(n)
    lines = np.fft.rfft(window * samples, n * padding) * (2.0 / window.sum())
    amplitudes: Array = np.abs(lines).astype(float)
    frequencies: Array = np.arange(len(amplitudes)) / (n * padding)
    return Spectrum(frequencies, amplitudes, _floor(amplitudes, padding))


def find_waves(samples: Array, highest: float = 0.4) -> tuple[Wave, ...]:
    """The waves up to `highest` cycles per sample that stand above the noise, strongest first."""
    flat = without_bend(samples)
    scale = float(np.abs(flat).max())
    if scale <= _ROUNDING * float(np.abs(samples).max()):
        return ()
    # What lies above is looked for too, or its skirt would pass for something below.
    waves = _described(flat / scale, _frequencies(flat / scale))
    return tuple(
        replace(wave, amplitude=scale * wave.amplitude)
        for wave in waves
        if wave.frequency <= highest
    )


def _frequencies(flat: Array) -> list[float]:
    found: list[float] = []
    passed_over: list[float] = []
    left = flat
    while len(found) < MOST_WAVES and len(passed_over) < MOST_WAVES:
        candidate = _candidate(left, passed_over)
        if candidate is None:
            break
        trial = _settle(flat, [*found, candidate])
        if _is_skirt(flat, trial):
            passed_over.append(candidate)
            continue
        found = trial
        left = flat - _sum(flat, found)
    return _together(flat, found) if found else found


def _candidate(left: Array, passed_over: list[float]) -> float | None:
    """The strongest peak that is beyond chance, if there is one."""
    n = len(left)
    whole = spectrum(left, 4)
    inside = (whole.frequencies >= LEAST_PERIODS / n) & (whole.frequencies <= _TOP)
    for frequency in passed_over:
        inside &= np.abs(whole.frequencies - frequency) > 2.0 / n
    ratio = (whole.amplitudes / np.maximum(whole.floor, 1e-300)) ** 2
    beyond = inside & (ratio >= _threshold(n)) & (whole.amplitudes > _ROUNDING)
    if not beyond.any():
        return None
    return float(whole.frequencies[int(np.argmax(np.where(beyond, whole.amplitudes, 0.0)))])


def _threshold(n: int) -> float:
    """Power over mean noise power that the bins of noise pass with the chance FALSE_ALARM.

    The floor is itself an estimate from a few bins: the fewer, the more it may be out.
    """
    bins = 2.0 * _reach(n) + 1.0
    return (1.0 + 2.5 / math.sqrt(bins)) * math.log(0.5 * n / FALSE_ALARM)


def _reach(n: int) -> int:
    return max(6, min(_FLOOR_REACH, n // 12))


def _floor(amplitudes: Array, padding: int) -> Array:
    """Root of the mean noise power: running median of the power over its ratio to the mean."""
    power = amplitudes**2
    half = min(_reach(2 * len(power) // padding) * padding, max(len(power) - 1, 1))
    padded = np.pad(power, half, mode="reflect")
    windows = np.lib.stride_tricks.sliding_window_view(padded, 2 * half + 1)
    at = np.arange(0, len(power), max(1, half // 8))
    middle = np.median(windows[at], axis=1)
    smooth = np.interp(np.arange(len(power)), at, middle / math.log(2.0))
    floor: Array = np.sqrt(smooth)
    return floor


def _settle(flat: Array, frequencies: list[float]) -> list[float]:
    """All frequencies moved, each by turns with the others taken out, to where they fit best."""
    n = len(flat)
    settled = list(frequencies)
    # Waves far from the newest do not feel it.
    near = [i for i, f in enumerate(settled) if abs(f - settled[-1]) * n < _NEAR]
    reach = 1.0 / n
    for _ in range(_ROUNDS):
        before = list(settled)
        for i in reversed(near):
            others = settled[:i] + settled[i + 1 :]
            alone = flat - _sum(flat, others)
            settled[i] = _tuned(alone, settled[i], reach)
        if len(near) == 1 or max(map(abs, np.subtract(before, settled))) < 1e-4 / n:
            break
        reach = max(0.5 * reach, 0.1 / n)
    return settled


def _together(flat: Array, frequencies: list[float]) -> list[float]:
    """A few Gauss-Newton steps on all frequencies at once, none of more than a tenth of a bin."""
    n, count = len(flat), len(frequencies)
    moved = np.array(frequencies)
    for _ in range(4):
        columns = _columns(n, list(moved))
        slopes = _slopes(columns, _coefficients(columns, flat))
        both = np.hstack([slopes, columns, _bend(n)])
        step = np.linalg.lstsq(both.T @ both, both.T @ flat, rcond=None)[0][:count] / n
        moved = moved + np.clip(step, -0.1 / n, 0.1 / n)
    return [float(frequency) for frequency in moved]


def _tuned(samples: Array, start: float, reach: float) -> float:
    """Where one wave fits best within `reach` of the start, by golden section."""
    n = len(samples)
    low = max(start - reach, LEAST_PERIODS / n)
    high = min(start + reach, _TOP)
    if high <= low:
        return start
    middle = 0.5 * (low + high)
    shifted = samples * np.exp(-2j * math.pi * middle * np.arange(n))
    size = max(1, n // _BLOCKS)
    edges = np.arange(0, n, size)
    pieces = np.add.reduceat(shifted, edges)
    at = edges + 0.5 * (np.minimum(edges + size, n) - edges - 1)

    def power(frequency: float) -> float:
        return float(abs(pieces @ np.exp(-2j * math.pi * (frequency - middle) * at)) ** 2)

    grid = np.linspace(low, high, 9)
    best = int(np.argmax([power(f) for f in grid]))
    low, high = float(grid[max(best - 1, 0)]), float(grid[min(best + 1, 8)])
    golden = 0.5 * (math.sqrt(5.0) - 1.0)
    for _ in range(30):
        a, b = high - golden * (high - low), low + golden * (high - low)
        low, high = (a, high) if power(a) < power(b) else (low, b)
    return 0.5 * (low + high)


def _columns(n: int, frequencies: list[float]) -> Array:
    turns = 2.0 * math.pi * np.outer(np.arange(n), frequencies)
    columns: Array = np.hstack([np.cos(turns), np.sin(turns)])
    return columns


def _coefficients(columns: Array, flat: Array) -> Array:
    # Normal equations: waves at least a bin apart are nearly at right angles, and this is fast.
    solution = np.linalg.solve(columns.T @ columns, columns.T @ flat)
    return np.asarray(solution, dtype=np.float64)


def _sum(flat: Array, frequencies: list[float]) -> Array:
    """The waves of these frequencies that fit best, summed."""
    if not frequencies:
        return np.zeros_like(flat)
    columns = _columns(len(flat), frequencies)
    summed: Array = columns @ _coefficients(columns, flat)
    return summed


def _is_skirt(flat: Array, frequencies: list[float]) -> bool:
    """Whether the newest wave only mends a stronger one beside it, or is too small to matter."""
    count = len(frequencies)
    if count == 1:
        return False
    apart = np.abs(np.array(frequencies[:-1]) - frequencies[-1]) * len(flat)
    if apart.min() < _APART:
        return True
    solution = _coefficients(_columns(len(flat), frequencies), flat)
    amplitudes = np.hypot(solution[:count], solution[count:])
    newest, others = float(amplitudes[-1]), amplitudes[:-1]
    weak = (apart < _SKIRT) & (newest < 0.25 * others)
    return newest < LEAST_SHARE * float(others.max()) or bool(weak.any())


def _described(flat: Array, frequencies: list[float]) -> tuple[Wave, ...]:
    if not frequencies:
        return ()
    n, count = len(flat), len(frequencies)
    columns = _columns(n, frequencies)
    solution = _coefficients(columns, flat)
    rest = spectrum(flat - columns @ solution)
    floors = np.maximum(np.interp(frequencies, rest.frequencies, rest.floor), 1e-300)
    spreads = _spreads(columns, solution)
    waves = []
    for i, frequency in enumerate(frequencies):
        cosine, sine = float(solution[i]), float(solution[count + i])
        amplitude = math.hypot(cosine, sine)
        # A Hann spectrum shows noise of unit deviation as the root of 6 / n.
        noise = float(floors[i]) * math.sqrt(n / 6.0)
        wave = Wave(
            frequency=frequency,
            amplitude=amplitude,
            phase=math.atan2(-sine, cosine),
            plus_minus=1.96 * noise * float(spreads[i]),
            above_floor=(amplitude / float(floors[i])) ** 2,
        )
        waves.append(wave)
    return tuple(sorted(waves, key=lambda wave: -wave.amplitude))


def _slopes(columns: Array, solution: Array) -> Array:
    """How the fitted waves change with their frequencies, per 1 / n."""
    n, count = len(columns), columns.shape[1] // 2
    swing = solution[count:] * columns[:, :count] - solution[:count] * columns[:, count:]
    slopes: Array = 2.0 * math.pi / n * np.arange(n)[:, None] * swing
    return slopes


def _bend(n: int) -> Array:
    x = np.linspace(-1.0, 1.0, n)
    return np.column_stack([np.ones(n), x, x * x])


def _spreads(columns: Array, solution: Array) -> Array:
    """Standard deviation of each frequency under noise of unit deviation, all fitted together."""
    n, count = len(columns), columns.shape[1] // 2
    both = np.hstack([_slopes(columns, solution), columns, _bend(n)])
    spreads: Array = np.sqrt(np.diag(np.linalg.pinv(both.T @ both))[:count]) / n
    return spreads
