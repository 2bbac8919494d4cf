"""What is drawn of markings, shakers, limits and grids, and that the drawing tells it in words."""

from __future__ import annotations

import re

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder, shared_folder
from diagnose.case.files import load_case
from diagnose.reasoning.reason import reason
from diagnose.report.figures_drawn import (
    grid_figure,
    limit_figure,
    marking_figure,
    shakers_figure,
)
from diagnose.shop.cards import load_shop
from diagnose.view.build import view_of
from diagnose.view.drawn_parts import marking_view
from diagnose.view.result import ResultView
from tests.report.views import GRID, LIMIT_OF_BURN, SHAKERS


def told(drawing: str) -> str:
    found = re.search(r"<desc[^>]*>(.*?)</desc>", drawing, re.DOTALL)
    assert found is not None
    return found[1]


def result(name: str) -> ResultView:
    book = load_book(knowledge_folder())
    shop = load_shop(shared_folder(), book)
    case = load_case(shared_folder() / "cases" / f"{name}.yaml", book)
    return view_of(reason(book, case, shop.facts_for(case)))


def test_a_marking_is_taken_apart_field_by_field() -> None:
    view = marking_view("a wheel", "A 46 H 8 V, 200 x 20 x 31.75, 3340 rpm")
    assert view is not None
    written = {f.name: f.written for f in view.fields}
    drawing = marking_figure(view, "m")

    assert written == {"abrasive": "A", "grit": "46", "grade": "H", "structure": "8", "bond": "V"}
    assert all(f.meaning in told(drawing).replace("&#x27;", "'") for f in view.fields)
    assert marking_view("a wheel", "not a marking") is None


def test_the_marks_of_a_case_are_laid_beside_what_can_shake() -> None:
    view = result("spacer-plate-ripples").shakers
    assert view is not None
    fitting = [s for s in view.shakers if s.fits]

    assert fitting
    for shaker in view.shakers:
        meets = shaker.si_low <= view.si_high and shaker.si_high >= view.si_low
        assert shaker.fits == meets
    assert view.rate in told(shakers_figure(view, "s"))
    assert told(shakers_figure(view, "s")).count("fits") == len(fitting)


def test_without_counted_marks_nothing_is_laid_beside_them() -> None:
    assert result("tall-block-tipped").shakers is None


def test_the_band_of_a_shaker_stands_where_its_frequency_is() -> None:
    drawing = shakers_figure(SHAKERS, "s")
    fits, other = (
        float(x) for x in re.findall(r'<rect x="([\d.]+)"[^>]*class="bar-(?:acts|there)"', drawing)
    )

    assert abs((fits - 8) / (other - 8) - 46.5 / 24.1) < 0.02


def test_a_limit_shows_its_bad_side() -> None:
    drawing = limit_figure(LIMIT_OF_BURN, "l")
    bad = re.search(r'<rect x="([\d.]+)" [^>]*width="([\d.]+)"[^>]*class="bar-against"', drawing)
    dot = re.search(r'<circle cx="([\d.]+)"', drawing)

    assert bad is not None
    assert dot is not None
    assert float(bad[1]) <= float(dot[1]) <= float(bad[1]) + float(bad[2])
    assert "from 0.47 to 1.13" in told(drawing)


def test_a_map_is_darkest_where_it_is_highest_and_tells_its_gap() -> None:
    drawing = grid_figure(GRID, "g")
    dark = [float(x) for x in re.findall(r'fill-opacity="([\d.]+)"', drawing)]

    assert len(dark) == 8
    assert dark == sorted(dark)
    assert (dark[0], dark[-1]) == (0.0, 0.45)
    assert told(drawing) == "0 1 2 / 3 gap 4 / 5 6 7.5"
