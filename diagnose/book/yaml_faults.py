"""The faults of YAML itself, in words of a person who writes a knowledge file."""

from __future__ import annotations

import re
from typing import Any

from diagnose.book import yaml_loaders
from diagnose.book.nodes import MOST_DEEP, Page, Refused
from diagnose.book.problems import Problem

TOO_DEEP = (
    f"lists within lists within lists: more than {MOST_DEEP} deep",
    "no field of these files goes that deep; look for a bracket too many or a wrong indentation",
)
_TAB = re.compile(r"^ *\t[ \t]*(?=[^\s])", re.MULTILINE)
_BAD = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufffe\uffff]")
_SIGNS = re.compile(r"[&*!]")

_LOOK_WHERE_OPENED = ("end of stream", "',' or", "could not find expected ':'")
_NO_COLON = (
    "there is no ':' after this name",
    "write 'name: value', or set the line further in if it goes on with the text above",
)
_PLAIN = (
    (
        "mapping values are not allowed",
        "a ':' where none can be",
        "put quotes around a text that has ': ' in it, leave a space after each ':', "
        "or set the line level with the one above",
    ),
    ("could not find expected ':'", *_NO_COLON),
    (
        "expected node content",
        "there is nothing to read here",
        "write the value, or put quotes around a text that starts with a special sign",
    ),
    (
        "did not find expected key",
        "this line is not level with the lines it belongs to, or a quote ends too early",
        "set it level with its neighbours; put quotes around a text with special signs",
    ),
    (
        "expected '-' indicator",
        "this line is not level with the list it belongs to",
        "set every '- ' of one list at the same distance from the edge",
    ),
    (
        "expected ',' or ']'",
        "a list opened with '[' is not closed, or a comma is missing",
        "close it with ']' and put a comma between its parts",
    ),
    (
        "expected ',' or '}'",
        "a group opened with '{' is not closed, or a comma is missing",
        "close it with '}' and put a comma between its parts; quote a text that holds a comma",
    ),
    (
        "unexpected end of stream",
        "a quote is opened here and never closed",
        "close the quote; a ' inside a text in '...' is written twice",
    ),
    (
        "unknown escape character",
        "in \"...\" a '\\' starts a code, and this is none",
        "use '...' around a text with a backslash",
    ),
    (
        "found another document",
        "a second page starts here with '---'",
        "one file holds one page: take the '---' out",
    ),
    (
        "block sequence entries are not allowed",
        "a list cannot start here",
        "put its first '- ' on a line of its own, or quotes around a text that starts with '- '",
    ),
    (
        "cannot start any token",
        "a text cannot start with this sign",
        "put quotes around the text",
    ),
)


def refuse_before(page: Page) -> None:
    """Raise Refused for what the parser would accept or explain badly.

    Tabs in the indentation, control characters, aliases, anchors and tags.
    """
    bad = _BAD.search(page.text)
    if bad:
        what = f"a character that no text has (code {ord(bad.group()):#04x})"
        raise Refused(_at(page, bad.start(), what, "save the file as plain UTF-8 text"))
    tabs = list(_TAB.finditer(page.text))
    if tabs:
        what = "a tab at the start of the line"
        mend = "use spaces: two for each step in"
        raise Refused(*[_at(page, t.end() - 1, what, mend) for t in tabs])
    if _SIGNS.search(page.text):
        _refuse_signs(page)


def _refuse_signs(page: Page) -> None:
    try:
        for event in yaml_loaders.events(page.text):
            _refuse_sign(page, event)
    except yaml_loaders.YAMLError as error:
        raise Refused(reword(page, error)) from None


def _refuse_sign(page: Page, event: Any) -> None:
    line, column = event.start_mark.line + 1, event.start_mark.column + 1
    if getattr(event, "anchor", None):
        sign = "*" if type(event).__name__ == "AliasEvent" else "&"
        what = f"'{sign}{event.anchor}': names for parts of a page are not used here"
        mend = f"write the part out in full, or put quotes around a text that starts with {sign}"
        raise Refused(page.problem(line, column, what, mend))
    if getattr(event, "tag", None):
        what = "a text that starts with '!' means something else in YAML"
        raise Refused(page.problem(line, column, what, "put quotes around it"))


def reword(page: Page, error: yaml_loaders.YAMLError) -> Problem:
    """The parser's error as a fault of the page, at the place a person should look."""
    told = str(getattr(error, "problem", "") or error)
    mark = getattr(error, "problem_mark", None)
    opened = getattr(error, "context_mark", None)
    if "maximum nesting" in told:
        what, mend = TOO_DEEP
    else:
        what, mend = _plain(told)
    if opened is not None and any(sign in told for sign in _LOOK_WHERE_OPENED):
        mark = opened
    if mark is None:
        return page.problem(1, 1, what, mend)
    above = _runs_on(page, mark) if "mapping values" in told else 0
    if above:
        return page.problem(above, 1, _NO_COLON[0], _NO_COLON[1])
    return page.problem(mark.line + 1, mark.column + 1, what, mend)


def _runs_on(page: Page, mark: Any) -> int:
    """Line number of a name without ':' right above, which YAML reads on into this line."""
    line, above = page.lines[mark.line], page.lines[mark.line - 1] if mark.line else ""
    first = line.find(":") == mark.column
    level = len(above) - len(above.lstrip()) == len(line) - len(line.lstrip())
    return mark.line if first and level and above.strip() and ":" not in above else 0


def _plain(told: str) -> tuple[str, str]:
    for sign, what, mend in _PLAIN:
        if sign in told:
            return what, mend
    return f"this cannot be read: {told.splitlines()[0]}", "compare it with a file that works"


def _at(page: Page, offset: int, what: str, mend: str) -> Problem:
    before = page.text[:offset]
    start = before.rfind("\n") + 1
    return page.problem(before.count("\n") + 1, offset - start + 1, what, mend)
