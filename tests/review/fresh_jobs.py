"""Six more sound jobs of an invented shop, told as fully as a careful person tells them."""

from __future__ import annotations

from dataclasses import replace

from diagnose.case.entries import Case
from diagnose.case.planned import Planned
from tests.review.jobs import case_of, safe

CARE = {
    "brushed-after-dressing": "brushed-or-flushed",
    "trued-since-mounting": "all-round",
    "balanced-since-mounting": "balanced",
    "diamond-tip": "pointed",
    "diamond-wiggle": "firm",
    "wiped-and-stoned": "wiped-and-stoned-both",
    "warmed-up-how-long": "over-half-an-hour",
    "measured-when": "cold",
    "stops-look": "stops-at-both-ends",
    "overtravel-look": "clear-of-the-part",
    "crossfed-where": "clear-of-the-work",
    "where-fed-down": "clear-of-the-work",
    "since-last-dress": "just-dressed",
    "dress-pace": "even-all-across",
    "dress-return": "backed-off-first",
    "dressed-whole-face": "edge-to-edge",
    "how-touched-off": "high-spot-searched",
    "what-changed": "nothing",
}
WET = CARE | {"wet-or-dry": "wet", "coolant-at-contact": "into-the-contact"}
DRY = CARE | {"wet-or-dry": "dry"}


def _cut(table: str, depth: str, across: str, dress: str, spark_out: str) -> dict[str, str]:
    return {
        "table-speed": f"{table} m/min",
        "depth-of-cut": f"{depth} mm",
        "crossfeed": f"{across} mm",
        "dress-seconds": f"{dress} s",
        "dress-depth": "0.012 mm",
        "spark-out-strokes": spark_out,
    }


def _part(length: str, base: str, thickness: str) -> dict[str, str]:
    return {
        "part-length": f"{length} mm",
        "part-base": f"{base} mm",
        "part-thickness": f"{thickness} mm",
    }


FRESH = {
    "thin plate on coarse poles": case_of(
        "cover plate, mild steel",
        "north-grinder",
        "pink-46-i",
        Planned(finish="0.8 um", tolerance="0.02 mm", sides="two", metal="soft-steel"),
        {**WET, **_part("120", "80", "5"), **_cut("12", "0.005", "1.5", "6", "2"),
         "sides-ground": "both-in-turn", "lever-or-selector": "part-way",
         "stock-state": "stress-relieved", "how-held": "flat-on-the-magnet"},
    ),
    "pair of parallels": case_of(
        "parallels, hardened",
        "north-grinder",
        "white-46-h",
        Planned(finish="0.4 um", tolerance="0.004 mm", hardness="62 HRC", metal="hardened-steel",
                sides="six"),
        {**WET, **_part("150", "16", "20"), **_cut("14", "0.008", "1.5", "15", "4"),
         "how-hardened": "through-hardened", "stock-state": "hardened",
         "temper-record": "tempered", "face-order": "big-face-first"},
    ),
    "die block ground dry": case_of(
        "die block, hardened",
        "south-grinder",
        "pink-46-i",
        Planned(finish="0.8 um", tolerance="0.01 mm", hardness="58 HRC", metal="hardened-steel"),
        {**DRY, **_part("80", "60", "35"), **_cut("12", "0.005", "1", "5", "2"),
         "how-hardened": "through-hardened", "stock-state": "hardened"},
    ),
    "hydraulic machine": case_of(
        "clamp plate, mild steel",
        "",
        "",
        Planned(finish="0.8 um", tolerance="0.01 mm", metal="soft-steel",
                marking="A 46 J 8 V, 200 x 25 x 31.75, 3340 rpm"),
        {**WET, **_part("250", "120", "20"), **_cut("16", "0.015", "4", "11", "2"),
         "drive": "coupling", "table-drive": "hydraulic", "bearing-kind": "plain",
         "spindle-speed": "2850 rpm", "machine-power": "2.2 kW", "pole-pitch": "8 mm",
         "chuck-kind": "electric", "sides-ground": "both-in-turn"},
    ),
    "iron table, open dress": case_of(
        "table of a fixture, grey iron",
        "north-grinder",
        "pink-46-i",
        Planned(finish="1.2 um", metal="grey-iron"),
        {"wet-or-dry": "dry", **_part("200", "100", "30"), **_cut("12", "0.01", "2", "5", "2")},
    ),
    "slide of gummy steel": case_of(
        "slide, stainless",
        "north-grinder",
        "pink-46-i",
        Planned(finish="0.6 um", tolerance="0.01 mm"),
        {**WET, **_part("90", "40", "18"), **_cut("12", "0.008", "1.5", "6", "2"),
         "work-material": "gummy-steel", "fluid-in-use": "greasy"},
    ),
}  # fmt: skip


def fresh(name: str, **changes: str) -> Case:
    """One of the six with some answers changed; `wheel` as well."""
    base = FRESH[name]
    wheel = changes.pop("wheel", base.wheel)
    facts = {key.replace("_", "-"): value for key, value in changes.items()}
    return replace(base, wheel=wheel, given={**safe(), **base.given, **facts})
