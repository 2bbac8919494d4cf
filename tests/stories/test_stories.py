"""The stories are whole, say what the README says of them, and obey the arithmetic of marks."""

import re
from pathlib import Path
from typing import Any

import pytest
import yaml

HERE = Path(__file__).parent
FILES = sorted(HERE.glob("[0-9]*.yaml"), key=lambda path: int(path.name.split("-")[0]))
TEXTS = ("title", "source", "complaint_words")
STANDINGS = re.compile(r"confirmed|from memory|our own story", re.IGNORECASE)
SPACING_SUM = re.compile(r"([\d.]+)(?: mm/s)? over ([\d.]+) is ([\d.]+) mm")


def story(path: Path) -> dict[str, Any]:
    loaded = yaml.safe_load(path.read_text(encoding="utf-8"))
    assert isinstance(loaded, dict)
    return loaded


def numbers_of_row(kind: str) -> list[str]:
    table = (HERE / "README.md").read_text(encoding="utf-8")
    row = next(line for line in table.splitlines() if line.startswith(f"| {kind}"))
    return re.findall(r"\d{2,3}", row.split("|")[2])


def numbers_where(wanted: Any) -> list[str]:
    return [path.name.split("-")[0] for path in FILES if wanted(story(path))]


def test_the_stories_are_numbered_without_a_gap() -> None:
    assert [path.name.split("-")[0] for path in FILES] == [f"{n:02d}" for n in range(1, 229)]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_story_has_every_field_a_player_needs(path: Path) -> None:
    told = story(path)
    assert all(told[field].strip() for field in TEXTS)
    assert told["machine"].keys() >= {"drive", "spindle_rpm", "wheel", "chuck", "coolant", "table"}
    assert told["machine"].keys() >= {"power", "dresser"}
    assert told["job"].keys() >= {"material", "hardness", "size", "thickness", "depth"}
    assert told["job"].keys() >= {"crossfeed", "finish_wanted"}
    assert 1 <= len(told["true_causes"]["causes"]) <= 2
    assert told["true_causes"]["what_cured_it"]
    assert told["true_causes"]["how_it_was_proved"]
    assert told["untypical"] in ("yes", "no")
    assert (told["untypical"] == "yes") == ("what_misleads" in told)
    assert STANDINGS.search(told["source"])


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_story_has_fifteen_to_thirty_facts_each_on_its_own_subject(path: Path) -> None:
    facts = story(path)["facts"]
    subjects = [fact["about"] for fact in facts]
    assert 15 <= len(facts) <= 30
    assert len(set(subjects)) == len(subjects)


@pytest.mark.parametrize("path", FILES[:44], ids=lambda path: path.stem)
def test_the_first_stories_admit_what_was_not_looked_at(path: Path) -> None:
    facts = story(path)["facts"]
    gap = r"\b(not|never|did not) (looked|measured|asked|done|thought|do)\b"
    assert any(re.search(gap, fact["found"], re.IGNORECASE) for fact in facts)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_the_mark_spacing_in_a_cause_is_table_speed_over_frequency(path: Path) -> None:
    for cause in story(path)["true_causes"]["causes"]:
        for speed, frequency, spacing in SPACING_SUM.findall(cause):
            assert float(spacing) == pytest.approx(float(speed) / float(frequency), rel=0.02)


def test_most_chatter_stories_give_the_sum_that_the_spacing_test_checks() -> None:
    with_sum = numbers_where(lambda told: SPACING_SUM.search(str(told["true_causes"]["causes"])))
    assert with_sum == ["01", "04", "05", "06", "07", "08", "21", "22", "26", "35", "40"]


def test_the_hazard_rows_of_the_readme_are_the_stories_with_a_hazard() -> None:
    rows = numbers_of_row("a hazard is the story") + numbers_of_row("a hazard comes to light")
    assert sorted(rows, key=int) == numbers_where(lambda told: told["hazards"])


def test_the_two_cause_row_of_the_readme_is_the_stories_with_two_causes() -> None:
    two = numbers_where(lambda told: len(told["true_causes"]["causes"]) == 2)
    assert numbers_of_row("two causes at once") == two
