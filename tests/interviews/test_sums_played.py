"""A number given at the keyboard becomes a finding: burn, spark-out, a slower wheel, two bows.

Each is played on the shipped knowledge by a person who knows the numbers and little else.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import pytest

from tests.interviews.knowing import ask_one_who_knows
from tests.interviews.test_shipped import shipped


@dataclass(frozen=True)
class Sum:
    """What was told before, the readings the interview must ask for, and what follows.

    `likelier` is a cause that must gain by the last reading, `rarer` one that must lose.
    """

    complaint: str
    before: Mapping[str, str]
    asked: Mapping[str, str]
    number: str
    finding: str
    value: str
    likelier: str = ""
    rarer: str = ""
    on_screen: str = ""

    def __str__(self) -> str:
        return self.number


# threshold 12.4 J/mm3 at 0.2 mm against 40 +- 15; 0.02 mm x 0.5^0; 4.73 / 7.1 = 1900 / 2850;
# 0.01 / 0.08 = 0.125 of the bow while held
SUMS = [
    Sum("burnt-patches",
        {"work-material": "hardened-steel", "wheel-diameter": "178 mm", "table-speed": "12 m/min"},
        {"depth-of-cut": "0.2 mm"}, "margin-to-burn", "burn-room", "beyond",
        likelier="cut-too-deep", on_screen="burn is to be expected even from a fair wheel"),
    Sum("rough-without-pattern", {"what-you-tried": "passes-better"},
        {"spark-out-strokes": "0", "depth-of-cut": "0.02 mm"},
        "still-to-come-off", "spark-out-state", "too-few", likelier="too-few-spark-out-passes"),
    Sum("even-bars-across-travel",
        {"drive": "inverter-direct", "table-speed": "10 m/min", "spindle-speed": "2850 rpm",
         "bars-in-25mm": "7.1", "slower-wheel-speed": "1900 rpm"},
        {"bars-at-slower-wheel": "7.1"}, "bars-followed-the-wheel", "rate-at-slower-wheel",
        "stays-the-same", likelier="outside-vibration", rarer="unbalanced-wheel"),
    Sum("thin-plate-dished",
        {"bow-before": "0.08 mm", "part-thickness": "4 mm", "part-length": "200 mm",
         "bow-free": "0.08 mm"},
        {"bow-held": "0.01 mm"}, "bow-held-share", "when-the-bow-comes", "comes-with-release",
        likelier="thin-work-pulled-flat", rarer="plate-ground-hot"),
]  # fmt: skip


@pytest.mark.parametrize("each", SUMS, ids=str)
def test_the_interview_asks_for_the_numbers_and_they_become_a_finding(each: Sum) -> None:
    play, person = ask_one_who_knows(shipped(), each.complaint, each.asked, each.before)
    assert set(each.asked) <= set(person.asked)
    deduced = play.steps[-1].read.deduced
    assert each.number in deduced.numbers
    words = deduced.words[each.finding]
    assert max(words, key=lambda value: words[value]) == each.value
    assert each.on_screen in " ".join(play.text.split())


@pytest.mark.parametrize("each", SUMS, ids=str)
def test_the_last_reading_moves_the_causes_it_speaks_of(each: Sum) -> None:
    play, person = ask_one_who_knows(shipped(), each.complaint, each.asked, each.before)
    last = max(person.asked[name] for name in each.asked)
    before, after = (
        {r.cause: r.acts for r in play.steps[n].belief.ranked} for n in (last - 1, last)
    )
    if each.likelier:
        assert after[each.likelier] > before[each.likelier]
    if each.rarer:
        assert after[each.rarer] < before[each.rarer]


def test_a_count_that_is_not_finished_is_asked_to_its_end() -> None:
    slow = next(s for s in SUMS if s.number == "bars-followed-the-wheel")
    _, person = ask_one_who_knows(shipped(), slow.complaint, slow.asked, slow.before)
    assert next(iter(person.asked)) == "bars-at-slower-wheel"
