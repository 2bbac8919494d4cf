"""Every number of a drilled case held against the formulas of `diagnose.physics`."""

from __future__ import annotations

from diagnose.book.model import Book
from diagnose.case.entries import UNKNOWN
from diagnose.drill.drawn import Drill
from diagnose.physics import cutting, dressing, holding, trials, vibration, wheel
from diagnose.physics.quantities import Quantity, read_quantity

ROUNDED = 0.06  # two figures of a count, and of what it is set against
RATIO = {"once-a-turn": (0.8, 1.25), "twice-a-turn": (1.75, 2.3), "several-a-turn": (2.3, 99.0),
         "no-clear-rhythm": (1.25, 1.75), "slower-than-the-wheel": (0.0, 0.8)}  # fmt: skip
FOLLOWS = {"stays-in-place": (-9.0, 0.3), "not-clear": (0.3, 0.7), "follows-the-speed": (0.7, 9.0),
           "stays-the-same": (-9.0, 0.3), "follows-the-wheel": (0.7, 9.0)}  # fmt: skip
HELD = {"comes-with-release": (0.0, 0.35), "not-clear": (0.35, 0.65),
        "there-while-held": (0.65, 9.0)}  # fmt: skip
BACK = {"yes": (0.5, 1.6), "no": None}


def numbers(book: Book, drill: Drill) -> dict[str, Quantity]:
    """Every number of a case by its check."""
    return {
        n: read_quantity(v, book.checks[n].dimension)
        for n, v in drill.answers.items()
        if book.checks[n].kind == "number" and v != UNKNOWN
    }


def faults(book: Book, drill: Drill) -> list[str]:
    """What does not agree, in words; none for a sound case."""
    read = numbers(book, drill)
    value = {n: q.value for n, q in read.items()}
    found = [f"{n} outside its range" for n, v in value.items() if not _inside(book, n, v)]
    found += _wheel(value) + _bars(drill, value) + _bow(drill, value) + _cut(value)
    return found


def _inside(book: Book, name: str, value: float) -> bool:
    check = book.checks[name]
    low = check.lowest if check.lowest is not None else value
    high = check.highest if check.highest is not None else value
    return low <= value <= high


def _wheel(v: dict[str, float]) -> list[str]:
    rim = wheel.wheel_speed(v["wheel-diameter"], v["spindle-speed"])
    found = []
    if not 15.0 <= rim <= v["marked-rim-speed"]:
        found.append(f"rim speed {rim:.1f} m/s is not one of a shop")
    share = wheel.over_marked_speed(v["wheel-diameter"], v["spindle-speed"], v["marked-rim-speed"])
    if share > 1.0:
        found.append("the spindle is over the mark")
    if v["marked-turning-speed"] < v["spindle-speed"]:
        found.append("the spindle is over the marked turns")
    return found


def _bars(drill: Drill, v: dict[str, float]) -> list[str]:
    if "bars-in-25mm" not in v or drill.bar_rate is None:
        return []
    spacing = vibration.mark_spacing(v["bars-in-25mm"], 0.025)
    rate = vibration.mark_frequency(spacing, v["table-speed"])
    found = []
    if abs(rate / drill.bar_rate - 1.0) > 1e-9:
        found.append("bars, table speed and the rate of what shakes do not agree")
    ratio = vibration.marks_per_wheel_turn(spacing, v["table-speed"], v["spindle-speed"])
    found += _within("bars a turn", ratio, RATIO[drill.signs["bar-rhythm"]])
    if "bars-at-quicker-table" in v:
        wide = vibration.mark_spacing(v["bars-at-quicker-table"], 0.025)
        moved = trials.table_speed_trial(spacing, v["table-speed"], wide, v["quicker-table-speed"])
        found += _within("table trial", moved, FOLLOWS[drill.signs["spacing-at-other-speed"]])
    if "bars-at-slower-wheel" in v:
        slow = vibration.mark_frequency(
            vibration.mark_spacing(v["bars-at-slower-wheel"], 0.025), v["table-speed"]
        )
        followed = trials.wheel_speed_trial(slow, v["slower-wheel-speed"], rate, v["spindle-speed"])
        found += _within("wheel trial", followed, FOLLOWS[drill.signs["rate-at-slower-wheel"]])
    return found


def _bow(drill: Drill, v: dict[str, float]) -> list[str]:
    if "bow-free" not in v or "bow-held" not in v:
        return []
    found = _within(
        "bow held", v["bow-held"] / v["bow-free"], HELD[drill.signs["when-the-bow-comes"]]
    )
    if "bow-before" in v:
        back = holding.bow_returned(750e3, v["bow-before"], v["part-length"], v["part-thickness"])
        inside = 0.5 * back <= v["bow-free"] <= 1.6 * back
        if inside != (drill.signs["bow-as-the-magnet-gives-back"] == "yes"):
            found.append("the bow is not what the magnet gives back")
    return found


def _cut(v: dict[str, float]) -> list[str]:
    found = []
    if cutting.crossfeed_overlap(v["wheel-width"], v["crossfeed"]) < 1.0 - ROUNDED:
        found.append("the crossfeed is wider than the wheel")
    if "dress-seconds" in v:
        pace = dressing.dress_speed(v["wheel-width"], v["dress-seconds"])
        lead = dressing.dress_lead(pace, v["spindle-speed"])
        if not 1e-6 <= lead <= 1e-3:
            found.append(f"a lead of {lead * 1e3:.3f} mm a turn is no dress")
    if v["part-thickness"] >= v["part-base"]:
        found.append("the part stands higher than it is wide")
    return found


def _within(what: str, value: float, limits: tuple[float, float]) -> list[str]:
    low, high = limits
    wide = ROUNDED * max(1.0, abs(value))
    return [] if low - wide <= value <= high + wide else [f"{what} is {value:.2f}"]
