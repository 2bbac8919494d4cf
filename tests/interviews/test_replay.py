"""The interview is a list of entries and nothing else: back, save and go on follow from that."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.case.entries import Case
from diagnose.case.files import load_case, save_case
from tests.interviews.playing import Play
from tests.small import small_book

LINES = st.lists(st.sampled_from(["1", "2", "3", "d", "n", "t 1", "6 mm", "12 m/min", "yes"]))
COMPLAINTS = st.sampled_from(["burn", "chatter", "taper"])


def last_screen(play: Play) -> str:
    """What was shown after the last typed line, but for the reminder of an older answer."""
    typed = [n for n, text in enumerate(play.screen) if text.startswith("> ")]
    return "\n".join(s for s in play.screen[typed[-1] + 1 :] if "Before, you said" not in s)


@settings(max_examples=25, deadline=None)
@given(COMPLAINTS, LINES, st.sampled_from(["zzz", "999", "yess", "0.0.0", "t zzz", ""]))
def test_a_slip_never_counts(complaint: str, lines: list[str], slip: str) -> None:
    before = Play(small_book(), [complaint, *lines]).run()
    after = Play(small_book(), [complaint, *lines, slip]).run()

    # how a stop was cleared is told in free words, so that there no text is a slip
    free = any("How was it cleared" in line for line in before.screen[-3:])
    if before.end == "no more lines" and not free:
        assert after.case == before.case


@settings(max_examples=25, deadline=None)
@given(COMPLAINTS, LINES, st.integers(1, 6))
def test_back_drops_the_last_entries_one_by_one(
    complaint: str, lines: list[str], times: int
) -> None:
    before = Play(small_book(), [complaint, *lines]).run()
    after = Play(small_book(), [complaint, *lines, *["b"] * times]).run()

    if before.end == "no more lines" and times <= len(before.case.entries):
        # one b goes on leaving the line in which a clearance is told
        left = len(after.case.entries)
        assert after.case.entries == before.case.entries[:left]
        assert left - (len(before.case.entries) - times) in (0, 1)


@settings(max_examples=25, deadline=None)
@given(COMPLAINTS, LINES)
def test_back_to_the_complaint_and_again_gives_the_same_first_question(
    complaint: str, lines: list[str]
) -> None:
    first = Play(small_book(), [complaint]).run()
    away = Play(small_book(), [complaint, *lines]).run()
    if away.end != "no more lines":
        return

    least = len(away.case.entries) + 1
    tries = ([complaint, *lines, *["b"] * n] for n in (least, least + 1))
    back = next(t for t in tries if not Play(small_book(), t).run().case.complaint)
    home = Play(small_book(), [*back, complaint]).run()
    assert home.case == first.case
    assert last_screen(home) == last_screen(first)


@settings(max_examples=25, deadline=None)
@given(COMPLAINTS, LINES)
def test_every_entry_is_saved_as_soon_as_it_stands(complaint: str, lines: list[str]) -> None:
    play = Play(small_book(), [complaint, *lines]).run()

    assert play.saved[-1] == play.case
    sizes = [len(case.entries) for case in play.saved]
    assert sizes == list(range(len(sizes)))


def test_a_saved_interview_goes_on_with_the_question_it_stopped_at(tmp_path: Path) -> None:
    lines = ["chatter", "yes", "1", "n", "t 2"]
    whole = Play(small_book(), lines).run()
    save_case(whole.case, tmp_path / "case.yaml")

    kept = load_case(tmp_path / "case.yaml", small_book())
    again = Play(small_book(), ["zzz"], Case(**{**vars(kept), "path": ""})).run()
    assert [e.value for e in again.case.entries] == [e.value for e in whole.case.entries]
    assert again.steps[-1].step == whole.steps[-1].step


def test_what_is_put_off_is_not_lost() -> None:
    play = Play(small_book(), ["burn", "n", "l", "1", "rang-clear", "l", ""]).run()

    assert "put off till later" in play.text
    assert [e.kind for e in play.case.entries] == ["later", "answer"]


def test_an_answer_changed_in_the_list_replaces_the_old_one() -> None:
    play = Play(small_book(), ["chatter", "no", "l", "1", "yes"]).run()

    last = play.case.entries[-1]
    assert (last.kind, last.value, last.replaces) == ("correct", "yes", 1)
    answers = play.steps[-1].read.gathered.read.answers
    assert [a.value for a in answers] == ["yes"]


def test_an_answer_that_is_only_thought_counts_less_than_a_sure_one() -> None:
    sure = Play(small_book(), ["taper", "2"]).run()
    thought = Play(small_book(), ["taper", "t", "2"]).run()
    asked_first = Play(small_book(), ["taper"]).run()

    def dirt(play: Play) -> float:
        ranked = play.steps[-1].belief.of("dirt-under-part")
        assert ranked is not None
        return ranked.acts

    assert dirt(asked_first) < dirt(thought) < dirt(sure)
