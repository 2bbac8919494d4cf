"""The file cannot be opened, or holds nothing."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="file-unreadable",
    says="The file cannot be opened, or holds nothing.",
    page=(
        "A knowledge file is a plain UTF-8 text of at most 1 MiB with something in it. An empty"
        " file, a folder with the name of a file, a locked file or one saved in another "
        "encoding is left unread, and with it everything it should say."
    ),
    file="cautions.yaml",
    good=(
        "- id: stand-aside-at-start\n"
        "  say: Stand out of the line of the wheel for a minute after it starts.\n"
        "  source: common-practice\n"
        "- id: lock-out-first\n"
        "  say: Lock the power out before a cover comes off.\n"
        "  source: common-practice\n"
    ),
    bad="# nothing yet\n",
    known_by=(
        r"[Tt]here is no such f",
        r"is locked against",
        r"is a folder, not a file",
        r"is not a plain file",
        r"MiB",
        r"MB; the most is",
        r"is not UTF-8",
        r"this file is empty",
        r"[Tt]h(is|e) file cannot be read",
        r"not a text file",
    ),
)
