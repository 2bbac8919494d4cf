"""What to do next: the question that tells most a minute, as long as it is worth its minutes
against the fixes; safety before both.

Every threshold of the policy stands here, set by the bench.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from diagnose.book.model import Book, Check
from diagnose.reasoning.ahead import ATTENTION, look_ahead
from diagnose.reasoning.fixes import LAST_RESORT, FixTable
from diagnose.reasoning.gates import turns
from diagnose.reasoning.next_check import Candidate, Valued

SECONDS = 0.6  # minutes: history and looks that cost nothing to speak of
OPENING = 2  # of those, how many of the complaint's first questions are asked before all else
TELLS = 0.02  # share of the entropy an opening question must remove
ENOUGH = 14  # questions after which the interview ends with the best it can do
BEST_THERE_IS = (
    "no question is worth its minutes now, and each fix is long for its chance; "
    "have someone look with you before a long job"
)
DOUBT = 3.0  # what a bit of doubt is worth, as a share of what the best question asks for one
DEAR = 60.0  # minutes of a fix before which one makes surer, and its hanging answer is asked again
SURER, LAST_HOPE = 0.4, 0.28  # bits a check must tell before a dear fix, and before giving up
SUSPECTED, PROOF = 0.33, 0.12  # chance of a fix that is a strong suspicion; bits of its proof
LONGEST_LOOK = 20.0  # minutes such a check may take
FAINT = 0.5  # chance of a fix below which one asks on while a check still tells something
WORTH_A_LOOK = 0.2  # bits such a check must tell, in proportion less for a fainter fix
FAINTEST = 0.4  # chance below which it is not asked to tell still less
HALF = 0.5  # share of the minutes of the fix it comes before that such a check may take
FEW, FIRM = 8, 0.8  # answers before which the fix must be so likely, or no quick look tells more
STANDING = 10  # questions after which one asks no more while nothing may turn
QUICK, QUICK_TELLS = 4.0, 0.1  # minutes of a quick look, and bits it must tell


@dataclass(frozen=True)
class Step:
    """What to do next. kind: ask | safety | fix | stuck.

    ask and safety name a check; fix names the fix to try; stuck means that neither a question
    nor a listed fix is worth its minutes.
    """

    kind: str
    name: str
    why: str
    candidate: Candidate | None = field(default=None, compare=False)


def decide(
    book: Book,
    valued: Valued,
    fixes: FixTable,
    *,
    safe: bool,
    safety: Sequence[Check],
    opening: Sequence[Check],
    first_questions: Sequence[str],
    asked: int,
    known: int,
    tried: bool,
) -> Step:
    """The next step for the machinist.

    `opening`: what is asked before all else and still open; a case that is told already is past
    its opening. Of the questions `asked` so many were answered with more than "don't know"
    (`known`); `tried`: a fix was made already.
    """
    early = _gate_still_open(book, safety) if asked >= OPENING else None
    if early is not None:
        return Step("safety", early.id, "asked early, whatever it tells of the cause")
    if opening and not tried and asked <= OPENING:
        first = min(opening, key=lambda c: (c.opens, c.id))
        return Step("ask", first.id, "an old hand asks it first, whatever the complaint")
    still = [c for c in valued.candidates if not _turns(book, c)]
    open_ = valued.candidates if safe or safety else still
    step = _decide(book, valued, fixes, open_, first_questions, asked, known, tried)
    if step.kind == "ask":
        wheel = step.candidate is not None and turns(book.checks[step.name])
        if wheel and not safe:
            if safety:
                return Step("safety", safety[0].id, "before anything turns")
            return _standing(book, valued, fixes, still, first_questions, asked, known, tried)
        return step
    if not safe and not safety:
        return _standing(book, valued, fixes, still, first_questions, asked, known, tried)
    if safety:
        return Step("safety", safety[0].id, "before anything turns")
    return step


def _standing(
    book: Book,
    valued: Valued,
    fixes: FixTable,
    still: Sequence[Candidate],
    first_questions: Sequence[str],
    asked: int,
    known: int,
    tried: bool,
) -> Step:
    """The next step while nothing may turn: what can be asked costs nothing but its minutes."""
    step = _decide(book, valued, fixes, still, first_questions, asked, known, tried)
    if step.kind == "ask" or asked >= STANDING:
        return step
    telling = [c for c in still if c.gain >= WORTH_A_LOOK / 2 and c.minutes <= LONGEST_LOOK]
    best = max(telling, key=lambda c: (c.rate, c.check), default=None)
    return step if best is None else _ask(best, "it can be looked at while everything stands still")


def _gate_still_open(book: Book, safety: Sequence[Check]) -> Check | None:
    """The first list of dangers, as long as none of the lists was answered."""
    gates = {c.id for c in book.checks.values() if c.gate}
    lists = [c for c in safety if c.id in gates]
    return lists[0] if lists and len(lists) == len(gates) else None


def walk_list(book: Book, valued: Valued, step: Step, safe: bool, length: int = 4) -> list[str]:
    """The next few checks to make in one walk, grouped by place and by wheel stopped or turning."""
    ranked = sorted(valued.candidates, key=lambda c: (-c.rate, c.check))
    names = [step.name] if step.kind == "ask" else []
    for candidate in ranked:
        if candidate.check in names or (_turns(book, candidate) and not safe):
            continue
        names.append(candidate.check)
        if len(names) == length:
            break
    places = {"history": 0, "part": 1, "wheel": 2, "machine": 3, "bench": 4}

    def key(name: str) -> tuple[bool, int, float, str]:
        check = book.checks[name]
        return (turns(check), places.get(check.place, 5), check.minutes, name)

    return sorted(names, key=key)


def _turns(book: Book, candidate: Candidate) -> bool:
    """True when the check, or one on which it hangs, needs the wheel turning."""
    return any(turns(book.checks[n]) for n in (candidate.check, *candidate.first_ask))


def _decide(
    book: Book,
    valued: Valued,
    fixes: FixTable,
    open_: Sequence[Candidate],
    first_questions: Sequence[str],
    asked: int,
    known: int,
    tried: bool,
) -> Step:
    if not open_ or asked >= ENOUGH:
        order = fixes.order(valued.now)
        return _fix_or_stuck(valued, fixes, order[0] if order else None)
    opening = _opening(book, valued, open_, first_questions, asked)
    if opening is not None:
        return _ask(opening, "a question of seconds that an old hand asks first")
    step = _weigh(valued, fixes, open_)
    surer = _surer(step, valued, fixes, open_)
    if surer is not None:
        return _ask(surer, "it makes surer before a long job")
    firmer = _firmer(step, valued, fixes, open_, known, tried)
    return step if firmer is None else _ask(firmer, "nothing is likely enough to try yet")


def _surer(
    step: Step, valued: Valued, fixes: FixTable, open_: Sequence[Candidate]
) -> Candidate | None:
    """The check to make before a long job or before giving up, where one still tells much.

    Before giving up on a strong suspicion less will do: it wants a proof to go on with.
    """
    if step.kind == "ask" or (
        step.kind == "fix" and fixes.minutes[fixes.ids.index(step.name)] < DEAR
    ):
        return None
    tells = SURER
    if step.kind != "fix":
        suspected = float(max(valued.now[: len(fixes.ids)], default=0.0))
        tells = PROOF if suspected >= SUSPECTED else LAST_HOPE
    telling = [c for c in open_ if c.gain >= tells and c.minutes <= LONGEST_LOOK]
    return max(telling, key=lambda c: (c.rate, c.check), default=None)


def _firmer(
    step: Step,
    valued: Valued,
    fixes: FixTable,
    open_: Sequence[Candidate],
    known: int,
    tried: bool,
) -> Candidate | None:
    """The check to make where the first fix to try is but one chance among many, or none is.

    The fainter the fix, the less a check needs to tell, but it takes at most half the minutes of
    that fix. Before the first few answers even a likely fix waits for a quick look. Once a fix was
    tried the minutes alone decide.
    """
    if step.kind == "ask" or tried:
        return None
    chance, minutes = 0.0, 0.0
    if step.kind == "fix":
        at = fixes.ids.index(step.name)
        chance, minutes = float(valued.now[at]), float(fixes.minutes[at])
    telling: list[Candidate] = []
    if chance < FIRM and known < FEW:
        telling += [c for c in open_ if c.gain >= QUICK_TELLS and c.minutes <= QUICK]
    if chance < FAINT:
        tells, longest = WORTH_A_LOOK * max(chance, FAINTEST) / FAINT, HALF * minutes - ATTENTION
        telling += [c for c in open_ if c.gain >= tells and c.minutes <= min(longest, LONGEST_LOOK)]
    return max(telling, key=lambda c: (c.rate, c.check), default=None)


def _opening(
    book: Book,
    valued: Valued,
    open_: Sequence[Candidate],
    first_questions: Sequence[str],
    asked: int,
) -> Candidate | None:
    if asked >= OPENING:
        return None
    quick = [
        c
        for c in open_
        if c.check in first_questions
        and book.checks[c.check].minutes <= SECONDS
        and c.gain >= TELLS * valued.entropy
    ]
    return max(quick, key=lambda c: (c.rate, c.check), default=None)


def _weigh(valued: Valued, fixes: FixTable, open_: Sequence[Candidate]) -> Step:
    """The question that tells most a minute: ask it, try a fix first, or call for help."""
    best = max(open_, key=lambda c: (c.rate, c.check))
    answers = [(o.chance, o.shares) for o in best.outcomes]
    minutes = best.minutes + ATTENTION
    ahead = look_ahead(valued.now, answers, minutes, fixes, DOUBT / best.rate)
    if ahead.ask < min(ahead.fix_first, LAST_RESORT):
        return _ask(best, "it tells most for its minutes")
    if ahead.fix is None or ahead.fix_first >= LAST_RESORT:
        return Step("stuck", "", BEST_THERE_IS)
    return Step("fix", fixes.ids[ahead.fix], "asking more would cost more than trying it")


def _fix_or_stuck(valued: Valued, fixes: FixTable, best_fix: int | None) -> Step:
    if best_fix is None or valued.now[best_fix] * fixes.cures[best_fix] * LAST_RESORT < (
        fixes.minutes[best_fix] * 0.5
    ):
        return Step("stuck", "", BEST_THERE_IS)
    return Step("fix", fixes.ids[best_fix], "asking more would cost more than trying it")


def before_help(step: Step, valued: Valued, fixes: FixTable, at_work: Mapping[str, float]) -> Step:
    """The step, but before help is called the fix of what is at work for all that is known.

    Where two things may be at work no fix is likely to cure alone, yet one of them is mended by
    it, and what is left shows plainer afterwards. `at_work`: for each fix, how sure it is that
    something it mends is at work, alone or not.
    """
    if step.kind != "stuck":
        return step
    for i in fixes.order(valued.now):
        chance = at_work.get(fixes.ids[i], 0.0)
        if chance >= FIRM and chance * fixes.cures[i] * LAST_RESORT >= fixes.minutes[i] * 0.5:
            return Step("fix", fixes.ids[i], "it is at work, alone or with something else")
    return step


def _ask(candidate: Candidate, why: str) -> Step:
    name = candidate.first_ask[0] if candidate.first_ask else candidate.check
    return Step("ask", name, why, candidate)
