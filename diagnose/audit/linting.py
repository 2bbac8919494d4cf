"""Finds the lints by their folder and looks a book over with all of them."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from pathlib import Path

from diagnose.audit import lints as folder
from diagnose.audit.lint import Lint
from diagnose.audit.places import Places
from diagnose.audit.study import Study
from diagnose.book.model import Book
from diagnose.book.problems import Problem
from diagnose.reasoning.belief import WIDEST


@dataclass(frozen=True)
class Alarm:
    """A fault and the lint that explains it; "" when it has none."""

    lint: str
    problem: Problem

    def render(self) -> str:
        """The fault as text, the lint named at the end of its first line."""
        first, *rest = self.problem.render().split("\n")
        named = f"{first} (lint:{self.lint})" if self.lint else first
        return "\n".join([named, *rest])


@cache
def lints() -> tuple[Lint, ...]:
    """Every lint of the folder, by id."""
    names = sorted(m.name for m in pkgutil.iter_modules(folder.__path__))
    modules = [import_module(f"{folder.__name__}.{name}") for name in names]
    return tuple(module.LINT for module in modules)


def lint_of(name: str) -> Lint | None:
    """The lint of this id, or None."""
    return next((lint for lint in lints() if lint.id == name), None)


def named(problems: Iterable[Problem]) -> list[Alarm]:
    """Faults that the reading found, each with the lint that explains it."""
    return [Alarm(_id_of(problem.what), problem) for problem in problems]


@cache
def _id_of(what: str) -> str:
    return next((lint.id for lint in lints() if lint.knows(what)), "")


def look_over(
    book: Book, bases: Sequence[Path], *, dear: bool = True, widest: int = WIDEST
) -> list[Alarm]:
    """Everything the lints find in a book, by file and line. `dear=False` leaves out those that
    work the belief of every cause or complaint; `widest` is the most the exact sum may be."""
    study, places = Study(book, widest), Places(book, bases)
    found: dict[Alarm, None] = {}
    for lint in lints():
        if lint.look is None or (lint.dear and not dear):
            continue
        for remark in lint.look(study):
            found[Alarm(lint.id, places.problem(remark))] = None
    return sorted(found, key=lambda a: (a.problem.file, a.problem.line, a.problem.column, a.lint))
