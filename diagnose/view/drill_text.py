"""A drill as plain text: the start, a move, the list of checks, the debrief, the course."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from diagnose.view.drill import (
    CheckLine,
    DebriefView,
    HazardView,
    Move,
    Opening,
    ProgressView,
    SideBySide,
    StepView,
    TeacherView,
)
from diagnose.view.folding import wrapped
from diagnose.view.result import minutes, percent

KEYS = (
    "Type the number or the words of a check (several with commas).",
    "g safety questions, s STOP: I saw a hazard, l list of checks, l part (wheel, machine,",
    "history, bench), c list of causes, c WORDS name the cause and do its cure, n what I saw,",
    "h hint, q call for help, ? these lines",
)
BAR = 20  # signs of a bar
FULL = 3.0  # log-odds that fill it


def opening_text(view: Opening) -> str:
    """The story, and what can be typed."""
    who = f"{view.title}, level {view.level}" + (f", {view.learner}" if view.learner else "")
    lines = [who, ""] + [wrapped(line) for line in view.story]
    lines += ["", "Find the cause. Every minute counts, and so does every hazard.", ""]
    return "\n".join([*lines, *KEYS])


def checks_text(lines: Sequence[CheckLine]) -> str:
    """Numbered checks under the place where they are made."""
    out = []
    for place, group in groupby(lines, key=lambda c: c.place):
        out.append(f" {place.capitalize()}")
        for line in group:
            mark = "x" if line.asked else " "
            wheel = f", {line.wheel}" if line.wheel else ""
            text = f"{line.name} ({minutes(line.minutes)}{wheel})"
            out.append(wrapped(text, 8, f"{line.number:>5} {mark} "))
    return "\n".join(out)


def causes_text(causes: Sequence[str]) -> str:
    """Numbered causes."""
    lines = [wrapped(name, 7, f"{n:>5}  ") for n, name in enumerate(causes, 1)]
    return "\n".join([*lines, "c and a number, or c and words, names one and does its cure."])


def move_text(move: Move, spent: float) -> str:
    """What a move showed, and the minutes so far."""
    lines = []
    if move.ask and move.kind != "hint":
        lines.append(wrapped(move.ask))
    if move.seen:
        lines += [wrapped(part, 3) for part in move.seen.splitlines()]
    if move.note:
        lines.append(wrapped(move.note, 3))
    if not move.free and move.minutes:
        lines.append(f"   {minutes(move.minutes)}; {minutes(spent)} so far.")
    return "\n".join(lines)


def seen_text(moves: Sequence[Move], spent: float) -> str:
    """Everything seen so far."""
    lines = [wrapped(f"{m.ask} {m.seen}", 5, "   - ") for m in moves if not m.free]
    return "\n".join([*(lines or ["Nothing yet."]), f"   {minutes(spent)} so far."])


def debrief_text(view: DebriefView) -> str:
    """The debrief; a hazard that was missed is the first thing said."""
    parts = [
        wrapped(view.first),
        _verdict(view),
        _hazard(view.hazard) if view.hazard else "",
        _what(view),
        _minutes(view),
        _steps(view.steps),
        _pairs("How to tell it from what you named", view.swapped),
        _pairs("Look-alikes", view.look_alikes),
        _ways(view),
        "\n".join(["Next time", *(wrapped(t, 5, "   - ") for t in view.next_time)])
        if view.next_time
        else "",
        "\n".join(["Sources", *(wrapped(f"{s.title} ({s.standing})", 5, "   - ")
                                for s in view.sources)]),
    ]  # fmt: skip
    return "\n\n".join(p for p in parts if p) + "\n"


def _verdict(view: DebriefView) -> str:
    lines = [f"{'Passed' if view.passed else 'Not passed'}, {view.score} of 100 points."]
    lines += [wrapped(w, 5, "   - ") for w in view.why]
    return "\n".join(lines)


def _hazard(view: HazardView) -> str:
    lines = [
        f"The hazard: {view.name}",
        wrapped(view.what_is_wrong, 3),
        wrapped(f"Seen at: {view.seen_at} {view.answer}.", 3),
        wrapped(view.how, 3),
        *(wrapped(step, 5, "   - ") for step in view.do_first),
        wrapped(f"Source: {view.source.title} ({view.source.standing})", 3),
    ]
    return "\n".join(lines)


def _what(view: DebriefView) -> str:
    lines = [f"It was: {view.cause}", wrapped(view.summary, 3)]
    for arrow in view.chain:
        lines.append(wrapped(f"{arrow.from_} -> {arrow.to}: {arrow.because}", 5, "   - "))
    lines += [wrapped(f"Take care: {c.say}", 3) for c in view.cautions]
    lines += [wrapped(f"Cure: {view.fix}", 3), wrapped(f"Proof: {view.proof}", 3)]
    return "\n".join([*lines, wrapped(view.typical, 3)])


def _minutes(view: DebriefView) -> str:
    rows = [wrapped(f"{minutes(r.minutes)}  {r.label}, {r.note}", 6, "   ") for r in view.minutes]
    return "\n".join(["Minutes", *rows])


def _steps(steps: Sequence[StepView]) -> str:
    lines = ["Your steps"] if steps else []
    for step in steps:
        lines.append(wrapped(f"{step.number}. {step.ask} {step.seen}", 6, "   "))
        if step.counts:
            lines.append(f"      {_bar(step.share)} {percent(step.chance)}")
        if step.told:
            lines.append(wrapped(step.told, 6))
        if step.better:
            lines.append(wrapped(step.better, 6))
    return "\n".join(lines)


def _bar(share: float) -> str:
    """A bar from the middle, to the right for the cause."""
    if share != share:
        return f"[{'?':^{2 * BAR // 2}}]"
    half = BAR // 2
    length = min(half, round(abs(share) / FULL * half))
    left = " " * half if share > 0 else ("-" * length).rjust(half)
    right = ("+" * length).ljust(half) if share > 0 else " " * half
    return f"[{left}|{right}]"


def _pairs(title: str, pairs: Sequence[SideBySide]) -> str:
    return "\n".join([title, *(pair_text(p) for p in pairs)]) if pairs else ""


def pair_text(pair: SideBySide) -> str:
    """Two things side by side, and the deciding look."""
    cost = f" ({minutes(pair.minutes)})" if pair.minutes else ""
    lines = [
        wrapped(f"{pair.one} ~ {pair.other}", 3),
        wrapped(f"Look: {pair.look}{cost}", 6),
        wrapped(f"{pair.one}: {pair.one_says}", 6),
        wrapped(f"{pair.other}: {pair.other_says}", 6),
    ]
    if pair.because:
        lines.append(wrapped(f"Why: {pair.because}", 6))
    return "\n".join([*lines, wrapped(f"({pair.source.title}, {pair.source.standing})", 6)])


def _ways(view: DebriefView) -> str:
    lines = []
    if view.missed_most:
        lines += ["Not asked, and would have told most", wrapped(view.missed_most, 3)]
    if view.proof_way:
        lines += ["The shortest proof found", *(wrapped(w, 5, "   - ") for w in view.proof_way)]
    lines += ["How the tool went", *(wrapped(w, 5, "   - ") for w in view.tool_way)]
    return "\n".join(lines)


def progress_text(view: ProgressView) -> str:
    """Where a learner stands."""
    lines = [
        f"{view.learner}: level {view.level} of {view.highest}; {view.drills} drills, "
        f"{view.passed} passed; hazards caught: {view.hazards_caught} of {view.hazards}.",
        wrapped(view.to_open, 3),
    ]
    lines += [wrapped(f"comes back: {d}", 3) for d in view.due]
    lines += [wrapped(f"it was {a}, named {b}: {n}", 3) for a, b, n in view.swaps]
    return "\n".join([*lines, *(pair_text(p) for p in view.pairs)])


def teacher_text(view: TeacherView) -> str:
    """All learners, and the table of confusions."""
    if not view.learners:
        return "Nobody has drilled in this shop yet: diagnose drill --learner NAME"
    lines = [progress_line(p) for p in view.learners]
    lines += ["", "It was -> named (how often, by whom)"]
    for was, named, who, count in view.table:
        lines.append(wrapped(f"{was} -> {named}: {count} ({', '.join(who)})", 5, "   - "))
    if not view.table:
        lines.append("   nothing was taken for anything else yet")
    return "\n".join([*lines, *(pair_text(p) for p in view.pairs)])


def progress_line(view: ProgressView) -> str:
    """One learner in one line."""
    return wrapped(
        f"{view.learner}: level {view.level}, {view.drills} drills, {view.passed} passed, "
        f"hazards caught {view.hazards_caught} of {view.hazards}", 3, "",
    )  # fmt: skip
