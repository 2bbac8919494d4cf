"""`python -m tests.bench`: every table; `--json` the figures, `--quick` under a minute."""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Any

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from tests.bench.agreement import agreement
from tests.bench.compare import policies
from tests.bench.honesty import calibration, removed, wrong_numbers
from tests.bench.loop import loop_ms
from tests.bench.optimal import regret
from tests.bench.scale import measure
from tests.bench.speed import engines, interview, load_ms
from tests.bench.start import cold
from tests.bench.states import States
from tests.bench.tables import TABLES, shown


@dataclass(frozen=True)
class Sizes:
    """How much is drawn for each table."""

    agreement: int = 40
    interviews: int = 30
    networks: int = 7
    repeats: int = 9
    positives: int = 12
    scales: tuple[int, ...] = (1, 10, 100)
    starts: int = 9
    calibration: int = 10_000
    wrong: int = 2_000
    removed: int = 500
    problems: int = 200
    cases: tuple[tuple[float, int], ...] = ((1.0, 2_000), (0.5, 500), (2.0, 500))


QUICK = Sizes(4, 2, 1, 1, 6, (1, 10), 3, 300, 100, 3, 5, ((1.0, 8),))


def sections(book: Book, n: Sizes, python: str) -> dict[str, Callable[[], Any]]:
    """The work of each table, by its name."""
    states = States(book)
    return {
        "agreement": lambda: agreement(book, n.agreement),
        "speed": lambda: {
            "load_ms": load_ms(n.repeats), "interview": interview(book, n.interviews)
        },
        "engines": lambda: engines(book, n.networks, n.repeats, n.positives, python),
        "scale": lambda: {
            "rows": [measure(k, max(1, n.interviews // (1 + k // 2))) for k in n.scales]
        },
        "start": lambda: cold(n.starts),
        "calibration": lambda: {
            "up to ten answers": calibration(book, n.calibration, False),
            "all circumstances and up to ten answers": calibration(book, n.calibration, True),
        },
        "wrong numbers": lambda: wrong_numbers(book, n.wrong),
        "cause removed": lambda: removed(book, n.removed),
        "regret": lambda: regret(book, n.problems),
        "policies": lambda: {
            "runs": [policies(book, states, cases, times) for times, cases in n.cases]
        },
    }  # fmt: skip


def main() -> int:
    """Measure and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("--quick", action="store_true", help="small samples, under a minute")
    parser.add_argument("--json", action="store_true", help="the figures as JSON")
    parser.add_argument("--only", action="append", choices=list(TABLES), help="this table alone")
    parser.add_argument("--pgmpy-python", default="", help="an interpreter that has pgmpy")
    told = parser.parse_args()
    start = time.perf_counter()
    work = sections(load_book(knowledge_folder()), QUICK if told.quick else Sizes(),
                    told.pgmpy_python)  # fmt: skip
    figures: dict[str, Any] = {"loop_ms": loop_ms(), "quick": told.quick}
    for name in told.only or list(TABLES):
        begun = time.perf_counter()
        figures[name] = work[name]()
        print(f"{name}: {time.perf_counter() - begun:.1f} s", file=sys.stderr, flush=True)
    figures |= {"seconds": time.perf_counter() - start, "date": date.today().isoformat()}
    print(json.dumps(figures, indent=1) if told.json else shown(figures))
    return 0


if __name__ == "__main__":
    sys.exit(main())
