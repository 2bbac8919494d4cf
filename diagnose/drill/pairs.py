"""What newcomers swap, side by side, with the one look that decides between the two.

Common practice, no written source. `causes` names two causes of the knowledge where the pair is
one of causes; the look is then worked out from the knowledge and these words stand beside it.
"""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.view.drill import SideBySide
from diagnose.view.result import SourceView

SOURCE = SourceView("common-practice", "common practice, no source", "common practice")


@dataclass(frozen=True)
class Pair:
    """Two things taken for each other."""

    one: str
    other: str
    look: str
    one_says: str
    other_says: str
    because: str = ""
    causes: tuple[str, str] | None = None


PAIRS = (
    Pair(
        "hard work",
        "a hard wheel",
        "How quickly do the grains blunt?",
        "hard work wants a soft wheel, which drops its blunt grains",
        "a hard wheel holds blunt grains: it rubs, shines and burns",
        because="grade is grip",
        causes=("wheel-grade-too-hard", "wheel-wrong-for-the-material"),
    ),
    Pair(
        "grade",
        "grit",
        "Which place of the marking is it in?",
        "the letter: how firmly the grains are held",
        "the number: how fine the grains are",
        causes=("wheel-grade-too-hard", "wheel-grit-too-fine"),
    ),
    Pair(
        "structure",
        "grit",
        "A glass on the wheel face: gaps or grains?",
        "a bigger number is a more open wheel, with wider gaps",
        "a bigger number is a finer grain",
        causes=("wheel-structure-too-dense", "wheel-grit-too-fine"),
    ),
    Pair(
        "silicon carbide is hard",
        "so it is for hard steel",
        "What metal is it?",
        "for iron, light metal, carbide and stone",
        "steel wants alumina: silicon carbide blunts on it",
        causes=("wheel-wrong-for-the-material", "wheel-grade-too-hard"),
    ),
    Pair(
        "loaded",
        "glazed",
        "Lamp flat along the rim, wheel stopped",
        "specks of metal in the gaps",
        "shiny flats on the grains",
        causes=("soft-metal-left-in-the-wheel", "wheel-left-undressed"),
    ),
    Pair(
        "glazed by use",
        "closed by dressing",
        "When did it begin: at once after the dress, or later?",
        "it cut well at first",
        "it never cut well since the dress",
        causes=("wheel-left-undressed", "dressed-too-fine"),
    ),
    Pair(
        "out of round",
        "out of balance",
        "How does the diamond sound at first touch?",
        "tick, tick: only part of the rim",
        "one steady hiss, and it still shakes",
        because="a wheel dressed round while it shakes looks clean",
        causes=("wheel-not-trued", "unbalanced-wheel"),
    ),
    Pair(
        "rungs",
        "rails",
        "Which way do they run against the travel?",
        "across it: something shakes in time",
        "along it: the dress or the crossfeed",
    ),
    Pair(
        "rails from the crossfeed",
        "the thread of the dress",
        "How far apart are they?",
        "as far as the table steps over",
        "much finer, as far as the diamond went in a turn",
        causes=("crossfeed-too-wide", "dress-lead-too-coarse"),
    ),
    Pair(
        "fixed in time",
        "fixed in place",
        "A pass with the table half as fast again: does the spacing move?",
        "it widens with the table",
        "it stays where it was",
        causes=("unbalanced-wheel", "table-rack-or-rollers"),
    ),
    Pair(
        "once a turn of the wheel",
        "a tooth of the rack",
        "Count at two table speeds",
        "the spacing follows the speed",
        "the spacing stays at the pitch of the tooth",
        because="both can lie near 5 mm apart",
        causes=("unbalanced-wheel", "table-rack-or-rollers"),
    ),
    Pair(
        "taper",
        "a bow",
        "Turn it end for end and measure again",
        "one end stays thin",
        "both ends read alike and the middle differs",
        causes=("chuck-not-parallel", "thin-work-pulled-flat"),
    ),
    Pair(
        "parallel",
        "flat",
        "Lay it on a plate: does it rock?",
        "the thickness is the same all over",
        "it does not rock",
        because="a bowed plate measures parallel",
    ),
    Pair(
        "held flat",
        "flat",
        "Indicator on top, magnet off",
        "it reads flat while the magnet pulls",
        "it reads flat when it is let go",
        causes=("thin-work-pulled-flat", "plate-ground-hot"),
    ),
    Pair(
        "hollow from heat",
        "hollow from the magnet",
        "Indicator on top before the magnet lets go",
        "it is hollow while it is still held, once cold",
        "it is flat until it is let go",
        causes=("plate-ground-hot", "thin-work-pulled-flat"),
    ),
    Pair(
        "hollow from heat",
        "hollow from the ways",
        "A known-good block ground gently, cold",
        "the block comes out flat",
        "the block comes out hollow too",
        causes=("plate-ground-hot", "ways-worn"),
    ),
    Pair(
        "a sweep that reads nothing",
        "a machine that is true",
        "Sweep something that this machine did not grind",
        "it only follows the ways it was ground by",
        "the outside thing reads true too",
        causes=("judged-on-the-machine", "ways-worn"),
    ),
    Pair(
        "rust",
        "burn",
        "Stone one patch lightly",
        "it goes at the first rub and pits are under it",
        "it stays, brown to blue",
        causes=("stain-taken-for-burn", "diamond-blunt"),
    ),
    Pair(
        "colour gone",
        "damage gone",
        "Etch it, or try a file on the skin",
        "the next pass took the tint only",
        "the skin is as hard as the rest",
        because="burn goes deeper than its colour",
    ),
    Pair(
        "depth on the dial",
        "depth that was cut",
        "Dial against micrometer",
        "what the hand wheel said",
        "what is missing from the part",
        because="spring, warmth and slack lie between",
        causes=("downfeed-screw-slack", "too-few-spark-out-passes"),
    ),
    Pair(
        "more spark-out",
        "a better face",
        "When do the sparks die?",
        "better until they die",
        "after that it only rubs, and glazes",
        causes=("too-many-spark-out-passes", "too-few-spark-out-passes"),
    ),
    Pair(
        "a finer dress",
        "a better face",
        "Does it burn, or cut late?",
        "finer until it shines",
        "too fine closes the wheel, and it burns",
        causes=("dressed-too-fine", "dress-lead-too-coarse"),
    ),
    Pair(
        "a slower table",
        "a cooler part",
        "Same depth, table twice as fast: warmer or cooler?",
        "it stays longer in one place and burns sooner",
        "brisk keeps the heat moving on",
        causes=("table-too-slow", "coolant-misses-the-contact"),
    ),
    Pair(
        "a stronger magnet",
        "a better hold for thin work",
        "Let go: does it spring?",
        "it pulls the bow flat, and the bow comes back",
        "shim it, hold it lightly, prove the hold",
        causes=("thin-work-pulled-flat", "part-too-thin-for-the-poles"),
    ),
    Pair(
        "end for end",
        "over",
        "Which face is up after it?",
        "the same face, turned round: finds taper",
        "the other face: finds bow and dirt",
    ),
    Pair(
        "turns a minute",
        "speed of the rim",
        "What diameter is the wheel now?",
        "stays when the wheel wears",
        "falls as the wheel wears",
        causes=("wheel-worn-small", "wheel-grade-too-soft"),
    ),
    Pair(
        "scratches from the wheel",
        "scratches from the coolant",
        "One dry pass over a corner",
        "they are still there",
        "they are gone",
        causes=("wheel-grade-too-soft", "oil-or-dirt-in-the-coolant"),
    ),
    Pair(
        "a warm size",
        "the size",
        "Measure again when it is as cold as the gauge",
        "it shrinks by a hundredth of a millimetre in a metre for each degree",
        "it stays",
        causes=("measured-warm-or-burred", "gauge-or-master-off"),
    ),
    Pair(
        "it ran yesterday",
        "it is safe",
        "The safety questions, each time",
        "nothing happened yet",
        "somebody looked: wheel, guard, hold, path",
    ),
)


def pair_view(pair: Pair) -> SideBySide:
    """The pair as it is shown."""
    return SideBySide(
        pair.one, pair.other, pair.because, pair.look, 0.0, pair.one_says, pair.other_says, SOURCE
    )


def pairs_of(causes: frozenset[str]) -> tuple[Pair, ...]:
    """The pairs both of whose causes are among these."""
    return tuple(p for p in PAIRS if p.causes is not None and set(p.causes) <= causes)
