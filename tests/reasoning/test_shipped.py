"""What must hold of the reasoning on the shipped knowledge."""

from __future__ import annotations

import math
import os
import random
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.belief import Impossible, believe
from diagnose.reasoning.reason import Reasoned, read_case, reason
from diagnose.reasoning.trials import network_of
from tests.judges.agrum import posteriors

BOOK = load_book(knowledge_folder())
ROOT = Path(__file__).parents[2]
NOT_A_NUMBER = sorted(c.id for c in BOOK.checks.values() if c.kind == "one")


def case(symptom: str, **answers: str) -> Case:
    named = {n.replace("_", "-"): v for n, v in answers.items()}
    assert all(v in BOOK.checks[n].by_option for n, v in named.items())
    entries = tuple(Entry("answer", n, v) for n, v in named.items())
    return Case("a case", (symptom,), entries)


def acts(result: Reasoned, cause: str) -> float:
    ranked = result.belief.of(cause)
    return 0.0 if ranked is None else ranked.acts


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """One complaint and up to eight answers in any order, some not sure."""
    names = draw(st.lists(st.sampled_from(NOT_A_NUMBER), max_size=8, unique=True))
    entries = [
        Entry("answer", n, draw(st.sampled_from([o.id for o in BOOK.checks[n].options])), "said",
              draw(st.booleans()))
        for n in names
    ]  # fmt: skip
    return Case("drawn", (draw(st.sampled_from(sorted(BOOK.symptoms))),), tuple(entries))


def test_a_coarse_wheel_is_never_a_cause_of_bars() -> None:
    """A condition that is there but cannot make the complaint moves nothing."""
    before = reason(BOOK, case("even-bars-across-travel"))
    after = reason(BOOK, case("even-bars-across-travel", wheel_grit="coarse-36-or-less"))
    assert "wheel-grit" in after.read.facts
    assert {r.cause: r.acts for r in after.belief.ranked} == {
        r.cause: r.acts for r in before.belief.ranked
    }
    assert {r.cause: r.acts for r in after.belief.ranked}["wheel-grit-too-coarse"] == 0.0


def test_a_cause_that_is_there_but_cannot_make_the_complaint_is_not_ranked_as_its_cause() -> None:
    result = reason(BOOK, case("even-bars-across-travel", wheel_structure="five-or-less"))
    others = [r for r in result.belief.ranked if not _shows(r.cause, "even-bars-across-travel")]
    assert others
    assert all(r.present > 0.0 and r.acts == r.cures_alone == 0.0 for r in others)


def _shows(cause: str, symptom: str) -> bool:
    signs = {symptom} | {f.id for f in BOOK.findings.values() if f.sharpens == symptom}
    return any(link.finding in signs for link in BOOK.causes[cause].shows)


@pytest.mark.parametrize(
    "cause", ["wheel-grade-too-hard", "wheel-left-undressed", "dressed-too-fine"]
)
def test_seeing_a_glazed_wheel_raises_what_glazes_it(cause: str) -> None:
    before = reason(BOOK, case("burnt-patches"))
    after = reason(BOOK, case("burnt-patches", wheel_glass="shiny"))
    assert acts(after, cause) > acts(before, cause)


@settings(max_examples=60, deadline=None)
@given(cases())
def test_every_chance_is_finite_and_within_zero_and_one(drawn: Case) -> None:
    read = read_case(BOOK, drawn)
    network, _ = network_of(BOOK, drawn.complaint, read.gathered, read.deduced)
    try:
        belief = believe(network)
    except Impossible:
        pytest.fail(f"no chance at all for {drawn.entries}")
    figures = [x for r in belief.ranked for x in (r.acts, r.present, r.cures_alone)]
    figures += [belief.several, belief.none]
    assert all(math.isfinite(x) and 0.0 <= x <= 1.0 for x in figures)
    whole = sum(r.cures_alone for r in belief.ranked) + belief.several + belief.none
    assert whole == pytest.approx(1.0, abs=1e-9)


@settings(max_examples=25, deadline=None)
@given(cases())
def test_posteriors_on_the_shipped_network_equal_those_of_pyagrum(drawn: Case) -> None:
    read = read_case(BOOK, drawn)
    network, _ = network_of(BOOK, drawn.complaint, read.gathered, read.deduced)
    belief, judged = believe(network), posteriors(network)
    for ranked in belief.ranked:
        assert ranked.present == pytest.approx(judged[ranked.cause], abs=1e-10)


ONE_RUN = """
import json, random, sys
from diagnose.book.kept import load_kept
from diagnose.book.locate import knowledge_folder
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.reason import reason
from diagnose.view.as_json import result_json
from diagnose.view.build import view_of
seed = int(sys.argv[1])
answers = [("when-it-shows", "from-the-first-pass"), ("bars-even", "even-all-along"),
           ("bars-in-25mm", "5"), ("table-speed", "14 m/min"), ("spindle-speed", "2850 rpm"),
           ("drive", "belt"), ("wheel-glass", "shiny"), ("what-changed", "wheel-or-mounting")]
random.Random(seed).shuffle(answers)
book = load_kept(knowledge_folder())
entries = tuple(Entry("answer", n, v) for n, v in answers if n in book.checks)
assert len(entries) == len(answers)
case = Case("order", ("even-bars-across-travel",), entries)
result = reason(book, case)
body = result_json(view_of(result, date="2026-01-01"))
for key in ("case",):
    body.pop(key)
text = json.dumps(body, sort_keys=True)
import re
print(re.sub(r'"entries": \\[[^\\]]*\\]', "", text))
"""


def test_the_same_answers_in_any_order_give_the_same_bytes_in_twenty_processes() -> None:
    seen = set()
    for seed in range(20):
        hashes = {**os.environ, "PYTHONHASHSEED": str(random.Random(seed).randrange(10**6))}
        command = [sys.executable, "-c", ONE_RUN, str(seed)]
        done = subprocess.run(command, capture_output=True, cwd=ROOT, env=hashes, check=False)
        assert done.returncode == 0, done.stderr.decode()
        seen.add(done.stdout)
    assert len(seen) == 1
