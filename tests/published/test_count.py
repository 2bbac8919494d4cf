"""There are 40 checks from 15 independent sources or more, each with its source and standing."""

from __future__ import annotations

import inspect
from collections import Counter
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from tests.published.checks import Check
from tests.published.sources import STANDINGS, Source

MODULES = [
    import_module(f"tests.published.{path.stem}")
    for path in sorted(Path(__file__).parent.glob("test_*.py"))
    if path.stem != Path(__file__).stem
]


def found_in(module: ModuleType) -> dict[str, Any]:
    return {
        name: found
        for name, found in vars(module).items()
        if name.lower().startswith("test") and getattr(found, "__module__", "") == module.__name__
    }


def cases(test: Any) -> int:
    """How many cases a test or a class of tests runs."""
    if inspect.isclass(test):
        return sum(cases(each) for name, each in vars(test).items() if name.startswith("test"))
    count = 1
    for mark in getattr(test, "pytestmark", ()):
        count *= len(mark.args[1]) if mark.name == "parametrize" else 1
    return count


def all_checks() -> Iterator[tuple[Source, str, int]]:
    for module in MODULES:
        for check in getattr(module, "CHECKS", ()):
            yield check.source, check.standing, 1
        for test in found_in(module).values():
            if hasattr(test, "published"):
                yield (*test.published, cases(test))


def test_every_published_test_names_its_source_and_standing() -> None:
    for module in MODULES:
        for name, test in found_in(module).items():
            takes = set() if inspect.isclass(test) else set(inspect.signature(test).parameters)
            assert hasattr(test, "published") or takes == {"check"}, f"{module.__name__}.{name}"
        assert all(isinstance(check, Check) for check in getattr(module, "CHECKS", ()))


def test_there_are_forty_checks_from_fifteen_sources(capsys: pytest.CaptureFixture[str]) -> None:
    counted: Counter[Source] = Counter()
    for source, standing, number in all_checks():
        assert source.title
        assert standing in STANDINGS
        counted[source] += number
    with capsys.disabled():
        print(f"\n{counted.total()} checks from {len(counted)} independent sources")
        for source, number in sorted(counted.items(), key=lambda kv: (-kv[1], kv[0].id)):
            print(f"{number:4d}  {source.title}")
    assert counted.total() >= 40
    assert len(counted) >= 15
    assert len({source.title for source in counted}) == len(counted)


def test_most_of_them_were_read() -> None:
    read = sum(number for _, standing, number in all_checks() if standing == "confirmed")
    assert read >= 40
    assert len({s for s, standing, _ in all_checks() if standing == "confirmed"}) >= 15
