"""What two versions of the knowledge say otherwise, each at its line."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from diagnose.audit.aligning import align
from diagnose.audit.comparing import Comparison
from diagnose.audit.comparison_text import SHOWN, comparison_text, shortened
from diagnose.audit.otherwise import Said, said_otherwise
from diagnose.cli.commands import diagnose
from tests.small import SMALL, change, copy_small

CAUSE = "causes/wheel/unbalanced-wheel.yaml"


def line_of(folder: Path, file: str, text: str) -> int:
    """The only line of a file that holds a text."""
    lines = (folder / file).read_text(encoding="utf-8").splitlines()
    (found,) = [n for n, line in enumerate(lines, 1) if text in line]
    return found


def said(folder: Path) -> list[Said]:
    return list(said_otherwise(SMALL, folder))


def test_a_folder_says_the_same_as_itself(tmp_path: Path) -> None:
    assert said(copy_small(tmp_path)) == []


def test_layout_comments_and_ways_to_write_a_number_say_nothing(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, CAUSE, "status: tried\n", "# looked over\nstatus:   'tried'\n")
    change(folder, CAUSE, "first_time: 60", "first_time: 60.0")
    change(
        folder,
        CAUSE,
        "needs: [wheel-stopped, power-locked-out]",
        "needs:\n    - power-locked-out\n    - wheel-stopped",
    )
    assert said(folder) == []


def test_a_field_is_named_with_before_and_after_at_its_new_line(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, CAUSE, "how_common: common", "# we saw it once\nhow_common: rare")
    (one,) = said(folder)
    assert (one.what, one.kind, one.entry) == ("changed", "cause", "unbalanced-wheel")
    assert (one.field, one.before, one.after) == ("how common", "common", "rare")
    assert (one.version, one.file) == ("new", f"knowledge/{CAUSE}")
    assert one.line == line_of(folder, CAUSE, "how_common: rare")


def test_a_part_of_a_list_is_known_by_what_it_names(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    old = "finding: bars-evenly-spaced, how_often: almost always"
    change(folder, CAUSE, old, "finding: bars-evenly-spaced, how_often: usually")
    (one,) = said(folder)
    assert one.field == "shows bars-evenly-spaced, how often"
    assert one.line == line_of(folder, CAUSE, "finding: bars-evenly-spaced")


def test_what_is_gone_has_the_line_of_the_old_version(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    lines = (folder / CAUSE).read_text(encoding="utf-8").splitlines(keepends=True)
    (gone,) = [row for row in lines if "finding: bar-rhythm" in row]
    change(folder, CAUSE, gone, "")
    (one,) = said(folder)
    assert (one.what, one.version, one.field) == ("gone", "old", "shows")
    assert one.line == line_of(SMALL, CAUSE, "finding: bar-rhythm")
    assert "bar-rhythm" in one.before
    assert one.file == f"{SMALL.name}/{CAUSE}"


def test_a_whole_entry_that_came_or_went_is_one_line_and_stands_first(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, CAUSE, "how_common: common", "how_common: rare")
    with (folder / "cautions.yaml").open("a", encoding="utf-8") as file:
        file.write("- id: eyes\n  say: Wear glasses.\n  source: common-practice\n")
    first, second = said(folder)
    assert (first.what, first.kind, first.entry, first.field) == ("new", "caution", "eyes", "")
    assert first.line == line_of(folder, "cautions.yaml", "id: eyes")
    assert first.after == "Wear glasses."
    assert second.entry == "unbalanced-wheel"
    (back,) = [s for s in said_otherwise(folder, SMALL) if not s.field]
    assert (back.what, back.version, back.entry) == ("gone", "old", "eyes")


def test_an_entry_with_another_id_is_one_change(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, "rules/bars.yaml", "- id: bars-once-a-turn", "- id: one-bar-a-turn")
    (one,) = said(folder)
    assert (one.field, one.before, one.after) == ("id", "bars-once-a-turn", "one-bar-a-turn")


def test_an_entry_that_lies_in_another_file_says_the_same(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    (folder / "rules" / "bars.yaml").rename(folder / "rules" / "rhythm.yaml")
    assert said(folder) == []


def test_conditions_and_answers_are_looked_into(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(
        folder,
        "rules/bars.yaml",
        "{within: 10 %, of: spindle-speed}",
        "{within: 5 %, of: spindle-speed}",
    )
    change(folder, "rules/bars.yaml", "wheel-face: [shiny, loaded]", "wheel-face: [loaded, shiny]")
    change(folder, CAUSE, "wheel-changed: yes, bars-even: yes", "wheel-changed: yes")
    one, two = sorted(said(folder), key=lambda s: s.kind)
    assert (one.what, one.before) == ("gone", "yes")
    assert one.field.endswith("answers, bars-even")
    assert (two.field, two.before, two.after) == ("when, bar-frequency, within", "10 %", "5 %")


def test_the_scale_of_words_is_compared_too(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, "words.yaml", "think_so: 0.8", "think_so: 0.7")
    (one,) = said(folder)
    assert (one.kind, one.field, one.before, one.after) == ("words", "think so", "0.8", "0.7")


def test_order_counts_where_it_is_that_of_the_hands(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    text = (folder / CAUSE).read_text(encoding="utf-8")
    steps = text.split("  steps:\n")[1].split("  proof:")[0]
    rows = steps.splitlines(keepends=True)
    turned = "".join([rows[1], rows[0], *rows[2:]])
    change(folder, CAUSE, steps, turned)
    found = said(folder)
    assert [(s.what, s.field.startswith("fix, steps")) for s in found] == [("moved", True)]


@pytest.mark.parametrize(
    ("old", "new", "moved", "changed", "gone", "fresh"),
    [
        ("abc", "acb", 1, 0, 0, 0),
        ("abc", "ac", 0, 0, 1, 0),
        ("abc", "abbc", 0, 0, 0, 1),
        ("abc", "xyz", 0, 0, 3, 3),
    ],
)
def test_lists_are_paired(
    old: str, new: str, moved: int, changed: int, gone: int, fresh: int
) -> None:
    found = align(old, new)
    sizes = len(found.moved), len(found.changed), len(found.gone), len(found.new)
    assert sizes == (moved, changed, gone, fresh)


def test_parts_of_one_name_and_parts_alike_are_paired_as_changed() -> None:
    names = (["left", "right"], ["right", "left"])
    by_name = align([1, 2], [3, 4], lambda is_new, place: names[is_new][place])
    assert by_name.changed == ((0, 1), (1, 0))
    alike = align(["a", "b"], ["c"], alike=lambda a, _: 0.9 if a == 1 else 0.2)
    assert (alike.changed, alike.gone) == (((1, 0),), (0,))


def test_long_texts_are_cut_to_what_differs() -> None:
    long = "One side of the wheel is heavier and lifts the spindle once in every single turn."
    assert shortened(long, long.replace("once", "twice")) == (
        "... the spindle once in every ...",
        "... the spindle twice in every ...",
    )
    assert shortened("common", "rare") == ("common", "rare")
    assert shortened("two  words", "two words") == ("blanks", "other blanks")
    head = "One side of the wheel is heavier and lifts the spindle once ..."
    assert shortened(long, "") == (head, "nothing")


def test_long_lists_are_folded_unless_all_is_asked_for() -> None:
    rows = tuple(
        Said("changed", "cause", f"c{n}", "name", "x", "y", "new", "a.yaml", n, 1)
        for n in range(SHOWN + 5)
    )
    view = Comparison("one", "two", {}, (), rows)
    folded = comparison_text(view)
    assert "and 5 more; --all" in folded
    assert f"a.yaml:{SHOWN}:" not in folded
    whole = comparison_text(view, all_rows=True)
    assert "more; --all" not in whole
    assert f"a.yaml:{SHOWN}: cause c{SHOWN}, name: x -> y" in whole


def test_the_command_tells_what_is_said_otherwise_before_what_moves(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, CAUSE, "how_common: common", "how_common: 0.0001")
    shop = ("--shop", (tmp_path / "none").as_posix())
    words = ["knowledge", "compare", *shop, SMALL.as_posix(), folder.as_posix()]
    told = CliRunner().invoke(diagnose, [*words, "--all"])
    assert told.exit_code == 0
    row = f"knowledge/{CAUSE}:5: cause unbalanced-wheel, how common: common -> 0.0001"
    assert told.stdout.index("Said otherwise, in 1 place:") < told.stdout.index(row)
    assert told.stdout.index(row) < told.stdout.index("examples and cases:")
    data = json.loads(CliRunner().invoke(diagnose, [*words, "--json"]).stdout)
    (one,) = data["said"]
    assert (one["file"], one["line"], one["after"]) == (f"knowledge/{CAUSE}", 5, "0.0001")
