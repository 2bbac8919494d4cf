"""pgmpy on networks read from standard input, in an interpreter that has it; times as JSON.

Run by the bench in a process of its own, so that it need not be installed beside the product.
"""

from __future__ import annotations

import json
import statistics
import sys
import time


def network(told: dict) -> object:  # type: ignore[type-arg]  # run where mypy is not
    """The network with every sign a running maximum over its parents."""
    from pgmpy.factors.discrete import TabularCPD
    from pgmpy.models import BayesianNetwork

    net, tables = BayesianNetwork(), []
    for name, p in told["priors"].items():
        net.add_node(name)
        tables.append(TabularCPD(name, 2, [[1.0 - p], [p]]))
    for sign in told["signs"]:
        size, before = len(sign["background"]), sign["id"] + "#0"
        net.add_node(before)
        tables.append(TabularCPD(before, size, [[x] for x in sign["background"]]))
        for i, (parent, step) in enumerate(sign["parents"].items()):
            now = sign["id"] if i == len(sign["parents"]) - 1 else f"{sign['id']}#{i + 1}"
            net.add_edges_from([(parent, now), (before, now)])
            columns = [_column(size, top, step if on else [1.0] + [0.0] * (size - 1))
                       for on in (0, 1) for top in range(size)]  # fmt: skip
            rows = [list(r) for r in zip(*columns)]  # noqa: B905 - columns are alike long
            tables.append(TabularCPD(now, size, rows, [parent, before], [2, size]))
            before = now
    net.add_cpds(*tables)
    return net


def _column(size: int, top: int, step: list[float]) -> list[float]:
    column = [0.0] * size
    for value, chance in enumerate(step):
        column[max(top, value)] += chance
    return column


def main() -> None:
    """Median milliseconds of one update of all posteriors, engine fresh and kept."""
    from pgmpy.inference import VariableElimination

    fresh, warm = [], []
    for told in json.load(sys.stdin):
        seen = {s["id"]: s["value"] for s in told["signs"]}
        names = list(told["priors"])
        start = time.perf_counter()
        engine = VariableElimination(network(told))
        _all(engine, names, seen)
        fresh.append(1000.0 * (time.perf_counter() - start))
        start = time.perf_counter()
        _all(engine, names, seen)
        warm.append(1000.0 * (time.perf_counter() - start))
    print(json.dumps({"fresh": statistics.median(fresh), "warm": statistics.median(warm)}))


def _all(engine: object, names: list[str], seen: dict[str, int]) -> None:
    for name in names:
        engine.query([name], evidence=seen, show_progress=False)  # type: ignore[attr-defined]  # run where mypy is not


if __name__ == "__main__":
    main()
