"""The shipped knowledge raises no alarm."""

from __future__ import annotations

from functools import cache

from diagnose.audit.linting import look_over
from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book


@cache
def shipped() -> Book:
    return load_book(knowledge_folder())


def test_no_lint_finds_anything_in_the_shipped_knowledge() -> None:
    alarms = look_over(shipped(), [knowledge_folder()])
    assert [alarm.render() for alarm in alarms] == []
