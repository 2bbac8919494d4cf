"""What each reference can and cannot show."""

from __future__ import annotations

from itertools import product

import pytest

from diagnose.physics.reference import (
    Against,
    CannotShow,
    Conclusion,
    Setting,
    Surface,
    refusals,
    refusals_of_a_difference,
)


def _shown(setting: Setting) -> set[Conclusion]:
    return set(Conclusion) - {refusal.conclusion for refusal in refusals(setting)}


@pytest.mark.parametrize("surface", [Surface.PART, Surface.CHUCK])
@pytest.mark.parametrize("ground_here", [True, None])
def test_a_surface_ground_on_the_same_ways_shows_nothing_by_the_machines_travel(
    surface: Surface, ground_here: bool | None
) -> None:
    for magnet in (True, False):
        assert _shown(Setting(Against.TRAVEL, surface, magnet, ground_here)) == set()


def test_a_known_flat_block_swept_by_the_head_shows_the_ways_and_only_those() -> None:
    assert _shown(Setting(Against.TRAVEL, Surface.KNOWN_FLAT)) == {Conclusion.WAYS}


def test_a_chuck_ground_elsewhere_shows_whether_it_runs_true_but_not_the_ways() -> None:
    setting = Setting(Against.TRAVEL, Surface.CHUCK, ground_here=False)
    assert _shown(setting) == {Conclusion.CHUCK}


def test_a_micrometer_shows_thickness_and_never_flatness() -> None:
    assert _shown(Setting(Against.MICROMETER)) == {Conclusion.PARALLEL}


def test_a_surface_plate_shows_a_free_part_and_not_one_held_by_a_magnet() -> None:
    assert _shown(Setting(Against.PLATE)) == {Conclusion.FLAT, Conclusion.PARALLEL}
    assert Conclusion.FLAT not in _shown(Setting(Against.PLATE, magnet_on=True))


def test_a_straightedge_shows_flatness_and_no_wedge_and_the_magnet_spoils_it() -> None:
    assert _shown(Setting(Against.STRAIGHTEDGE)) == {Conclusion.FLAT}
    assert _shown(Setting(Against.STRAIGHTEDGE, magnet_on=True)) == set()
    assert _shown(Setting(Against.STRAIGHTEDGE, Surface.CHUCK)) == {Conclusion.CHUCK}
    assert _shown(Setting(Against.STRAIGHTEDGE, Surface.CHUCK, magnet_on=True)) == set()


def test_only_the_machines_travel_can_ever_show_the_ways() -> None:
    for against, surface, magnet, ground in product(
        Against, Surface, (True, False), (True, False, None)
    ):
        shown = _shown(Setting(against, surface, magnet, ground))
        assert Conclusion.WAYS not in shown or (
            against is Against.TRAVEL and surface is Surface.KNOWN_FLAT
        )


def test_every_refusal_says_why_and_what_to_do_instead() -> None:
    for against, surface, magnet in product(Against, Surface, (True, False)):
        for refusal in refusals(Setting(against, surface, magnet)):
            assert len(refusal.because) > 20
            assert len(refusal.instead) > 20
            assert refusal.because in str(CannotShow(refusal))


def test_a_difference_carries_no_conclusion() -> None:
    assert {r.conclusion for r in refusals_of_a_difference()} == set(Conclusion)
