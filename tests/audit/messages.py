"""Every message that the reading of the knowledge can give, collected from its source.

A message is the `what` of a fault: an argument of one of the calls of `SAYING`. It is followed to
where it is written: a name to what is put in it in the same function, an f-string to its text
with a sample in place of each part. What cannot be followed is handed back as source, so that a
test can name it.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from pathlib import Path

import diagnose

ROOT = Path(diagnose.__file__).parent
# call -> place and name of the argument that is the message
SAYING = {
    "fault": (1, "what"),
    "not_among": (3, "what"),
    "Problem": (3, "what"),
    "_at": (2, "what"),
    "_whole": (1, "what"),
    "AnswerError": (0, "what"),
    "QuantityError": (0, "what"),
    "BadReadings": (0, "what"),
    "Many": (2, "few"),
}
OF_A_PAGE, OF_A_NODE = (2, "what"), (0, "what")  # page.problem(line, column, what), node.problem
SAMPLES = ("name", "two-words", "5")  # what may stand in the gaps of a message


@dataclass(frozen=True)
class Message:
    """One message: where it is written, and how it may read; none when it cannot be followed."""

    place: str
    source: str
    readings: tuple[str, ...]


def messages(*names: str) -> Iterator[Message]:
    """Those of the modules named, such as `book/answers.py`; of a folder, those of all in it."""
    for name in names:
        path = ROOT / name
        for file in sorted(path.glob("*.py")) if path.is_dir() else [path]:
            text = file.read_text(encoding="utf-8")
            yield from messages_of(text, file.relative_to(ROOT).as_posix())


def messages_of(text: str, name: str) -> Iterator[Message]:
    """Those of one module, from its source."""
    tree = ast.parse(text)
    home: dict[ast.AST, ast.AST] = {}
    for outer in ast.walk(tree):  # inner functions come later and win
        if isinstance(outer, (ast.FunctionDef, ast.Module)):
            home.update(dict.fromkeys(ast.walk(outer), outer))
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            told = _message(node)
            if told is not None:
                where = f"{name}:{told.lineno}"
                for part in _choices(told, home[node], tree):
                    yield Message(where, ast.unparse(part), tuple(_readings(part)))


def _message(call: ast.Call) -> ast.expr | None:
    func = call.func
    name = func.attr if isinstance(func, ast.Attribute) else getattr(func, "id", "")
    if name == "problem":
        place, keyword = OF_A_NODE if len(call.args) < 3 else OF_A_PAGE
    elif name in SAYING:
        place, keyword = SAYING[name]
    else:
        return None
    if len(call.args) > place:
        return call.args[place]
    return next((k.value for k in call.keywords if k.arg == keyword), None)


def _choices(told: ast.expr, home: ast.AST, tree: ast.Module) -> Iterator[ast.expr]:
    """The texts that an expression can be; the expression itself when it is not followed."""
    if isinstance(told, ast.IfExp):
        yield from _choices(told.body, home, tree)
        yield from _choices(told.orelse, home, tree)
    elif isinstance(told, ast.BoolOp):
        for value in told.values:
            yield from _choices(value, home, tree)
    elif isinstance(told, ast.Name):
        put = [*_put_in(told.id, home), *_put_in(told.id, tree, whole=False)]
        for value in put:
            yield from _choices(value, home, tree)
        if not put:
            yield told
    else:
        yield told


def _put_in(name: str, home: ast.AST, whole: bool = True) -> Iterator[ast.expr]:
    nodes = ast.walk(home) if whole else iter(getattr(home, "body", []))
    for node in nodes:
        if isinstance(node, ast.Assign):
            for target in node.targets:
                if isinstance(target, ast.Name) and target.id == name:
                    yield node.value
        elif isinstance(node, ast.For) and isinstance(node.iter, ast.Tuple):
            yield from _in_turn(name, node.target, node.iter)


def _in_turn(name: str, target: ast.expr, rows: ast.Tuple) -> Iterator[ast.expr]:
    """What a name is in each round of `for name, other in ((a, b), (c, d))`."""
    names = [getattr(t, "id", "") for t in getattr(target, "elts", [])]
    if name in names:
        place = names.index(name)
        yield from (row.elts[place] for row in rows.elts if isinstance(row, ast.Tuple))


def _readings(part: ast.expr) -> Iterator[str]:
    if isinstance(part, ast.Constant) and isinstance(part.value, str):
        yield part.value
    elif isinstance(part, ast.JoinedStr):
        for sample in SAMPLES:
            yield "".join(
                str(v.value) if isinstance(v, ast.Constant) else sample for v in part.values
            )
    elif isinstance(part, ast.BinOp) and isinstance(part.op, ast.Add):
        pairs = product(_readings(part.left), _readings(part.right))
        yield from (one + other for one, other in pairs)
