"""The result as JSON: the documented schema, then everything else the view holds."""

from __future__ import annotations

import dataclasses
from typing import Any

from diagnose.view.result import CheckView, ResultView

SCHEMA = 1


def result_json(view: ResultView) -> dict[str, Any]:
    """The view as plain JSON data; keys as README documents them."""
    body: dict[str, Any] = {
        "schema": SCHEMA,
        "case": view.case,
        "title": view.title,
        "complaint": [name for name, _ in view.complaint],
        "date": view.date,
        "knowledge": view.version,
        "stops": [
            {
                "id": s.id,
                "kind": s.kind,
                "text": s.what_is_wrong,
                "name": s.name,
                "do_first": list(s.do_first),
                "cleared_when": s.cleared_when,
                "because": list(s.because),
                "cards": [c.id for c in s.cards],
            }
            for s in view.stops
        ],
        "safe_to_turn": view.safe,
        "hazards_open": list(view.open_hazards),
        "headline": view.headline,
        "first_action": view.first_action,
        "causes": [
            {
                "id": c.id,
                "name": c.name,
                "probability": c.probability,
                "words": c.words,
                "cures_alone": c.cures_alone,
                "present": c.present,
                "origin": c.origin,
                "status": c.status,
                "fix_minutes": {
                    "first_time": c.fix_minutes_first,
                    "practised": c.fix_minutes_practised,
                },
                "for": [dataclasses.asdict(r) for r in c.reasons_for],
                "against": [dataclasses.asdict(r) for r in c.reasons_against],
            }
            for c in view.causes
        ],
        "several_together": view.several_together,
        "none_of_these": view.none_of_these,
        "also_present": [{"name": n, "probability": p} for n, p in view.also_present],
        "found": [{"name": h.name, "how_far": h.how_far} for h in view.helped],
        "next": _next(view),
        "walk": [_check(c) for c in view.walk],
        "plan": dataclasses.asdict(view.plan),
        "findings": [
            {"id": f.id, "name": f.name, "value": f.value, "from": list(f.from_), "sure": f.degree}
            for f in view.findings
        ],
        "readings": [dataclasses.asdict(r) for r in view.readings],
        "notes": list(view.notes),
        "cautions": [dataclasses.asdict(c) for c in view.cautions],
        "not_asked": [c.id for c in view.not_asked],
        "unknown_answers": list(view.unknown_answers),
        "ruled_out": [dataclasses.asdict(r) for r in view.ruled_out],
        "set_aside": list(view.set_aside),
        "too_close": view.too_close,
        "sources": [dataclasses.asdict(s) for s in view.sources],
        "earlier": [dataclasses.asdict(e) for e in view.earlier],
        "differs_from_good": [dataclasses.asdict(d) for d in view.differs],
        "shakers": dataclasses.asdict(view.shakers) if view.shakers else None,
        "limits": [dataclasses.asdict(each) for each in view.limits],
        "grids": [dataclasses.asdict(each) for each in view.grids],
        "stability": None,
    }
    if view.stability is not None:
        body["stability"] = {
            "first_in": view.stability.first_in,
            "of": view.stability.of,
            "rival": view.stability.rival,
            "firm": view.stability.firm,
        }
    return body


def _next(view: ResultView) -> dict[str, Any] | None:
    step = view.next
    if step.check is None:
        return None if step.kind == "stuck" else {"fix": step.fix, "why": step.why}
    return {"kind": step.kind, **_check(step.check), "why": step.why}


def _check(check: CheckView) -> dict[str, Any]:
    return {
        "check": check.id,
        "ask": check.ask,
        "minutes": check.minutes,
        "wheel": check.wheel,
        "answers": [dataclasses.asdict(o) for o in check.outcomes],
    }
