"""The complaint comes first: from a list, in one's own words, or found by three questions."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from diagnose.book.complaints import likeliest, symptoms_said
from diagnose.book.model import Book, Symptom
from diagnose.book.near import nearest
from diagnose.cli.typed import command, pick
from diagnose.view.complaints import FEATURES, features_text, list_text, matching
from diagnose.view.folding import wrapped

SHORT = 12  # complaints up to which the list is shown unasked: it fits on the screen
LISTED = "A number (or several), your own words, f find it by three questions, q stop"
NOT_LISTED = (
    "In your own words, or a number; l shows the list, f finds it by three questions, q stop"
)
WHICH = "Which number (or several)? Enter takes the first; other words, or f, look again"
Read = Callable[[], str]
Say = Callable[[str], None]


def choose_complaint(book: Book, read: Read, say: Say) -> tuple[str, ...]:
    """Ids of the symptoms complained of; empty when the person stops."""
    symptoms, offered = in_families(book), False
    at_once = len(symptoms) <= SHORT
    say("What is wrong with the part?\n" + (f"\n{list_text(symptoms)}\n" if at_once else ""))
    say(LISTED if at_once else wrapped(NOT_LISTED))
    while True:
        line = read().strip()
        if command(line) == "quit":
            return ()
        if command(line) == "back":
            say("There is nothing before this question.")
        elif command(line) == "list":
            symptoms, offered = in_families(book), False
            say("\n" + list_text(symptoms) + "\n\n" + LISTED)
        elif line.lower() == "f":
            symptoms = find_by_features(book, read, say) or symptoms
            offered = False
            say("\nIt could be:\n" + list_text(symptoms) + "\n\nA number, or your own words")
        elif not line and offered:
            return (symptoms[0].id,)
        elif line:
            found, sure = _meant(book, symptoms, line, say)
            if sure:
                return found
            if found:
                symptoms, offered = [book.symptoms[s] for s in found], True
                say(f"That sounds like:\n{list_text(symptoms, families=False)}\n\n{WHICH}")


def in_families(book: Book) -> list[Symptom]:
    """The symptoms, those of a family together, families in the order of their names."""
    return sorted(book.symptoms.values(), key=lambda s: (s.family, s.id))


def _numbers(line: str) -> list[int]:
    parts = line.replace(",", " ").split()
    return [int(p) for p in parts] if all(p.isdecimal() for p in parts) else []


def _meant(
    book: Book, symptoms: Sequence[Symptom], line: str, say: Say
) -> tuple[tuple[str, ...], bool]:
    """The symptoms meant, and whether that is sure: a number, or words people use for one alone."""
    numbers = _numbers(line)
    wrong = [n for n in numbers if not 1 <= n <= len(symptoms)]
    if wrong:
        say(f"There is no number {wrong[0]}; they go from 1 to {len(symptoms)}.")
        return (), False
    if numbers:
        return tuple(dict.fromkeys(symptoms[n - 1].id for n in numbers)), True
    said = symptoms_said(line, book)
    if len(said) == 1:
        say(f"   = {book.symptoms[said[0]].name}")
        return said, True
    found = tuple(dict.fromkeys((*said, *likeliest(line, book))))
    if not found:
        words = {w: s.name for s in book.symptoms.values() for w in (*s.in_words, s.name)}
        near = nearest(line.lower(), {w.lower(): 0 for w in words})
        hint = f"Did you mean {near}?" if near else "Try other words, or f to find it."
        say(f"No complaint is known as '{line}'. {hint}")
    return found, False


def find_by_features(book: Book, read: Read, say: Say) -> list[Symptom]:
    """Three questions about the marks; the symptoms that fit best."""
    told: dict[str, str] = {}
    for name in FEATURES:
        say("\n" + features_text(name))
        answer = _feature(name, read, say)
        if answer:
            told[name] = answer
    return matching(in_families(book), told)


def _feature(name: str, read: Read, say: Say) -> str:
    values = list(FEATURES[name].answers)
    while True:
        line = read().strip()
        if command(line) == "unknown" or not line:
            return ""
        if line.isdecimal() and 1 <= int(line) <= len(values):
            return values[int(line) - 1]
        say(f"{pick(len(values))} If you can't tell, type d.")


def choose_card(kind: str, cards: Mapping[str, str], read: Read, say: Say) -> str:
    """The id of a machine or wheel card, "" for none of them; or back | quit."""
    names = list(cards)
    say(f"\nWhich {kind}?\n")
    for number, name in enumerate(names, 1):
        say(f"{number:>4}  {cards[name]}")
    say(f"   0  another {kind}, or none of these\n\nA number, b back, q save and stop")
    while True:
        line = read().strip()
        if command(line) in ("back", "quit"):
            return command(line)
        if line in ("0", "") or command(line) == "unknown":
            return ""
        if line.isdecimal() and int(line) <= len(names):
            return names[int(line) - 1]
        near = nearest(line.lower(), names)
        if near == line.lower():
            return near
        hint = f" Did you mean {near}?" if near else ""
        say(f"There is no {kind} '{line}' here.{hint}")
