"""The result as plain text for a terminal; survives cp1252 and needs no colour."""

from __future__ import annotations

import textwrap

from diagnose.view.drawn_text import grid_lines, limit_lines, shakers_lines
from diagnose.view.result import (
    CardRef,
    CauseView,
    CheckView,
    EarlierView,
    FixView,
    ReasonView,
    ResultView,
    StopView,
    minutes,
    percent,
)

WIDTH = 78


def result_text(view: ResultView, *, short: bool = False) -> str:
    """The whole result; `short` stops after the first action and the causes."""
    parts = [_head(view), *_stops(view), _first(view), _causes(view), shop_text(view)]
    if not short:
        parts += [_why(view), _plan(view), _readings(view), _loose_ends(view)]
    return "\n\n".join(p for p in parts if p) + "\n"


def _wrap(text: str, indent: str = "", first: str | None = None) -> str:
    return textwrap.fill(
        text,
        WIDTH,
        initial_indent=indent if first is None else first,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )


def _head(view: ResultView) -> str:
    lines = [view.title.upper() if view.title else "CASE"]
    lines.append(_wrap("Complaint: " + "; ".join(name for _, name in view.complaint)))
    where = [w for w in (view.machine, view.wheel, view.part) if w]
    if where:
        lines.append(_wrap("On: " + ", ".join(where)))
    return "\n".join(lines)


def _stops(view: ResultView) -> list[str]:
    return [stop_text(s) for s in view.stops]


def stop_text(stop: StopView) -> str:
    """One stop or hold, for the screen."""
    word = "STOP" if stop.kind == "stop" else "PUT THE PART ASIDE"
    lines = [_wrap(f"*** {word}: {stop.name} ***", "    ", ""), _wrap(stop.what_is_wrong)]
    lines += [_wrap(f"because {b}", "    ", "  - ") for b in stop.because]
    lines.append("Do first:")
    lines += [_wrap(do, "    ", f" {n}. ") for n, do in enumerate(stop.do_first, 1)]
    lines.append(_wrap(f"Cleared when: {stop.cleared_when}"))
    lines += [_wrap(card_line(card)) for card in stop.cards]
    lines.append(_wrap(f"Source: {stop.source.title} ({stop.source.standing})"))
    return "\n".join(lines)


def card_line(card: CardRef) -> str:
    """Where a guided card is found."""
    return f"guided card: diagnose explain {card.id} ({card.name})"


def _first(view: ResultView) -> str:
    lines = [_wrap(view.headline)]
    if view.too_close:
        lines.append(_wrap(view.too_close))
    lines.append(_wrap(f"First: {view.first_action}"))
    if view.next.check is not None and not view.stops:
        lines.append(_wrap(f"({minutes(view.next.check.minutes)}; {view.next.why})"))
    return "\n".join(lines)


def _causes(view: ResultView) -> str:
    lines = ["WHAT ACTS ON THIS COMPLAINT"]
    lines += [_wrap(f"found: {h.name}; {h.how_far}", "        ", "      ") for h in view.helped]
    for number, cause in enumerate(view.causes, 1):
        lines.append(_cause_line(number, cause))
    lines.append(f"      several together  {percent(view.several_together)}")
    lines.append(f"      none of these     {percent(view.none_of_these)}")
    lines += [
        f"      also present, not the cure: {name} ({percent(p)})" for name, p in view.also_present
    ]
    if view.stability is not None:
        s = view.stability
        lines.append(f"      first in {s.first_in} of {s.of} draws with every word moved a step")
    return "\n".join(lines)


def _cause_line(number: int, cause: CauseView) -> str:
    fix = f"{minutes(cause.fix_minutes_practised)} to {minutes(cause.fix_minutes_first)}"
    own = f" [{cause.origin}, {cause.status}]" if cause.origin else ""
    return _wrap(
        f"{cause.name}: {percent(cause.probability)}, {cause.words}; "
        f"alone {percent(cause.cures_alone)}; fix {fix}{own}",
        "      ",
        f"  {number:>2}. ",
    )


def shop_text(view: ResultView) -> str:
    """What differs from the healthy record, and earlier cases like this one; "" for nothing."""
    lines = [f"NOT AS WHEN IT GROUND WELL ({view.differs[0].date})"] if view.differs else []
    for d in view.differs:
        tail = f" ({d.times} that)" if d.times else ""
        lines.append(_wrap(f"{d.name}: {d.now} now, {d.good} then{tail}", "    ", "  - "))
    if view.earlier:
        lines += ["", "EARLIER CASES LIKE IT"] if lines else ["EARLIER CASES LIKE IT"]
    lines += [line for e in view.earlier for line in earlier_lines(e)]
    return "\n".join(lines)


def earlier_lines(earlier: EarlierView) -> list[str]:
    """One earlier case: what it was, how far it is like this one, what was done."""
    e = earlier
    on = f" on {e.machine}" if e.machine else ""
    wheel = f" with {e.wheel}" if e.wheel else ""
    took = f", took {e.took}" if e.took else ""
    lines = [_wrap(e.said, "    ", "  - ")]
    lines.append(_wrap(f"{e.title}{on}{wheel} ({e.date}{took}; {e.alike}): {e.case}", "    "))
    if e.done:
        lines.append(_wrap(f"done: {e.done}", "    "))
    return lines


def _why(view: ResultView) -> str:
    lines: list[str] = []
    for cause in view.causes[:2]:
        if cause.reasons_for or cause.reasons_against:
            lines.append(f"WHY {cause.name.upper()}")
            lines += [_reason(r, "for") for r in cause.reasons_for]
            lines += [_reason(r, "against") for r in cause.reasons_against]
        lines += [_wrap(f"{a.from_} -> {a.to}: {a.because}", "      ", "    ") for a in cause.chain]
    return "\n".join(lines)


def _reason(reason: ReasonView, word: str) -> str:
    entry = ", ".join(f"answer {n}" if n else "from the set-up" for n in reason.entries)
    tail = f" ({entry})" if entry else ""
    return _wrap(f"{word:<8}{reason.share:+.1f}  {reason.text}{tail}", " " * 16, "    ")


def _plan(view: ResultView) -> str:
    lines = ["WHAT TO DO"]
    if view.plan.part:
        lines.append("The part:")
        lines += [_wrap(f"{p.action}: {p.say}", "    ", "  - ") for p in view.plan.part]
    if view.plan.first_aid:
        lines.append("First aid, to go on tonight:")
        for aid in view.plan.first_aid:
            lines += [_wrap(f"take care: {c.say}", "    ", "  ! ") for c in aid.cautions]
            text = f"{aid.do} ({aid.because})"
            wait = "after the safety questions: "
            lines.append(_wrap((wait if aid.withheld else "") + text, "    ", "  - "))
    if view.plan.cure:
        lines.append("The cure, first things first:")
        for number, fix in enumerate(view.plan.cure, 1):
            lines += fix_lines(fix, number)
        lines.append(_wrap(_how_long(view)))
    lines += [_wrap(card_line(card), "    ", "  > ") for card in view.plan.cards]
    return "\n".join(lines)


def _how_long(view: ResultView) -> str:
    plan = view.plan
    told = f"About {minutes(plan.expected_minutes)} expected if you fix now and ask no more; "
    if plan.quick_minutes >= plan.slow_minutes:
        return told + f"mostly {minutes(plan.slow_minutes)}, help from outside included."
    quick = f"one case in ten {minutes(plan.quick_minutes)}"
    return told + f"{quick}, nine in ten within {minutes(plan.slow_minutes)}."


def fix_lines(fix: FixView, number: int) -> list[str]:
    """One step of the cure: cautions before it, proof after."""
    cost = f"{minutes(fix.minutes_practised)} practised, {minutes(fix.minutes_first)} first time"
    lines = [
        _wrap(
            f"{fix.do} [{percent(fix.cures_alone)}; {cost}] for: {', '.join(fix.causes)}",
            "     ",
            f"  {number}. ",
        )
    ]
    if fix.call_someone:
        lines.append(_wrap(f"call someone: {fix.call_someone}", "       ", "     "))
    lines += [_wrap(f"take care: {c.say}", "       ", "     ! ") for c in fix.cautions]
    if fix.withheld:
        lines.append("     (answer the safety questions first; the steps come then)")
    lines += [_wrap(step, "       ", "     - ") for step in fix.steps]
    if fix.proof:
        lines.append(_wrap(f"proof: {fix.proof}", "       ", "     = "))
    return lines + [_wrap(card_line(card), "       ", "     > ") for card in fix.cards]


def _readings(view: ResultView) -> str:
    if not view.readings:
        return ""
    lines = ["READINGS"]
    for r in view.readings:
        band = f" ({r.low} to {r.high})" if r.low != r.high else ""
        kind = "" if r.measured else " [worked out]"
        lines.append(_wrap(f"{r.name}: {r.value}{band}{kind}", "    ", "  - "))
    told = [*shakers_lines(view.shakers), *limit_lines(view.limits)]
    lines += [_wrap(t, "    ", "  - ") for t in told]
    for grid in view.grids:
        lines += [f"  {line}" for line in grid_lines(grid)]
    return "\n".join(lines)


def _loose_ends(view: ResultView) -> str:
    lines: list[str] = []
    lines += [_wrap(n, "    ", "  note: ") for n in view.notes]
    lines += [
        _wrap(f"ruled out: {r.name}, because {r.because}", "    ", "  ") for r in view.ruled_out
    ]
    lines += [f"  set aside to keep the sum bounded: {s}" for s in view.set_aside]
    if view.open_hazards:
        lines.append(
            _wrap("not yet cleared: " + "; ".join(view.open_hazards), "    ", "  safety, ")
        )
    lines += [_walk(c) for c in view.walk]
    lines += [f"  source: {s.title} ({s.standing})" for s in view.sources]
    return "LOOSE ENDS\n" + "\n".join(lines) if lines else ""


def _walk(check: CheckView) -> str:
    return _wrap(f"to check: {check.ask} ({minutes(check.minutes)}) ______", "    ", "  ")
