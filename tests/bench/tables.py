"""The figures as tables, with the targets beside them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

Figures = Mapping[str, Any]


def shown(figures: Figures) -> str:
    """Every section there is, as text."""
    parts = [f"calibration loop: {figures['loop_ms']:.2f} ms (times: ms, then loops)"]
    for name, table in TABLES.items():
        if name in figures:
            parts.append(f"\n{name}\n{'-' * len(name)}")
            parts += table(figures[name], figures["loop_ms"])
    parts.append(f"\n{figures['seconds']:.0f} s, {figures['date']}")
    return "\n".join(parts)


def _agreement(f: Figures, loop: float) -> list[str]:  # noqa: ARG001 - as all tables
    pyagrum = f["pyagrum"]
    said = pyagrum if isinstance(pyagrum, str) else f"{pyagrum:.1e}"
    return [f"{f['cases']} networks each, seed {f['seed']}",
            f"largest difference: enumeration {f['enumeration']:.1e} (target 1e-12), "
            f"pyAgrum {said} (target 1e-10)"]  # fmt: skip


def _policies(f: Figures, loop: float) -> list[str]:  # noqa: ARG001 - as all tables
    lines = []
    for run in f["runs"]:
        lines.append(f"{run['cases']} cases, seed {run['seed']}, checks at {run['times']:g} times "
                     "their minutes, 1 minute of attention a question")  # fmt: skip
        lines.append(
            f"{'':28}{'minutes':>8}  {'ours minus it (95 %)':>26}  {'questions':>11}  helped"
        )
        for name, r in run["rows"].items():
            line = f"{name:28}{r['minutes']:8.1f}"
            if "low" in r:
                line += f"  {r['ours_minus']:8.1f} ({r['low']:6.1f} ..{r['high']:6.1f})"
                line += f"  {r['questions_median']:4.0f} /{r['questions_mean']:5.1f}"
                line += f"  {r['helped']:5.0%}"
            lines.append(line)
        c = run["cap"]
        lines.append(f"cap of {c['questions']} reached in {c['share']:.1%}; it costs "
                     f"{c['cost_in_those']:+.1f} minutes in those, {c['cost_over_all']:+.2f} over "
                     "all, against asking on\n")  # fmt: skip
    lines.append("targets: ours minus every other below 0; questions median 6, mean 9")
    return lines


def _regret(f: Figures, loop: float) -> list[str]:  # noqa: ARG001 - as all tables
    return [
        f"{f['problems']} sub-problems, seed {f['seed']}, on average {f['causes']:.1f} causes and "
        f"{f['checks']:.1f} checks",
        f"above the optimum: mean {f['mean']:.1%} (target 3 %), median {f['median']:.1%}, "
        f"nine in ten {f['p90']:.1%}, worst {f['worst']:.1%} (target 12 %)",
    ]


def _calibration(f: Figures, loop: float) -> list[str]:  # noqa: ARG001 - as all tables
    lines = []
    for name, c in f.items():
        lines.append(f"{name}: {c['cases']} cases, seed {c['seed']}: error {c['error']:.4f}, noise "
                     f"floor {c['floor']:.4f}, above it {c['above_floor']:+.4f} (target .01); "
                     f"said {c['said']:.3f}, true {c['top1']:.3f}; "
                     f"{c['impossible']} contradicted outright")  # fmt: skip
        lines += [f"    {n:6d} cases  said {p:.3f}  true {t:.3f}" for n, p, t in c["table"]]
    return lines


def _wrong(f: Figures, loop: float) -> list[str]:  # noqa: ARG001 - as all tables
    return [f"{f['cases']} cases, seed {f['seed']}, sigma {f['sigma']}: first right with the book "
            f"{f['top1_book']:.1%}, with the knowledge the cases came from {f['top1_moved']:.1%}: "
            f"loses {f['loses_points']:.1f} points (target 2); error {f['error']:.3f}"]  # fmt: skip


def _removed(f: Figures, loop: float) -> list[str]:  # noqa: ARG001 - as all tables
    lines = [f"{f['cases']} cases, seed {f['seed']}"]
    for name in ("with_unlisted", "without_unlisted"):
        r = f[name]
        lines.append(f"{name.replace('_', ' '):18} sure (.9) and wrong {r['sure_and_wrong']:.1%}; "
                     f"cause kept: first right {r['top1_kept']:.1%}")  # fmt: skip
    lines.append("targets: sure and wrong 3 %, first right within 1 point")
    return lines


def _speed(f: Figures, loop: float) -> list[str]:
    s = f["interview"]
    lines = [f"load {_ms(f['load_ms'], loop)}"]
    lines += [f"{n:8}{_ms(s[n], loop)}" for n in ("belief", "next", "why", "step", "answer")]
    lines.append("step = belief + next check + why; answer = rules engine included; medians of "
                 f"{s['steps']:.0f} steps; "
                 f"95 of 100: {s['step_p95']:.1f}, {s['answer_p95']:.1f} ms")  # fmt: skip
    return lines


def _engines(f: Figures, loop: float) -> list[str]:  # noqa: ARG001 - as all tables
    lines = [f"median ms of {f['networks']} networks, seed {f['seed']}; ours: belief (acts, cures, "
             "there), posteriors alone; pyAgrum: posteriors"]  # fmt: skip
    lines.append(
        " positives   ours  alone   pyAgrum warm  fresh   warm/ours  pgmpy warm  fresh  gap"
    )
    for r in f["rows"]:
        pgmpy = (
            f"{r['pgmpy_warm']:10.0f} {r['pgmpy_fresh']:6.0f}" if "pgmpy_warm" in r else " " * 17
        )
        aside = f"  set aside in {r['set_aside']}" if r["set_aside"] else ""
        if r["agrum_full"]:
            aside += f"  pyAgrum out of memory in {r['agrum_full']:.0f}"
        lines.append(f"{r['positives']:10d} {r['ours']:6.2f} {r['ours_posteriors']:6.2f} "
                     f"{r['agrum_warm']:14.2f} {r['agrum_fresh']:6.1f} "
                     f"{r['agrum_warm'] / r['ours']:10.1f}x {pgmpy} {r['gap']:.0e}"
                     f"{aside}")  # fmt: skip
    return lines + ([f["pgmpy"]] if f["pgmpy"] else [])


def _scale(f: Figures, loop: float) -> list[str]:
    lines = [" size  causes  checks  step                 answer               book MB  peak MB"]
    for r in f["rows"]:
        if "unfinished" in r:
            lines.append(f"{r['times']:4.0f}x  not finished in {r['unfinished']:.0f} s")
            continue
        if "failed" in r:
            lines.append(f"{r['times']:4.0f}x  failed")
            continue
        lines.append(f"{r['times']:4.0f}x {r['causes']:7.0f} {r['checks']:7.0f}  "
                     f"{_ms(r['step'], loop)}  {_ms(r['answer'], loop)}  {r['book_mb']:7.1f} "
                     f"{r['peak_mb']:8.0f}")  # fmt: skip
    lines.append("targets: step 20, 50, 150 ms; answer 80, 120 ms; memory 200 MB at 100x")
    return lines


def _start(f: Figures, loop: float) -> list[str]:
    lines = [f"{n:30}{_ms(1000 * v, loop)}" for n, v in f.items() if n != "repeats"]
    return [
        *lines,
        "targets: first question .4 s with the book kept, .8 s without; review 1.5 s",
    ]


def _ms(value: float, loop: float) -> str:
    return f"{value:8.1f} ms {value / loop:6.1f}"


TABLES = {
    "agreement": _agreement,
    "speed": _speed,
    "engines": _engines,
    "scale": _scale,
    "start": _start,
    "calibration": _calibration,
    "wrong numbers": _wrong,
    "cause removed": _removed,
    "regret": _regret,
    "policies": _policies,
}
