"""A state of the wheel or the work written as a cause."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.audit.lint import Lint, Remark
from diagnose.audit.study import Study

_STATES = (
    "glazed loaded dull bowed burnt burned chattering hollow crowned tapered scratched "
    "rough vibrating wavy cracked hot bent dished "
)
STATES = frozenset(_STATES.split())
_FILLING = (
    "the a is was has been wheel work part plate piece face surface block too very and or "
    "become gone "
)
FILLING = frozenset(_FILLING.split())


def look(study: Study) -> Iterator[Remark]:
    """Causes named by a state alone."""
    for cause in study.book.causes.values():
        words = set(cause.name.lower().replace("-", " ").split())
        state = sorted(words & STATES)
        rest = words - STATES - FILLING
        if state and not rest:
            what = f"'{cause.name}' is a state, and something made it so"
            yield Remark("cause", cause.id, ("name",), what, "name what a person can change")


LINT = Lint(
    id="state-as-cause",
    says="A state of the wheel or the work written as a cause.",
    page=(
        "Glazed, loaded, dull, bowed, burnt, chattering: these are states that something else "
        "made, so they are signs or mechanisms. A cause is something a person can change: "
        "dressed too fine, left undressed, ground too hot. A state as a cause hides the real "
        "one behind a fix that lasts an hour."
    ),
    file="causes/wheel/unbalanced-wheel.yaml",
    good="name: Wheel out of balance\n",
    bad="name: Wheel glazed\n",
    look=look,
)
