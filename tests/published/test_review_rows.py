"""What a review recommends, beside the rows of the handbook: never above them, near them de-rated.

The rows are written out here afresh, not taken from the product's tables. Table 3 and Table 2a of
Machinery's Handbook, 31st ed.: the first rows of Table 3 were read (confirmed), the rest and the
cells of Table 2a are from memory. One third to one half of Table 3 on a light machine is common
practice.
"""

from __future__ import annotations

import itertools
import math

import pytest

from diagnose.physics.marking import read_marking
from diagnose.physics.tables import DEPTHS, WHEELS
from diagnose.physics.wheel_choice import steel_of
from diagnose.review.cuts import Cuts, cuts_for, table_pace
from diagnose.review.dresses import TIP, dresses_for
from diagnose.review.wheels import shelf_for
from diagnose.shop.cards import Card
from tests.published.sources import DRESSING, GROOVER, HANDBOOK, published

INCH = 25.4e-3
# Table 3, p. 1329: rough and finish in thousandths of an inch, crossfeed as a share of the face
TABLE_3 = {
    "soft-steel": (3.0, 0.5, 1 / 4),  # plain carbon to 52 HRC; confirmed
    "alloy-steel": (3.0, 1.0, 1 / 4),  # alloy to 52 HRC; confirmed
    "hardened-steel": (2.0, 0.5, 1 / 10),  # tool steel 56 to 65 HRC; from memory
    "high-speed-steel": (2.0, 0.5, 1 / 10),  # as tool steel; from memory
    "grey-iron": (3.0, 1.0, 1 / 3),  # from memory
    "ductile-iron": (3.0, 1.0, 1 / 5),  # from memory
    "martensitic-stainless": (1.0, 0.5, 1 / 8),  # above 275 HB; from memory
    "aluminium": (3.0, 1.0, 1 / 3),  # from memory
}
# specific energies, J/mm3, the highest of the range (formula sheet; tool steel T15 82, 1020 68)
LOWEST_ENERGY = {"soft-steel": 14, "hardened-steel": 18, "grey-iron": 12, "aluminium": 7}
POWERS = (250.0, 370.0, 1100.0, 4000.0)
WIDTHS = (0.006, 0.013, 0.025)
TABLES = (0.05, 0.2, 0.5)
GRITS = (36.0, 46.0, 60.0, 80.0, 120.0)
DIAMETERS = (0.120, 0.200)
GRID = list(itertools.product(TABLE_3, POWERS, WIDTHS))


def every_cut(metal: str, power: float, width: float) -> list[tuple[Cuts, bool]]:
    """The cuts for every table, wheel diameter, wet and dry; whether the work is thin."""
    found = []
    for told, diameter in itertools.product(TABLES, DIAMETERS):
        for driven, dry, thin in itertools.product((False, True), repeat=3):
            cuts = cuts_for(
                metal,
                power,
                table_pace(told, driven),
                width,
                diameter,
                dry=dry,
                thin=thin,
                tolerance=None,
            )
            found.append((cuts, thin))
    return found


@published(HANDBOOK, "from memory")
@pytest.mark.parametrize(("metal", "power", "width"), GRID)
def test_no_cut_is_above_the_handbook_row(metal: str, power: float, width: float) -> None:
    rough, finish, share = TABLE_3[metal]
    for cuts, _ in every_cut(metal, power, width):
        for way in cuts.ways:
            most = finish if way.kind == "finish" else rough
            assert way.depth <= most * INCH / 1000 * (1 + 1e-9)
            assert way.crossfeed <= share * width * (1 + 1e-9)
        assert cuts.table_speed <= 30 / 60  # m/s, 15 to 30 m/min for all rows


@published(HANDBOOK, "from memory")
@pytest.mark.parametrize(("metal", "power", "width"), GRID)
def test_every_cut_is_near_the_row_once_the_row_is_de_rated(
    metal: str, power: float, width: float
) -> None:
    """De-rated: depth to a third or half of the rows, the area to what the motor pulls."""
    for cuts, thin in every_cut(metal, power, width):
        rough, finish = cuts.ways[0], cuts.ways[-1]
        if not thin:
            assert 0.010e-3 - 1e-9 <= rough.depth <= 0.025e-3 + 1e-9
        assert 0.0025e-3 - 1e-9 <= finish.depth <= 0.005e-3 + 1e-9
        for way in cuts.ways:
            assert way.depth * way.crossfeed <= 0.9 * cuts.ceiling * (1 + 1e-9)
        dial = 0.05e-3
        room = 0.5 * cuts.ceiling / rough.depth - dial
        assert rough.crossfeed >= min(room, min(TABLE_3[metal][2], 1 / 4) * width - dial)


@published(GROOVER, "confirmed")
@pytest.mark.parametrize(("metal", "power"), list(itertools.product(LOWEST_ENERGY, POWERS)))
def test_the_ceiling_is_power_over_energy(metal: str, power: float) -> None:
    """P = u x removal rate, 0.7 of the plate reaching the cut; u inside the published range."""
    highest = {"soft-steel": 68, "hardened-steel": 82, "grey-iron": 60, "aluminium": 27}[metal]
    for cuts, _ in every_cut(metal, power, 0.013):
        energy = power * 0.7 / (cuts.ceiling * cuts.table_speed) / 1e9
        assert LOWEST_ENERGY[metal] <= energy <= highest


@published(HANDBOOK, "confirmed")
@pytest.mark.parametrize(
    ("hardness", "row"), [(20.0, "soft-steel"), (45.0, "alloy-steel"), (60.0, "hardened-steel")]
)
def test_harder_steel_never_gets_the_wider_crossfeed(hardness: float, row: str) -> None:
    from diagnose.physics.hardness import vickers_of_rockwell

    assert steel_of(vickers_of_rockwell(hardness)) == row
    assert DEPTHS[row].crossfeed == pytest.approx(TABLE_3[row][2])


@published(DRESSING, "confirmed")
@pytest.mark.parametrize(
    ("finish", "grit"),
    list(itertools.product((None, 0.2e-6, 0.4e-6, 0.8e-6, 1.6e-6), GRITS)),
)
def test_every_dress_is_within_the_published_overlaps_and_depth(
    finish: float | None, grit: float
) -> None:
    """Overlap by the published example's sum; 2 to 8 from memory, 0.025 mm at most (Groover)."""
    for width, turns in itertools.product((0.006, 0.013, 0.020), (1400 / 60, 2850 / 60, 3450 / 60)):
        for dress in dresses_for(finish, grit, width, turns).ways:
            groove = 2 * math.sqrt(2 * TIP * dress.depth - dress.depth**2)
            low, high = (groove * turns * t / width for t in dress.seconds)
            slack = groove * turns * 0.25 / width + 1e-9  # seconds are given in halves
            assert dress.depth <= 0.025e-3 + 1e-12
            assert 2.0 - slack <= low <= high <= 8.0 + slack
            assert dress.use != "to rough" or high <= 3.0 + slack


# starting points by metal: Table 2a, p. 1328, makers' prefixes removed; from memory
TABLE_2A = {
    "grey-iron": {"C36K8V", "A46I8V"},
    "soft-steel": {"A46J8V"},
    "hardened-steel": {"A46H8V", "A60F12V"},
    "brass": {"C36K8V"},
}
SHELF = ("A24Q4V", "A46J8V", "A46H8V", "A60F12V", "A46I8V", "C36K8V", "A60L5V", "C60M5V", "A120N4B")


def shelf_of(markings: tuple[str, ...]) -> dict[str, Card]:
    """A shelf with a wheel of each marking."""
    return {m.lower(): Card(m.lower(), m, {}, {"marking": m}) for m in markings}


@published(HANDBOOK, "from memory")
@pytest.mark.parametrize("metal", TABLE_2A)
def test_the_best_of_a_mixed_shelf_is_a_wheel_of_the_row(metal: str) -> None:
    found = shelf_for(
        metal, shelf_of(SHELF), None, None, planned="", contact="ordinary", thin=False, wet=True,
        units="metric",
    )  # fmt: skip
    assert found.best is not None
    used = read_marking(found.best.card.marking)
    rows = [read_marking(m) for m in TABLE_2A[metal]]
    assert used.base in {r.base for r in rows}
    assert min(abs(ord(used.grade) - ord(r.grade)) for r in rows if r.base == used.base) <= 2
    assert found.best.wrong == ()


@published(HANDBOOK, "from memory")
@pytest.mark.parametrize("metal", WHEELS)
def test_the_wheel_of_the_row_never_loses_to_a_bench_wheel(metal: str) -> None:
    found = shelf_for(
        metal, shelf_of(SHELF), None, None, planned="", contact="ordinary", thin=False, wet=True,
        units="metric",
    )  # fmt: skip
    assert found.best is not None
    assert read_marking(found.best.card.marking).grade < "M"
