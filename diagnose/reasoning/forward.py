"""Forward chaining: told and measured facts to findings, stops, cautions and notes.

The only importer of experta. Rules are monotone (actions only add); the rules that can fire are
selected first and an engine is built of those alone, so the cost does not grow with the size of
the knowledge. The result is sorted, so that the same facts give the same bytes in any order.
"""

from __future__ import annotations

import heapq
import inspect
import itertools
import logging
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from diagnose.book.conditions import Condition, FactValue, Number, holds
from diagnose.book.model import Book, Conclusion, Rule
from diagnose.physics.catalogue import calculation
from diagnose.physics.quantities import QuantityError, read_quantity
from diagnose.reasoning.ground import ground, is_fact, needed, offered

FIRES_ABOVE = 0.05
MOST_KEPT = 1000  # results of lots of rules remembered for a book


@dataclass(frozen=True, order=True)
class Step:
    """One firing: the rule, how deep in the chain, the facts it stood on, what it concluded."""

    depth: int
    rule: str
    concluded: str  # fact, "stop:id", "note" or "caution:id"
    value: str
    degree: float
    from_facts: tuple[str, ...] = field(compare=False, default=())


@dataclass(frozen=True)
class Deduced:
    """All that follows from the facts told."""

    words: Mapping[str, Mapping[str, float]]  # finding -> value -> degree
    numbers: Mapping[str, Number]
    stops: Mapping[str, float]
    notes: tuple[tuple[str, str], ...]  # (rule, text)
    cautions: tuple[str, ...]
    trace: tuple[Step, ...]
    could_not: tuple[tuple[str, str], ...] = ()  # (rule, why its sum could not be done)


def deduce(book: Book, told: Mapping[str, FactValue]) -> Deduced:
    """Run the rules of the book over the told facts.

    Rules that share nothing they conclude are run apart, each lot on the facts it names: an
    engine's work grows with rules times facts. What a lot gave is remembered, so that one more
    answer runs only the rules it bears on.
    """
    parts = []
    kept = ground(book).deduced
    for rules in apart(book, select(book, told)):
        names = {f for r in rules for f in needed(r)}
        facts = {n: told[n] for n in sorted(names & told.keys())}
        key = (tuple(r.id for r in rules), tuple(facts.items()))
        part = kept.get(key)
        if part is None:
            run = _Run(book, facts)
            _drive(run, rules)
            part = run.result()
            while len(kept) >= MOST_KEPT:
                del kept[next(iter(kept))]
        else:
            del kept[key]  # put back as the newest
        kept[key] = part
        parts.append(part)
    return _together(parts)


def apart(book: Book, rules: Sequence[Rule]) -> list[tuple[Rule, ...]]:
    """The rules in lots that neither feed one another nor conclude the same, by first id."""
    gives = {r.id: ground(book).gives[r.id] for r in rules}
    made = {f for names in gives.values() for f in names}
    lot: dict[str, str] = {}

    def root(name: str) -> str:
        while lot.setdefault(name, name) != name:
            lot[name] = lot[lot[name]]
            name = lot[name]
        return name

    for rule in rules:
        for fact in made & {*gives[rule.id], *ground(book).needed[rule.id]}:
            lot[root(f"fact {fact}")] = root(rule.id)
    lots: dict[str, list[Rule]] = {}
    for rule in rules:
        lots.setdefault(root(rule.id), []).append(rule)
    return [tuple(lots[k]) for k in sorted(lots, key=lambda k: lots[k][0].id)]


def _together(parts: Sequence[Deduced]) -> Deduced:
    """What the lots gave as one; only stops, notes and cautions can come from several."""
    stops: dict[str, float] = {}
    for part in parts:
        for name, degree in part.stops.items():
            stops[name] = max(degree, stops.get(name, 0.0))
    return Deduced(
        dict(sorted((w for p in parts for w in p.words.items()), key=lambda w: w[0])),
        dict(sorted((n for p in parts for n in p.numbers.items()), key=lambda n: n[0])),
        dict(sorted(stops.items())),
        tuple(sorted({n for p in parts for n in p.notes})),
        tuple(sorted({c for p in parts for c in p.cautions})),
        tuple(sorted(s for p in parts for s in p.trace)),
        tuple(sorted({c for p in parts for c in p.could_not})),
    )


def deduce_in_turn(book: Book, told: Mapping[str, FactValue]) -> Deduced:
    """The same as `deduce`, the rules fired one by one without the engine.

    For work on thousands of cases; the rules only ever add, so a list of what waits will do.
    """
    chosen = select(book, told)
    place = {rule.id: n for n, rule in enumerate(chosen)}
    run, needs = _Run(book, dict(told)), ground(book).needed
    values: dict[str, list[FactValue]] = {}
    waiting: list[tuple[int, int, dict[str, FactValue]]] = []

    def match(index: int, name: str, value: FactValue) -> None:
        others = sorted(needs[chosen[index].id] - {name})
        for combined in itertools.product(*(values.get(o, ()) for o in others)):
            facts = {name: value, **dict(zip(others, combined, strict=True))}
            heapq.heappush(waiting, (index, next(count), facts))

    def add(name: str, value: FactValue) -> None:
        if value in values.get(name, ()):
            return
        values.setdefault(name, []).append(value)
        for rule in ground(book).rules_of.get(name, ()):
            if rule in place:
                match(place[rule], name, value)

    count = itertools.count()
    for index, rule in enumerate(chosen):
        if not needs[rule.id]:
            heapq.heappush(waiting, (index, next(count), {}))
    for name in sorted(told):
        add(name, told[name])
    while waiting:
        index, _, facts = heapq.heappop(waiting)
        for name, new in _conclude(run, chosen[index], facts):
            add(name, new)
    return run.result()


def select(book: Book, told: Mapping[str, FactValue]) -> tuple[Rule, ...]:
    """The rules whose facts are all known or could be worked out by others selected."""
    made = ground(book)
    known = set(told)
    chosen: set[str] = set()
    ready = [made.rules_of[f] for f in known if f in made.rules_of]
    look = {*made.free_rules, *(r for rules in ready for r in rules)}
    while look:
        new = {r for r in look if r not in chosen and made.needed[r] <= known}
        chosen |= new
        added = {f for r in new for f in offered(book.rules[r])} - known
        known |= added
        look = {r for f in added for r in made.rules_of.get(f, ())}
    return tuple(book.rules[k] for k in sorted(chosen))


class _Run:
    """What one run collects. Actions only record here; nothing is computed inside a match."""

    def __init__(self, book: Book, told: dict[str, FactValue]) -> None:
        self.book = book
        self.told = told
        self.words: dict[str, dict[str, float]] = {}
        self.numbers: dict[str, Number] = {}
        self.stops: dict[str, float] = {}
        self.notes: set[tuple[str, str]] = set()
        self.cautions: set[str] = set()
        self.could_not: set[tuple[str, str]] = set()
        self.steps: dict[tuple[str, str, str], Step] = {}
        self.depth: dict[str, int] = dict.fromkeys(told, 0)

    def degree_of(self, facts: Mapping[str, FactValue]) -> float:
        """How sure the facts themselves are: worked-out findings carry their own degree."""
        result = 1.0
        for name, value in facts.items():
            if name not in self.told and isinstance(value, str):
                result *= self.words.get(name, {}).get(value, 1.0)
        return result

    def record(self, rule: Rule, made: Conclusion, degree: float, facts: Iterable[str]) -> None:
        depth = 1 + max((self.depth.get(f, 0) for f in facts), default=0)
        kind, value = _label(made)
        if made.finding:
            values = self.words.setdefault(made.finding, {})
            values[made.is_] = max(degree, values.get(made.is_, 0.0))
            self.depth[made.finding] = max(depth, self.depth.get(made.finding, 0))
        elif made.stop:
            self.stops[made.stop] = max(degree, self.stops.get(made.stop, 0.0))
        elif made.note:
            self.notes.add((rule.id, made.note))
        else:
            self.cautions.add(made.caution)
        self.keep(Step(depth, rule.id, kind, value, degree, tuple(sorted(facts))))

    def keep(self, step: Step) -> None:
        key = (step.rule, step.concluded, step.value)
        old = self.steps.get(key)
        if old is None or step.degree > old.degree:
            self.steps[key] = step

    def result(self) -> Deduced:
        return Deduced(
            {k: dict(sorted(v.items())) for k, v in sorted(self.words.items())},
            dict(sorted(self.numbers.items())),
            dict(sorted(self.stops.items())),
            tuple(sorted(self.notes)),
            tuple(sorted(self.cautions)),
            tuple(sorted(self.steps.values())),
            tuple(sorted(self.could_not)),
        )


def _label(made: Conclusion) -> tuple[str, str]:
    if made.finding:
        return made.finding, made.is_
    if made.stop:
        return f"stop:{made.stop}", ""
    if made.note:
        return "note", made.note
    return f"caution:{made.caution}", ""


def _conclude(run: _Run, rule: Rule, facts: Mapping[str, FactValue]) -> list[tuple[str, FactValue]]:
    """Fire one rule on the facts it matched; the new facts it adds."""
    base = (holds(rule.when, facts) or 0.0) * run.degree_of(facts)
    if base <= FIRES_ABOVE:
        return []
    added: list[tuple[str, FactValue]] = []
    seen = dict(facts)
    if rule.work_out is not None:
        number = _work_out(run, rule, facts)
        if number is None:
            return []
        seen[rule.work_out.gives] = number
        run.numbers[rule.work_out.gives] = number
        run.depth[rule.work_out.gives] = 1 + max((run.depth.get(f, 0) for f in facts), default=0)
        run.keep(Step(run.depth[rule.work_out.gives], rule.id, rule.work_out.gives, "", base,
                      tuple(sorted(facts))))  # fmt: skip
        added.append((rule.work_out.gives, number))
    for made in rule.then:
        degree = base * (holds(made.condition, seen) or 0.0)
        if degree > FIRES_ABOVE and not _refused(run, rule, made, seen):
            run.record(rule, made, degree, seen)
            if made.finding:
                added.append((made.finding, made.is_))
    return added


def _refused(run: _Run, rule: Rule, made: Conclusion, facts: Mapping[str, FactValue]) -> bool:
    """True, with the reason noted, when the readings it rests on cannot carry the conclusion."""
    numbers = (value for value in facts.values() if isinstance(value, Number))
    for name, why in (pair for number in numbers for pair in number.cannot_show):
        if made.shows == name:
            run.notes.add((rule.id, why))
            return True
    return False


def _work_out(run: _Run, rule: Rule, facts: Mapping[str, FactValue]) -> Number | None:
    """The named calculation at the values and at every corner of their ranges."""
    work = rule.work_out
    assert work is not None
    calc = calculation(work.with_)
    ranges: dict[str, tuple[float, float, float]] = {}
    try:
        for given in calc.inputs:
            fact = work.inputs.get(given.name, given.default)
            if fact is not None:
                ranges[given.name] = _range(fact, facts, given.dimension)
        middle = calc.function(**{k: v[0] for k, v in ranges.items()})
        wide = [k for k, v in ranges.items() if v[1] != v[2]]
        corners = [middle]
        for ends in itertools.product((1, 2), repeat=len(wide)):
            pick = {k: v[0] for k, v in ranges.items()}
            pick |= {k: ranges[k][e] for k, e in zip(wide, ends, strict=True)}
            corners.append(calc.function(**pick))
    except (ValueError, ZeroDivisionError) as error:
        run.could_not.add((rule.id, str(error)))
        return None
    return Number(middle, min(corners), max(corners))


def _range(fact: str, facts: Mapping[str, FactValue], dimension: str) -> tuple[float, float, float]:
    if not is_fact(fact):
        try:
            q = read_quantity(fact, dimension)
        except QuantityError as error:
            raise ValueError(str(error)) from error
        return q.value, q.lowest, q.highest
    number = facts[fact]
    if not isinstance(number, Number):
        raise ValueError(f"{fact} is not a number")
    return number.value, number.low, number.high


# --- the experta side -----------------------------------------------------------------------


def _experta() -> Any:
    """Import experta with the name its pinned dependency wants, and without its log handler."""
    import collections
    import collections.abc

    missing = not hasattr(collections, "Mapping")
    handlers = list(logging.getLogger().handlers)
    if missing:
        collections.Mapping = collections.abc.Mapping  # type: ignore[attr-defined]  # gone since 3.10
    try:
        import warnings

        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            import experta
    finally:
        if missing:
            del collections.Mapping  # type: ignore[attr-defined]  # put there above
    for handler in list(logging.getLogger().handlers):
        if handler not in handlers:
            logging.getLogger().removeHandler(handler)
    logging.getLogger("experta").setLevel(logging.CRITICAL)
    return experta


_cache: dict[str, Any] = {}


def warm_up() -> None:
    """Import the rules engine ahead of need, while a person reads."""
    if "Known" not in _cache:
        experta = _experta()
        _cache["experta"] = experta
        _cache["Known"] = type("Known", (experta.Fact,), {})


def _drive(run: _Run, chosen: tuple[Rule, ...]) -> None:
    warm_up()
    experta, known = _cache["experta"], _cache["Known"]
    members = {
        f"rule:{rule.id}": _engine_rule(experta, known, rule, len(chosen) - index)
        for index, rule in enumerate(chosen)
    }
    engine = type("CaseEngine", (experta.KnowledgeEngine,), members)()
    engine.collected = run
    engine.reset()
    facts = [known(name=n, value=v) for n, v in sorted(run.told.items(), key=lambda p: p[0])]
    if facts:
        engine.declare(*facts)
    engine.run()


def _engine_rule(experta: Any, known: Any, rule: Rule, salience: int) -> Any:
    """The engine's rule for one of ours, kept so that the class alone is made anew."""
    kept = _cache.setdefault("rules", {})
    key = (id(rule), salience)
    if key not in kept:
        names = needed(rule)
        binds = {f"v{i}": n for i, n in enumerate(names)}
        patterns = [known(name=n, value=getattr(experta.MATCH, b)) for b, n in binds.items()]
        tests = [experta.TEST(_make_test(rule.when, binds))] if rule.when.tests else []
        kept[key] = (patterns + tests, _make_action(known, rule, binds), rule)
    parts, action, _alive = kept[key]  # the rule is held so that its id stays its own
    return experta.Rule(*parts, salience=salience)(action)


def _make_test(condition: Condition, binds: Mapping[str, str]) -> Callable[..., bool]:
    def test(**values: FactValue) -> bool:
        return (holds(condition, {binds[k]: v for k, v in values.items()}) or 0.0) > FIRES_ABOVE

    names = [b for b, n in binds.items() if n in condition.facts]
    keyword = inspect.Parameter.KEYWORD_ONLY
    test.__signature__ = inspect.Signature(  # type: ignore[attr-defined]  # read by the engine
        [inspect.Parameter(n, keyword) for n in names]
    )
    return test


def _make_action(known: Any, rule: Rule, binds: Mapping[str, str]) -> Callable[..., None]:
    def action(self: Any, **values: FactValue) -> None:
        facts = {binds[k]: v for k, v in values.items() if k in binds}
        added = _conclude(self.collected, rule, facts)
        if added:
            self.declare(*(known(name=n, value=v) for n, v in added))

    return action
