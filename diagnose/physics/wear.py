"""How long a dress lasts and how long to spark out: ranges, learned from the shop where it counts.

Strokes cannot be computed from face, crossfeed and depth alone: the depth cancels, and the
grinding ratio G of this wheel on this metal decides.
"""

from __future__ import annotations

import math

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Answer, Calculation, Input, Line, WordInput, Worked
from diagnose.physics.tables import METALS
from diagnose.physics.units import show

SHAPE = (0.5, 1.0)  # worn corner: a wedge to a full step
AGAIN = 0.3  # spread of the same wheel on the same metal from dress to dress; common practice


@ranged
def effective_ratio(
    strokes: float,
    wheel_diameter: float,
    wheel_width: float,
    crossfeed: float,
    part_length: float,
    worn_share: float = 1 / 3,
) -> float:
    """G times the shape of the worn corner, learned from the strokes a dress lasted (lengths m).

    Source: volume balance N s L a = k G pi D w a, the depth cancels. Raises OutOfRange.
    """
    worn = math.pi * wheel_diameter * worn_share * wheel_width
    return strokes * crossfeed * part_length / worn


@ranged
def strokes_until_dress(
    effective_ratio: float,
    wheel_diameter: float,
    wheel_width: float,
    crossfeed: float,
    part_length: float,
    worn_share: float = 1 / 3,
) -> float:
    """Strokes until the wear has crossed a share of the face: k G pi D w / (s L), lengths m.

    Source: the volume balance of `effective_ratio`. Raises OutOfRange.
    """
    worn = math.pi * wheel_diameter * worn_share * wheel_width
    return effective_ratio * worn / (crossfeed * part_length)


def strokes_answer(
    metal: str,
    wheel_diameter: float,
    wheel_width: float,
    crossfeed: float,
    part_length: float,
    strokes_had: float = 0.0,
) -> Answer:
    """The range of strokes until the dress is due; learned when `strokes_had` is above zero."""
    shape = (wheel_diameter, wheel_width, crossfeed, part_length)
    if strokes_had > 0:
        learned = effective_ratio(strokes_had, *shape)
        low, high = (1 - AGAIN) * learned, (1 + AGAIN) * learned
        known = "learned from the strokes you had"
    else:
        ratios = METALS[metal].ratios
        low, high = SHAPE[0] * ratios[0], SHAPE[1] * ratios[1]
        known = f"no history: G of {ratios[0]:g} to {ratios[1]:g} taken for {METALS[metal].name}"
    least, most = (strokes_until_dress(ratio, *shape) for ratio in (low, high))
    line = Line("strokes until the dress is due", value=least, highest=most, dimension="count")
    return Answer((line, Line("known from", known)), _SOUND)


_SOUND = (
    "A range, no more. The look and the sound come first: dress when the wear has crossed a third "
    "of the face, the sound changes or the wheel shines. Count the strokes and tell them next time."
)


@ranged
def depth_left(depth: float, cut_share: float, passes: float) -> float:
    """Depth (m) still to come off after so many passes without infeed: a (1 - K)^n.

    Source: the spring of machine and wheel, common grinding texts. Raises OutOfRange.
    """
    return float(depth * math.pow(1.0 - cut_share, passes))


@ranged
def spark_out_passes(cut_share: float, share_left: float) -> float:
    """Passes without infeed until only this share of the infeed is left: a whole number.

    Source: as `depth_left`, turned round. Raises OutOfRange.
    """
    if cut_share == 1.0:
        return 1.0
    if share_left == 1.0:
        return 0.0
    return float(math.ceil(math.log(share_left) / math.log(1.0 - cut_share) - 1e-9))


def _of_strokes(_given: dict[str, float], _strokes: float) -> str:
    return f"Give or take {AGAIN:.0%} from one dress to the next. {_SOUND}"


def _of_ratio(_given: dict[str, float], _ratio: float) -> str:
    return "Keep it with this wheel and this metal: it turns another crossfeed into strokes."


def _of_left(_given: dict[str, float], left: float) -> str:
    return (
        f"{show(left, 'length')} ({show(left, 'length', 'inch')}) is still to come off, so the "
        "part is that much large. Two to four passes are common; many more glaze the wheel."
    )


def _of_passes(_given: dict[str, float], passes: float) -> str:
    if passes > 6:
        return "Many: a springy set-up or a dull wheel. Dress or take less, do not rub it out."
    return "More passes than that only rub: they glaze the wheel and warm the work."


_BALANCE = "balance of volumes; corner wear as a wedge to a full step"

CALCULATIONS = (
    Calculation(
        "effective-ratio", "G learned from the strokes a dress lasted",
        inputs("strokes", "wheel_diameter", "wheel_width", "crossfeed", "part_length",
               worn_share="1/3"),
        "ratio", effective_ratio,
        "strokes x crossfeed x length / (3.1416 x diameter x worn part of the face)", _of_ratio,
        _BALANCE, "derived", "Holds the shape of the worn corner as well as G.",
    ),
    Calculation(
        "strokes-until-dress", "strokes until the dress is due, from a learned G",
        inputs("effective_ratio", "wheel_diameter", "wheel_width", "crossfeed", "part_length",
               worn_share="1/3"),
        "count", strokes_until_dress,
        "G x 3.1416 x diameter x worn part of the face / (crossfeed x length)", _of_strokes,
        _BALANCE, "derived", "Worth what the learned G is worth.",
    ),
    Calculation(
        "spark-out-left", "depth still to come off after spark-out passes",
        inputs("depth", "cut_share", "passes"), "length", depth_left,
        "depth x (1 - share cut a pass) to the power of passes", _of_left,
        "common grinding texts", "from memory", "A stiff machine cuts 0.7 a pass, a light one 0.3.",
    ),
    Calculation(
        "spark-out-passes", "spark-out passes until a share is left",
        inputs("cut_share", share_left="5 %"), "count", spark_out_passes,
        "log of share left / log of (1 - share cut a pass), up to the next whole pass", _of_passes,
        "common grinding texts", "from memory", "A stiff machine cuts 0.7 a pass, a light one 0.3.",
    ),
)  # fmt: skip

WORKED = (
    Worked(
        id="dress-due",
        name="how many strokes until the dress is due, as a range",
        inputs=(
            WordInput("metal", "what is ground", tuple(METALS)),
            *inputs("wheel_diameter", "wheel_width", "crossfeed", "part_length"),
            Input("strokes_had", "count", "strokes the last dress lasted; 0: not known", "0"),
        ),
        function=strokes_answer,
        formula="0.5 to 1 x G x 3.1416 x diameter x a third of the face / (crossfeed x length)",
        source=_BALANCE + "; ranges of G from memory",
        standing="derived",
        limits="G spreads tenfold; the number is worth something once learned in your shop.",
    ),
)
