"""The screens of the interview as text: a question, why it is asked, a first guess."""

from __future__ import annotations

from diagnose.book.model import Check
from diagnose.reasoning.gates import TURNING, missing_tools
from diagnose.reasoning.policy import ENOUGH
from diagnose.reasoning.reason import Reasoned
from diagnose.view.folding import wrapped
from diagnose.view.parts import outcomes_of
from diagnose.view.result import chance_words, minutes, percent

IN_PLAY = 0.02  # chance of acting from which a cause counts as still in play
SETTLED = 0.9  # bits left at which a cause stands out
GUESS_FROM = 3  # answers before a first guess
WHEEL = ("wheel-stopped", "wheel-turning")
GRID_ANSWER = (
    "Rows across with / between, readings along the travel, - for a gap, the unit at the end: "
    "0 1 2 / 3 4 5 / 6 7 8 um",
    "Or the name of a CSV file and its unit: plate.csv um",
)
KEYS = "w why, b back, d don't know, t I think so, n not now, l list, q save and stop"


def progress_text(reasoned: Reasoned, number: int) -> str:
    """`Question 3. 6 causes still in play, about 2 to 4 more questions.`"""
    alive = sum(1 for r in reasoned.belief.ranked if r.acts >= IN_PLAY)
    causes = f"{alive} cause{'s' if alive != 1 else ''} still in play"
    return f"Question {number}. {causes}, {_remaining(reasoned, number)}."


def _remaining(reasoned: Reasoned, number: int) -> str:
    valued, left = reasoned.valued, max(1, ENOUGH + 1 - number)
    gains = sorted((c.gain for c in valued.candidates), reverse=True)
    least, open_bits = 0, valued.entropy - SETTLED
    while least < len(gains) and open_bits > 0.0:
        open_bits -= gains[least]
        least += 1
    least = min(left, max(1, least))
    most = min(left, max(least, len(gains)), 2 * least)
    if most == 1:
        return "about 1 more question"
    return f"about {least} to {most} more questions" if least < most else f"about {most} more"


def safety_head(reasoned: Reasoned) -> str:
    """What stands over a question asked for safety."""
    name = reasoned.step.name
    kinds = {h.stop.kind for h in reasoned.read.hazards if h.stop.asked_by == name}
    what = "Before anything turns" if "stop" in kinds else "Before it goes on"
    return f"{what}, one question for safety."


def guess_text(reasoned: Reasoned, answers: int) -> str:
    """The first guess once three answers are given; "" before."""
    belief = reasoned.belief
    if answers < GUESS_FROM or not belief.ranked:
        return ""
    label = "First guess" if answers == GUESS_FROM else "So far"
    top = belief.ranked[0]
    if belief.none > max(top.acts, belief.several):
        return wrapped(f"{label}: nothing on the list fits well ({percent(belief.none)}).")
    name = reasoned.read.book.causes[top.cause].name
    return wrapped(f"{label}: {name} ({chance_words(top.acts)}, {percent(top.acts)}).")


def question_text(reasoned: Reasoned, check: Check, numbers: dict[str, str]) -> str:
    """One check as a question: wheel and cost first, one sentence of help, numbered answers."""
    lines = [wrapped(f"Take care: {_caution(reasoned, c)}") for c in check.cautions]
    lines += [wrapped(_ask(check)), wrapped(check.help, 3)]
    if check.no_instrument:
        lines.append(wrapped(f"{_without(reasoned, check)}: {check.no_instrument}", 3))
    lines.append(wrapped(_cost(check), 3))
    lines += ["", *_answers(check, numbers)]
    return "\n".join(line for line in lines)


def _without(reasoned: Reasoned, check: Check) -> str:
    """What stands before the way with no instrument: the tools that are not at hand, if said."""
    missing = missing_tools(check, reasoned.read.case.tools)
    if not missing:
        return "Without the tool"
    return f"No {' or '.join(t.replace('-', ' ') for t in missing)} here, so do this"


def _caution(reasoned: Reasoned, name: str) -> str:
    return reasoned.read.book.cautions[name].say


def _ask(check: Check) -> str:
    state = "Wheel running, stand aside: " if TURNING in check.needs else ""
    if "wheel-stopped" in check.needs:
        state = "Wheel stopped: "
    if not state or check.ask.lower().startswith(("wheel running", "wheel stopped")):
        return check.ask
    return state + check.ask[:1].lower() + check.ask[1:]


def _cost(check: Check) -> str:
    parts = [minutes(check.minutes)]
    needs = [n.replace("-", " ") for n in check.needs if n not in WHEEL]
    if check.shares_preparation:
        needs.append(check.shares_preparation.replace("-", " "))
    parts.append(f"needs: {', '.join(needs)}" if needs else "nothing comes apart")
    if check.tools:
        parts.append(f"with: {', '.join(t.replace('-', ' ') for t in check.tools)}")
    return "; ".join(parts) + "."


def _answers(check: Check, numbers: dict[str, str]) -> list[str]:
    if check.kind == "number":
        return [wrapped(f"A number with its unit, for example {check.example}.", 3)]
    if check.kind == "file":
        return [wrapped(line, 3) for line in GRID_ANSWER]
    lines = [wrapped(check.by_option[o].say, 6, f"{n:>4}  ") for n, o in numbers.items()]
    if check.kind == "any":
        lines.append(wrapped("One number or several, with commas between.", 3))
    return lines


def why_text(reasoned: Reasoned, check: Check) -> str:
    """What the question is for: what each answer would do to the top of the list."""
    lines = [wrapped(_reason(reasoned, check))]
    candidate = next((c for c in reasoned.valued.candidates if c.check == check.id), None)
    if candidate is not None:
        lines.append("What each answer would put first:")
        lines += [
            wrapped(
                f"{o.answer} ({percent(o.chance)} likely): {o.top}, {percent(o.probability)}",
                6,
                "   - ",
            )
            for o in outcomes_of(reasoned, candidate)
        ]
    lines.append(wrapped(f"Source: {_source(reasoned, check.source)}"))
    return "\n".join(lines)


def _reason(reasoned: Reasoned, check: Check) -> str:
    guarded = [
        h.stop.name
        for h in reasoned.read.hazards
        if h.stop.asked_by == check.id and h.state != "cleared"
    ]
    if guarded:
        return f"Asked for safety, to rule out: {'; '.join(guarded)}."
    step = reasoned.step
    if step.name == check.id and step.why:
        return f"Asked because: {step.why}."
    if step.candidate is not None and check.id in step.candidate.first_ask:
        hangs = reasoned.read.book.checks[step.candidate.check].name
        return f"Asked because another question hangs on it: {hangs}."
    return "It could still tell something."


def _source(reasoned: Reasoned, name: str) -> str:
    source = reasoned.read.book.sources.get(name)
    return f"{source.title} ({source.standing})" if source else "common practice, no source"
