"""The list of looks a person may have made already, as text: a letter before each answer."""

from __future__ import annotations

import re
from collections.abc import Sequence
from string import ascii_lowercase

from diagnose.book.model import Check
from diagnose.view.folding import wrapped
from diagnose.view.text import WIDTH

FIRST = (
    "Tell first what you know already: what you saw, heard, measured or tried before now. "
    "Leave out the rest, and try nothing for it: what is worth a trial comes later."
)
AGAIN = "These would tell most now. Which of them do you know?"
AT_LAST = "Before anything is tried, once more: which of these do you know?"
HOW = (
    "Number and letter of each, such as 2a 7c; with ? what you only think (7c?); Enter when "
    "there is no more. b back, q save and stop"
)
STATE = re.compile(r"^Wheel (running|stopped)(, part aside)?(, power locked out)?: ")
INDENT = 9
TOGETHER = "\x1f"  # stands for a blank at which no line may be broken


def telling_text(checks: Sequence[Check], head: str) -> str:
    """The list with its head and how to answer."""
    lines = [wrapped(head), ""]
    for number, check in enumerate(checks, 1):
        lines.append(wrapped(_asked(check), 6, f"{number:>4}  "))
        lines.append(wrapped(_answers(check), INDENT).replace(TOGETHER, " "))
    return "\n".join([*lines, "", wrapped(HOW)])


def _asked(check: Check) -> str:
    """The question without the state the wheel has to be in: nothing is to be done for it now."""
    ask = STATE.sub("", check.ask.replace(", stand aside:", ":"))
    return ask[:1].upper() + ask[1:]


def _answers(check: Check) -> str:
    lettered = zip(ascii_lowercase, check.options, strict=False)
    return "   ".join(_whole(f"{letter}) {option.say}") for letter, option in lettered)


def _whole(answer: str) -> str:
    """The answer on one line, unless it is longer than a line."""
    return answer.replace(" ", TOGETHER, -1 if len(answer) <= WIDTH - INDENT else 1)


def heard_text(check: Check, option: str, sure: bool) -> str:
    """What was understood of one look."""
    doubt = "" if sure else " (you think)"
    return wrapped(f"{_asked(check)} {check.by_option[option].say}{doubt}", 5, "   = ")
