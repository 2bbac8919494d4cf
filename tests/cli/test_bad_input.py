"""Bad input: one clear message on standard error, exit 1, nothing on standard output, no trace."""

from __future__ import annotations

import errno
from pathlib import Path

import pytest

from tests.cli.running import GOOD, Cli, Ran, write

BOMB = "title: &a [x, x]\ncomplaint: &b [*a, *a]\nentries: [*b, *b]\n"


def refused(told: Ran, *parts: str) -> None:
    """One message that says each of the parts, and no trace."""
    assert told.code == 1
    assert told.out == ""
    assert told.err.count("diagnose: ") == 1
    assert "Traceback" not in told.err
    assert "fault of this program" not in told.err
    for part in parts:
        assert part in told.err


def test_a_missing_file_names_the_one_beside_it(cli: Cli) -> None:
    write("spacer.yaml", GOOD)

    refused(cli("rank", "spacr.yaml"), "there is no such file", "did you mean spacer.yaml?")


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("title: x\ncomplaint: [chatter\n", ["case.yaml:"]),
        ("title: x\ncomplaint:\n\t- chatter\n", ["case.yaml:3:1", "tab"]),
        ("title: x\ntitle: y\ncomplaint: [chatter]\n", ["case.yaml:2:1", "title"]),
        (GOOD.replace("bars-even", "bars-evn"), ["case.yaml:5:14", "did you mean bars-even?"]),
        (GOOD.replace("value: yes}", "value: purple}", 1), ["purple", "wheel-changed"]),
        (GOOD + "  - {answer: bar-spacing, value: 900 m}\n", ["case.yaml:6:", "too much"]),
        (GOOD + "  - {answer: bar-spacing, value: 6 kg}\n", ["case.yaml:6:", "kg"]),
        (GOOD + "  - {answer: bar-spacing, value: 6}\n", ["case.yaml:6:", "6 mm"]),
        (GOOD.replace("even-bars-across-travel", "chater"), ["case.yaml:2:", "chater"]),
        (b"title: \xff\xfe\n", ["not UTF-8"]),
        (BOMB, ["case.yaml:"]),
        ("", ["empty"]),
        ("[" * 400, ["case.yaml"]),
        (GOOD + "  - {tried: unbalanced-wheel, outcome: exploded}\n", ["outcome", "exploded"]),
        (GOOD + "  - {correct: 9, value: yes}\n", ["no answer number 9"]),
    ],
    ids=[
        "not YAML",
        "tab",
        "duplicate key",
        "unknown check",
        "unknown answer",
        "impossible value",
        "wrong unit",
        "no unit",
        "unknown complaint",
        "not UTF-8",
        "alias bomb",
        "empty",
        "deep nesting",
        "unknown outcome",
        "correction of nothing",
    ],
)
def test_a_bad_case_file_is_named_with_its_line(
    cli: Cli, text: str | bytes, parts: list[str]
) -> None:
    refused(cli("rank", write("case.yaml", text)), *parts)


def test_every_fault_of_a_file_is_told_at_once(cli: Cli) -> None:
    text = GOOD.replace("bars-even", "bars-evn").replace("wheel-changed", "wheel-chnged")

    told = cli("rank", write("case.yaml", text))
    refused(told, "case.yaml:4:", "case.yaml:5:")


def test_a_file_of_fifty_megabytes_is_not_read(cli: Cli) -> None:
    with open("big.yaml", "wb") as file:
        file.truncate(50 << 20)

    refused(cli("rank", "big.yaml"), "50.0 MiB")


def test_too_much_on_standard_input_is_not_read(cli: Cli) -> None:
    refused(cli("rank", "-", stdin=b"#" * (2 << 20)), "standard input", "1 MiB")


def test_standard_input_that_is_not_utf8_is_named(cli: Cli) -> None:
    refused(cli("rank", "-", stdin=b"title: \xff\n"), "standard input:1:8", "not UTF-8")


def test_a_folder_given_as_a_case_is_named(cli: Cli) -> None:
    Path("cases").mkdir()

    refused(cli("rank", "cases"), "this is a folder, not a file")


def test_a_typed_answer_that_cannot_be_names_the_nearest(cli: Cli) -> None:
    refused(cli("rank", "-c", "chatter", "-a", "bars-evn=yes"), "did you mean bars-even?")
    refused(cli("rank", "-c", "chatter", "-a", "bars-even=yess"), "did you mean yes?")
    refused(cli("rank", "-c", "chatter", "-a", "bars-even"), "CHECK=VALUE")
    refused(cli("rank", "-c", "chatter", "-a", "bar-spacing=6"), "6 mm")
    refused(cli("rank", "-c", "wobble"), "no complaint is known as 'wobble'")


def test_a_machine_the_shop_does_not_have_is_named(cli: Cli) -> None:
    write("shop/machines/north.yaml", "id: north\nname: north grinder\n")

    refused(cli("rank", "-c", "chatter", "--machine", "nort"), "did you mean north?")


def test_a_page_cannot_go_where_nothing_may_be_written(
    cli: Cli, monkeypatch: pytest.MonkeyPatch
) -> None:
    name = write("case.yaml", GOOD)

    def locked(*_: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr("diagnose.book.writing._write", locked)
    refused(cli("report", name, "--out", "locked/page.html"), "locked/page.html", "denied")
    assert Path(name).read_text() == GOOD


def test_a_page_cannot_replace_a_folder(cli: Cli) -> None:
    Path("page.html").mkdir()

    refused(cli("report", write("case.yaml", GOOD), "--out", "page.html"), "page.html", "folder")


def test_a_page_cannot_go_below_a_file(cli: Cli) -> None:
    name = write("case.yaml", GOOD)

    refused(cli("report", name, "--out", "case.yaml/page.html"), "case.yaml/page.html")
    assert Path(name).read_text() == GOOD


def test_a_faulty_card_of_the_shop_is_named_and_the_rest_goes_on(cli: Cli) -> None:
    write("shop/machines/north.yaml", "id: north\nname: north grinder\nfacts: {drive-knd: belt}\n")

    told = cli("rank", write("case.yaml", GOOD))
    assert told.code == 0
    assert "did you mean drive-kind?" in told.err
    assert "Wheel out of balance" in told.out


def test_faulty_knowledge_of_the_shop_is_named_and_the_shipped_is_used(cli: Cli) -> None:
    write("shop/knowledge/causes/own/half-done.yaml", "id: half-done\nname: Half done\n")

    told = cli("rank", write("case.yaml", GOOD))
    assert told.code == 0
    assert "half-done.yaml" in told.err
    assert "Wheel out of balance" in told.out
