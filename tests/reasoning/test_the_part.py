"""What is said of the part in hand does not contradict itself."""

from __future__ import annotations

from diagnose.reasoning.reason import reason
from tests.reasoning.test_shipped import BOOK, case


def actions(**answers: str) -> set[str]:
    return {a.action for a in reason(BOOK, case("burnt-patches", **answers)).plan.part}


def test_colour_that_wipes_off_hardened_steel_is_left_and_not_put_aside_as_well() -> None:
    assert actions(work_material="hardened-steel", stone_the_colour="wipes-off") <= {
        "leave",
        "measure",
    }
    assert "leave" in actions(work_material="hardened-steel", stone_the_colour="wipes-off")


def test_colour_that_stays_on_hardened_steel_is_put_aside() -> None:
    assert "quarantine" in actions(work_material="hardened-steel", stone_the_colour="stays-on")


def test_hardened_steel_whose_colour_nobody_tried_to_wipe_off_is_put_aside() -> None:
    assert "quarantine" in actions(work_material="hardened-steel")
