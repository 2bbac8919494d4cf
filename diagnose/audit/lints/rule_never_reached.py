"""A rule that waits for a fact which nothing reachable gives."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study
from diagnose.book.build_rules import LITERAL
from diagnose.book.grid_checks import grid_numbers
from diagnose.book.model import Rule


def look(study: Study) -> Iterator[Remark]:
    """Rules whose facts never all become known."""
    book = study.book
    known = set(book.checks) | set(book.symptoms) | set(grid_numbers(book))
    for check in book.checks.values():
        known |= {f for o in check.options for f in o.means}
        known |= {check.reports.finding} if check.reports else set()
    left = dict(book.rules)
    while True:
        fired = [r for r in left.values() if _needs(r) <= known]
        if not fired:
            break
        for rule in fired:
            del left[rule.id]
            known |= {t.finding for t in rule.then if t.finding}
            known |= {rule.work_out.gives} if rule.work_out else set()
    for rule in left.values():
        lacking = sorted(_needs(rule) - known)
        what = f"this rule never fires: nothing gives {', '.join(lacking)}"
        yield Remark("rule", rule.id, ("id",), what, "give the fact, or take the rule out")


def _needs(rule: Rule) -> set[str]:
    facts = set(rule.when.facts)
    if rule.work_out is not None:
        facts |= {v for v in rule.work_out.inputs.values() if not LITERAL.match(v)}
    return facts


LINT = Lint(
    id="rule-never-reached",
    says="A rule that waits for a fact which nothing reachable gives.",
    page=(
        "Rules chain: one works out a number that another needs. When the first can never fire,"
        " or a fact of the chain is given by nothing, the rest of the chain is dead."
    ),
    file="rules/bars.yaml",
    good="- id: bars-slower-than-the-wheel\n",
    bad=(
        "- id: goes-round\n"
        "  name: a number that waits for another\n"
        "  when: {wave-count: {above: 1}}\n"
        "  work_out:\n"
        "    with: marks-per-wheel-turn\n"
        "    from: {spacing: bar-spacing, table_speed: table-speed, turning_speed:"
        " spindle-speed}\n"
        "    gives: wave-number\n"
        "  because: it waits for the next\n"
        "  source: common-practice\n"
        "- id: and-round\n"
        "  name: a number that waits for the first\n"
        "  when: {wave-number: {above: 1}}\n"
        "  work_out:\n"
        "    with: marks-per-wheel-turn\n"
        "    from: {spacing: bar-spacing, table_speed: table-speed, turning_speed:"
        " spindle-speed}\n"
        "    gives: wave-count\n"
        "  because: it waits for the one before\n"
        "  source: common-practice\n"
        "- id: bars-slower-than-the-wheel\n"
    ),
    look=look,
)
