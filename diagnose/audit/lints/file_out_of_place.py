"""The file lies where no kind of entry is read."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="file-out-of-place",
    says="The file lies where no kind of entry is read.",
    page=(
        "The folder says what a file holds: causes/ROOM/, checks/, symptoms/, findings/, "
        "rules/, stops/, and the lists mechanisms, cautions and sources. A file in another "
        "place would be left unread without a word."
    ),
    file="caution/extra.yaml",
    good="",
    bad="- {id: extra, say: Keep clear of it., source: common-practice}\n",
    known_by=(
        r"no kind of entry is read",
        r"there is no room '",
        r"a cause lies in a room",
    ),
)
