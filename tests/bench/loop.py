"""The calibration loop: a fixed piece of arithmetic, so that times can be compared by machine."""

from __future__ import annotations

import resource
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

ROUNDS = 100_000


def loop_ms(repeats: int = 7) -> float:
    """Milliseconds of the fixed loop of 100,000 multiply-adds in plain Python; median."""
    return median_ms(_loop, repeats)


def _loop() -> float:
    value = 0.5
    for _ in range(ROUNDS):
        value = value * 3.7 * (1.0 - value)
    return value


def median_ms(work: Callable[[], object], repeats: int) -> float:
    """Median milliseconds of some work."""
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        times.append(1000.0 * (time.perf_counter() - start))
    return statistics.median(times)


def peak_mb() -> float:
    """Most memory this process ever held, in MB; read from /proc where there is one.

    `getrusage` counts what the parent held before the process began as its own.
    """
    status = Path("/proc/self/status")
    if status.is_file():
        lines = dict(line.split(":", 1) for line in status.read_text().splitlines() if ":" in line)
        return int(lines["VmHWM"].split()[0]) / 1024.0
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / 1e6 if sys.platform == "darwin" else most / 1024.0
