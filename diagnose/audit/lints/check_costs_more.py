"""A check that another one beats: it tells no more and costs more."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.model import ALWAYS, Check


def look(study: Study) -> Iterator[Remark]:
    """Pick-one checks that mean just the same findings as a cheaper one asked just as freely."""
    book = study.book
    plain = [
        c
        for c in book.checks.values()
        if c.kind == "one" and not (c.reports or c.gate or c.trial or c.id in study.looked_at)
    ]
    for check in plain:
        for other in book.checks.values():
            if other.kind == "one" and other.id != check.id and _beats(other, check):
                what = f"{other.id} tells as much in less time ({other.minutes:g} min)"
                yield Remark(
                    "check", check.id, ("minutes",), what, "take it out, or say what it adds"
                )
                break


def _beats(one: Check, other: Check) -> bool:
    settled, wanted = _settled(one), _settled(other)
    stops = any(o.raises or o.clears for o in other.options)
    return (
        bool(wanted)
        and not stops
        and wanted <= settled
        and one.minutes < other.minutes
        and set(one.needs) <= set(other.needs)
        and set(one.tools) <= set(other.tools)
        and set(one.spoiled_by) <= set(other.spoiled_by)
        and not one.changes
        and one.asked_when in (other.asked_when, ALWAYS)
    )


def _settled(check: Check) -> set[tuple[str, str]]:
    return {(f, v) for o in check.options for f, v in o.means.items()}


LINT = Lint(
    id="check-costs-more",
    says="A check that another one beats: it tells no more and costs more.",
    page=(
        "When two checks settle the same thing, as exactly, and one takes less time with no "
        "more tools, the other is never worth asking. Take it out, or say what it adds."
    ),
    file="checks/machine/stream-by-lamp.yaml",
    good="minutes: 0.5\n",
    bad="minutes: 5\n",
    look=look,
)
