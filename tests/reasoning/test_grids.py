"""A grid of readings in a case: numbers with a range, findings, and what they cannot show."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from diagnose.book.loader import load_book
from diagnose.book.model import Book
from diagnose.book.problems import BookError
from diagnose.case.files import load_case, save_case
from diagnose.reasoning.explain import how, sources_of
from diagnose.reasoning.reason import Reasoned, reason
from diagnose.view.build import view_of
from tests.interviews.knowing import ask_one_who_knows

KNOWLEDGE = Path(__file__).parents[2] / "knowledge"
PART, MAP, BLOCK = "grid-of-the-free-part", "grid-of-the-thickness", "grid-of-the-flat-block"
# the middle lies 10 um under the line through both ends, good to 1 um
HOLLOW = "1 -10 0 / 0 -9 1 / 1 -11 0 / 0 -10 0 um"
FLAT = "1 0 1 / 0 1 0 / 1 1 0 / 0 0 1 um"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book(KNOWLEDGE)


def told(book: Book, folder: Path, *answers: str, complaint: str = "thin-plate-dished") -> Reasoned:
    path = folder / "case.yaml"
    lines = [f"title: a plate\ncomplaint: [{complaint}]\nentries:"]
    lines += [f'  - {{answer: {name}, value: "{value}"}}'
              for name, _, value in (a.partition("=") for a in answers)]  # fmt: skip
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return reason(book, load_case(path, book))


def chance(made: Reasoned, cause: str) -> float:
    return next(r.acts for r in made.belief.ranked if r.cause == cause)


def test_the_parts_of_the_shape_are_numbers_with_a_range(book: Book, tmp_path: Path) -> None:
    made = told(book, tmp_path, f"{PART}={HOLLOW}")
    bow = made.read.facts[f"{PART}-crown-along"]
    assert bow.value == pytest.approx(-10.5e-6, abs=0.3e-6)  # type: ignore[union-attr]  # there
    assert bow.low < -10.5e-6 < bow.high < -8e-6  # type: ignore[union-attr]  # there


@pytest.mark.parametrize(
    ("check", "readings", "finding", "value"),
    [
        (PART, HOLLOW, "shape-after-release", "hollow"),
        (PART, HOLLOW.replace("-", ""), "shape-after-release", "crowned"),
        (PART, FLAT, "shape-after-release", "flat"),
        (MAP, HOLLOW, "middle-against-ends", "thin-middle"),
        (MAP, HOLLOW.replace("-", ""), "middle-against-ends", "thick-middle"),
        (MAP, FLAT, "middle-against-ends", "even"),
        (BLOCK, HOLLOW, "shape-of-the-travel", "crooked"),
        (BLOCK, FLAT, "shape-of-the-travel", "straight"),
    ],
)
def test_the_numbers_become_the_finding_that_the_reference_carries(
    book: Book, tmp_path: Path, check: str, readings: str, finding: str, value: str
) -> None:
    made = told(book, tmp_path, f"{check}={readings}")
    words = made.read.deduced.words[finding]
    assert max(words, key=lambda v: words[v]) == value
    assert words[value] > 0.8
    assert sources_of(made, finding) == (check,)
    assert {s.concluded for s in how(made, finding)} == {finding}


@pytest.mark.parametrize(
    ("check", "other", "finding", "cannot"),
    [
        (PART, "against machine-travel", "shape-after-release", "flat when free"),
        (PART, "magnet on", "shape-after-release", "flat when free"),
        (PART, "against micrometer", "shape-after-release", "flat when free"),
        (MAP, "against straightedge", "middle-against-ends", "even thickness"),
        (BLOCK, "on part, ground here", "shape-of-the-travel", "ways are straight"),
        (BLOCK, "on chuck", "shape-of-the-travel", "ways are straight"),
        (BLOCK, "against surface-plate", "shape-of-the-travel", "ways are straight"),
    ],
)
@pytest.mark.parametrize("readings", [HOLLOW, FLAT])
def test_a_reference_that_cannot_carry_the_finding_refuses_it_and_says_why(
    book: Book, tmp_path: Path, check: str, other: str, finding: str, cannot: str, readings: str
) -> None:
    made = told(book, tmp_path, f"{check}={readings}, {other}")
    assert finding not in made.read.deduced.words
    said = [text for _, text in made.read.deduced.notes if "cannot show" in text]
    assert any(cannot in text for text in said)


def test_a_hollow_part_of_even_thickness_was_bent_and_not_cut_hollow(
    book: Book, tmp_path: Path
) -> None:
    cut = told(book, tmp_path, f"{PART}={HOLLOW}", f"{MAP}={HOLLOW}")
    bent = told(book, tmp_path, f"{PART}={HOLLOW}", f"{MAP}={FLAT}")
    assert chance(cut, "plate-ground-hot") > 2 * chance(bent, "plate-ground-hot")
    stress = "stress-let-out-on-one-side"
    assert chance(bent, stress) > chance(cut, stress)


def test_readings_over_a_flat_block_speak_for_the_ways_as_a_look_at_it_does(
    book: Book, tmp_path: Path
) -> None:
    complaint = "block-hollow-or-crowned"
    before, seen, measured = (
        chance(told(book, tmp_path, *answer, complaint=complaint), "ways-worn")
        for answer in ((), ("flat-block-sweep=dips-or-tips",), (f"{BLOCK}={HOLLOW}",))
    )
    assert measured > 2 * before
    assert measured == pytest.approx(seen, abs=0.02)


def test_a_file_beside_the_case_is_taken_into_it(book: Book, tmp_path: Path) -> None:
    (tmp_path / "plate.csv").write_text("1,-10,0\n0,-9,1\n1,-11,0\n0,-10,0\n", encoding="utf-8")
    made = told(book, tmp_path, f"{PART}=plate.csv um")
    assert made.read.case.entries[0].value == HOLLOW
    (tmp_path / "elsewhere").mkdir()
    save_case(made.read.case, tmp_path / "elsewhere" / "kept.yaml")
    kept = load_case(tmp_path / "elsewhere" / "kept.yaml", book)
    assert reason(book, kept).read.deduced.words == made.read.deduced.words


def test_readings_that_cannot_be_used_are_named_with_file_and_line(
    book: Book, tmp_path: Path
) -> None:
    (tmp_path / "bad.csv").write_text("1,2,3\n4,five,6\n", encoding="utf-8")
    with pytest.raises(BookError) as caught:
        told(book, tmp_path, f"{PART}=bad.csv um")
    (problem,) = caught.value.problems
    assert problem.line == 4
    assert "bad.csv:2: 'five' is not a number" in problem.what


def test_the_numbers_are_handed_to_page_and_json(book: Book, tmp_path: Path) -> None:
    view = view_of(told(book, tmp_path, f"{PART}={HOLLOW}"), full=False)
    bow = next(r for r in view.readings if r.id == f"{PART}-crown-along")
    assert bow.measured
    assert bow.dimension == "deviation"
    assert bow.name.startswith("readings over the free part on a plate: middle above the ends")
    assert any("against surface plate" in note for note in view.notes)


def test_the_interview_asks_for_the_grid_before_a_long_job_and_goes_on_with_it(book: Book) -> None:
    before = {
        "part-warmth": "cool", "measured-when": "cold", "known-good-block": "block-shows-it",
        "where-worst": "at-one-spot", "chuck-off-lately": "left-alone",
        "against-the-drawing": "outside", "what-changed": "nothing",
        "how-it-came": "over-days-or-weeks", "chuck-face-look": "clean-and-flat",
    }  # fmt: skip
    play, person = ask_one_who_knows(
        book, "block-hollow-or-crowned", {BLOCK: HOLLOW}, before, put_off=("flat-block-sweep",)
    )
    asked = person.asked[BLOCK]
    screen = " ".join(play.text.split())
    assert "Rows across with / between" in screen
    assert "readings over a known flat block under the head, against machine travel" in screen
    assert play.steps[asked].read.deduced.words["shape-of-the-travel"] == {"crooked": 1.0}
    was, now = (chance(play.steps[n], "ways-worn") for n in (asked - 1, asked))
    assert now / (1.0 - now) > 1.5 * was / (1.0 - was)


CLAIMS = [
    ("is: crooked, shows: ways", "is: crooked, shows: chuck", "cannot show that the chuck"),
    ("is: crooked, shows: ways", "is: crooked", "says not what the readings must show"),
]


@pytest.mark.parametrize(("old", "new", "says"), CLAIMS)
def test_a_rule_that_claims_more_than_its_grid_can_show_is_refused(
    tmp_path: Path, old: str, new: str, says: str
) -> None:
    folder = tmp_path / "knowledge"
    shutil.copytree(KNOWLEDGE, folder)
    rules = folder / "rules" / "grids.yaml"
    text = rules.read_text(encoding="utf-8")
    assert old in text
    rules.write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(BookError) as caught:
        load_book(folder)
    assert any(says in p.what for p in caught.value.problems)


@pytest.mark.parametrize("field", ["reads: grid", "against: micrometer", "touched: part"])
def test_a_grid_check_says_how_it_is_measured(tmp_path: Path, field: str) -> None:
    folder = tmp_path / "knowledge"
    shutil.copytree(KNOWLEDGE, folder)
    path = folder / "checks" / "bench" / f"{MAP}.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace(field + "\n", ""), encoding="utf-8")
    with pytest.raises(BookError) as caught:
        load_book(folder)
    assert any(field.split(":")[0] in p.what for p in caught.value.problems)
