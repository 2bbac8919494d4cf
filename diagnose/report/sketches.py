"""Our own small sketches of what a symptom looks like, by name."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from diagnose.report import sketches_side as side
from diagnose.report import sketches_time as time
from diagnose.report import sketches_top as top
from diagnose.report import sketches_wheel as wheel
from diagnose.report.sketch_block import HEIGHT, WIDTH
from diagnose.report.svg import Svg, picture


@dataclass(frozen=True)
class Sketch:
    """A drawing with the line that stands under it."""

    caption: str
    draw: Callable[[], Svg]


SKETCHES: dict[str, Sketch] = {
    "rungs": Sketch("Ladder rungs: bars lying across the table travel", top.rungs),
    "rungs-at-ends": Sketch("Bars only near the ends of the stroke", top.rungs_at_ends),
    "rails": Sketch("Rails: lines running along the table travel", top.rails),
    "slanted": Sketch("Slanted bars, all leaning one way", top.slanted),
    "crossing": Sketch("Two sets of bars that cross", top.crossing),
    "one-line": Sketch("One line or groove, always at the same place", top.one_line),
    "every-other-stroke": Sketch("Every other stroke looks different", top.every_other_stroke),
    "steps": Sketch("Steps between one pass and the next", top.steps),
    "burn-patches": Sketch("Burn: brown or blue patches", top.burn_patches),
    "burn-stripes": Sketch("Burn in stripes across the travel", top.burn_stripes),
    "cloudy": Sketch("Cloudy spots, like a leopard's coat", top.cloudy),
    "rough": Sketch("Rough all over, with no pattern", top.rough),
    "scratches": Sketch("Straight scratches, here and there, any direction", top.scratches),
    "commas": Sketch("Comma scratches: a dot with a short curved tail", top.commas),
    "cracks": Sketch("Fine jagged cracks", top.cracks),
    "low-round-holes": Sketch("Low round the holes", top.low_round_holes),
    "chipped-edge": Sketch("Chips broken out of the edge", top.chipped_edge),
    "burr": Sketch("A heavy burr where the wheel leaves the part", top.burr),
    "bad-at-back": Sketch("Good at the front, bad at the back", top.bad_at_back),
    "hot": Sketch("The part comes off too hot to touch", top.hot),
    "moved": Sketch("The part moved on the chuck", top.moved),
    "wedge": Sketch("Taper: one end thicker than the other", side.wedge),
    "dish": Sketch("Dished: hollow under a straightedge", side.dish),
    "crown": Sketch("Crowned: high in the middle", side.crown),
    "low-ends": Sketch("Ends lower than the rest", side.low_ends),
    "twist": Sketch("Twisted: one corner stands up", side.twist),
    "size-wanders": Sketch("Size wanders from part to part", side.size_wanders),
    "loaded": Sketch("Loaded wheel: metal specks between the grains", wheel.loaded),
    "glazed": Sketch("Glazed wheel: flat, shiny grains", wheel.glazed),
    "sparks-at-one-end": Sketch("Sparks at one end only", wheel.sparks_at_one_end),
    "noisy": Sketch("The wheel squeals, hums or beats", wheel.noisy),
    "rust": Sketch("Brown spots and a stain, hours after grinding", top.rust),
    "smeared": Sketch("Smeared: rubbed, not cut", top.smeared),
    "streaks": Sketch("Streaks of another shine that stay pass after pass", top.streaks),
    "out-of-square": Sketch("Light shows under a square", side.out_of_square),
    "rocks": Sketch("Even in thickness, and yet it rocks", side.rocks),
    "late-cut": Sketch("Fed little by little; it cuts late and all at once", time.late_cut),
    "warm-or-cold": Sketch("Good cold and bad warm, or the other way round", time.warm_or_cold),
    "worse-by-part": Sketch("Good at first, worse part by part", time.worse_by_part),
    "underneath": Sketch("Dents, stripes or drag lines on the underside", time.underneath),
    "labours": Sketch("The motor growls, the belt slips, the wheel slows", time.labours),
    "size-later": Sketch("On size at the machine, another size later", time.size_later),
    "unlike-heights": Sketch("Ground together, and of unlike thickness", time.unlike_heights),
    "worn-corner": Sketch("The wheel loses its corner and sheds grit", time.worn_corner),
    "few-sparks": Sketch("Few or no sparks though it is fed", wheel.few_sparks),
}


def sketch(name: str, prefix: str = "sketch") -> Svg:
    """The sketch of that name as inline SVG; empty for a name we have no drawing of."""
    if name not in SKETCHES:
        return Svg("")
    chosen = SKETCHES[name]
    title = f"Sketch: {chosen.caption}"
    return picture(
        f"{prefix}-{name}", title, chosen.caption, WIDTH, HEIGHT, chosen.draw(), kind="sketch"
    )


def caption(name: str) -> str:
    """The line under a sketch; empty for a name we have no drawing of."""
    return SKETCHES[name].caption if name in SKETCHES else ""
