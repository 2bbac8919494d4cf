"""From an empty shop folder to a closed case and a cause of one's own, by the commands alone."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from tests.cli.running import GOOD, Cli, write
from tests.cli.terminal import Terminal
from tests.shop.test_packs import GOOD as PACK
from tests.shop.test_packs import zipped


def begun(cli: Cli) -> None:
    assert cli("shop", "new", "Quarry Lane").code == 0
    assert (
        cli("shop", "machine", "north", "--name", "by the wall", "-f", "drive-kind=belt").code == 0
    )
    assert cli("shop", "wheel", "white", "--marking", "A 46 H 8 V").code == 0


BARS = """\
title: plate, ripples
complaint: [even-bars-across-travel]
machine: north
wheel: white
now: {idle-shake: 1.1 mm/s}
entries:
  - {answer: bars-even, value: yes}
  - {answer: bar-spacing, value: 9 mm}
"""


def test_a_shop_is_begun_once(cli: Cli) -> None:
    begun(cli)
    again = cli("shop", "new", "Other")
    assert again.code == 1
    assert "there is a shop here already" in again.err
    assert Path("shop/knowledge/schema/cause.json").is_file()


def test_before_there_is_a_shop_it_says_how_to_begin_one(cli: Cli) -> None:
    shown = cli("shop")
    assert (shown.code, "diagnose shop new" in shown.out) == (0, True)


def test_the_shop_is_shown_with_its_cards(cli: Cli) -> None:
    begun(cli)
    shown = cli("shop").out
    assert "Quarry Lane" in shown
    assert "north: by the wall" in shown
    assert "white: white (A 46 H 8 V)" in shown


def test_a_card_is_changed_in_place_until_a_person_edits_it(cli: Cli) -> None:
    begun(cli)
    cli("shop", "wheel", "white", "--mounted", "2026-03-01", "--last-job", "punch plates")
    text = Path("shop/wheels/white.yaml").read_text()
    assert "marking: A 46 H 8 V" in text
    assert "last_job: punch plates" in text
    write("shop/wheels/white.yaml", "# mine\n" + text)
    refused = cli("shop", "wheel", "white", "--mounted", "2026-04-01")
    assert refused.code == 1
    assert "was written by hand and stays as it is" in refused.err
    assert Path("shop/wheels/white.yaml").read_text() == "# mine\n" + text


@pytest.mark.parametrize(
    ("args", "says"),
    [
        (("machine", "North Wall"), "'North Wall' cannot be an id"),
        (("machine", "--name", "x"), "the machine has no id"),
        (("machine", "n", "-f", "drive-knd=belt"), "did you mean drive-kind?"),
        (("machine", "n", "-f", "drive-kind=belts"), "did you mean belt?"),
        (("good", "nrth", "-f", "bar-spacing=6 mm"), "did you mean north?"),
        (("good", "north"), "nothing is said of how it grinds"),
        (("good", "north", "-r", "shake"), "'shake' is no reading"),
        (("good", "north", "-r", "shake=1", "--date", "12.3."), "'12.3.' is no day"),
    ],
)
def test_bad_input_is_one_message_and_changes_nothing(
    cli: Cli, args: tuple[str, ...], says: str
) -> None:
    begun(cli)
    before = sorted(Path("shop").rglob("*"))
    ran = cli("shop", *args)
    assert ran.code == 1
    assert says in ran.err
    assert sorted(Path("shop").rglob("*")) == before


def test_what_differs_from_good_and_an_earlier_case_are_shown_everywhere(cli: Cli) -> None:
    begun(cli)
    cli("shop", "good", "north", "-f", "bar-spacing=6 mm", "-r", "idle-shake=0.4 mm/s",
        "--date", "2026-01-12")  # fmt: skip
    write("shop/cases/a.yaml", BARS)
    assert cli("close", "a", "--cured-by", "lumpy-belt", "--minutes", "40").code == 0
    write("now.yaml", BARS.replace("plate, ripples", "today's plate"))
    text = " ".join(cli("rank", "now.yaml").out.split())
    body = json.loads(cli("rank", "--json", "now.yaml").out)
    cli("report", "now.yaml", "--out", "page.html")
    page = " ".join(Path("page.html").read_text(encoding="utf-8").split())
    said = "the same fault on this machine was: Belt with a lump or a set."
    assert said in text
    assert said in page
    assert body["earlier"][0]["said"].endswith(said)
    assert [(d["name"], d["times"]) for d in body["differs_from_good"]] == [
        ("spacing of the bars", "1.5 times"),
        ("idle shake", "2.8 times"),
    ]
    for number in ("9 mm", "6 mm", "1.1 mm/s", "0.4 mm/s", "2.8 times"):
        assert number in text
        assert number in page


def test_a_fault_in_a_file_of_the_shop_is_named_and_the_rest_goes_on(cli: Cli) -> None:
    begun(cli)
    write("shop/machines/bad.yaml", "id: bad\nnme: x\n")
    write("shop/knowledge/causes/drive/bad.yaml", "id: bad\n  x: [\n")
    write("case.yaml", GOOD)
    ran = cli("rank", "case.yaml")
    assert ran.code == 0
    assert "shop/machines/bad.yaml:2:1: a machine card has no field 'nme'" in ran.err
    assert "shop/knowledge/causes/drive/bad.yaml:" in ran.err
    assert "Wheel out of balance" in ran.out
    assert cli("knowledge", "test").code == 1


def test_a_case_is_closed_listed_and_searched(cli: Cli) -> None:
    begun(cli)
    write("shop/cases/a.yaml", BARS)
    assert "open" in cli("cases").out
    closed = cli(
        "close", "a", "--cured-by", "lumpy-belt", "--done", "new belt", "--date", "2026-03-09"
    )
    assert closed.out.strip().endswith("shop/cases/closed/a.yaml")
    fitting = (
        *(["belt"], ["--cause", "lumpy-belt"], ["--symptom", "chatter", "--since", "2026-03"]),
        *(["--machine", "north", "--until", "2026-03"], ["--wheel", "white"]),
    )
    for words in fitting:
        assert "plate, ripples" in cli("cases", *words).out, words
    for words in (["hum"], ["--cause", "shaking-floor"], ["--since", "2026-04"], ["--open"]):
        assert cli("cases", *words).out == "", words
    body = json.loads(cli("cases", "--json").out)
    assert body["cases"][0]["closed"]["cured_by"] == ["lumpy-belt"]
    assert cli("cases", "--cause", "lumpi-belt").code == 1
    assert cli("cases", "--since", "March").code == 1


@pytest.mark.parametrize(
    ("args", "code", "says"),
    [
        (("a",), 2, "say what cured it"),
        (("a", "--cured-by", "lumpi-belt"), 1, "did you mean lumpy-belt?"),
        (("a", "--cured-by", "lumpy-belt", "--not-cured"), 1, "it was cured, and was not"),
        (("a", "--not-cured", "--date", "March"), 1, "'March' is no day"),
        (("a", "--not-cured", "--picture", "no.jpg"), 1, "there is no picture no.jpg"),
        (("b", "--not-cured"), 1, "there is no such file"),
    ],
)
def test_a_bad_ending_is_one_message_and_the_case_stays_open(
    cli: Cli, args: tuple[str, ...], code: int, says: str
) -> None:
    write("shop/cases/a.yaml", BARS.replace("machine: north\nwheel: white\n", ""))
    before = sorted(Path("shop").rglob("*"))
    ran = cli("close", *args)
    assert (ran.code, says in ran.err) == (code, True)
    assert sorted(Path("shop").rglob("*")) == before


def test_something_new_becomes_a_cause_with_its_example(cli: Cli) -> None:
    begun(cli)
    write("shop/cases/a.yaml", BARS)
    told = cli("close", "a", "--something-new", "the felt gave way", "--done", "new felt",
               "--proved", "no bars on the block")  # fmt: skip
    assert "diagnose knowledge new cause --from-case a" in told.err
    sign = ("--own-sign", "felt is crushed", "--own-question", "Is it crushed?")
    road = ("--through", "waves-cut-in-the-work")
    made = cli("knowledge", "new", "cause", "--from-case", "a", *sign, *road)
    assert made.code == 0, made.err
    assert "2 of 2 examples come out as written." in made.err
    assert "cured_by: [felt-gave-way] in place of something_new:" in made.err
    assert Path("shop/knowledge/causes/machine/felt-gave-way.yaml").is_file()
    ranked = cli("rank", "-c", "chatter", "-a", "felt-crushed-look=yes").out
    assert "the felt gave way" in ranked
    assert "[your shop, draft]" in " ".join(ranked.split())


TOLD = (
    *("--summary", "The felt under the chuck gives way and lets it rock at every turn."),
    *("--proof", "The next block shows no bars under a lamp."),
    *("--step", "Lift the chuck and lay new felt under it."),
    *("--through", "waves-cut-in-the-work", "--fix", "Lay new felt under the chuck."),
)
OWN = ("--own-sign", "felt is crushed", "--own-question", "Is the felt under the chuck crushed?")


def closed_as_new(cli: Cli) -> None:
    begun(cli)
    write("shop/cases/a.yaml", BARS)
    cli("close", "a", "--something-new", "the felt gave way", "--done", "new felt")


@pytest.mark.parametrize("own", [(), OWN], ids=["no-own-sign", "own-sign"])
def test_what_a_new_cause_lacks_is_named_by_its_line_as_the_test_names_it(
    cli: Cli, own: tuple[str, ...]
) -> None:
    closed_as_new(cli)
    made = cli("knowledge", "new", "cause", "--from-case", "a", *TOLD, *own)
    assert made.code == 0, made.err
    tested = cli("knowledge", "test")
    mine = [line for line in tested.out.splitlines() if line.startswith("shop/")]
    assert not [line for line in mine if "example-gives-nothing" in line]
    for line in mine:
        place = re.match(r"(shop/[^:]+:\d+):", line)
        assert place, f"no line: {line}"
        if "lint:" in line:
            assert f"{place[1]}:" in made.err, line


def test_an_example_without_an_answer_is_to_fill_with_its_line(cli: Cli) -> None:
    begun(cli)
    made = cli("knowledge", "new", "cause", "--name", "felt gave way", "--symptom", "burnt-patches")
    found = re.search(r"to fill  (\S+):(\d+): answers", made.err)
    assert found, made.err
    line = Path(found[1]).read_text().splitlines()[int(found[2]) - 1]
    assert "answers: {}" in line
    tested = cli("knowledge", "test").out
    assert f"felt-gave-way.yaml:{found[2]}:" in tested


@pytest.mark.parametrize(
    ("args", "code", "says"),
    [
        (("cause",), 2, "--name, --symptom"),
        (("cause", "--name", "x", "--symptom", "bars"), 1, "there is no symptom 'bars'"),
        (("cause", "--name", "x", "--symptom", "burnt-patches", "--room", "attic"), 1, "attic"),
        (
            ("cause", "--name", "x", "--symptom", "burnt-patches", "--how-common", "dayly"),
            1,
            "dayly",
        ),
        (("cause", "--from-case", "a"), 1, "is not closed yet"),
        (("check", "--name", "x", "--place", "attic"), 1, "there is no place 'attic'"),
        (("rule", "--name", "x", "--when", "table-speed", "--note", "y"), 1, "is no condition"),
        (("rule", "--name", "x", "--when", "table-sped=1 m/s", "--note", "y"), 1, "table-speed"),
        (("rule", "--name", "x", "--when", "drive-kind=belt"), 2, "one thing follows"),
        (("stop", "--name", "x"), 2, "--danger, --do-first, --cleared-when"),
        (("symptom", "--name", "x", "--first-question", "y"), 1, "there is no check 'y'"),
    ],
)
def test_a_new_entry_that_cannot_be_is_one_message_and_no_file(
    cli: Cli, args: tuple[str, ...], code: int, says: str
) -> None:
    write("shop/cases/a.yaml", BARS.replace("machine: north\nwheel: white\n", ""))
    ran = cli("knowledge", "new", *args)
    assert (ran.code, says in ran.err) == (code, True), ran.err
    assert not Path("shop/knowledge").exists()


def test_a_pack_is_made_and_taken(cli: Cli, tmp_path: Path) -> None:
    begun(cli)
    empty = cli("knowledge", "pack", "--name", "belts")
    assert (empty.code, "there is nothing to give" in empty.err) == (1, True)
    zipped(tmp_path / "p.zip", PACK)
    assert cli("knowledge", "take", "p.zip").code == 0
    again = cli("knowledge", "take", "p.zip")
    assert (again.code, "is taken already" in again.err) == (1, True)
    assert "slack-belt (pack belt-lessons, draft)" in cli("shop").out
    assert cli("knowledge", "take", "nowhere.zip").code == 1


def test_at_a_terminal_a_machine_is_added_by_plain_questions(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, "shop", "machine")
    for line in ("by the north wall", "permanent 150 x 450", "", "", ""):
        terminal.type(line)
    terminal.see("drive")
    terminal.type("zzz")
    terminal.see("not one of the answers")
    for line in ("1", "2850 rpm", ""):
        terminal.type(line)
    code, _ = terminal.leave()
    assert code == 0
    text = (tmp_path / "shop/machines/north-wall.yaml").read_text()
    assert "name: by the north wall" in text
    assert "chuck: permanent 150 x 450" in text
    assert "drive-kind: belt" in text
    assert "spindle-speed: 2850 rpm" in text


def test_at_a_terminal_a_case_is_closed_by_plain_questions(tmp_path: Path) -> None:
    path = tmp_path / "shop/cases/a.yaml"
    path.parent.mkdir(parents=True)
    path.write_text(BARS.replace("machine: north\nwheel: white\n", ""))
    terminal = Terminal(tmp_path, "close")
    terminal.type("1")
    terminal.see("What cured it?")
    for line in ("lumpy-belt", "new belt", "forty", "40", "block clean", "", ""):
        terminal.type(line)
    code, _ = terminal.leave()
    assert code == 0
    text = (tmp_path / "shop/cases/closed/a.yaml").read_text()
    assert "cured_by: [lumpy-belt]" in text
    assert "minutes: 40" in text


@pytest.mark.parametrize("end", ["q", "\x03"])
def test_stopping_in_the_middle_changes_nothing(tmp_path: Path, end: str) -> None:
    path = tmp_path / "shop/cases/a.yaml"
    path.parent.mkdir(parents=True)
    path.write_text(BARS.replace("machine: north\nwheel: white\n", ""))
    terminal = Terminal(tmp_path, "close", "a")
    terminal.type("lumpy-belt")
    terminal.type("new belt")
    if end == "q":
        terminal.type("q")
    else:
        terminal.press(end.encode())
    code, _ = terminal.leave()
    assert code == (0 if end == "q" else 130)
    assert not (tmp_path / "shop/cases/closed").exists()


def test_at_a_terminal_a_closed_case_becomes_a_cause(tmp_path: Path) -> None:
    path = tmp_path / "shop/cases/closed/a.yaml"
    path.parent.mkdir(parents=True)
    ending = (
        "closed: {date: 2026-03-09, something_new: felt gave way, done: new felt, minutes: 40}\n"
    )
    path.write_text(BARS.replace("machine: north\nwheel: white\n", "") + ending)
    terminal = Terminal(tmp_path, "knowledge", "new", "cause", "--from-case", "a")
    cause = ("", "holding", "The chuck rocks on it.", "1", "rare", "")
    fix = ("Take the chuck off.", "", "power-locked-out", "no bars")
    lines = (*cause, *fix, "felt is crushed", "Is it crushed?", "Lift it.")
    for line in lines:
        terminal.type(line)
    code, screen = terminal.leave()
    assert code == 0, screen
    assert "2 of 2 examples come out as written." in screen
    text = (tmp_path / "shop/knowledge/causes/holding/felt-gave-way.yaml").read_text()
    assert "cautions: [lock-out-first]" in text
    assert "to fill" not in text
    assert (tmp_path / "shop/knowledge/schema/cause.json").is_file()


@pytest.mark.parametrize("kind", ["check", "rule", "stop", "symptom"])
def test_at_a_terminal_every_kind_is_asked_for_in_plain_words(tmp_path: Path, kind: str) -> None:
    lines = {
        "check": ("felt is crushed", "Is it crushed?", "Lift it.", "2", "machine", "stopped"),
        "rule": (
            "slow table",
            "table-sped",
            "table-speed",
            "<",
            "3 m/min",
            "note",
            "Too slow.",
            "x",
        ),
        "stop": ("pin missing", "stop", "It swings.", "Spindle off.", "", "the pin is in", "", ""),
        "symptom": ("rainbow edge", "", "Colours.", "rainbow", "", "1", "Put it aside."),
    }[kind]
    terminal = Terminal(tmp_path, "knowledge", "new", kind)
    for line in lines:
        terminal.type(line)
    code, screen = terminal.leave()
    assert code == 0, screen
    assert "Next: open it in an editor" in screen
