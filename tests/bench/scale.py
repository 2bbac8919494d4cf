"""The shipped knowledge many times over: renamed copies that share the complaint families."""

from __future__ import annotations

import gc
import json
import subprocess
import sys
import time
import tracemalloc
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from tests.bench.loop import peak_mb
from tests.bench.speed import interview

PATIENCE = 300.0  # seconds for one size


def larger(book: Book, times: int) -> Book:
    """The book with every cause, sign, check and rule copied under new names.

    Complaints, stops and sources are shared; the priors are divided by `times`, so that as many
    causes are expected at work as before.
    """
    parts: dict[str, dict[str, Any]] = {k: {} for k in ("causes", "findings", "checks", "rules")}
    shared = set(book.symptoms)
    numbers = [r.work_out.gives for r in book.rules.values() if r.work_out]
    names = {n for kind in parts for n in getattr(book, kind)} | set(numbers)
    for copy in range(times):
        new = {n: f"{n}-{copy}" if copy else n for n in names - shared}
        for kind, made in parts.items():
            for name, value in getattr(book, kind).items():
                if name not in shared:
                    made[new[name]] = renamed(value, new)
    parts["findings"] |= {s: book.findings[s] for s in shared}
    causes = {n: replace(c, prior=c.prior / times) for n, c in parts["causes"].items()}
    findings, checks, rules = (parts[k] for k in ("findings", "checks", "rules"))
    return replace(book, causes=causes, findings=findings, checks=checks, rules=rules)


def renamed(value: Any, new: Mapping[str, str]) -> Any:
    """A frozen value with every text that is a name put under its new name."""
    if isinstance(value, str):
        return new.get(value, value)
    if isinstance(value, tuple | frozenset):
        return type(value)(renamed(v, new) for v in value)
    if isinstance(value, Mapping):
        return {renamed(k, new): renamed(v, new) for k, v in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        found = {f.name: renamed(getattr(value, f.name), new) for f in fields(value)}
        return type(value)(**found)
    return value


def measure(times: int, interviews: int) -> dict[str, float]:
    """One size in a process of its own, so that its peak memory is its own."""
    code = f"from tests.bench.scale import here; here({times}, {interviews})"
    try:
        done = subprocess.run(
            [sys.executable, "-W", "ignore", "-c", code],
            capture_output=True, text=True, check=False, timeout=PATIENCE,
        )  # fmt: skip
    except subprocess.TimeoutExpired:
        return {"times": times, "unfinished": PATIENCE}
    if done.returncode:
        return {"times": times, "failed": 1.0}
    found: dict[str, float] = json.loads(done.stdout.strip().splitlines()[-1])
    return found


def here(times: int, interviews: int) -> None:
    """Measure in this process and print the figures as JSON."""
    shipped = load_book(knowledge_folder())
    gc.collect()
    tracemalloc.start()
    book = larger(shipped, times)
    held = tracemalloc.get_traced_memory()[0] / 1e6
    tracemalloc.stop()
    start = time.perf_counter()
    found = interview(book, interviews, 6 if times > 10 else 8, shipped)
    found |= {"times": times, "causes": len(book.causes), "checks": len(book.checks)}
    found |= {"book_mb": held, "peak_mb": peak_mb(), "seconds": time.perf_counter() - start}
    print(json.dumps(found))
