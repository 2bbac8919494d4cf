"""A question that is none, asks two things, or asks for a no."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study

NEGATIVE = ("not", "isn't", "aren't", "doesn't", "don't", "never", "without any")


def look(study: Study) -> Iterator[Remark]:
    """Questions of checks that cannot be answered in one go."""
    for check in study.book.checks.values():
        low = f" {check.ask.lower()} "
        what = ""
        if "?" not in check.ask:
            what = "this asks nothing: there is no question mark"
        elif check.ask.count("?") > 1:
            what = "these are two questions in one"
        elif any(f" {word} " in low.replace("?", " ?") for word in NEGATIVE):
            what = "this asks in the negative: nobody knows what 'no' would mean"
        elif check.help == check.ask:
            what = "the help says the same as the question"
        if what:
            yield Remark("check", check.id, ("ask",), what, "ask one thing, as you would aloud")


LINT = Lint(
    id="question-unclear",
    says="A question that is none, asks two things, or asks for a no.",
    page=(
        'A question is one line with one idea, is never put in the negative (what does "no" to '
        '"is it not loose?" mean?), and ends with a question mark or tells what to do. Two '
        "questions in one cannot be answered with one number."
    ),
    file="checks/part/bars-even.yaml",
    good="ask: Are the bars evenly spaced?\n",
    bad="ask: Are the bars not evenly spaced?\n",
    look=look,
)
