"""Drawing a case from the knowledge: one hidden cause, and all that would be seen because of it.

The cause comes first, by how common it is and how often it makes such a complaint; set-up and
history are drawn as likely as they are with that cause alone at work, signs by what the book says
it shows, numbers by the formulas. The same seed and wishes give the same case.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from diagnose.book.conditions import FactValue, holds
from diagnose.book.model import Book, Check
from diagnose.case.entries import UNKNOWN, Entry
from diagnose.drill.belief_in import bare_suspicion, belief_of, log_odds
from diagnose.drill.circumstances import draw_words, facts_of, matters
from diagnose.drill.drawn import Drill
from diagnose.drill.hazards import all_is_well, has_hazard, plant
from diagnose.drill.numbers import RATIOS, Numbers, draw_numbers
from diagnose.drill.quick import read_quickly
from diagnose.drill.signs import answers_in_words, draw_signs, signs_of
from diagnose.drill.usual import TOLD
from diagnose.reasoning.belief import Impossible
from diagnose.reasoning.ground import ground, offered
from diagnose.reasoning.network import impossible, prior_of
from diagnose.reasoning.reason import Read

TRIES = 12
SETTINGS = 4  # sets of numbers weighed where the odds of the cause hang on numbers
KEPT = 0.3  # share of the cases with misleading signs that is kept: rare, but not unheard of
AGREES = 0.6  # how surely a reading must say what was drawn
THIN = (
    "thin-plate-dished",
    "part-too-thin-for-the-poles",
    "thin-work-pulled-flat",
    "plate-ground-hot",
)  # complaints and causes of thin plates


@dataclass(frozen=True)
class Wish:
    """What kind of case is wanted; empty means any.

    `causes` and `complaints` are ids. `fixed` are answers known from a closed case.
    """

    level: int = 1
    causes: frozenset[str] = frozenset()
    complaints: frozenset[str] = frozenset()
    fixed: Mapping[str, str] = field(default_factory=dict)
    hazard: bool | None = None  # None: by the seed
    from_shop: bool = False


def draw_drill(book: Book, seed: int, wish: Wish | None = None) -> Drill:
    """The case of a seed. Raises LookupError when the book has no case of the kind wanted."""
    wish = wish or Wish()
    draw = random.Random(f"drill {seed}")
    pairs = pool(book, wish)
    if not pairs:
        raise LookupError("the knowledge has no case of that kind")
    rest: Drill | None = None
    for tries in range(TRIES):
        (cause, complaint), *_ = draw.choices(list(pairs), list(pairs.values()))
        drill = _drill(draw, book, seed, wish, cause, complaint, last=tries + 1 == TRIES)
        if drill is not None and (not drill.untypical or wish.from_shop or draw.random() < KEPT):
            return drill
        rest = drill or rest
    if rest is None:
        raise LookupError("no case of that kind could be drawn; try another seed")
    return rest


def pool(book: Book, wish: Wish) -> dict[tuple[str, str], float]:
    """Cause and complaint -> how usual such a case is."""
    links = ground(book).links
    found = {}
    for name in sorted(book.causes):
        if wish.causes and name not in wish.causes:
            continue
        for complaint in sorted(book.symptoms):
            if (complaint in wish.complaints or not wish.complaints) and complaint in links[name]:
                fires = 1.0 - links[name][complaint][0]
                if fires > 0.0:
                    found[name, complaint] = book.causes[name].prior * fires
    return found


def _drill(
    draw: random.Random, book: Book, seed: int, wish: Wish, cause: str, complaint: str, last: bool
) -> Drill | None:
    """One case, or None when what was drawn does not go together."""
    words = draw_words(draw, book, cause, complaint, wish.fixed)
    if impossible(book.causes[cause], facts_of(book, words, complaint)) is not None:
        return None
    thin = bool({complaint, cause} & set(THIN)) and "block" not in complaint
    signs = draw_signs(draw, book, cause, _fixed_signs(book, wish.fixed))
    numbers = _numbers(draw, book, cause, complaint, words, signs, thin, wish)
    answers = {**words, **answers_in_words(draw, book, cause, signs), **_calm(book)}
    answers |= {n: numbers.texts.get(n, UNKNOWN) for n in _number_checks(book)}
    answers |= {n: v for n, v in wish.fixed.items() if not _about_hazards(book.checks[n])}
    given = {n: answers[n] for n in TOLD if answers.get(n, UNKNOWN) != UNKNOWN and n in book.checks}
    drill = Drill(
        seed, wish.level, complaint, cause, answers, given, signs, None, 0.0, 0.0,
        numbers.bar_rate, thin, wish.from_shop, frozenset(wish.fixed),
    )  # fmt: skip
    read = read_quickly(book, drill.full_case())
    if read.stops and not last:
        return None  # a sum or a sign that stops the machine, where none was meant
    drill = replace(drill, answers=_that_make_sense(book, answers, read.facts))
    if wish.hazard if wish.hazard is not None else has_hazard(seed):
        found = plant(draw, book, read.facts, frozenset(given), wish.level <= 1)
        if found is not None:
            hit = {found.check: found.option}
            drill = replace(drill, hazard=found, answers={**drill.answers, **hit})
    return _weighed(book, drill)


def _weighed(book: Book, drill: Drill) -> Drill | None:
    try:
        after = log_odds(belief_of(book, read_quickly(book, drill.full_case())), drill.cause)
        before = bare_suspicion(book, drill.complaint, drill.cause)
    except Impossible:
        return None
    return replace(drill, before=before, after=after)


def _numbers(
    draw: random.Random,
    book: Book,
    cause: str,
    complaint: str,
    words: Mapping[str, str],
    signs: dict[str, str],
    thin: bool,
    wish: Wish,
) -> Numbers:
    """Numbers that say what was drawn; signs that no numbers can show become what they do show."""
    fixed = _fixed_numbers(book, wish.fixed)
    wanted = {s: v for s, v in signs.items() if s in reading_signs(book)}
    if wanted.get("bar-rhythm", "") not in RATIOS:
        wanted.pop("bar-rhythm", None)
    facts = facts_of(book, words, complaint)
    hangs = _number_facts(book) & matters(book, cause)
    kept: list[tuple[float, Numbers, dict[str, str]]] = []
    for _ in range(3 * SETTINGS):
        numbers = draw_numbers(draw, words, wanted, thin, fixed)
        told = tuple(Entry("answer", n, v) for n, v in sorted(numbers.texts.items()))
        given = dict(words)
        read = read_quickly(
            book, Drill(0, 0, complaint, cause, {}, given, {}, None, 0, 0).case(told)
        )
        said = {s: v for s in wanted if (v := _said(read, s))}
        agrees = all(said.get(s, wanted[s]) == wanted[s] for s in wanted)
        kept.append((_odds(book, cause, {**facts, **read.facts}) * (1.0 if agrees else 1e-6),
                     numbers, said))  # fmt: skip
        enough = [k for k in kept if k[0] > 1e-6]
        if len(enough) >= (SETTINGS if hangs else 1):
            break
    weights = [w for w, _, _ in kept]
    _, numbers, said = draw.choices(kept, weights if sum(weights) > 0.0 else None)[0]
    signs.update(said)
    return numbers


def _said(read: Read, sign: str) -> str:
    """What the rules conclude of a sign from the numbers, when they are sure enough."""
    values = read.deduced.words.get(sign, {})
    best = max(values, key=lambda v: (values[v], v), default="")
    return best if best and values[best] >= AGREES else ""


def _odds(book: Book, cause: str, facts: Mapping[str, FactValue]) -> float:
    if impossible(book.causes[cause], facts) is not None:
        return 0.0
    p = prior_of(book, book.causes[cause], facts)
    return p / (1.0 - p)


def reading_signs(book: Book) -> frozenset[str]:
    """Signs that the rules conclude from numbers."""
    return frozenset(s for n in _number_checks(book) for s in signs_of(book, book.checks[n]))


def _number_checks(book: Book) -> list[str]:
    return sorted(c.id for c in book.checks.values() if c.kind == "number")


def _number_facts(book: Book) -> set[str]:
    """Facts that are numbers, or that rules make of numbers."""
    found = set(_number_checks(book))
    for rule in book.rules.values():
        if rule.work_out is not None or any(f in found for f in rule.when.facts):
            found |= set(offered(rule))
    return found


def _about_hazards(check: Check) -> bool:
    return check.kind == "any" or any(o.raises for o in check.options)


def _calm(book: Book) -> dict[str, str]:
    """Every question about hazards answered by a shop where nothing is wrong."""
    asked = [c for c in book.checks.values() if c.kind == "any" and _about_hazards(c)]
    return {c.id: well for c in asked if (well := all_is_well(c))}


def _fixed_signs(book: Book, fixed: Mapping[str, str]) -> dict[str, str]:
    found: dict[str, str] = {}
    for name, value in fixed.items():
        option = book.checks[name].by_option.get(value)
        found |= dict(option.means) if option else {}
    return found


def _fixed_numbers(book: Book, fixed: Mapping[str, str]) -> dict[str, tuple[str, float]]:
    from diagnose.physics.quantities import read_quantity

    numbers = [n for n in fixed if book.checks[n].kind == "number" and fixed[n] != UNKNOWN]
    return {n: (fixed[n], read_quantity(fixed[n], book.checks[n].dimension).value) for n in numbers}


def _that_make_sense(
    book: Book, answers: Mapping[str, str], facts: Mapping[str, FactValue]
) -> dict[str, str]:
    """Answers of the checks that this case leaves a reason to make."""
    return {n: v for n, v in answers.items() if holds(book.checks[n].asked_when, facts) != 0.0}
