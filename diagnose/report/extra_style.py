"""The style of a page that needs more than the common one, with the hash its policy allows."""

from __future__ import annotations

from functools import cache

from diagnose.report.page import TEMPLATES, _hash
from diagnose.report.svg import Svg


@cache
def with_style(*names: str) -> dict[str, str]:
    """What a template is given in place of the common style: that one and the files named."""
    parts = [(TEMPLATES / name).read_text(encoding="utf-8") for name in ("page.css", *names)]
    style = "\n".join(parts)
    return {"style": Svg(style), "style_hash": _hash(style)}
