"""Building inline SVG as text: every word from outside is escaped where it is put in."""

from __future__ import annotations

import itertools
import textwrap
from collections.abc import Iterable
from html import escape

# Widths in parts of the type size, on the wide side, so that words stay inside their box in
# whichever system font a reader has.
_NARROW, _USUAL, _WIDE, _BROAD = 0.4, 0.62, 0.98, 1.05


class Svg(str):
    """Markup made here; a plain string put inside an element is escaped, this is not."""

    __slots__ = ()

    def __html__(self) -> str:
        """Lets a template print it as markup."""
        return str(self)


def el(tag: str, *children: str, **attributes: str | float) -> Svg:
    """One element. `class_` and `stroke_width` become class and stroke-width."""
    text = "".join(
        f' {name.rstrip("_").replace("_", "-")}="{escape(_value(value))}"'
        for name, value in attributes.items()
    )
    inner = "".join(c if isinstance(c, Svg) else escape(c) for c in children)
    return Svg(f"<{tag}{text}>{inner}</{tag}>" if inner else f"<{tag}{text}/>")


def _value(value: str | float) -> str:
    if isinstance(value, str):
        return value
    return f"{value:.1f}".removesuffix(".0")


def picture(
    name: str,
    title: str,
    told: str,
    width: float,
    height: float,
    *children: str,
    kind: str = "",
    role: str = "img",
) -> Svg:
    """A whole drawing with its spoken title and description; `name` makes its ids unique."""
    return el(
        "svg",
        el("title", title, id=f"{name}-title"),
        el("desc", told or title, id=f"{name}-told"),
        *children,
        class_=f"figure {kind}".strip(),
        role=role,
        aria_labelledby=f"{name}-title",
        aria_describedby=f"{name}-told",
        viewBox=f"0 0 {_value(width)} {_value(height)}",
        focusable="false",
    )


def line(x1: float, y1: float, x2: float, y2: float, class_: str) -> Svg:
    """A straight line."""
    return el("line", x1=x1, y1=y1, x2=x2, y2=y2, class_=class_)


def rect(x: float, y: float, width: float, height: float, class_: str) -> Svg:
    """A rectangle; a width below nothing is drawn as nothing."""
    return el("rect", x=x, y=y, width=max(width, 0.0), height=height, class_=class_)


def path(class_: str, d: str) -> Svg:
    """A path."""
    return el("path", d=d, class_=class_)


def polygon(class_: str, points: Iterable[tuple[float, float]]) -> Svg:
    """A closed shape through points."""
    return el("polygon", points=_points(points), class_=class_)


def polyline(class_: str, points: Iterable[tuple[float, float]]) -> Svg:
    """An open line through points."""
    return el("polyline", points=_points(points), class_=class_)


def _points(points: Iterable[tuple[float, float]]) -> str:
    return " ".join(f"{_value(x)},{_value(y)}" for x, y in points)


def label(x: float, y: float, text: str, class_: str = "", anchor: str = "start") -> Svg:
    """One line of writing; anchor is start, middle or end."""
    return el("text", text, x=x, y=y, text_anchor=anchor, class_=class_ or "word")


def width_of(text: str, size: float) -> float:
    """About how wide a line of writing is, never less than it will be in a usual font."""
    return size * sum(map(_part, text))


def _part(letter: str) -> float:
    if letter in " .,:;'|!ijltfrI()[]-":
        return _NARROW
    if ord(letter) >= 0x1100:
        return _BROAD
    return _WIDE if letter in "mwMW@%" or (letter.isupper() and letter.isascii()) else _USUAL


def lines_of(text: str, size: float, width: float) -> list[str]:
    """The text broken into lines no wider than `width`; nothing is left out."""
    words = itertools.chain.from_iterable(_pieces(w, size, width) for w in text.split())
    out: list[str] = []
    for word in words:
        if out and width_of(f"{out[-1]} {word}", size) <= width:
            out[-1] = f"{out[-1]} {word}"
        else:
            out.append(word)
    return out or [""]


def _pieces(word: str, size: float, width: float) -> list[str]:
    if width_of(word, size) <= width:
        return [word]
    return textwrap.wrap(word, max(1, int(width / (size * _BROAD))))


def writing(x: float, y: float, lines: list[str], step: float, class_: str) -> Svg:
    """Lines under each other as one text, first baseline at y."""
    spans = (el("tspan", text, x=x, y=y + n * step) for n, text in enumerate(lines))
    return el("text", *spans, class_=class_)
