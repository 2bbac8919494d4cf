"""Cold start: a new process from nothing to its first list of looks, and to a review with page."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder

SHARED = Path(__file__).parents[2] / "shared"


def cold(repeats: int) -> dict[str, object]:
    """Seconds of a new process to its help, a first list of looks, a review with its page.

    The first list is timed at a terminal, from the start of the process, the complaint typed at
    once, until the list stands on the screen; with the book kept by an earlier run and with
    nothing kept.
    """
    complaint = min(load_book(knowledge_folder()).symptoms)
    folder = Path(tempfile.mkdtemp())
    job = ["--shop", str(SHARED), "review", str(SHARED / "jobs" / "punch-plate.yaml")]
    runs = {
        "interpreter alone": ["-c", "pass"],
        "--help": ["-m", "diagnose", "--help"],
        "rank, draws and all": ["-m", "diagnose", "rank", "--complaint", complaint],
        "review with its page": ["-m", "diagnose", *job, "--page", str(folder / "job.html")],
    }
    kept = _as_installed(folder, folder / "kept")
    bare = _as_installed(folder, "off")
    _first_list(kept)
    return {
        "repeats": repeats,
        "first list, book kept": _middle([_first_list(kept) for _ in range(repeats)]),
        "first list, nothing kept": _middle([_first_list(bare) for _ in range(repeats)]),
        **{n: _middle([_run(args, kept) for _ in range(repeats)]) for n, args in runs.items()},
    }


def _as_installed(folder: Path, kept: Path | str) -> dict[str, str]:
    """Surroundings in which Python keeps what it has compiled, as it does for a person."""
    return {
        "PYTHONDONTWRITEBYTECODE": "",
        "PYTHONPYCACHEPREFIX": str(folder / "compiled"),
        "DIAGNOSE_CACHE": str(kept),
    }


def _run(args: list[str], env: dict[str, str]) -> float:
    start = time.perf_counter()
    subprocess.run([sys.executable, *args], capture_output=True, check=False,
                   env={**os.environ, **env})  # fmt: skip
    return time.perf_counter() - start


def _first_list(env: dict[str, str]) -> float:
    from tests.cli.terminal import Terminal  # a terminal is a thing of Unix

    with tempfile.TemporaryDirectory() as folder:
        start = time.perf_counter()
        seat = Terminal(Path(folder), "ask", env=env, shipped=True)
        seat.type("chatter")
        seat.see("Number and letter of each")  # the first list of what may be known
        took = time.perf_counter() - start
        seat.process.kill()
        seat.leave()
    return took


def _middle(times: list[float]) -> float:
    return sorted(times)[len(times) // 2]
