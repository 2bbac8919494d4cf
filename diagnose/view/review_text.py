"""A review as plain text for the terminal."""

from __future__ import annotations

import textwrap

from diagnose.view.drawn_text import limit_lines, marking_lines, shakers_lines
from diagnose.view.result import minutes, percent
from diagnose.view.review import ListView, ReviewView, RiskView
from diagnose.view.text import stop_text

WIDTH = 78
ORDERS = ("thin-work", "six-faces")  # lists that are an order of the sides
REST = "The rest (lists to tick, what can shake, readings, what was told, sources)"
BROUGHT = "part and machine bring along, no fault of the plan"


def review_text(view: ReviewView, full: bool = False) -> str:
    """What matters of a review: stops, risks, what to set, wheel, dress, cut, order of the sides
    and what is not known. `full`: the lists to tick, readings, answers and sources as well."""
    parts = [_head(view), *(stop_text(s) for s in view.stops), _first(view), _risks(view)]
    parts += [_against(view), _settings(view), _wheels(view, full), _dress(view), _cut(view)]
    parts += [_list(each) for each in view.lists if full or each.id in ORDERS]
    parts += [_unknown(view)]
    if full:
        parts += [_complaints(view), _shakers(view), _readings(view), _said(view)]
    parts.append(_loose(view, full))
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


def _head(view: ReviewView) -> str:
    lines = [(view.title or "PLANNED JOB").upper(), "Before the cut"]
    where = [w for w in (view.machine, view.wheel, view.part) if w]
    if where:
        lines.append(_wrap("On: " + ", ".join(where)))
    if view.wanted:
        lines.append(_wrap("Wanted: " + "; ".join(f"{w.name} {w.value}" for w in view.wanted)))
    return "\n".join(lines)


def _first(view: ReviewView) -> str:
    lines = [_wrap(view.headline), _wrap(f"First: {view.first_action}")]
    if not view.safe:
        lines.append("Nothing that needs the wheel turning yet.")
    if view.open_hazards:
        lines.append(_wrap("Not yet cleared: " + "; ".join(view.open_hazards), "    ", "  "))
        lines += [_wrap(f"{c.ask} ({minutes(c.minutes)}; {c.why})", "    ", "  - ")
                  for c in view.first_checks]  # fmt: skip
    lines += [_wrap(f"take care: {c.say} [{c.source.id}]", "    ", "  ! ") for c in view.cautions]
    return "\n".join(lines)


def _risks(view: ReviewView) -> str:
    if not view.risks and not view.brought:
        return ""
    lines = ["WHAT MAY GO WRONG, THE HEAVIEST FIRST"]
    for number, risk in enumerate(view.risks, 1):
        lines += _risk(risk, number)
    if view.brought:
        named = "; ".join(f"{b.name}: {b.do}" for b in view.brought)
        lines.append(_wrap(f"{BROUGHT}: {named}", "    ", "  - "))
    lines.append(_wrap(view.yardstick, "  "))
    return "\n".join(lines)


def _risk(risk: RiskView, number: int) -> list[str]:
    pad = " " * 6
    lines = [
        _wrap(
            f"{risk.level}: {risk.name}: {percent(risk.here)} here, {percent(risk.usual)} in any "
            f"job, {percent(risk.after)} with what is recommended",
            pad,
            f"  {number:>2}. ",
        ),
        _wrap(f"shows as: {risk.complaint} ({percent(risk.shows)} of the time); {risk.harm}", pad),
    ]
    for each in risk.shown_by:
        told = f" [{'; '.join(each.shown)}]" if each.shown else ""
        lines.append(_wrap(f"because {each.because}{told} [{each.source.id}]", pad + "  ", pad))
    lines += [_wrap(f"> {c}", pad + "  ", pad) for c in (*risk.change, risk.do)]
    return lines


def _against(view: ReviewView) -> str:
    good = view.against
    if good is None:
        return ""
    lines = ["AGAINST THE LAST GOOD JOB"]
    if good.note:
        lines.append(_wrap(good.note, "  "))
    if good.title:
        where = f": {good.case}" if good.case else ""
        lines.append(
            _wrap(f"{good.title} ({good.date}){where}; {good.same} settings the same", "  ")
        )
    for d in good.differs:
        times = f", {d.times} that" if d.times else ""
        lines.append(_wrap(f"{d.name}: {d.now} now, {d.good} then{times}", "    ", "  - "))
    lines += [
        _wrap(f"not said now: {n.name}, then {n.value}", "    ", "  ? ") for n in good.not_planned
    ]
    return "\n".join(lines)


def _wheels(view: ReviewView, full: bool) -> str:
    lines = ["THE WHEEL"]
    if view.wheel_wanted:
        lines.append(_wrap(f"To begin with: {view.wheel_wanted}", "  "))
    lines += [_wrap(text, "  ") for text in (view.wheel_hint, view.wheel_source) if text]
    for w in view.wheels:
        planned = ", the one planned" if w.planned else ""
        lines.append(_wrap(f"{w.verdict}: {w.name} ({w.id}, {w.marking}){planned}", "    ", "  - "))
        lines += [_wrap(wrong, " " * 8, " " * 6) for wrong in w.wrong]
    if full:
        lines += [_wrap(t, "    ", "  ") for t in marking_lines(view.marking)]
    return "\n".join(lines)


def _dress(view: ReviewView) -> str:
    if not view.dresses:
        return ""
    lines = ["THE DRESS"]
    for d in view.dresses:
        text = (
            f"{d.kind}, {d.use}: {d.seconds} from edge to edge, {d.depth} deep, passes: "
            f"{d.passes}; overlap {d.overlap}; {d.finish}"
        )
        lines.append(_wrap(text, "    ", "  - "))
    lines.append(_wrap(view.dress_note, "  "))
    if view.due is not None:
        text = f"Dress again after about {view.due.strokes} ({view.due.known_from}). "
        lines.append(_wrap(text + view.due.advice, "  "))
    return "\n".join(lines)


def _cut(view: ReviewView) -> str:
    if not view.cuts:
        return ""
    lines = ["THE CUT THIS MACHINE CAN PULL", _wrap(f"Ceiling: {view.ceiling}", "  ")]
    for c in view.cuts:
        text = (
            f"{c.kind}: {c.depth} deep, {c.crossfeed} across, table {c.table}; passes: {c.passes}; "
            f"{c.share} of the ceiling"
        )
        lines.append(_wrap(text, "    ", "  - "))
    lines += [_wrap(view.cut_note, "  "), _wrap(f"Handbook: {view.handbook}", "  ")]
    lines += [_wrap(t, "    ", "  - ") for t in limit_lines(view.limits)]
    return "\n".join(lines)


def _settings(view: ReviewView) -> str:
    if not view.settings:
        return ""
    lines = ["AS PLANNED, AND AS RECOMMENDED"]
    for s in view.settings:
        word = "keep" if s.keep else "set" if s.planned == "not planned" else "change"
        lines.append(
            _wrap(f"{s.name} ({s.check}): {s.planned}; {s.recommended}: {word}", "    ", "  - ")
        )
    return "\n".join(lines)


def _list(each: ListView) -> str:
    lines = [each.title.upper()]
    for step in each.steps:
        lines += [
            _wrap(f"take care: {c.say} [{c.source.id}]", " " * 8, "      ! ") for c in step.cautions
        ]
        lines.append(_wrap(f"{step.do} ({step.because}) [{step.source.id}]", "      ", "  [ ] "))
        if step.check_by:
            lines.append(_wrap(f"done when: {step.check_by}", " " * 8, " " * 6))
    return "\n".join(lines)


def _unknown(view: ReviewView) -> str:
    if not view.unknown and not view.taken:
        return ""
    lines = ["NOT KNOWN"]
    for u in view.unknown:
        about = f" ({minutes(u.check.minutes)}{', ' + u.check.wheel if u.check.wheel else ''})"
        lines.append(_wrap(f"{u.check.ask}{about}", "    ", "  - "))
        lines.append(
            _wrap(
                f"{u.cause} could be {percent(u.least)} to {percent(u.most)}; "
                f"it shows as: {u.complaint}",
                "      ",
                "    ",
            )
        )
    lines += [_wrap(t, "    ", "  - ") for t in view.taken]
    return "\n".join(lines)


def _complaints(view: ReviewView) -> str:
    if not view.complaints:
        return ""
    lines = ["COMPLAINTS MADE LIKELIER"]
    if not view.risks:
        lines.append(_wrap(view.yardstick, "  "))
    lines += [
        _wrap(f"{c.name}: {percent(c.here)} here, {percent(c.usual)} in any job", "    ", "  - ")
        for c in view.complaints
    ]
    return "\n".join(lines)


def _shakers(view: ReviewView) -> str:
    lines = [_wrap(t, "    ", "  - ") for t in shakers_lines(view.shakers)]
    return "\n".join(["WHAT CAN SHAKE ON THIS MACHINE", *lines]) if lines else ""


def _readings(view: ReviewView) -> str:
    if not view.readings:
        return ""
    lines = ["READINGS"]
    for r in view.readings:
        band = f" ({r.low} to {r.high})" if r.low != r.high else ""
        kind = "" if r.measured else " [worked out]"
        lines.append(_wrap(f"{r.name}: {r.value}{band}{kind}", "    ", "  - "))
    return "\n".join(lines)


def _said(view: ReviewView) -> str:
    if not view.entries:
        return ""
    lines = ["WHAT WAS PLANNED"]
    for e in view.entries:
        doubt = "" if e.sure else ", I think so"
        lines.append(_wrap(f"{e.ask} {e.answer} ({e.how}{doubt}, {e.check})", "    ", "  - "))
    return "\n".join(lines)


def _loose(view: ReviewView, full: bool) -> str:
    lines = [_wrap(n, "    ", "  note: ") for n in view.notes]
    if full:
        lines += [
            _wrap(f"[{s.id}] {s.title} ({s.standing})", "    ", "  source: ") for s in view.sources
        ]
    else:
        lines.append(_wrap(f"{REST}: --full", "  "))
    lines.append(f"  {view.date}, knowledge {view.version}")
    return "LOOSE ENDS\n" + "\n".join(lines)
