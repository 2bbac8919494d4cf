"""Dressing with a single-point diamond, spoken in seconds across the face.

Overlap = turns of the wheel while the diamond's active width passes one point: a high overlap
closes the wheel (smooth, hot), a low one opens it (rough, cool).
"""

from __future__ import annotations

import math

from diagnose.physics.arguments import inputs, ranged
from diagnose.physics.catalogue import Answer, Calculation, Input, Line, WordInput, Worked
from diagnose.physics.errors import OutOfRange, within
from diagnose.physics.tables import FINISHES
from diagnose.physics.units import show

OVERLAPS = {"rough": (2.0, 3.0), "medium": (3.0, 5.0), "fine": (6.0, 8.0)}
DEPTHS = {"rough": 25e-6, "medium": 12e-6, "fine": 10e-6}  # m a pass
COARSEST, FINEST = 30.0, 150.0  # grits for which the table of finishes is worth something
PASSES = {"rough": "1", "medium": "2", "fine": "2, the last without infeed"}


@ranged
def diamond_width(tip_radius: float, dress_depth: float) -> float:
    """Width (m) of the groove a round tip (m) cuts at this depth (m): 2 root(2 r a - a^2).

    Source: geometry, as in a published dressing example (Modern Grinding Technology). Raises
    OutOfRange, also for a depth beyond the tip's radius.
    """
    if dress_depth > tip_radius:
        raise OutOfRange("dress_depth", dress_depth, "length", 1e-7, tip_radius)
    return 2 * math.sqrt(2 * tip_radius * dress_depth - dress_depth**2)


@ranged
def dress_lead(dress_speed: float, turning_speed: float) -> float:
    """Travel (m) of the diamond in a turn: dress speed (m/s) / turning speed (rev/s).

    Source: kinematics (derived).
    """
    return dress_speed / turning_speed


@ranged
def dress_speed(wheel_width: float, face_time: float) -> float:
    """Speed (m/s) of the diamond from the seconds it took across the face (m).

    Source: kinematics (derived).
    """
    return wheel_width / face_time


@ranged
def overlap(
    face_time: float,
    wheel_width: float,
    turning_speed: float,
    tip_radius: float,
    dress_depth: float,
) -> float:
    """Overlap of a dress from the seconds across the face: diamond width x turns / face.

    Source: U_d = b_d / s_d, published dressing example. Lengths m, rev/s. Raises OutOfRange.
    """
    return diamond_width(tip_radius, dress_depth) * turning_speed * face_time / wheel_width


@ranged
def seconds_for_overlap(
    overlap: float,
    wheel_width: float,
    turning_speed: float,
    tip_radius: float,
    dress_depth: float,
) -> float:
    """Seconds across the face (m) for a wanted overlap. Source as `overlap`. Raises OutOfRange."""
    return overlap * wheel_width / (turning_speed * diamond_width(tip_radius, dress_depth))


@ranged
def speed_for_overlap(
    overlap: float, turning_speed: float, tip_radius: float, dress_depth: float
) -> float:
    """Speed (m/s) of the diamond for a wanted overlap. Source as `overlap`. Raises OutOfRange."""
    return diamond_width(tip_radius, dress_depth) * turning_speed / overlap


@ranged
def cusp_height(dress_lead: float, tip_radius: float) -> float:
    """Height (m) of the thread the diamond leaves on the wheel: s^2 / (8 r).

    Source: geometry. Raises OutOfRange, also for a lead beyond the tip's diameter.
    """
    if dress_lead > 2 * tip_radius:
        raise OutOfRange("dress_lead", dress_lead, "length", 1e-7, 2 * tip_radius)
    return dress_lead**2 / (8 * tip_radius)


@ranged
def expected_roughness(grit: float, overlap: float = 3.0) -> float:
    """Ra (m) to expect of a grit and a dress, sharp wheel, spark-out; half to double as spread.

    Source: table of grit and Ra, from memory: roughest at overlap 2, finest at 8, straight lines
    in logarithms between; beyond 8 the dress buys nothing. Raises OutOfRange.
    """
    finest, roughest = (_of_grit(grit, side) for side in ("finest", "roughest"))
    share = math.log(min(max(overlap, 2.0), 8.0) / 2.0) / math.log(4.0)
    return roughest * math.pow(finest / roughest, share)


def _of_grit(grit: float, side: str) -> float:
    within("grit", grit, "number", COARSEST, FINEST)
    rows = FINISHES
    at = next((i for i, row in enumerate(rows) if row.grit >= grit), len(rows) - 1)
    low, high = rows[max(at - 1, 0)], rows[max(at, 1)]
    share = math.log(grit / low.grit) / math.log(high.grit / low.grit)
    ends = getattr(low, side), getattr(high, side)
    return float(ends[0] * math.pow(ends[1] / ends[0], share))


def dress_plan(
    kind: str,
    wheel_width: float,
    turning_speed: float,
    tip_radius: float,
    grit: float = 46.0,
    handle_travel: float = 0.0,
) -> Answer:
    """Depth, passes, seconds across the face, turns of the handle, and the finish to expect."""
    depth = DEPTHS[kind]
    low, high = OVERLAPS[kind]
    least, most = (
        seconds_for_overlap(u, wheel_width, turning_speed, tip_radius, depth) for u in (low, high)
    )
    lines = [
        Line("depth of a pass", value=depth, dimension="length"),
        Line("passes", PASSES[kind]),
        Line("seconds from edge to edge", value=least, highest=most, dimension="time"),
        Line("overlap", f"{low:g} to {high:g}"),
        Line("finish to expect, Ra about", value=expected_roughness(grit, (low + high) / 2),
             dimension="roughness"),
    ]  # fmt: skip
    if handle_travel > 0:
        turns = wheel_width / handle_travel
        lines.append(Line("turns of the handle in that time", value=turns, dimension="turns"))
    return Answer(tuple(lines), _PLAN[kind])


_LOCK = "Lock the table, tug the dresser, start in the middle of the face, keep the hand even."
_PLAN = {
    "rough": f"Opens the wheel: cool and free, a rougher face. {_LOCK}",
    "medium": f"For most work. {_LOCK}",
    "fine": f"Closes the wheel: smooth, but it burns and loads sooner. {_LOCK}",
}


def overlap_means(overlap: float) -> str:
    """What an overlap does to the wheel, in one sentence."""
    if overlap < 1:
        return "The diamond leaves strips untouched: a thread on the work. Go slower."
    if overlap < 2:
        return "Very open: free and rough, the lead of the diamond may show. Slower for a finish."
    if overlap <= 3:
        return "Rough, open dress: right for taking stock and against burn."
    if overlap <= 5:
        return "Medium dress: right for most work."
    if overlap <= 8:
        return "Fine dress: a smooth face, but it runs hot and loads. Right only for a finish."
    return "Closed: the diamond rubbed the grains flat. It burns and glazes; dress again, faster."


def _of_overlap(_given: dict[str, float], overlap: float) -> str:
    return overlap_means(overlap)


def _of_seconds(given: dict[str, float], _seconds: float) -> str:
    return f"Count it aloud. {overlap_means(given['overlap'])}"


def _of_speed(_given: dict[str, float], speed: float) -> str:
    return f"A 13 mm (1/2 in) face takes {show(0.0127 / speed, 'time')} at this speed."


def _of_lead(_given: dict[str, float], lead: float) -> str:
    return f"Lines on the work {show(lead, 'length')} apart come from the dress."


def _of_width(_given: dict[str, float], width: float) -> str:
    return f"A lead of half of it, {show(width / 2, 'length')} a turn, is an overlap of 2."


def _of_cusp(_given: dict[str, float], height: float) -> str:
    return (
        f"The thread stands {show(height, 'length')} high on the wheel; the work shows part of it. "
        "Half the lead leaves a quarter of the height."
    )


def _of_roughness(_given: dict[str, float], roughness: float) -> str:
    low, high = show(roughness / 2, "roughness"), show(roughness * 2, "roughness")
    return f"{low} to {high} in practice: spark-out, coolant and wear of the wheel move it."


_EXAMPLE = "U_d = b_d / s_d, published dressing example (Modern Grinding Technology)"
_TIP = "For a round tip; a diamond with a flat cuts as wide as the flat, whatever the depth."
_DIAMOND = {"tip_radius": "0.3 mm", "dress_depth": "0.02 mm"}

CALCULATIONS = (
    Calculation(
        "diamond-width", "active width of the diamond", inputs("tip_radius", "dress_depth"),
        "length", diamond_width, "2 x root of (2 x radius x depth - depth x depth)", _of_width,
        _EXAMPLE, "confirmed", _TIP,
    ),
    Calculation(
        "dress-speed", "speed of the diamond from seconds across the face",
        inputs("wheel_width", "face_time"), "speed", dress_speed, "width of face / seconds",
        _of_speed, "plain geometry", "derived", "A mean: a hand speeds up and slows down.",
    ),
    Calculation(
        "dress-lead", "travel of the diamond in one turn", inputs("dress_speed", "turning_speed"),
        "length", dress_lead, "speed of the diamond / turning speed", _of_lead, _EXAMPLE,
        "confirmed", "The turning speed of the wheel, not of the motor, if a belt is between.",
    ),
    Calculation(
        "dress-overlap", "overlap of a dress from seconds across the face",
        inputs("face_time", "wheel_width", "turning_speed", **_DIAMOND), "ratio", overlap,
        "diamond width x turning speed x seconds / width of face", _of_overlap, _EXAMPLE,
        "confirmed", _TIP,
    ),
    Calculation(
        "dress-seconds", "seconds across the face for a wanted overlap",
        inputs("overlap", "wheel_width", "turning_speed", **_DIAMOND), "time",
        seconds_for_overlap, "overlap x width of face / (turning speed x diamond width)",
        _of_seconds, _EXAMPLE, "confirmed", _TIP,
    ),
    Calculation(
        "dress-speed-wanted", "speed of the diamond for a wanted overlap",
        inputs("overlap", "turning_speed", **_DIAMOND), "speed", speed_for_overlap,
        "diamond width x turning speed / overlap", _of_speed, _EXAMPLE, "confirmed", _TIP,
    ),
    Calculation(
        "cusp-height", "height of the thread the diamond leaves",
        inputs("dress_lead", "tip_radius"), "length", cusp_height,
        "lead x lead / (8 x tip radius)", _of_cusp, "plain geometry", "derived",
        "On the wheel; the work shows less of it. Meaningless below one turn an active width.",
    ),
    Calculation(
        "expected-roughness", "Ra to expect of a grit and a dress", inputs("grit", overlap="3"),
        "roughness", expected_roughness,
        "table of Ra by grit; roughest at overlap 2, finest at 8", _of_roughness,
        "table of grit and attainable Ra", "from memory",
        "Half to double. Sharp alumina wheel, steel, two or more spark-out passes.",
    ),
)  # fmt: skip

WORKED = (
    Worked(
        id="dress-plan",
        name="depth, passes and seconds for a rough, medium or fine dress",
        inputs=(
            WordInput("kind", "kind of dress", tuple(OVERLAPS)),
            *inputs("wheel_width", "turning_speed", tip_radius="0.3 mm", grit="46"),
            Input("handle_travel", "length", "crossfeed for one turn of the handle", "0 mm"),
        ),
        function=dress_plan,
        formula="overlap x width of face / (turning speed x diamond width)",
        source=_EXAMPLE + "; ranges of overlap from memory",
        standing="from memory",
        limits=_TIP,
    ),
)
