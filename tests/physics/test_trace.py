"""Waves hidden in a recording are found, refused where they cannot be trusted, and matched."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics.errors import OutOfRange
from diagnose.physics.readings import BadReadings
from diagnose.physics.sources_of_vibration import Machine
from diagnose.physics.spectrum import find_waves, spectrum
from diagnose.physics.trace import (
    Pickup,
    envelope,
    find_peaks,
    match_peak,
    read_trace,
    require_shown,
    trace,
)
from diagnose.physics.trials import Drive


def hidden(
    samples: int, periods: tuple[float, ...], heights: tuple[float, ...], noise: float, seed: int
) -> Any:
    """Waves of so many periods in the record, on a bend, in noise."""
    chance = np.random.default_rng(seed)
    t = np.arange(samples) / samples
    waves = sum(
        height * np.sin(2 * math.pi * count * t + chance.uniform(0, 2 * math.pi))
        for count, height in zip(periods, heights, strict=True)
    )
    return waves + 3.0 * t**2 + chance.normal(0, noise, samples)


@pytest.mark.parametrize(
    ("samples", "periods", "heights", "noise"),
    [
        # Signal to noise in power of the weaker wave: 0.5, 0.5, 0.125, 0.5, 0.25.
        (1000, (12.3, 17.8), (1.0, 1.0), 1.0),
        (1000, (12.0, 13.6), (1.0, 1.0), 1.0),
        (1000, (12.3, 17.8), (1.0, 0.5), 1.0),
        (500, (12.4, 24.9), (1.0, 0.5), 0.5),
        (2000, (47.5, 100.0), (1.0, 0.5), 0.7),
    ],
)
def test_two_hidden_waves_are_found_within_two_per_cent(
    samples: int, periods: tuple[float, float], heights: tuple[float, float], noise: float
) -> None:
    for seed in range(60):
        found = find_waves(hidden(samples, periods, heights, noise, seed))
        counts = [wave.frequency * samples for wave in found]

        assert len(counts) >= 2, seed
        for count in periods:
            assert min(abs(each / count - 1) for each in counts) < 0.02, (seed, counts)


def test_the_stated_range_of_a_frequency_holds_it_19_times_in_20() -> None:
    inside = 0
    for seed in range(400):
        found = find_waves(hidden(600, (20.3, 31.6), (1.0, 0.7), 0.8, seed))
        nearest = min(found, key=lambda wave: abs(wave.frequency * 600 - 31.6))
        inside += abs(nearest.frequency * 600 - 31.6) <= nearest.plus_minus * 600

    assert 0.91 <= inside / 400 <= 0.98


@pytest.mark.parametrize("samples", [100, 300, 1000])
def test_noise_alone_seldom_shows_a_wave(samples: int) -> None:
    seen = sum(bool(find_waves(hidden(samples, (), (), 1.0, seed))) for seed in range(200))
    assert seen <= 6


def test_noise_that_falls_with_frequency_seldom_shows_a_wave() -> None:
    kernel = np.exp(-np.arange(41) / 5)
    seen = 0
    for seed in range(100):
        white = np.random.default_rng(seed).normal(0, 1, 1040)
        seen += bool(find_waves(np.convolve(white, kernel, "valid")))

    assert seen <= 4


def test_the_height_of_a_wave_comes_back() -> None:
    found = find_waves(hidden(800, (33.4,), (2.5,), 0.3, 4))
    assert found[0].amplitude == pytest.approx(2.5, rel=0.05)


def test_a_wave_that_wanders_is_one_wave() -> None:
    t = np.arange(2000) / 2000
    wandering = np.sin(2 * math.pi * (60 * t + 0.1 * np.sin(2 * math.pi * t)))
    found = find_waves(wandering + np.random.default_rng(1).normal(0, 0.3, 2000))

    assert found[0].frequency * 2000 == pytest.approx(60, rel=0.02)
    assert len([w for w in found if w.amplitude > 0.35]) == 1


def test_a_spectrum_shows_a_pure_wave_at_its_height() -> None:
    whole = spectrum(1.5 * np.sin(2 * math.pi * 0.125 * np.arange(400)))
    assert whole.amplitudes.max() == pytest.approx(1.5, rel=0.01)
    assert whole.frequencies[int(np.argmax(whole.amplitudes))] == pytest.approx(0.125)


def test_what_lies_above_four_tenths_of_the_rate_is_refused_and_said() -> None:
    t = np.arange(1000) / 100.0
    fast = trace(np.sin(2 * math.pi * 45.0 * t), Pickup.ACCELEROMETER, 0.01)
    found = find_peaks(fast)

    assert found.highest == pytest.approx(40)
    assert all(peak.frequency <= 40 for peak in found.peaks)
    assert any("higher rate" in said for said in found.refused)
    with pytest.raises(OutOfRange):
        require_shown(fast, 57.5)
    assert require_shown(fast, 25.0) == 25.0


def test_a_phones_accelerometer_is_read_to_50_hz_only() -> None:
    t = np.arange(4000) / 400.0
    found = find_peaks(trace(np.sin(2 * math.pi * 100 * t), Pickup.PHONE, 1 / 400))

    assert found.highest == 50.0
    assert found.peaks == ()
    assert any("microphone" in said for said in found.refused)


BELT = Machine(
    drive=Drive.BELT, turning_speed=47.5, line_frequency=50, pulley_diameter=0.07, belt_length=0.9
)


def test_bars_on_the_work_lead_to_the_wheel() -> None:
    # 0.25 m/s over 47.5 turns a second: a bar each 5.26 mm, 20 of them on 105 mm.
    step, speed = 0.1e-3, 0.25
    x = step * np.arange(1050)
    heights = 1e-6 * np.sin(2 * math.pi * x * 47.5 / speed)
    sweep = trace(heights + np.random.default_rng(2).normal(0, 3e-7, 1050), Pickup.INDICATOR, step)
    peak = find_peaks(sweep).peaks[0]
    match = match_peak(peak, sweep, BELT, table_speed=speed, speed_share=0.03)

    assert peak.spacing == pytest.approx(speed / 47.5, rel=0.02)
    assert [source.id for source in match.fits] == ["wheel-1x"]
    with pytest.raises(BadReadings, match="table speed"):
        match_peak(peak, sweep, BELT)


def test_a_sound_leads_to_the_hum_when_the_rate_allows_to_tell() -> None:
    t = np.arange(8000) / 2000
    sound = trace(
        np.sin(2 * math.pi * 100 * t) + np.random.default_rng(3).normal(0, 1, 8000),
        Pickup.MICROPHONE,
        1 / 2000,
    )
    machine = Machine(drive=Drive.BELT, turning_speed=47.5, line_frequency=50, speed_share=0.003)
    match = match_peak(find_peaks(sound).peaks[0], sound, machine)

    assert [source.id for source in match.fits] == ["line-2x"]


def test_blows_on_a_ringing_bearing_show_in_the_envelope_only() -> None:
    rate, blows = 20_000.0, 81.0
    t = np.arange(40_000) / rate
    since = np.mod(t, 1 / blows)
    ring = np.exp(-since * 900) * np.sin(2 * math.pi * 4000 * since)
    noisy = ring + np.random.default_rng(5).normal(0, 0.2, len(t))
    whole = trace(noisy, Pickup.ACCELEROMETER, 1 / rate)

    inside = find_peaks(envelope(whole, 3000, 5000)).peaks
    strongest = max(inside, key=lambda peak: peak.amplitude)
    assert strongest.frequency == pytest.approx(blows, rel=0.005)
    with pytest.raises(OutOfRange):
        envelope(whole, 3000, 12_000)


def test_a_trace_from_a_file_takes_the_last_column(tmp_path: Path) -> None:
    path = tmp_path / "sweep.csv"
    rows = "\n".join(f"{i},{math.sin(0.9 * i):.6f}" for i in range(200))
    path.write_text(f"place,height\n{rows}\n", encoding="utf-8")
    found = find_peaks(read_trace(path, Pickup.PROFILE, 1e-3))

    assert found.peaks[0].spacing == pytest.approx(1e-3 * 2 * math.pi / 0.9, rel=1e-3)
    with pytest.raises(BadReadings, match="no column 3"):
        read_trace(path, Pickup.PROFILE, 1e-3, column=3)


def test_short_traces_gaps_and_bad_steps_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "gap.csv"
    path.write_text("\n".join(["1.0"] * 70 + ["-"] + ["1.0"] * 70), encoding="utf-8")
    with pytest.raises(BadReadings, match="gap") as fault:
        read_trace(path, Pickup.MICROPHONE, 1e-3)
    assert fault.value.line == 71
    with pytest.raises(BadReadings, match="samples"):
        trace(np.zeros(10), Pickup.MICROPHONE, 1e-3)
    with pytest.raises(BadReadings, match="gaps"):
        trace(np.array([math.nan] * 100), Pickup.MICROPHONE, 1e-3)
    with pytest.raises(OutOfRange):
        trace(np.zeros(100), Pickup.MICROPHONE, 0.0)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.floats(-1e6, 1e6, allow_nan=False), min_size=64, max_size=160),
    st.floats(1e-6, 1.0),
)
def test_any_trace_gives_finite_peaks_below_the_limit(values: list[float], step: float) -> None:
    recording = trace(np.array(values), Pickup.PROFILE, step)
    for peak in find_peaks(recording).peaks:
        assert all(
            math.isfinite(v) and v >= 0
            for v in (peak.frequency, peak.spacing, peak.amplitude, peak.plus_minus)
        )
        assert peak.frequency <= recording.highest * (1 + 1e-9)


@pytest.mark.parametrize("values", [np.zeros(100), np.ones(100), np.arange(100.0)])
def test_a_flat_or_sloping_trace_has_no_waves(values: Any) -> None:
    assert find_peaks(trace(values, Pickup.PROFILE, 1e-3)).peaks == ()
