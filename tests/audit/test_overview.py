"""The audit: its parts, its text, its data and its page say the same."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from functools import cache
from html import unescape
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree

import pytest
from click.testing import CliRunner

from diagnose.audit.audit_text import as_data, audit_text, sections
from diagnose.audit.best_case import best_case
from diagnose.audit.calibration import calibrate
from diagnose.audit.decisions import idle_checks, merging
from diagnose.audit.overview import Audit, audit
from diagnose.audit.study import Study
from diagnose.book.loader import load_book
from diagnose.case.entries import Case, Closed, Entry
from diagnose.cli.commands import diagnose
from diagnose.report.audit_page import render_audit
from diagnose.report.figures_map import columns, map_figure, reaching, roads_from
from tests.audit.sound import sound
from tests.small import SMALL, change, small_book


@cache
def small_audit() -> Audit:
    return audit(small_book(), [cured("even-bars-across-travel", "unbalanced-wheel")])


def cured(complaint: str, cause: str, **answers: str) -> Case:
    entries = tuple(Entry("answer", k.replace("_", "-"), v) for k, v in answers.items())
    return Case("a case", (complaint,), entries, closed=Closed("2026-03-14", (cause,)))


def test_every_complaint_is_covered_and_the_thinnest_stands_first() -> None:
    found = small_audit().coverage
    assert {c.symptom for c in found} == set(small_book().symptoms)
    assert [len(c.thin) for c in found] == sorted((len(c.thin) for c in found), reverse=True)


def test_claims_are_counted_by_source() -> None:
    by = {c.source: c.claims for c in small_audit().sources}
    assert by["common-practice"] > 30
    assert by["osha-ring-test"] == 2
    assert by["from-memory"] == 0


def test_a_check_without_any_effect_is_idle_and_one_that_decides_is_not(tmp_path: Path) -> None:
    folder = sound(tmp_path)
    text = (folder / "checks/machine/stream-by-lamp.yaml").read_text(encoding="utf-8")
    text = text.replace("stream-by-lamp", "lamp-is-there").replace(", means: {thin-stream: no}", "")
    text = text.replace(", means: {thin-stream: yes}", "")
    (folder / "checks/machine/lamp-is-there.yaml").write_text(text, encoding="utf-8")
    idle = idle_checks(Study(load_book(folder)))
    assert "lamp-is-there" in idle
    assert "wheel-look" not in idle


def test_dangers_are_never_called_idle() -> None:
    assert "ring-test" not in small_audit().idle_checks


def test_a_cause_is_first_in_its_own_best_case() -> None:
    book = small_book()
    for cause in book.causes.values():
        found = best_case(book, cause)
        assert found is not None
        assert found.rank == 1, found


def test_merging_two_that_differ_changes_a_decision_and_the_same_twice_does_not() -> None:
    book = small_book()
    apart = merging(book, "unbalanced-wheel", "shaking-floor")
    assert apart.changed
    twin = replace(book.causes["dirt-under-part"], id="dirt-again", examples=())
    both = replace(book, causes={**book.causes, "dirt-again": twin})
    assert merging(both, "dirt-under-part", "dirt-again").changed == ()


def test_closed_cases_are_set_against_the_written_rates() -> None:
    found = calibrate(small_book(), [cured("taper-along-travel", "dirt-under-part")] * 30)
    (rate,) = [r for r in found.rates if r.cause == "dirt-under-part"]
    assert found.cases == found.first == 30
    assert rate.cured == 30
    assert rate.expected == pytest.approx(30 * 0.33, abs=1.5)
    assert rate.drifts
    assert sum(b.number for b in found.bands) == 30 * len(small_book().causes)


def test_cases_that_name_no_cure_are_not_counted() -> None:
    bare = Case("open", ("taper-along-travel",), ())
    assert calibrate(small_book(), [bare]).cases == 0
    assert calibrate(small_book(), []).log_loss is None


def test_text_and_page_say_every_row() -> None:
    view = small_audit()
    page, text = unescape(render_audit(view)), audit_text(view)
    for heading, rows in sections(view):
        assert heading in text
        assert heading in page
        assert all(row in page for row in rows)
    assert set(as_data(view)) >= {"schema", "unseparated", "idle_checks", "calibration", "graph"}


def test_the_page_draws_the_graph_of_each_complaint_that_something_leads_to() -> None:
    page = render_audit(small_audit())
    assert page.count('class="figure map ') == 2
    assert "to the wheel lifts once a turn: Wheel out of balance" in page
    assert "<script" not in page
    assert not re.search(r'(src|href)="http', page)


def test_arrows_run_from_left_to_right_and_causes_stand_left() -> None:
    arrows = [("a", "m"), ("m", "n"), ("n", "end"), ("b", "n"), ("x", "other")]
    found = reaching(arrows, "end")
    placed = columns(found, "end")
    assert roads_from(arrows, ["b"], "end") == [("b", "n"), ("n", "end")]
    assert roads_from(arrows, ["x"], "end") == []
    assert ("x", "other") not in found
    assert placed == [["a", "b"], ["m"], ["n"], ["end"]]
    assert map_figure([], "end", {}, "k") == ""


def run(*words: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(diagnose, ["knowledge", *words])
    return result.exit_code, result.stdout, result.stderr


def test_the_command_prints_text_data_and_writes_the_page(tmp_path: Path) -> None:
    shop = ("--shop", (tmp_path / "none").as_posix())
    out = tmp_path / "audit.html"
    told = run("audit", *shop, "--folder", SMALL.as_posix(), "--json", "--page", out.as_posix())
    assert told[0] == 0
    assert json.loads(told[1])["schema"] == 1
    assert out.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    code, text, _ = run("audit", *shop, "--folder", SMALL.as_posix())
    assert code == 0
    assert "Thin spots by complaint" in text


def test_a_folder_with_faults_is_not_audited(tmp_path: Path) -> None:
    folder = sound(tmp_path)
    change(folder, "findings/signs.yaml", "kind: sign", "kind: sighn")
    code, text, _ = run("audit", "--folder", folder.as_posix())
    assert code == 1
    assert "did you mean sign?" in text


def test_no_box_of_a_drawing_covers_another_or_leaves_it() -> None:
    long = "a cause with a name so long that it takes three lines of its box to write it out"
    arrows = [(f"c{n}", "m" if n % 2 else "n") for n in range(9)]
    arrows += [("m", "end"), ("n", "m"), ("n", "end")]
    drawn = ElementTree.fromstring(map_figure(arrows, "end", {"c3": long, "m": long}, "k"))
    sides = ("x", "y", "width", "height")
    boxes = [[float(r.get(k, "0")) for k in sides] for r in drawn.iter("rect")]
    _, _, wide, tall = map(float, drawn.get("viewBox", "").split())
    assert len(boxes) == 12
    for x, y, width, height in boxes:
        assert 0 <= x <= x + width <= wide
        assert 0 <= y <= y + height <= tall
    for (x, y, _, height), (x2, y2, _, height2) in combinations(boxes, 2):
        assert x != x2 or y2 >= y + height or y >= y2 + height2
