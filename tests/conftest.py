"""Options of the whole test run, and a place of its own for what the tool keeps between runs."""

from __future__ import annotations

import os
from pathlib import Path

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--update", action="store_true", help="rewrite the interviews with what is said now"
    )
    parser.addoption(
        "--drills", type=int, default=40, help="cases drawn by the tests of the drill; 2000 in full"
    )


@pytest.fixture(scope="session", autouse=True)
def _kept_apart(tmp_path_factory: pytest.TempPathFactory) -> None:
    """Nothing is kept outside the test run; what is kept serves the whole run."""
    folder: Path = tmp_path_factory.mktemp("kept")
    os.environ["DIAGNOSE_CACHE"] = str(folder)
