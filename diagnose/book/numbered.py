"""The numbers that stand before the answers of a check, on the screen and on paper."""

from __future__ import annotations

from diagnose.book.model import Check


def numbered(check: Check) -> dict[str, str]:
    """Number as typed -> option id, as the screen shows them; `0` is none of them."""
    if check.kind != "any":
        return {str(n): o.id for n, o in enumerate(check.options, 1)}
    rest = [o.id for o in check.options if o.id != "none"]
    shown = {str(n): name for n, name in enumerate(rest, 1)}
    return shown | ({"0": "none"} if "none" in check.by_option else {})
