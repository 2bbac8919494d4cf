"""How many causes act in a complaint about which nothing more is known.

A sane book says about one: far fewer, and the complaint mostly comes from what is not listed;
far more, and its causes are written commoner, or their links stronger, than they can all be.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.book.model import Book
from diagnose.case.entries import Case
from diagnose.reasoning.belief import Belief, believe
from diagnose.reasoning.network import Network
from diagnose.reasoning.reason import read_case
from diagnose.reasoning.trials import network_of

LEAST, MOST = 0.8, 1.5  # causes acting, for one complaint alone


@dataclass(frozen=True)
class Acting:
    """What is believed of one complaint alone: causes acting (a mean), the commonest of them."""

    symptom: str
    expected: float
    none: float
    most: tuple[tuple[str, float], ...]

    @property
    def sane(self) -> bool:
        """True when about one cause acts."""
        return LEAST <= self.expected <= MOST


def bare_network(book: Book, symptom: str) -> Network:
    """The network of a case in which nothing but the complaint is known."""
    read = read_case(book, Case(symptom, (symptom,), ()))
    return network_of(book, (symptom,), read.gathered, read.deduced)[0]


def alone(book: Book, symptom: str) -> Belief:
    """The belief of a case in which nothing but the complaint is known."""
    return believe(bare_network(book, symptom))


def acting(book: Book) -> Mapping[str, Acting]:
    """For each complaint alone: the sum of `acts` over its causes, and its four commonest."""
    found = {}
    for symptom in sorted(book.symptoms):
        belief = alone(book, symptom)
        most = tuple((r.cause, r.acts) for r in belief.ranked[:4])
        expected = sum(r.acts for r in belief.ranked)
        found[symptom] = Acting(symptom, expected, belief.none, most)
    return found
