"""Case files: what a machinist writes is read, what cannot be is said, nothing is ever lost."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.book import writing
from diagnose.book.loader import load_book
from diagnose.book.nodes import Page
from diagnose.book.problems import BookError, Problem
from diagnose.case.case_text import case_text
from diagnose.case.entries import OUTCOMES, Case, Entry, read_entries
from diagnose.case.files import case_of, load_case, save_case
from tests.small import change, copy_small, small_book

SPACER = """\
title: spacer plate, ripples
complaint: [ladder rungs]
machine: north-grinder
wheel: {ring-test: rang-clear}
part: spacer plate, 60 HRC, 120 x 80 x 12 mm
facts: {drive-kind: belt}
minutes_to_spare: 30
tools: [rule, Feeler gauge]
practised: yes
entries:
  - {answer: bar-spacing, value: 8 mm, how: measured}
  - {answer: table-speed, value: 50 ft/min}
  - {correct: 1, value: 9 mm, how: measured}
  - {tried: unbalanced-wheel, outcome: gone and comes back}
  - {cleared: cracked-wheel, how: another wheel rang clear}
  - {later: neighbour-off}
  - {answer: wheel-look, value: shiny, sure: think so}
"""


def read(text: str) -> Case:
    return case_of(Page("spacer.yaml", text), small_book())


def faults(text: str) -> tuple[Problem, ...]:
    with pytest.raises(BookError) as error:
        read(text)
    return error.value.problems


def short(answers: str) -> str:
    return f"title: x\ncomplaint: chatter\nanswers: {{{answers}}}\n"


def test_a_case_is_read_as_written() -> None:
    case = read(SPACER)
    assert case.complaint == ("even-bars-across-travel",)
    assert case.machine == "north-grinder"
    assert case.given == {"ring-test": "rang-clear", "drive-kind": "belt"}
    assert case.minutes_to_spare == 30
    assert case.tools == ("rule", "feeler-gauge")
    assert case.practised
    assert [e.kind for e in case.entries] == [
        "answer", "answer", "correct", "tried", "cleared", "later", "answer",
    ]  # fmt: skip
    assert case.entries[0] == Entry("answer", "bar-spacing", "8 mm", "measured", line=11)
    assert case.entries[2] == Entry(
        "correct", "bar-spacing", "9 mm", "measured", replaces=1, line=13
    )
    assert case.entries[4].value == "another wheel rang clear"
    assert not case.entries[6].sure


def test_a_correction_stands_for_what_it_replaces() -> None:
    standing = {s.check: s.value for s in read_entries(read(SPACER)).answers}
    assert standing["bar-spacing"] == "9 mm"


def test_answers_in_short_are_entries() -> None:
    case = read(short("bar-spacing: 8 mm, wheel-look: [shiny]"))
    assert [(e.kind, e.name, e.value) for e in case.entries] == [
        ("answer", "bar-spacing", "8 mm"),
        ("answer", "wheel-look", "shiny"),
    ]


@pytest.mark.parametrize(
    ("words", "symptom"),
    [
        ("ladder rungs", "even-bars-across-travel"),
        ("Ladder-Rungs", "even-bars-across-travel"),
        ("even-bars-across-travel", "even-bars-across-travel"),
        ("Even bars across the travel", "even-bars-across-travel"),
        ("there are brown patches on it", "burnt-patches"),
        ("it burns", "burnt-patches"),
        ("one end high", "taper-along-travel"),
    ],
)
def test_a_complaint_in_plain_words(words: str, symptom: str) -> None:
    assert read(f"title: x\ncomplaint: {words}\nanswers: {{}}").complaint == (symptom,)


def test_two_complaints_at_once() -> None:
    case = read("title: x\ncomplaint: [ripples, burn, chatter]")
    assert case.complaint == ("even-bars-across-travel", "burnt-patches")


def test_old_ids_are_followed(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    for file in ("checks/wheel/wheel-look", "causes/wheel/unbalanced-wheel", "stops/cracked-wheel"):
        old = f"id: {Path(file).name}\n"
        change(folder, f"{file}.yaml", old, old + f"replaces: [old-{Path(file).name}]\n")
    change(folder, "symptoms/burnt-patches.yaml", "family:", "replaces: [old-burn]\nfamily:")
    text = (
        "title: x\ncomplaint: old-burn\nentries:\n  - {answer: old-wheel-look, value: shiny}\n"
        "  - {tried: old-unbalanced-wheel, outcome: same}\n  - {cleared: old-cracked-wheel, how: x}"
    )
    case = case_of(Page("a.yaml", text), load_book(folder))
    assert case.complaint == ("burnt-patches",)
    assert [e.name for e in case.entries] == ["wheel-look", "unbalanced-wheel", "cracked-wheel"]


@pytest.mark.parametrize(
    ("answers", "says", "suggests"),
    [
        ("bar-spacng: 8 mm", "there is no check 'bar-spacng'", "bar-spacing"),
        ("wheel-look: shinny", "'shinny' is no answer to wheel-look", "shiny"),
        ("wheel-look: rough", "'rough' is no answer to wheel-look", ""),
        ("bar-spacing: 8", "'8' has no unit: write the unit, for example 6 mm", ""),
        ("bar-spacing: 8 rpm", "this wants a length; rpm is a turning speed", ""),
        ("bar-spacing: 8 m", "8 m is too much to be possible for bar-spacing", ""),
        ("bar-spacing: none", "does not begin with a number; write it like 6 mm", ""),
        ("wheel-look: ", "nothing was answered", ""),
    ],
)
def test_an_answer_that_cannot_be_used_has_one_message(
    answers: str, says: str, suggests: str
) -> None:
    (problem,) = faults(short(answers))
    assert says in problem.what
    assert problem.suggestion == suggests
    assert (problem.file, problem.line) == ("spacer.yaml", 3)


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        ("title: x\ncomplaint: it sings", 2, "no complaint is known as 'it sings'"),
        ("complaint: chatter", 1, "a case has no 'title:'"),
        ("title: x", 1, "a case has no 'complaint:'"),
        ("title: x\ncomplant: chatter", 2, "a case has no field 'complant'"),
        ("title: x\ncomplaint: chatter\nmachine: [a]", 3, "neither a card nor facts"),
        ("title: x\ncomplaint: chatter\nminutes_to_spare: ten", 3, "'ten' is not a number"),
        (SPACER.replace("correct: 1", "correct: 4"), 13, "no answer number 4 before this line"),
        (SPACER.replace("later: neighbour-off", "later: nobody"), 16, "there is no check 'nobody'"),
        (SPACER.replace(", outcome: gone and comes back", ""), 14, "has no 'outcome:'"),
        (SPACER.replace("outcome: gone and", "outcome: gone or"), 14, "is not one of the words"),
        (SPACER.replace(", how: another wheel rang clear", ""), 15, "has no 'how:'"),
        (SPACER.replace("cleared: cracked", "cleared: craked"), 15, "no stop 'craked-wheel'"),
        (SPACER.replace("later: n", "tried: same-wheel, later: n"), 16, "exactly one thing"),
        (SPACER.replace("neighbour-off}", "neighbour-off, sure: yes}"), 16, "does not belong"),
        (SPACER.replace("how: measured", "how: guessed", 1), 11, "'guessed' is not one of"),
        (SPACER + "answers: {wheel-look: open}\n", 18, "either 'answers:' or 'entries:'"),
        ("schema: 7\nfuture: yes", 1, "written by a newer version (schema 7; this one reads 1)"),
        ("schema: new\ntitle: x", 1, "no known form of case"),
        ("[title]", 1, "a case is written as fields"),
        ("", 0, "this file is empty"),
        ("title: 'x", 1, "a quote is opened"),
        ("title: x\n\tcomplaint: chatter", 2, "a tab"),
        ("title: x\ntitle: y\ncomplaint: chatter", 2, "here and on line 1"),
    ],
)
def test_a_fault_of_a_case_has_one_message_at_its_line(text: str, line: int, says: str) -> None:
    (problem,) = faults(text)
    assert problem.line == line
    assert says in problem.what


def test_an_entry_is_corrected_once() -> None:
    twice = SPACER.replace("later: neighbour-off", "correct: 1, value: 7 mm")
    (problem,) = faults(twice)
    assert problem.what == "entry 1 is already corrected by entry 3"
    assert read(twice.replace("correct: 1, value: 7", "correct: 3, value: 7")).entries[5] == Entry(
        "correct", "bar-spacing", "7 mm", replaces=3, line=16
    )


def test_all_faults_come_at_once_in_order() -> None:
    text = SPACER.replace("8 mm", "8").replace("shiny", "shinny").replace("belt", "chain")
    assert [p.line for p in faults(text)] == [6, 11, 17]


def test_a_missing_file_a_folder_and_a_huge_file_have_one_message(tmp_path: Path) -> None:
    huge = tmp_path / "huge.yaml"
    with open(huge, "wb") as file:
        file.truncate(50 * 2**20)
    for path, says in (
        (tmp_path / "none.yaml", "no such file"),
        (tmp_path, "a folder, not a file"),
        (huge, "1 MiB is the most"),
    ):
        with pytest.raises(BookError, match=says) as error:
            load_case(path, small_book())
        assert len(error.value.problems) == 1


words = st.text(min_size=1, max_size=25).map(lambda t: " ".join(t.split())).filter(bool)
entries = st.one_of(
    st.builds(
        Entry,
        st.just("answer"),
        st.just("wheel-look"),
        st.sampled_from(["open", "shiny", "loaded", "don't know"]),
        st.sampled_from(["said", "measured", "shop"]),
        st.booleans(),
    ),
    st.builds(
        Entry,
        st.just("answer"),
        st.just("bar-spacing"),
        st.sampled_from(["8 mm", "2 thou", "0.25 in", '3/8"', "6 mm +- 0.5 mm"]),
    ),
    st.builds(Entry, st.just("later"), st.just("neighbour-off")),
    st.builds(lambda how: Entry("cleared", "cracked-wheel", how), words),
    st.builds(
        lambda o: Entry("tried", "lumpy-belt", outcome=o),
        st.sampled_from(OUTCOMES),
    ),
)
cases = st.builds(
    Case,
    title=words,
    complaint=st.just(("burnt-patches",)),
    entries=st.lists(entries, max_size=5).map(tuple),
    machine=st.sampled_from(["", "north-grinder"]),
    part=st.just("") | words,
    given=st.dictionaries(st.just("drive-kind"), st.sampled_from(["belt", "direct"])),
    minutes_to_spare=st.none() | st.floats(0, 500).map(lambda m: round(m, 2)),
    tools=st.none() | st.lists(st.sampled_from(["rule", "feeler-gauge"]), unique=True).map(tuple),
    practised=st.booleans(),
    note=st.just("") | words,
)


def without_places(case: Case) -> Case:
    return replace(case, path="", entries=tuple(replace(e, line=0) for e in case.entries))


@settings(max_examples=80, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(cases)
def test_a_saved_case_is_read_back_the_same(tmp_path: Path, case: Case) -> None:
    path = tmp_path / "case.yaml"
    save_case(case, path)
    assert without_places(load_case(path, small_book())) == case
    assert [p.name for p in tmp_path.iterdir()] == ["case.yaml"]


def test_saving_what_was_read_changes_nothing_more() -> None:
    once = case_text(read(SPACER))
    assert case_text(read(once)) == once


def test_a_correction_is_saved_with_the_number_it_replaces() -> None:
    assert "{correct: 1, value: 9 mm, how: measured}" in case_text(read(SPACER))


def test_saving_makes_the_folder(tmp_path: Path) -> None:
    save_case(read(SPACER), tmp_path / "cases/march/spacer.yaml")
    assert load_case(tmp_path / "cases/march/spacer.yaml", small_book()).title.startswith("spacer")


def test_a_folder_that_cannot_be_written_has_one_message(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr(writing, "_write", refuse)
    with pytest.raises(BookError, match="nothing can be written here: Read-only file system"):
        save_case(read(SPACER), tmp_path / "spacer.yaml")


def test_a_folder_in_place_of_the_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="this is a folder, not a file"):
        save_case(read(SPACER), tmp_path)


def test_a_file_in_place_of_the_folder_is_named(tmp_path: Path) -> None:
    (tmp_path / "cases").write_text("")
    with pytest.raises(BookError, match="nothing can be written here"):
        save_case(read(SPACER), tmp_path / "cases/spacer.yaml")


@pytest.mark.parametrize("step", ["_write", "replace"])
def test_an_interruption_leaves_the_old_case_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str
) -> None:
    path = tmp_path / "spacer.yaml"
    save_case(read(SPACER), path)
    before = path.read_bytes()

    def half(aside: Path, text: str) -> None:
        aside.write_text(text[:40])
        raise KeyboardInterrupt

    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    if step == "_write":
        monkeypatch.setattr(writing, "_write", half)
    else:
        monkeypatch.setattr(os, "replace", interrupted)
    with pytest.raises(KeyboardInterrupt):
        save_case(replace(read(SPACER), title="another"), path)
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["spacer.yaml"]


def test_a_link_to_a_case_stays_a_link(tmp_path: Path) -> None:
    path, link = tmp_path / "spacer.yaml", tmp_path / "latest.yaml"
    save_case(read(SPACER), path)
    link.symlink_to(path)
    save_case(replace(read(SPACER), title="another"), link)
    assert link.is_symlink()
    assert load_case(path, small_book()).title == "another"
