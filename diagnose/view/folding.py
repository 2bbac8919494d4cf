"""Text folded to the width of the screen."""

from __future__ import annotations

import textwrap

from diagnose.view.text import WIDTH


def wrapped(text: str, indent: int = 0, first: str | None = None) -> str:
    """Text folded to the width of the screen, `first` in place of the first indent."""
    pad = " " * indent
    return textwrap.fill(
        text,
        WIDTH,
        initial_indent=pad if first is None else first,
        subsequent_indent=pad,
        break_long_words=False,
        break_on_hyphens=False,
    )
