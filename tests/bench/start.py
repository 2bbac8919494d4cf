"""Cold start: a new process from nothing to the first question, and to a review with its page."""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder

SHARED = Path(__file__).parents[2] / "shared"


def cold(repeats: int) -> dict[str, object]:
    """Seconds of a new process to its help, a first question, a review with its page."""
    complaint = min(load_book(knowledge_folder()).symptoms)
    page = Path(tempfile.mkdtemp()) / "job.html"
    job = ["--shop", str(SHARED), "review", str(SHARED / "jobs" / "punch-plate.yaml")]
    runs = {
        "interpreter alone": ["-c", "pass"],
        "--help": ["-m", "diagnose", "--help"],
        "first question": ["-m", "diagnose", "rank", "--complaint", complaint],
        "review with its page": ["-m", "diagnose", *job, "--page", str(page)],
    }
    return {"repeats": repeats, **{n: _seconds(args, repeats) for n, args in runs.items()}}


def _seconds(args: list[str], repeats: int) -> float:
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        subprocess.run([sys.executable, *args], capture_output=True, check=False)
        times.append(time.perf_counter() - start)
    return sorted(times)[len(times) // 2]
