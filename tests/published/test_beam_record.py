"""A real vibration record goes through the trace and gives what its publisher states.

Source: NIST/SEMATECH e-Handbook of Statistical Methods, case study "Beam deflections" (1.4.2.5),
and NIST Statistical Reference Datasets, "Lew". Data read; the fitted frequency second-hand.
"""

from __future__ import annotations

import json
import statistics
from itertools import pairwise
from pathlib import Path

import pytest
from click.testing import CliRunner

from diagnose.cli.calc import calc
from diagnose.physics.readings import read_table
from diagnose.physics.trace import Pickup, find_peaks, read_trace
from tests.published.sources import BEAM, published

RECORD = Path(__file__).parent / "data" / "beam-deflection.csv"


@published(BEAM, "confirmed")
def test_the_data_are_those_the_institute_certified() -> None:
    values = [row[0] for row in read_table(RECORD).rows]
    mean = statistics.mean(values)
    lagged = sum((a - mean) * (b - mean) for a, b in pairwise(values))

    assert len(values) == 200
    assert mean == pytest.approx(-177.435, abs=1e-12)
    assert statistics.stdev(values) == pytest.approx(277.332168044316, rel=1e-13)
    assert lagged / sum((v - mean) ** 2 for v in values) == pytest.approx(-0.307304800605679)


@published(BEAM, "confirmed")
def test_the_beam_shakes_at_the_stated_frequency_and_at_no_other() -> None:
    # One reading a second, so that cycles per reading are Hz. Ours fits the 200 readings with a
    # smaller remainder (134) than the published fit (156): hence 0.3 % beside it.
    found = find_peaks(read_trace(RECORD, Pickup.ACCELEROMETER, 1.0))

    assert len(found.peaks) == 1
    assert found.peaks[0].frequency == pytest.approx(0.3025, rel=0.005)
    assert found.peaks[0].spacing == pytest.approx(3.3, abs=0.05)


@published(BEAM, "confirmed")
def test_the_command_gives_the_same_frequency() -> None:
    typed = ["trace", f"file={RECORD}", "pickup=accelerometer", "rate=1Hz", "--json"]
    lines = json.loads(CliRunner().invoke(calc, typed).stdout)["lines"]
    waves = [line["value"] for line in lines if line["label"].startswith("wave")]
    assert waves == pytest.approx([0.3025], rel=0.005)
