"""The knowledge loads whole, or says everything that is wrong with it at the right line."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.book import conditions
from diagnose.book.loader import load_book
from diagnose.book.problems import BookError
from tests.small import SMALL, change, copy_small, faults, small_book

UNBALANCED = "causes/wheel/unbalanced-wheel.yaml"
SPACING = "checks/part/bar-spacing.yaml"
RULES = "rules/bars.yaml"
SIGNS = "findings/signs.yaml"


def test_every_kind_is_there() -> None:
    book = small_book()
    sizes = {
        kind: len(getattr(book, kind))
        for kind in ("symptoms", "causes", "checks", "rules", "stops", "mechanisms", "cautions")
    }
    assert sizes == {
        "symptoms": 3,
        "causes": 6,
        "checks": 11,
        "rules": 5,
        "stops": 2,
        "mechanisms": 3,
        "cautions": 2,
    }


def test_words_of_the_scale_become_their_numbers() -> None:
    book = small_book()
    cause = book.causes["unbalanced-wheel"]
    assert cause.prior == 0.06
    assert cause.how_common == "common"
    assert [(link.finding, link.how_often, link.word) for link in cause.shows] == [
        ("even-bars-across-travel", 0.77, "usually"),
        ("bars-evenly-spaced", 0.91, "almost always"),
        ("bar-rhythm", 0.91, "almost always"),
    ]
    assert cause.more_likely_when[0].factor == 5
    assert book.findings["wheel-face"].values[1].without_cause == 0.16


def test_a_symptom_is_a_yes_no_sign_as_well() -> None:
    finding = small_book().findings["burnt-patches"]
    assert finding.kind == "sign"
    assert finding.value_ids == ("no", "yes")
    assert finding.values[1].without_cause == 0.03


def test_an_answer_means_the_value_of_its_name_when_nothing_else_is_said() -> None:
    check = small_book().checks["wheel-look"]
    assert [dict(o.means) for o in check.options] == [
        {"wheel-face": "open"},
        {"wheel-face": "shiny"},
        {"wheel-face": "loaded"},
    ]


def test_numbers_are_kept_in_si() -> None:
    check = small_book().checks["bar-spacing"]
    assert (check.lowest, check.highest) == pytest.approx((5e-5, 0.1))
    assert check.give_or_take == pytest.approx(0.05)
    rule = small_book().rules["bars-once-a-turn"]
    (test,) = rule.when.tests
    assert test == conditions.Test("bar-frequency", "within", low=0.1, other="spindle-speed")


def test_everything_in_the_book_can_be_a_key() -> None:
    book = small_book()
    for kind in (book.rules, book.checks, book.causes, book.stops, book.symptoms, book.mechanisms):
        assert len(set(kind.values())) == len(kind)
    assert book.rules["bars-to-frequency"].work_out is not None
    assert book.rules["bars-to-frequency"].work_out.inputs == {
        "spacing": "bar-spacing",
        "table_speed": "table-speed",
    }


def test_a_ring_test_raises_and_clears_its_stop() -> None:
    check = small_book().checks["ring-test"]
    assert check.by_option["dull"].raises == ("cracked-wheel",)
    assert check.by_option["rang-clear"].clears == ("cracked-wheel",)
    assert check.gate


def test_two_causes_may_share_one_fix(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    path = folder / "causes/drive/lumpy-belt.yaml"
    text = path.read_text()
    start, end = text.index("fix:"), text.index("cautions:")
    path.write_text(text[:start] + "fix: {same_as: unbalanced-wheel}\n" + text[end:])
    book = load_book(folder)
    assert book.causes["lumpy-belt"].fix == book.causes["unbalanced-wheel"].fix
    assert book.causes["lumpy-belt"].fix.id == "unbalanced-wheel"


def test_the_version_is_the_content() -> None:
    assert load_book(SMALL).version == small_book().version
    assert len(small_book().version) == 10


def test_the_version_changes_with_one_letter(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    assert load_book(folder).version == small_book().version
    change(folder, UNBALANCED, "heavier", "Heavier")
    assert load_book(folder).version != small_book().version


def test_a_second_folder_adds_to_the_first(tmp_path: Path) -> None:
    own = tmp_path / "own"
    (own / "causes/drive").mkdir(parents=True)
    text = (SMALL / "causes/drive/lumpy-belt.yaml").read_text()
    text = text.replace("lumpy-belt", "slack-belt")
    (own / "causes/drive/slack-belt.yaml").write_text(text)
    assert "slack-belt" in load_book(SMALL, [own]).causes


def test_an_old_id_is_known_by_its_new_one(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "status:", "replaces: [wheel-imbalance]\nstatus:")
    assert load_book(folder).renamed == {"wheel-imbalance": "unbalanced-wheel"}


# (file, old, new, line, what is said, what is suggested)
SLIPS = [
    (UNBALANCED, "bars-evenly-spaced", "bars-evenly-spacd", 10, "no finding", "bars-evenly-spaced"),
    (UNBALANCED, "how_often: usually", "how_often: usualy", 9, "'usualy' is not one", "usually"),
    (UNBALANCED, "how_often: usually", "how_often: 1.0", 9, "1.0 is not possible", ""),
    (UNBALANCED, "how_often: usually", "how_often: 0.02", 9, "no more often than without it", ""),
    (UNBALANCED, "name: Wheel out of balance\n", "", 1, "has no 'name:'", ""),
    (UNBALANCED, "look_alikes: [lumpy-belt, shaking-floor]\n", "", 1, "no 'look_alikes:'", ""),
    (UNBALANCED, "sources: [common-practice]\n", "", 1, "no 'sources:'", ""),
    (UNBALANCED, "summary:", "sumary:", 3, "no field 'sumary'", "summary"),
    (UNBALANCED, "status: tried", "status: trusted", 4, "'trusted' is not one", "tried"),
    (UNBALANCED, "not_first: unb", "first: unb", 30, "no example has 'not_first: unb", ""),
    (UNBALANCED, "mounted: yes", "mounted: oui", 7, "is never 'oui'", ""),
    (UNBALANCED, "newly-mounted: yes", "newly-mount: yes", 7, "no fact", "wheel-newly-mounted"),
    (UNBALANCED, "newly-mounted: yes", "newly-mounted: {above: 3 mm}", 7, "is not a number", ""),
    (UNBALANCED, "is: once-a-turn", "is: once-a-trun", 11, "is never 'once-a-trun'", "once-a-turn"),
    (UNBALANCED, "is: once-a-turn", "is: none-found", 11, "nothing of the kind", ""),
    (UNBALANCED, "id: unbalanced-wheel", "id: heavy-wheel", 1, "the file is called", ""),
    (UNBALANCED, "bars-even: yes", "bars-even: mostly", 32, "'mostly' is no answer", ""),
    (UNBALANCED, "bars-even: yes", "bars-evn: yes", 32, "no check 'bars-evn'", "bars-even"),
    (UNBALANCED, "first_time: 60", "first_time: an hour", 16, "'an hour' is not a number", ""),
    (UNBALANCED, "  proof: The next", "  profo: The next", 22, "no field 'profo'", "proof"),
    (UNBALANCED, "power-locked-out]", "power-off]", 23, "'power-off' is not one", ""),
    (UNBALANCED, "[lock-out-first", "[lock-out-frist", 26, "no caution", "lock-out-first"),
    (SPACING, "unit: length", "unit: lenght", 7, "nothing that is measured", "length"),
    (SPACING, "lowest: 0.05 mm", "lowest: 0.05", 8, "has no unit", ""),
    (SPACING, "lowest: 0.05 mm", "lowest: 0.05 rpm", 8, "rpm is a turning speed", ""),
    (SPACING, "lowest: 0.05 mm", "lowest: 500 mm", 8, "lowest is not below the highest", ""),
    (SPACING, "example: 6 mm", "example: 6 m", 9, "too much to be possible", ""),
    (
        "checks/wheel/ring-test.yaml",
        "clears: [cracked",
        "raises: [cracked",
        9,
        "no answer of ring-test clears",
        "",
    ),
    (RULES, "spacing: bar-spacing", "spacing: spindle-speed", 3, "a length is needed here", ""),
    (RULES, "with: mark-frequency", "with: mark-frequncy", 3, "no calculation", "mark-frequency"),
    (RULES, "within: 10 %", "within: 10", 8, "a share between 0 and 100 %", ""),
    (RULES, "of: spindle-speed", "of: bar-spacing", 8, "cannot be compared", ""),
    (RULES, "finding: bar-rhythm, is", "stop: cracked-wheel, is", 10, "belongs to a finding", ""),
    (SIGNS, "specks, without_cause: rarely", "specks", 7, "has no 'without_cause:'", ""),
    (SIGNS, "kind: sign", "kind: signal", 2, "'signal' is not one", "sign"),
    (
        SIGNS,
        "sharpens: even-bars-across-travel",
        "sharpens: wheel-newly-mounted",
        13,
        "only a sign",
        "",
    ),
    (
        "mechanisms.yaml",
        "to: even-bars-across-travel",
        "to: wheel-lifts-once-a-turn",
        10,
        "ring",
        "",
    ),
    ("symptoms/burnt-patches.yaml", "do: quarantine", "do: keep", 11, "'keep' is not one", ""),
    ("symptoms/burnt-patches.yaml", "coolant-stream: none", "coolant-stream: off", 10, "never", ""),
    (
        "stops/cracked-wheel.yaml",
        "asked_by: ring-test",
        "asked_by: ring",
        9,
        "no check",
        "ring-test",
    ),
    ("words.yaml", "always: 0.98", "always: 98", 1, "above 0 and below 1", ""),
    ("words.yaml", "strength: 0.3", "strenght: 0.3", 4, "its prior and its strength", ""),
]


@pytest.mark.parametrize(("file", "old", "new", "line", "says", "suggests"), SLIPS)
def test_a_slip_has_one_message_at_its_line(
    tmp_path: Path, file: str, old: str, new: str, line: int, says: str, suggests: str
) -> None:
    folder = copy_small(tmp_path)
    change(folder, file, old, new)
    found = faults(folder)
    assert len(found) == 1, "\n".join(p.render() for p in found)
    (problem,) = found
    at = "stops/cracked-wheel.yaml" if file.endswith("ring-test.yaml") else file
    assert problem.file == f"knowledge/{at}"
    assert problem.line == line
    assert says in problem.what
    assert problem.suggestion.split(" (")[0] == suggests
    assert problem.render().isprintable() or "\n" in problem.render()


def test_all_faults_of_all_files_come_at_once_in_order(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    for file, old, new, *_ in SLIPS[:2]:
        change(folder, file, old, new)
    change(folder, SPACING, "minutes: 2", "minutes: two")
    change(folder, "words.yaml", "think_so: 0.8", "think_so: 0.8\nthink_so: 0.7")
    (folder / "rules/bars.yaml").write_text("- id: 'open\n")
    places = [(p.file.removeprefix("knowledge/"), p.line) for p in faults(folder)]
    assert places == [
        (UNBALANCED, 9),
        (UNBALANCED, 10),
        (SPACING, 6),
        (RULES, 1),
        ("words.yaml", 6),
    ]


def test_a_suggestion_names_the_file_of_what_was_meant(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "finding: bars-evenly-spaced", "finding: bars-evenly-spacd")
    (problem,) = faults(folder)
    assert problem.render().splitlines()[-1] == (
        "  did you mean bars-evenly-spaced (knowledge/findings/signs.yaml:9)?"
    )


def test_an_old_id_in_the_knowledge_is_told_its_new_one(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "status:", "replaces: [wheel-imbalance]\nstatus:")
    change(folder, "causes/drive/lumpy-belt.yaml", "[unbalanced-wheel]", "[wheel-imbalance]")
    (problem,) = faults(folder)
    assert "it has a new name" in problem.what
    assert problem.suggestion.startswith("unbalanced-wheel ")


def test_an_id_is_unique_over_all_kinds(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, "cautions.yaml", "id: lock-out-first", "id: grains-rub")
    said = [p.what for p in faults(folder)]
    assert any("already given to a caution" in what for what in said)


def test_a_check_reports_one_cause_only(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    claim = (
        "be_sure:\n  - {check: neighbour-off, answer: same, right_when_there: usually, "
        "right_when_not: usually}\nfix:"
    )
    change(folder, UNBALANCED, "fix:", claim)
    (problem,) = faults(folder)
    assert "already reports shaking-floor" in problem.what


def test_an_answer_cannot_mean_two_signs(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    file = "checks/part/underside-look.yaml"
    change(folder, file, "dirt-marks-below: yes}", "dirt-marks-below: yes, thin-stream: yes}")
    change(folder, file, "settles: [dirt-marks-below]", "settles: [dirt-marks-below, thin-stream]")
    (problem,) = faults(folder)
    assert "two signs" in problem.what


def test_a_finding_an_answer_means_must_be_settled(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, "checks/part/underside-look.yaml", "{dirt-marks-below: no}", "{thin-stream: no}")
    (problem,) = faults(folder)
    assert "does not settle" in problem.what


def test_a_worked_out_number_has_a_name_of_its_own(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, RULES, "gives: bar-frequency", "gives: bar-spacing")
    assert "'bar-spacing' is already the id of a check" in faults(folder)[0].what


def test_a_circumstance_is_nothing_a_cause_shows(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, UNBALANCED, "finding: bars-evenly-spaced", "finding: wheel-newly-mounted")
    (problem,) = faults(folder)
    assert "is a circumstance" in problem.what
    assert "more_likely_when" in problem.mend


def test_a_report_must_be_right_more_often_than_a_coin(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    report = "reports: {finding: thin-stream, right_when_there: often, right_when_not: sometimes}\n"
    change(folder, "checks/part/bars-even.yaml", "place: part\n", f"place: part\n{report}")
    (problem,) = faults(folder)
    assert "no more often when it is there" in problem.what


def test_dont_know_is_never_an_option_of_a_file(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(folder, "checks/wheel/ring-test.yaml", "id: not-tested", "id: dont-know")
    (problem,) = faults(folder)
    assert "offered at every question" in problem.what


def test_a_stop_is_not_asked_about_with_the_wheel_turning(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    change(
        folder, "checks/wheel/ring-test.yaml", "needs: [wheel-stopped]", "needs: [wheel-turning]"
    )
    (problem,) = faults(folder)
    assert "too late to ask" in problem.what


def test_a_file_in_no_known_place_is_named(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    (folder / "cause").mkdir()
    (folder / "cause/lost.yaml").write_text("id: lost")
    (folder / "causes/weel").mkdir()
    (folder / UNBALANCED).rename(folder / "causes/weel/unbalanced-wheel.yaml")
    lost, room = faults(folder)
    assert (lost.file, lost.suggestion) == ("knowledge/cause/lost.yaml", "causes")
    assert (room.file, room.suggestion) == ("knowledge/causes/weel/unbalanced-wheel.yaml", "wheel")


def test_an_empty_file_is_named(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    (folder / UNBALANCED).write_text("# to come\n")
    (problem,) = faults(folder)
    assert problem.what == "this file is empty"


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(BookError, match="there is no such folder"):
        load_book(tmp_path / "nowhere")


def test_notes_tables_and_hidden_files_are_not_read(tmp_path: Path) -> None:
    folder = copy_small(tmp_path)
    (folder / "tables").mkdir()
    for name in ("tables/a.yaml", ".draft.yaml", "README.md", "causes/wheel/_old.yaml"):
        (folder / name).write_text("{")
    assert faults(folder) == ()
