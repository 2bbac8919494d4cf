"""A file that is not right is named with its line and mended in plain words, whatever is wrong."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from diagnose.book import yaml_loaders
from diagnose.book.nodes import Items, Page, Refused, Table, Text
from diagnose.book.problems import Problem
from diagnose.book.yaml_nodes import compose, read_tree


def faults(text: str) -> list[Problem]:
    try:
        return compose(Page("shop.yaml", text))[1]
    except Refused as refused:
        return list(refused.problems)


def only(text: str) -> Problem:
    found = faults(text)
    assert len(found) == 1
    return found[0]


@pytest.mark.parametrize("written", ["no", "1:20", "010", "3.10", "1e3", "off", "~", "2024-01-02"])
def test_every_value_stays_the_text_that_was_written(written: str) -> None:
    root, problems = compose(Page("a.yaml", f"dilution: {written}"))
    assert not problems
    assert isinstance(root, Table)
    value = root.get("dilution")
    assert isinstance(value, Text)
    assert value.value == written


def test_every_part_knows_its_line_and_column() -> None:
    root, _ = compose(Page("a.yaml", "steps:\n  - wipe it\n  - {do: dress, why: dull}\n"))
    assert isinstance(root, Table)
    steps = root.get("steps")
    assert isinstance(steps, Items)
    assert (steps.items[0].line, steps.items[0].column) == (2, 5)
    second = steps.items[1]
    assert isinstance(second, Table)
    key, value = second.rows["why"]
    assert (key.line, key.column, value.column) == (3, 17, 22)


@pytest.mark.parametrize(
    ("text", "line", "column", "says"),
    [
        ("title: x\n\tnote: y", 2, 1, "a tab at the start of the line"),
        ("a: 1\nb: 2\na: 3", 3, 1, "here and on line 1"),
        ("a: &all [1]\nb: *all", 1, 4, "names for parts of a page are not used"),
        ("a: *all", 1, 4, "names for parts of a page are not used"),
        ("a: !!python/name:os.system x", 1, 4, "starts with '!'"),
        ("title: grind: burn", 1, 13, "a ':' where none can be"),
        ("a: 'it is open", 1, 4, "a quote is opened here and never closed"),
        ("a: [1, 2\nb: 3", 1, 4, "a list opened with '[' is not closed"),
        ("a: {b: 2\nc: 3", 1, 4, "a group opened with '{' is not closed"),
        ("a: @b", 1, 4, "cannot start with this sign"),
        ("a:\n  - b\n - c", 3, 2, "not level"),
        ("a:\n - b\n  - c", 3, 3, "read as text of the line above"),
        ("a: 1\n---\nb: 2", 2, 1, "a second page starts here"),
        ("a: b\x07", 1, 5, "a character that no text has"),
        ("a: - b", 1, 4, "a list cannot start here"),
        ('a: "c:\\q"', 1, 7, "starts a code"),
        ("just a name\nb: c", 1, 1, "no ':' after this name"),
    ],
)
def test_each_slip_has_one_message_at_its_place(
    text: str, line: int, column: int, says: str
) -> None:
    problem = only(text)
    assert says in problem.what
    assert (problem.line, problem.column) == (line, column)
    assert problem.mend


def test_the_caret_stands_under_the_fault() -> None:
    shown = only("title: x\nnote: @y").render().splitlines()
    assert shown[0] == "shop.yaml:2:7: a text cannot start with this sign"
    assert shown[1].index("@") == shown[2].index("^")


def test_a_long_line_is_cut_around_the_caret() -> None:
    text = "{" + ", ".join(f"k{n}: v" for n in range(60)) + ", k3: again}"
    rendered = only(text).render().splitlines()
    assert len(rendered[1]) < 120
    assert rendered[1][rendered[2].index("^") :].startswith("k3: again")


@pytest.mark.parametrize(
    "text", ["[" * 13 + "]" * 13, "[" * 5000, "- " * 5000, "{b: " * 13 + "c" + "}" * 13]
)
def test_nesting_beyond_any_field_is_refused(text: str) -> None:
    problem = only(text)
    assert "more than 12 deep" in problem.what


def test_twelve_deep_is_allowed() -> None:
    assert faults("[" * 12 + "]" * 12) == []


def test_an_alias_bomb_is_refused_before_it_goes_off() -> None:
    rows = ["a: &a [x, x, x, x, x, x, x, x, x]"]
    rows += [f"{n}: &{n} [{', '.join(['*' + m] * 9)}]" for m, n in pairwise("abcdefghi")]
    assert "names for parts of a page" in only("\n".join(rows)).what


def test_an_ampersand_inside_a_text_is_no_anchor() -> None:
    assert faults("note: nuts & bolts * 3, well done!") == []


def test_the_pure_parser_says_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    texts = ["a: 1\na: 2", "a: 'x", "a: &x b", "a: b: c", "a:\n - b\n  - c", "[" * 13 + "]" * 13]
    fast = [[(p.line, p.column, p.what) for p in faults(t)] for t in texts]
    monkeypatch.setattr(yaml_loaders, "TextLoader", yaml_loaders.PureText)
    slow = [[(p.line, p.column, p.what) for p in faults(t)] for t in texts]
    assert slow == fast


def test_too_deep_for_the_pure_parser_is_a_message_as_well(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(yaml_loaders, "TextLoader", yaml_loaders.PureText)
    assert "more than 12 deep" in only("[" * 3000).what


@given(st.text(max_size=60))
def test_any_text_gives_a_tree_or_messages_and_never_an_error(text: str) -> None:
    for problem in faults(text):
        assert problem.what
        assert problem.render().startswith("shop.yaml")


@given(st.text(alphabet="ab:-[]{}'\"&*!|> \n\t#,?%@", max_size=40))
def test_any_jumble_of_signs_gives_a_tree_or_messages(text: str) -> None:
    assert all(problem.what and problem.line >= 1 for problem in faults(text))


@given(st.dictionaries(st.text("abc -", min_size=1), st.text(max_size=30), max_size=4))
def test_what_yaml_writes_is_read_back_as_text(rows: dict[str, str]) -> None:
    root, problems = compose(Page("a.yaml", yaml.safe_dump(rows, allow_unicode=False)))
    assert isinstance(root, Table)
    assert not problems
    assert {k: v.value for k, (_, v) in root.rows.items() if isinstance(v, Text)} == rows


def test_a_missing_file_is_named_with_the_nearest(tmp_path: Path) -> None:
    (tmp_path / "spacer.yaml").write_text("title: x")
    _, (problem,) = read_tree(tmp_path / "spacr.yaml")
    assert problem.what == "there is no such file"
    assert "spacer.yaml" in problem.mend


def test_a_folder_is_no_file(tmp_path: Path) -> None:
    _, (problem,) = read_tree(tmp_path)
    assert problem.what == "this is a folder, not a file"


def test_a_device_is_no_file() -> None:
    _, (problem,) = read_tree(Path("/dev/null"))
    assert problem.what == "this is not a plain file"


def test_a_file_that_is_not_utf8_is_named_with_its_line(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_bytes("title: ok\npart: 20 µm\n".encode("latin-1"))
    _, (problem,) = read_tree(path)
    assert "not UTF-8" in problem.what
    assert (problem.line, problem.column) == (2, 10)


def test_a_huge_file_is_refused_unread(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    with open(path, "wb") as file:
        file.truncate(50 * 2**20)
    _, (problem,) = read_tree(path)
    assert "50.0 MiB" in problem.what


def test_a_file_saved_by_windows_reads_the_same(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_bytes("﻿title: x\r\nnote: y\r\n".encode())
    root, problems = read_tree(path)
    assert isinstance(root, Table)
    assert not problems
    assert list(root.rows) == ["title", "note"]
