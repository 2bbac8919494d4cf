"""Files of numbers: what is read, and the one clear fault when they cannot be used."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.physics import readings
from diagnose.physics.readings import BadReadings, read_table


def _file(folder: Path, text: str) -> Path:
    path = folder / "grid.csv"
    path.write_bytes(text.encode())
    return path


@pytest.mark.parametrize(
    "text",
    [
        "1.5,2\n3,4\n",
        "1.5;2\n3;4\n",
        "1,5;2\n3;4\n",
        "1.5\t2\n3\t4\n",
        "1.5 2\n3 4\n",
        "1,5 2\n3 4\n",
        "1.5, 2\n3, 4\n",
        "left,right\n1.5,2\n3,4\n",
        "# unit: um\n\n1.5,2\r\n3,4\r\n",
        "\ufeff1.5,2\n3,4",
        '"1.5","2"\n"3","4"\n',
    ],
)
def test_the_ways_a_table_may_be_written(tmp_path: Path, text: str) -> None:
    assert read_table(_file(tmp_path, text)).rows == ((1.5, 2.0), (3.0, 4.0))


def test_notes_headings_and_gaps_are_kept(tmp_path: Path) -> None:
    table = read_table(_file(tmp_path, "# Unit: um\n# by hand\nleft,middle,right\n1,,3\n-,x,6\n"))

    assert table.notes == {"unit": "um"}
    assert table.headings == ("left", "middle", "right")
    assert table.lines == (4, 5)
    assert math.isnan(table.rows[0][1])
    assert [math.isnan(v) for v in table.rows[1]] == [True, True, False]


@pytest.mark.parametrize(
    ("text", "line", "said"),
    [
        ("1,2\n3,four\n", 2, "'four' is not a number"),
        ("1,2\n3,4,5\n", 2, "This row has 3 readings, the first has 2"),
        ("1,2\n3\n", 2, "This row has 1 readings"),
        ("1,2\n3,1_000\n", 2, "'1_000' is not a number"),
        ("1,2\n3,inf\n", 2, "'inf' is not a number"),
        ("1,25\n2,50\n", 1, "decimal comma or a separator"),
        ("1.0\n2\0.0\n", 2, "not a text file"),
    ],
)
def test_a_fault_names_the_line_and_the_mend(
    tmp_path: Path, text: str, line: int, said: str
) -> None:
    path = _file(tmp_path, text)
    with pytest.raises(BadReadings) as fault:
        read_table(path)

    assert fault.value.line == line
    assert str(fault.value).startswith(f"{path}:{line}: ")
    assert said in str(fault.value)
    assert fault.value.mend


@pytest.mark.parametrize("text", ["", "\n\n", "# only a note\n", "only,words\n", "-,-\n"])
def test_a_file_without_numbers_is_refused(tmp_path: Path, text: str) -> None:
    with pytest.raises(BadReadings, match="no number"):
        read_table(_file(tmp_path, text))


def test_a_missing_file_and_a_folder_are_refused(tmp_path: Path) -> None:
    with pytest.raises(BadReadings, match="no such file"):
        read_table(tmp_path / "none.csv")
    with pytest.raises(BadReadings, match="cannot be read"):
        read_table(tmp_path)


def test_text_that_is_not_utf8_names_the_line(tmp_path: Path) -> None:
    path = tmp_path / "old.csv"
    path.write_bytes("1,2\nµ,4\n".encode("latin-1"))
    with pytest.raises(BadReadings, match="not UTF-8") as fault:
        read_table(path)

    assert fault.value.line == 2


def test_a_huge_file_is_refused_before_it_is_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(readings, "LARGEST_FILE", 10)
    with pytest.raises(BadReadings, match="MB"):
        read_table(_file(tmp_path, "1,2\n3,4\n5,6\n"))


def test_the_limit_is_fifty_megabytes() -> None:
    assert readings.LARGEST_FILE == 50_000_000


@settings(max_examples=150, deadline=None)
@given(st.binary(max_size=200))
def test_any_bytes_give_numbers_or_one_clear_fault(
    tmp_path_factory: pytest.TempPathFactory, raw: bytes
) -> None:
    path = tmp_path_factory.mktemp("any") / "a.csv"
    path.write_bytes(raw)
    try:
        table = read_table(path)
    except BadReadings as fault:
        assert str(fault).startswith(str(path))  # noqa: PT017 - either way may end
    else:
        assert len({len(row) for row in table.rows}) == 1
