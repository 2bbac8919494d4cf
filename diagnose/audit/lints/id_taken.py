"""An id that is given twice, or replaced while still in use."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="id-taken",
    says="An id that is given twice, or replaced while still in use.",
    page=(
        "Ids are unique over all kinds, so that a case, a link and a page can name a thing by "
        "one word. An id that is gone may be replaced; one that lives may not."
    ),
    file="findings/signs.yaml",
    good="- id: thin-stream\n",
    bad=(
        "- id: wheel-face\n"
        "  kind: sign\n"
        "  name: look of the face\n"
        "  without_cause: rarely\n"
        "  source: common-practice\n"
        "- id: thin-stream\n"
    ),
    known_by=(
        r"is already given to",
        r"is still in use",
        r"is replaced by .* as well",
        r"is already the id of",
    ),
)
