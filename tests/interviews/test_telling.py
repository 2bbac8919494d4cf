"""Before the first question the person tells what is known already, from lists of looks."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from diagnose.case.entries import UNASKED, UNKNOWN, Case, Entry
from diagnose.cli.telling import Slip, understood
from diagnose.reasoning.facts import gather
from diagnose.reasoning.facts import wiped as wiped_by_trial
from diagnose.reasoning.reason import looks_made, questions_asked, reason
from diagnose.reasoning.telling import LISTS, LONGEST, left_out, looks_to_tell
from diagnose.view.build import view_of
from diagnose.view.telling import AT_LAST
from tests.interviews.knowing import Knowing
from tests.interviews.playing import Play
from tests.interviews.test_shipped import shipped
from tests.small import small_book

HEAD = "Tell first what you know already"
AGAIN = "These would tell most now"
BARS = "bars across like a ladder"


def told(*lines: str) -> Play:
    return Play(shipped(), [BARS, "", *lines]).run()


def unasked(play: Play) -> list[tuple[str, str, bool]]:
    return [
        (e.name, e.value, e.sure) for e in play.case.entries if e.how == UNASKED and not e.left_out
    ]


def looks() -> list[str]:
    return [c.id for c in looks_to_tell(told().steps[-1])]


def test_lists_come_before_the_first_question_each_after_what_was_told() -> None:
    play = told("1a", "1a", "1a", "q")

    assert play.text.count(HEAD) == 1
    assert play.text.count(AGAIN) == LISTS - 1
    assert play.text.index(AGAIN) < play.text.index("Question 1.")
    assert len(unasked(play)) == LISTS
    assert len({name for name, _, _ in unasked(play)}) == LISTS, "a list repeats no look"


def test_who_knows_nothing_is_asked_at_once() -> None:
    play = told("", "q")
    assert AGAIN not in play.text
    assert "Question 1." in play.text
    assert unasked(play) == []


def test_a_number_and_a_letter_are_a_look_and_its_answer_with_doubt_if_said() -> None:
    first, second, *_ = looks()
    book = shipped()

    play = told("2b? 1a", "q")

    assert unasked(play) == [
        (second, book.checks[second].options[1].id, False),
        (first, book.checks[first].options[0].id, True),
    ]
    heard = " ".join(play.text.split())
    assert f"{book.checks[second].options[1].say} (you think)" in heard
    assert "stand aside" not in play.text.split("Question 1.")[0], "nothing is to be done for it"


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("99a", f"There is no number 99; they go from 1 to {LONGEST}."),
        ("1z", "Number 1 has no z; its letters go from a to "),
        ("1a 1b", "Number 1 has two letters; give the one that fits best."),
        ("1a wavy", "'wavy' is no number with a letter, such as 2a."),
    ],
)
def test_a_slip_is_explained_and_nothing_of_the_line_is_taken(line: str, said: str) -> None:
    play = told(line, "q")
    assert said in play.text
    assert unasked(play) == []


def test_commas_and_blanks_make_no_difference() -> None:
    checks = looks_to_tell(told().steps[-1])
    assert understood(checks, "1a,2b") == understood(checks, " 1A  2 b ")
    with pytest.raises(Slip):
        understood(checks, "a1")


def test_back_goes_to_the_first_list_then_to_the_complaint() -> None:
    first = told("1a", "1a", "b", "q")
    assert first.text.count(HEAD) == 2
    assert unasked(first) == []

    complaint = told("1a", "1a", "b", "b", "q")
    assert complaint.text.count("What is wrong with the part?") == 2
    assert complaint.case.complaint == ()


def test_what_was_told_counts_as_no_question() -> None:
    play = told("1a 2b 3a 4a", "")
    assert len(unasked(play)) == 4
    assert questions_asked(shipped(), play.case) == 0
    assert looks_made(shipped(), play.case) == looks_made(shipped(), play.case, known=True) == 0
    assert "Question 1." in play.text


def test_a_told_trial_wipes_nothing_that_was_told_with_it() -> None:
    """Tried before all that was told: what was seen is not of another state of the machine."""
    book = shipped()
    case = told("").case
    trial = next(c for c in book.checks.values() if c.trial and c.kind == "one" and c.changes)
    spoilt = next(
        c for c in book.checks.values()
        if c.kind == "one" and c.id != trial.id and set(c.spoiled_by) & set(trial.changes)
    )  # fmt: skip
    for how, wiped in ((UNASKED, False), ("said", True)):
        longer = case.with_entry(Entry("answer", trial.id, trial.options[0].id, how))
        longer = longer.with_entry(Entry("answer", spoilt.id, spoilt.options[0].id, how))
        assert wiped_by_trial(spoilt, gather(longer, book)) is wiped


def test_more_can_be_told_at_any_question() -> None:
    play = told("1a", "", "d", "l", "m", "1a", "q")
    assert play.text.count(AGAIN) == 2
    assert len(unasked(play)) == 2


def test_a_case_gone_on_with_is_asked_without_lists() -> None:
    before = told("1a", "", "d", "q")
    again = Play(shipped(), ["q"], before.case).run()
    assert HEAD not in again.text
    assert AGAIN not in again.text
    assert "Question 2." in again.text


def test_a_list_holds_single_answers_that_clear_no_danger() -> None:
    book = shipped()
    guards = {s.asked_by for s in book.stops.values()}
    for symptom in sorted(book.symptoms):
        listed = looks_to_tell(reason(book, Case("", (symptom,))))
        assert 0 < len(listed) <= LONGEST
        assert all(c.kind == "one" and c.id not in guards for c in listed)


def test_few_looks_make_no_list() -> None:
    play = Play(small_book(), ["chatter", "q"]).run()
    assert HEAD not in play.text


def test_the_list_fits_the_screen_and_an_old_console() -> None:
    text = told("1a", "1a").text
    text.encode("cp1252")
    assert max(len(line) for line in text.splitlines()) <= 80
    assert not re.search(r"\b[a-m]\)$", text, re.MULTILINE), (
        "no letter stands alone at a line's end"
    )


def to_the_end(case: Case | None, begin: list[str]) -> Play:
    """Don't know to every question of the cause, dangers cleared, until a fix or the last list."""
    person = Knowing(shipped(), {})

    def lines() -> Iterator[str]:
        yield from begin
        while AT_LAST not in play.text:
            yield next(person.lines())
        yield "q"

    play = person.play = Play(shipped(), lines(), case)
    return play.run()


def test_before_a_faint_first_fix_what_is_known_is_looked_through_once_more() -> None:
    play = to_the_end(None, [BARS, "", "1a", ""])
    assert play.text.count(AT_LAST) == 1
    assert "Question 3." in play.text
    assert play.steps[-1].step.kind in ("fix", "stuck")


def test_a_case_gone_on_with_comes_to_its_end_without_a_list() -> None:
    before = told("1a", "", "d", "q")
    play = to_the_end(before.case, [])
    assert AT_LAST not in play.text
    assert play.steps[-1].step.kind in ("fix", "stuck")


def left(play: Play) -> set[str]:
    return {e.name for e in play.case.entries if e.left_out}


def test_what_is_remembered_or_not_and_was_left_out_is_not_asked_once_more() -> None:
    book = shipped()
    play = told("1a", "", *["d"] * 8, "q")
    listed = [book.checks[name] for name in looks()]
    assert left(play), "some of the list is history"
    assert left(play) < {c.id for c in listed}, "looks and trials may still be asked for"
    assert all(book.checks[name].place == "history" for name in left(play))
    asked = {e.name for e in play.case.entries if e.kind == "answer" and e.how != UNASKED}
    assert asked
    assert not asked & left(play)


def test_who_tells_nothing_of_a_list_has_left_nothing_out() -> None:
    assert left(told("", "q")) == set()


def test_what_another_question_hangs_on_is_asked_though_it_was_left_out() -> None:
    book = shipped()
    hung_on = {f for c in book.checks.values() for f in c.asked_when.facts if f in book.checks}
    out = left_out(book, [book.checks[n] for n in book.checks], {"what-changed"})
    assert not {e.name for e in out} & hung_on
    assert {e.value for e in out} == {UNKNOWN}


def test_what_was_left_out_can_be_told_when_one_wants_to_tell_more() -> None:
    play = told("1a", "", "d", "l", "m", "", "q")
    shown = {c.id for c in looks_to_tell(play.steps[-1], once_more=True)}
    assert shown & left(play)
    assert not {c.id for c in looks_to_tell(play.steps[-1])} & left(play)


def test_what_was_left_out_stands_on_no_page_and_in_no_list_of_what_was_said() -> None:
    play = told("1a", "", "d", "l", "", "q")
    said = play.text[play.text.index("So far you said:") :]
    said = said[: said.index("A number to change one")]
    lines = re.findall(r"^ +\d+  ", said, re.MULTILINE)
    assert len(lines) == len([e for e in play.case.entries if not e.left_out])
    last = play.steps[-1]
    view = view_of(last)
    assert not set(view.unknown_answers) & left(play)
    assert {e.check for e in view.entries} == {
        e.name for e in play.case.entries if e.kind == "answer" and not e.left_out
    }


def test_back_goes_over_what_was_left_out() -> None:
    play = told("1a", "", "b", "q")
    assert play.case.entries == ()


def test_what_was_said_before_stands_though_a_list_leaves_it_out() -> None:
    said = Entry("answer", "how-it-came", "always-so", UNASKED)
    play = Play(shipped(), [], Case("", ("part-tapered",), entries=(said,)))
    interview = play.interview
    interview.leave_out([Entry("answer", "how-it-came", UNKNOWN, UNASKED)])
    assert interview.case.entries == (said,)
