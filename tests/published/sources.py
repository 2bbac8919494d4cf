"""Who printed the numbers: one entry for each independent source, and tests tied to them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

Test = TypeVar("Test", bound=Callable[..., Any])
STANDINGS = ("confirmed", "from memory", "problem text confirmed, result worked out by hand", "run")


@dataclass(frozen=True)
class Source:
    """One work, page or data set; parts of one work are one source."""

    id: str
    title: str


SPEED_PAGE = Source("speed-page", "worked example of a wheel-speed page")
CHATTER = Source("chatter", "Cutting Tool Engineering, April 2011, Origins of chatter")
BURN = Source("burn", "Cutting Tool Engineering, The real cause of burn")
WAVINESS = Source("waviness", "magazine column, Overcoming waviness")
KALPAKJIAN = Source("kalpakjian", "Kalpakjian & Schmid, Manufacturing Engineering and Technology")
FORMULAS = Source("formulas", "abrasive formula sheet, scribd.com/doc/6463004")
GROOVER = Source("groover", "Groover, Fundamentals of Modern Manufacturing, ch. 24")
DRESSING = Source("dressing", "dressing example, moderngrindingtechnology.com")
HOLDERS = Source("holders", "tool-holder catalogue p. K53 on ISO 1940-1")
HOME_SHOP = Source("home-shop", "Home Shop Machinist 2009, wheel balance")
WARM = Source("warm", "equal-velocity column: 11 um a metre and degree")
F80 = Source("f80", "abrasive supplier's page on F80")
HANDBOOK = Source("handbook", "Machinery's Handbook, 31st ed.")
COURSE = Source("course", "Engineer On a Disk, grinding notes")
B74 = Source("b74-13", "ANSI B74.13, marking of wheels")
N_GRADES = Source("n-grades", "ISO 1302 values as on roymech.org")
FINISHING = Source("finishing", "finishing.com 75/60")
ISO_4288 = Source("iso-4288", "ISO 4288:1996")
ISO_16610 = Source("iso-16610-21", "ISO 16610-21")
RATIO_PAGE = Source("ratio-page", "leebhardnesstesters.com, Rq and Ra")
TEXTURE = Source("texture", "surfalize 0.19.2")
BEARING_PAGE = Source("bearing-page", "codingace.net, bearing fault frequency")
DEFECT_PAGE = Source("defect-page", "vibromera.eu, bearing defect frequencies")
TEST_RIG = Source("test-rig", "Case Western Reserve University bearing data")
FAULT_DATA = Source("fault-data", "MFPT bearing fault data")
ISO_54 = Source("iso-54", "ISO 54, modules")
BEAM = Source("beam", "NIST/SEMATECH e-Handbook, Beam deflections, and reference data Lew")


def published(source: Source, standing: str) -> Callable[[Test], Test]:
    """Tie a test, or a class of tests, to the source it checks us against."""

    def tied(test: Test) -> Test:
        test.published = (source, standing)  # type: ignore[attr-defined]  # read by a test
        return test

    return tied
