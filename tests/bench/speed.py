"""How fast: load, update, next check, why; and beside public engines on the same network."""

from __future__ import annotations

import json
import random
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path

from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder
from diagnose.book.model import Book
from diagnose.case.entries import Case, Entry
from diagnose.reasoning.assembly import Row
from diagnose.reasoning.belief import believe, within_width
from diagnose.reasoning.explain import account
from diagnose.reasoning.explained import sum_out
from diagnose.reasoning.network import UNLISTED, Network
from diagnose.reasoning.next_check import value_all
from diagnose.reasoning.reason import Reasoned, reason
from tests.bench.loop import median_ms
from tests.bench.world import Drawer, plain_network

SEED = 20260304
OTHER = Path(__file__).with_name("other_engine.py")


def load_ms(repeats: int) -> float:
    """Milliseconds to read the shipped knowledge from its files."""
    return median_ms(lambda: load_book(knowledge_folder()), repeats)


def interview(
    book: Book, interviews: int, most: int = 8, drawn_from: Book | None = None
) -> dict[str, float]:
    """Median milliseconds of each part over all steps of some interviews with option checks.

    "step" is belief plus next check plus why; "answer" the whole pipe, rules engine included,
    plus why. The cases are drawn from `drawn_from`, of which `book` may hold copies under names
    with a number behind.
    """
    source = drawn_from or book
    drawer = Drawer(source, SEED)
    times: dict[str, list[float]] = {k: [] for k in ("belief", "next", "why", "pipe")}
    for _ in range(interviews):
        world = drawer.case()
        case = Case("", (world.complaint,))
        for _ in range(most):
            done = _timed(times["pipe"], partial(reason, book, case))
            _parts(book, done, times)
            step = done.step
            if step.kind not in ("ask", "safety"):
                break
            name = step.name if step.name in source.checks else step.name.rsplit("-", 1)[0]
            value = world.answers.get(name, "")
            check = book.checks[step.name]
            if check.kind != "one" or value not in check.by_option:
                value = "don't know"
            case = case.with_entry(Entry("answer", step.name, value))
    found = {k: sorted(v)[len(v) // 2] for k, v in times.items()}
    steps = [sum(t) for t in zip(times["belief"], times["next"], times["why"], strict=True)]
    whole = [p + w for p, w in zip(times["pipe"], times["why"], strict=True)]
    found["step"], found["step_p95"] = _middle(steps), sorted(steps)[int(0.95 * len(steps))]
    found["answer"], found["answer_p95"] = _middle(whole), sorted(whole)[int(0.95 * len(whole))]
    found["steps"] = float(len(steps))
    return found


def _middle(values: list[float]) -> float:
    return sorted(values)[len(values) // 2]


def _timed(into: list[float], work: Callable[[], Reasoned]) -> Reasoned:
    start = time.perf_counter()
    done = work()
    into.append(1000.0 * (time.perf_counter() - start))
    return done


def _parts(book: Book, done: Reasoned, times: dict[str, list[float]]) -> None:
    checks = [book.checks[c.check] for c in done.valued.candidates]
    start = time.perf_counter()
    believe(done.network)
    middle = time.perf_counter()
    value_all(book, done.network, checks, done.read.facts, done.fixes)
    end = time.perf_counter()
    account(done, [r.cause for r in done.belief.ranked[:3]])
    last = time.perf_counter()
    for name, span in (("belief", middle - start), ("next", end - middle), ("why", last - end)):
        times[name].append(1000.0 * span)


# --- beside public engines ----------------------------------------------------------------------


def evidenced(book: Book, positives: int, draw: random.Random) -> Network:
    """A complaint and this many signs seen, the complaint among them, each with linked causes."""
    complaint = draw.choice(sorted(book.symptoms))
    net = plain_network(book, complaint)
    able = sorted({s for n in net.nodes for s in n.links} - set(book.symptoms))
    evidence: dict[str, tuple[float, ...]] = {complaint: (0.0, 1.0)}
    for sign in draw.sample(able, min(len(able), positives - 1)):
        size = len(net.background[sign])
        seen = draw.choice([k for k in range(1, size) if _shown(net, sign, k)])
        evidence[sign] = tuple(float(k == seen) for k in range(size))
    return replace(net, evidence=dict(sorted(evidence.items())))


def _shown(net: Network, sign: str, value: int) -> bool:
    return any(sign in n.links and n.links[sign][value] > 0 for n in net.nodes)


def engines(book: Book, networks: int, repeats: int, most: int, python: str) -> dict[str, object]:
    """Update times by number of positives: ours, pyAgrum warm and fresh, pgmpy."""
    draw = random.Random(SEED)
    rows = []
    note = ""
    for positives in range(1, most + 1):
        nets = [evidenced(book, positives, draw) for _ in range(networks)]
        aside = sum(bool(within_width(n).set_aside) for n in nets)
        row: dict[str, float] = {"positives": positives, "set_aside": aside}
        mine = [median_ms(partial(believe, n), repeats) for n in nets]
        plain = [median_ms(partial(sum_out, n, [Row(n.evidence)]), repeats) for n in nets]
        row["ours"], row["ours_posteriors"] = _middle(mine), _middle(plain)
        _agrum(nets, repeats, row)
        found = _pgmpy(nets[:1], python) if not note else {"error": note}
        note = str(found.get("error", ""))
        if not note:
            row["pgmpy_fresh"], row["pgmpy_warm"] = _number(found["fresh"]), _number(found["warm"])
        rows.append(row)
    return {"networks": networks, "seed": SEED, "rows": rows, "pgmpy": note}


def _afresh(net: Network) -> object:
    from tests.bench.agrum_engine import Engine

    return Engine(net).update()


def _agrum(nets: list[Network], repeats: int, row: dict[str, float]) -> None:
    from tests.bench.agrum_engine import Engine

    row["agrum_full"] = 0
    try:
        fresh, warm, gap = [], [], 0.0
        for net in nets:
            try:
                fresh.append(median_ms(partial(_afresh, net), max(1, repeats // 2)))
            except Exception as error:  # pyAgrum has no class of its own for it
                if "bad_alloc" not in str(error):
                    raise
                row["agrum_full"] += 1
                continue
            engine = Engine(net)
            warm.append(median_ms(engine.update, repeats))
            gap = max(gap, engine.gap())
        if not warm:
            fresh, warm, gap = [float("nan")], [float("nan")], float("nan")
        row["agrum_warm"], row["agrum_fresh"], row["gap"] = _middle(warm), _middle(fresh), gap
    except ImportError:
        row["agrum_warm"] = row["agrum_fresh"] = row["gap"] = float("nan")


def _pgmpy(nets: list[Network], python: str) -> dict[str, object]:
    """The same networks in a process of an interpreter that has pgmpy; what it said instead."""
    told = json.dumps([_plain(n) for n in nets])
    try:
        done = subprocess.run(
            [python or sys.executable, "-W", "ignore", str(OTHER)],
            input=told, capture_output=True, text=True, timeout=60, check=False,
        )  # fmt: skip
    except (OSError, subprocess.TimeoutExpired) as error:
        return {"error": f"pgmpy: {type(error).__name__}"}
    last = done.stdout.strip().splitlines()
    if done.returncode or not last:
        return {"error": "pgmpy: " + (done.stderr.strip().splitlines() or ["no answer"])[-1]}
    found: dict[str, object] = json.loads(last[-1])
    return found


def _number(value: object) -> float:
    return float(str(value))


def _plain(net: Network) -> dict[str, object]:
    signs = []
    for sign, likelihood in net.evidence.items():
        parents = {n.id: n.links[sign] for n in net.nodes if sign in n.links}
        parents[UNLISTED] = net.unlisted[sign]
        value = max(range(len(likelihood)), key=lambda k: likelihood[k])
        signs.append({"id": sign, "background": net.background[sign], "parents": parents,
                      "value": value})  # fmt: skip
    priors = {n.id: n.prior for n in net.nodes} | {UNLISTED: net.unlisted_prior}
    return {"priors": priors, "signs": signs}
