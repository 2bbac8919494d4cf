"""`diagnose rank`: a case in, its ranked causes out."""

from __future__ import annotations

import json

import pytest

from diagnose.case.entries import OUTCOMES
from tests.cli.running import GOOD, Cli, write


def test_the_cause_that_fits_the_answers_comes_first(cli: Cli) -> None:
    told = cli("rank", write("case.yaml", GOOD), "--json")

    body = json.loads(told.out)
    assert told.code == 0
    assert body["schema"] == 1
    assert body["causes"][0]["id"] == "unbalanced-wheel"
    assert told.err == ""


def test_text_and_json_name_the_same_causes_in_the_same_order(cli: Cli) -> None:
    name = write("case.yaml", GOOD)

    text = cli("rank", name).out
    names = [c["name"] for c in json.loads(cli("rank", name, "--json").out)["causes"]]
    places = [text.index(f"{n + 1}. {cause}") for n, cause in enumerate(names)]
    assert len(names) >= 2
    assert places == sorted(places)


def test_a_case_from_standard_input_ranks_as_its_file_does(cli: Cli) -> None:
    from_file = json.loads(cli("rank", write("case.yaml", GOOD), "--json").out)
    piped = json.loads(cli("rank", "-", "--json", stdin=GOOD.encode()).out)

    assert piped["causes"] == from_file["causes"]


def test_answers_on_the_command_line_rank_as_those_of_a_file(cli: Cli) -> None:
    from_file = json.loads(cli("rank", write("case.yaml", GOOD), "--json").out)
    typed = json.loads(
        cli("rank", "-c", "chatter", "-a", "wheel-changed=yes", "-a", "bars-even=yes", "--json").out
    )

    assert typed["causes"] == from_file["causes"]


def test_a_typed_answer_adds_to_those_of_the_file(cli: Cli) -> None:
    name = write("case.yaml", GOOD)

    body = json.loads(cli("rank", name, "-a", "wheel-look=shiny", "--json").out)
    assert "wheel-face" in {f["id"] for f in body["findings"]}


def test_a_standing_stop_ends_with_three_and_comes_before_the_causes(cli: Cli) -> None:
    told = cli("rank", write("case.yaml", GOOD), "-a", "ring-test=dull")

    assert told.code == 3
    assert told.out.index("STOP: The wheel may be cracked") < told.out.index("Wheel out of balance")


def test_a_hold_ends_with_three_too(cli: Cli) -> None:
    told = cli("rank", "-c", "taper", "-a", "underside-look=crack", "--json")

    assert told.code == 3
    assert [s["kind"] for s in json.loads(told.out)["stops"]] == ["hold"]


def test_inches_and_millimetres_give_the_same_ranking(cli: Cli) -> None:
    args = ("rank", "-c", "chatter", "-a", "bar-spacing=6.35 mm", "--json")

    metric = json.loads(cli(*args).out)
    inch = json.loads(cli("--units", "inch", *args).out)
    after = json.loads(cli(*args, "--units", "inch").out)
    assert metric["causes"] == inch["causes"]
    assert metric["readings"][0]["value"].endswith(" mm")
    assert inch["readings"][0]["value"].endswith((" in", " thou"))
    assert after["readings"] == inch["readings"]


def test_the_facts_of_a_machine_card_count(cli: Cli) -> None:
    write(
        "shop/machines/north.yaml",
        "id: north\nname: north grinder\nfacts: {drive-kind: direct, spindle-speed: 2850 rpm}\n",
    )

    with_card = json.loads(cli("rank", "-c", "chatter", "--machine", "north", "--json").out)
    assert "lumpy-belt" not in {c["id"] for c in with_card["causes"]}
    assert "Belt with a lump or a set" in {r["name"] for r in with_card["ruled_out"]}


@pytest.mark.parametrize("outcome", OUTCOMES)
def test_every_outcome_of_a_fix_can_be_told(cli: Cli, outcome: str) -> None:
    tried = f"  - {{tried: unbalanced-wheel, outcome: {outcome}}}\n"

    told = cli("rank", write("case.yaml", GOOD + tried), "-a", "wheel-look=shiny", "--json")
    assert told.code == 0, told.err
    assert json.loads(told.out)["causes"]
