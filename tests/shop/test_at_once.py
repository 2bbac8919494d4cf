"""Two processes at once lose nothing; a process killed at any moment leaves a shop that loads."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

from diagnose.case.entries import Closed
from diagnose.shop.cards import load_shop
from diagnose.shop.closed import cases_of
from diagnose.shop.knowledge import load_with_own
from tests.shop.shops import case, open_case
from tests.small import SMALL, small_book

HOUSE = Path(__file__).parents[2]
START = f"""
import sys
from pathlib import Path
import diagnose.book.locate as locate
locate.knowledge_folder = lambda: Path({str(SMALL)!r})
from diagnose.cli.commands import diagnose
from diagnose.cli.exits import run
"""
CLOSE_ONE = (
    START
    + """
sys.exit(run(diagnose, sys.argv[1:]))
"""
)
# closes case after case, writes new causes and healthy records between, and says what is done
WORK = (
    START
    + """
shop, first, last = sys.argv[1:4]
for n in range(int(first), int(last)):
    code = run(diagnose, ["--shop", shop, "close", f"case-{n}", "--cured-by", "lumpy-belt",
                          "--done", "x" * 2000, "--minutes", str(n)])
    if n % 4 == 0:
        run(diagnose, ["--shop", shop, "knowledge", "new", "cause", "--name", f"cause {n}",
                       "--symptom", "even-bars-across-travel", "--own-sign", f"sign {n}"])
    print("done", n, code, flush=True)
"""
)
ENVIRONMENT = {**os.environ, "PYTHONPATH": str(HOUSE), "NO_COLOR": "1"}


def start(code: str, *args: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", code, *args],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=ENVIRONMENT,
    )


def shop_of(tmp_path: Path, cases: int) -> Path:
    shop = tmp_path / "shop"
    for number in range(cases):
        told = case(f"job {number}", ("bars-even", "yes"), ("wheel-changed", "no"))
        open_case(shop, f"case-{number}", told)
    return shop


def test_two_processes_that_close_different_cases_lose_none(tmp_path: Path) -> None:
    shop = shop_of(tmp_path, 12)
    both = [start(WORK, str(shop), "0", "6"), start(WORK, str(shop), "6", "12")]
    told = [process.communicate(timeout=120) for process in both]
    assert [p.returncode for p in both] == [0, 0], told
    kept = cases_of(shop, small_book())
    assert (kept.open, kept.problems) == ((), ())
    endings = {k.path.stem: k.case.closed for k in kept.closed}
    assert set(endings) == {f"case-{n}" for n in range(12)}
    assert all(e and e.minutes == int(stem.split("-")[1]) for stem, e in endings.items())


def test_of_two_that_close_the_same_case_one_is_told_and_neither_spoils_the_other(
    tmp_path: Path,
) -> None:
    shop = shop_of(tmp_path, 1)
    words = ("--shop", str(shop), "close", "case-0", "--cured-by")
    both = [start(CLOSE_ONE, *words, c) for c in ("lumpy-belt", "shaking-floor")]
    told = [process.communicate(timeout=120) for process in both]
    codes = [process.returncode for process in both]
    assert sorted(codes) == [0, 1], told
    won, lost = codes.index(0), codes.index(1)
    assert told[lost][1].startswith("diagnose: ")
    assert "Traceback" not in told[lost][1]
    (kept,) = cases_of(shop, small_book()).closed
    assert isinstance(kept.case.closed, Closed)
    assert kept.case.closed.cured_by == (("lumpy-belt", "shaking-floor")[won],)


def test_killed_at_many_moments_the_shop_loads_and_nothing_told_done_is_lost(
    tmp_path: Path,
) -> None:
    moments, cases = 14, 60
    shop = shop_of(tmp_path, cases)
    chance = random.Random(20260314)
    done: set[int] = set()
    killed = 0
    for _ in range(moments):
        rest = sorted(set(range(cases)) - done)
        process = start(WORK, str(shop), str(rest[0]), str(cases))
        assert process.stdout is not None
        first = process.stdout.readline()  # it is at work now
        time.sleep(chance.uniform(0.0, 0.12))
        os.kill(process.pid, signal.SIGKILL)
        told = first + process.communicate(timeout=60)[0]
        killed += process.returncode == -signal.SIGKILL
        done |= {int(line.split()[1]) for line in told.splitlines() if line.startswith("done")}

        book, left_out = load_with_own(SMALL, shop)
        kept = cases_of(shop, book)
        assert kept.problems == ()
        assert load_shop(shop, book).problems == ()
        stems = [k.path.stem for k in kept.closed]
        assert len(stems) == len(set(stems))
        assert {f"case-{n}" for n in done} <= set(stems)
        assert set(stems) | {k.path.stem for k in kept.open} == {f"case-{n}" for n in range(cases)}
        # of a cause with its sign the cause is written last: what is there, can be used
        assert left_out == ()
        assert {"case-0"} <= set(stems)
    assert killed > moments // 2, "the processes ended before they could be killed"
