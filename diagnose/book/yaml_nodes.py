"""From the text of a page to a tree of text, tables and lists.

Every scalar is text, exactly as written: no `no` that becomes false, no `1:20` that becomes a
number. Types come from the field tables. The tree is composed by the C parser where PyYAML has
it, by the pure one where not.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from diagnose.book import yaml_faults, yaml_loaders
from diagnose.book.nodes import MOST_DEEP, Items, Node, Page, Refused, Table, Text
from diagnose.book.pages import read_page
from diagnose.book.problems import Problem


def read_tree(path: Path, name: str = "") -> tuple[Node | None, list[Problem]]:
    """The file as a tree (None when it is empty or cannot be read) and its faults."""
    try:
        return compose(read_page(path, name))
    except Refused as refused:
        return None, list(refused.problems)


def compose(page: Page) -> tuple[Node | None, list[Problem]]:
    """The page as a tree, with the faults of its form (a key written twice).

    An empty page gives None. Raises Refused when there is no tree to give: not YAML, tabs in
    the indentation, aliases, tags, nesting deeper than 12.
    """
    yaml_faults.refuse_before(page)
    try:
        root = yaml_loaders.compose(page.text)
    except RecursionError:
        raise Refused(page.problem(1, 1, *yaml_faults.TOO_DEEP)) from None
    except yaml_loaders.YAMLError as error:
        raise Refused(yaml_faults.reword(page, error)) from None
    if root is None:
        return None, []
    problems: list[Problem] = []
    return _convert(page, root, problems, 1), problems


def _convert(page: Page, node: Any, problems: list[Problem], depth: int) -> Node:
    mark = node.start_mark
    line, column = mark.line + 1, mark.column + 1
    kind, value = node.id, node.value
    if kind == "scalar":
        if not node.style and node.end_mark.line > mark.line:
            _swallowed(page, mark.line, node.end_mark.line, problems)
        return Text(page, line, column, value)
    if depth > MOST_DEEP:
        raise Refused(page.problem(line, column, *yaml_faults.TOO_DEEP))
    if kind == "sequence":
        items = [_convert(page, item, problems, depth + 1) for item in value]
        return Items(page, line, column, items)
    rows: dict[str, tuple[Text, Node]] = {}
    for key_node, value_node in value:
        key = _convert(page, key_node, problems, depth + 1)
        if not isinstance(key, Text):
            problems.append(key.problem("a name before ':' must be plain words"))
            continue
        if key.value in rows:
            problems.append(_twice(key, rows[key.value][0]))
            continue
        rows[key.value] = key, _convert(page, value_node, problems, depth + 1)
    return Table(page, line, column, rows)


def _swallowed(page: Page, first: int, last: int, problems: list[Problem]) -> None:
    for index in range(first + 1, min(last + 1, len(page.lines))):
        line = page.lines[index]
        if line.lstrip().startswith("- "):
            what = "this '- ' is not level with its list and is read as text of the line above"
            column = len(line) - len(line.lstrip()) + 1
            mend = "set every '- ' of one list at the same distance from the edge"
            problems.append(page.problem(index + 1, column, what, mend))
            return


def _twice(key: Text, first: Text) -> Problem:
    what = f"'{key.value}:' stands here and on line {first.line}: which one counts?"
    return key.problem(what, "keep one of the two")
