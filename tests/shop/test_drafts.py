"""A new entry is written with every heading, loads as it stands, and passes its own examples."""

from __future__ import annotations

from pathlib import Path

import jsonschema
import pytest

from diagnose.audit.examples import failures_of
from diagnose.book.kinds import BY_NAME
from diagnose.book.problems import BookError
from diagnose.book.schema import schemas
from diagnose.book.slug import free_slug, slug
from diagnose.book.yaml_nodes import read_tree
from diagnose.case.entries import Closed
from diagnose.shop.draft import Draft, ids_of, put, tried
from diagnose.shop.draft_cause import NewCause, cause_draft, from_case, roads
from diagnose.shop.draft_check import OwnSign, check_draft
from diagnose.shop.draft_others import (
    NewRule,
    NewStop,
    NewSymptom,
    rule_draft,
    stop_draft,
    symptom_draft,
)
from diagnose.shop.knowledge import load_with_own
from tests.book.test_schema import as_an_editor_sees_it
from tests.shop.shops import BARS, belt, case
from tests.shop.shops import put as put_file
from tests.small import SMALL, small_book

BOOK = small_book()
TAKEN = ids_of(BOOK)
FELT = OwnSign("felt under the chuck is crushed", "Is the felt crushed?", "Lift a corner.")
DRAFTS: dict[str, Draft] = {
    "cause": cause_draft(NewCause("Felt gave way", symptoms=(BARS,), own=FELT), BOOK),
    "check": check_draft(FELT, BOOK, TAKEN),
    "rule": rule_draft(
        NewRule("slow table", {"table-speed": {"below": "3 m/min"}}, {"note": "Too slow."}), TAKEN
    ),
    "stop": stop_draft(
        NewStop("Guard pin missing", what_is_wrong="It swings.", do_first=("Spindle off.",),
                cleared_when="the pin is in"), TAKEN
    ),
    "symptom": symptom_draft(NewSymptom("Rainbow edge"), BOOK, TAKEN),
}  # fmt: skip


@pytest.mark.parametrize("kind", DRAFTS)
def test_a_draft_loads_as_it_stands(tmp_path: Path, kind: str) -> None:
    book = tried(SMALL, tmp_path, DRAFTS[kind])
    shelf = getattr(book, f"{kind}s" if kind != "cause" else "causes")
    assert DRAFTS[kind].id in shelf


@pytest.mark.parametrize("kind", DRAFTS)
def test_a_draft_names_every_heading_of_its_kind(kind: str) -> None:
    text = next(iter(DRAFTS[kind].files.values()))
    headings = {f.name for f in BY_NAME[kind].group.fields}
    written = {line.lstrip("#- ").split(":")[0] for line in text.splitlines() if ":" in line}
    assert headings <= written


@pytest.mark.parametrize("kind", DRAFTS)
def test_the_schema_a_draft_names_accepts_it(tmp_path: Path, kind: str) -> None:
    for name, text in DRAFTS[kind].files.items():
        path = put_file(tmp_path, f"knowledge/{name}", text)
        line = text.splitlines()[0].removeprefix("# yaml-language-server: $schema=")
        at = (path.parent / line).resolve()
        assert at.parent == (tmp_path / "knowledge/schema").resolve()
        schema = schemas(BOOK.words)[at.name]
        root, problems = read_tree(path)
        assert problems == []
        jsonschema.Draft7Validator(schema).validate(as_an_editor_sees_it(root))


def test_a_cause_with_a_sign_of_its_own_passes_its_examples(tmp_path: Path) -> None:
    book = tried(SMALL, tmp_path, DRAFTS["cause"])
    cause = book.causes["felt-gave-way"]
    assert [e.first for e in cause.examples if e.first] == ["felt-gave-way"]
    assert list(failures_of(book, cause)) == []


def test_what_is_still_to_fill_is_named_by_file_and_line() -> None:
    draft = cause_draft(NewCause("Felt gave way", symptoms=(BARS,)), BOOK)
    (name, text), *_ = draft.files.items()
    assert draft.to_fill
    for told in draft.to_fill:
        file, line, _ = told.split(":", 2)
        assert file == name
        assert "to fill" in text.splitlines()[int(line) - 1]
    full = NewCause("Felt gave way", summary="It rocks.", symptoms=(BARS,), fix="New felt.",
                    steps=("Lift it.",), proof="No bars.", because="it rocks",
                    shows=(("bars-evenly-spaced", "yes", ""),))  # fmt: skip
    assert cause_draft(full, BOOK).to_fill == []


def test_the_second_example_turns_the_signs_round_or_speaks_for_a_rival() -> None:
    told = NewCause("x", symptoms=(BARS,), answers={"bars-even": "yes", "bar-spacing": "6 mm"})
    seen = cause_draft(told, BOOK).files["causes/machine/x.yaml"]
    first, second = seen.split("- title:")[1:]
    assert "bars-even: yes" in first
    assert "bars-even: no" in second
    assert "bar-spacing" not in second
    bare = cause_draft(NewCause("x", symptoms=(BARS,)), BOOK).files["causes/machine/x.yaml"]
    first, second = bare.split("- title:")[1:]
    assert "answers: {}  # to fill:" in first
    assert "answers: {}" not in second


def test_a_closed_case_becomes_a_cause_with_its_example_filled(tmp_path: Path) -> None:
    told = case("secret part 4711 for a customer", ("ring-test", "rang-clear"),
                ("bars-even", "yes"), ("bar-spacing", "6 mm"), ("wheel-look", "don't know"),
                machine="north", part="4711")  # fmt: skip
    ending = Closed("2026-03-09", (), "the felt gave way", "new felt", 40.0, "no bars", "for B.")
    new = from_case(case(told.title, machine="north").__class__(**{**vars(told), "closed": ending}),
                    BOOK)  # fmt: skip
    draft = cause_draft(new, BOOK)
    book = tried(SMALL, tmp_path, draft)
    cause = book.causes[draft.id]
    assert draft.id == "felt-gave-way"
    assert dict(cause.examples[0].answers) == {"bars-even": "yes", "bar-spacing": "6 mm"}
    assert {link.finding for link in cause.shows} == {BARS, "bars-evenly-spaced"}
    assert (cause.fix.do, cause.fix.proof, cause.fix.minutes_practised) == (
        "new felt",
        "no bars",
        40,
    )
    text = "".join(draft.files.values())
    assert not [word for word in ("4711", "north", "for B.", "customer") if word in text]


def test_the_word_of_a_sign_lies_above_how_often_it_shows_by_itself(tmp_path: Path) -> None:
    for finding in BOOK.findings.values():
        if finding.kind == "sign" and finding.id not in BOOK.symptoms:
            for value in finding.value_ids[1:]:
                shows = ((finding.id, value, ""),)
                tried(
                    SMALL, tmp_path, cause_draft(NewCause("x", symptoms=(BARS,), shows=shows), BOOK)
                )


def test_a_fix_with_the_power_off_or_the_wheel_turning_brings_its_care(tmp_path: Path) -> None:
    told = NewCause("x", symptoms=(BARS,), needs=("power-locked-out", "wheel-turning"))
    cause = tried(SMALL, tmp_path, cause_draft(told, BOOK)).causes["x"]
    assert cause.fix.needs == ("power-locked-out", "wheel-turning")
    assert cause.cautions == ("lock-out-first", "stand-aside-at-start")


def test_the_road_to_a_symptom_begins_at_it() -> None:
    assert roads(BOOK, BARS)[0] == "waves-cut-in-the-work"
    assert "wheel-lifts-once-a-turn" in roads(BOOK, BARS)


def test_a_draft_with_a_fault_is_not_written(tmp_path: Path) -> None:
    draft = rule_draft(NewRule("x", {"table-sped": "1"}, {"note": "y"}), TAKEN)
    with pytest.raises(BookError, match="table-sped"):
        tried(SMALL, tmp_path, draft)
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_is_there_is_never_written_over(tmp_path: Path) -> None:
    (path, *_) = put(tmp_path, DRAFTS["rule"])
    before = path.read_bytes()
    with pytest.raises(BookError, match="this file is there already"):
        put(tmp_path, DRAFTS["rule"])
    assert path.read_bytes() == before


def test_a_fault_elsewhere_in_the_shop_does_not_hinder_a_new_draft(tmp_path: Path) -> None:
    put_file(tmp_path, "knowledge/causes/drive/slack-belt.yaml", belt("other"))
    tried(SMALL, tmp_path, DRAFTS["check"])
    put(tmp_path, DRAFTS["check"])
    book, left_out = load_with_own(SMALL, tmp_path)
    assert DRAFTS["check"].id in book.checks
    assert {p.file.rsplit("/", 1)[1] for p in left_out} == {"slack-belt.yaml"}


@pytest.mark.parametrize(
    ("words", "found"),
    [("The belt slips, again", "belt-slips-again"), ("it is", "it-is"), ("Ölnebel", "olnebel"),
     ("✓", "")],
)  # fmt: skip
def test_an_id_is_made_of_words(words: str, found: str) -> None:
    assert slug(words) == found


def test_an_id_that_is_taken_gets_a_number() -> None:
    assert free_slug("lumpy belt", BOOK.causes, "x") == "lumpy-belt-2"
    assert free_slug("✓", (), "new-cause") == "new-cause"
