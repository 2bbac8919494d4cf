"""Cold start: a new process from nothing to the first question."""

from __future__ import annotations

import subprocess
import sys
import time

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder


def cold(repeats: int) -> dict[str, object]:
    """Seconds of a new process to its help, and to the first question about a complaint."""
    complaint = min(load_book(knowledge_folder()).symptoms)
    runs = {
        "interpreter alone": ["-c", "pass"],
        "--help": ["-m", "diagnose", "--help"],
        "first question": ["-m", "diagnose", "rank", "--complaint", complaint],
    }
    return {"repeats": repeats, **{n: _seconds(args, repeats) for n, args in runs.items()}}


def _seconds(args: list[str], repeats: int) -> float:
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        subprocess.run([sys.executable, *args], capture_output=True, check=False)
        times.append(time.perf_counter() - start)
    return sorted(times)[len(times) // 2]
