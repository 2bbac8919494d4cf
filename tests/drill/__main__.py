"""The full figures: `python -m tests.drill [cases] [first seed] [learners' cases]`."""

from __future__ import annotations

import math
import sys

from diagnose.drill.draw import draw_drill
from diagnose.drill.par import best_possible
from diagnose.drill.scoring import passed, score
from tests.drill.formulas import faults
from tests.drill.learners import at_random, by_the_list, play, what_tells_most
from tests.drill.test_drawn import shipped


def main(cases: int, first: int, played: int) -> None:
    book = shipped()
    bad, marked, below, gains = [], 0, 0, []
    for seed in range(first, first + cases):
        drill = draw_drill(book, seed)
        bad += [(seed, f) for f in faults(book, drill)]
        marked += drill.untypical
        p = book.causes[drill.cause].prior
        below += drill.after < math.log(p / (1.0 - p))
        gains.append(drill.after - drill.before)
    if cases:
        print(f"{cases} cases from seed {first}: {len(bad)} faults {bad[:5]}")
        print(f"log-odds gained on average {sum(gains) / cases:.2f}")
        print(f"untypical {marked} ({marked / cases:.1%}); below the prior {below}")
    ways = {"random": at_random, "list": by_the_list, "greedy": what_tells_most}
    totals = dict.fromkeys((*ways, "skips"), 0)
    passes = dict.fromkeys((*ways, "skips"), 0)
    for seed in range(first, first + played):
        drill = draw_drill(book, seed)
        best = best_possible(book, drill)
        for name, way in ways.items():
            game = play(book, drill, way)
            totals[name] += score(game, best)
            passes[name] += passed(game)
        game = play(book, drill, by_the_list, skips_safety=True)
        totals["skips"] += score(game, best)
        passes["skips"] += passed(game)
    for name in totals if played else ():
        print(f"{name}: mean score {totals[name] / played:.1f}, passed {passes[name]} of {played}")


if __name__ == "__main__":
    given = [int(a) for a in sys.argv[1:]]
    main(*(given + [2000, 0, 500][len(given) :]))
