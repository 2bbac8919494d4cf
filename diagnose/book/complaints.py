"""From a person's words for a bad part to the symptom they mean."""

from __future__ import annotations

import math

from diagnose.book.model import Book, Symptom

NEAR = 0.4  # share of the best score from which a symptom is offered too
COMMON = frozenset(
    (
        *("with", "that", "this", "from", "they", "over", "have", "when", "then", "than", "only"),
        *("some", "part", "parts", "face", "ground", "grind", "grinding", "grinder", "wheel"),
        *("comes", "after", "before", "there", "worse", "goes", "every", "once", "until", "again"),
    )
)


def symptoms_meant(words: str, book: Book) -> tuple[str, ...]:
    """Ids of the symptoms the words fit best; several when they fit equally, none when none fits.

    An id (old ids too) or a name fits best, then the words people use for a symptom, then a
    text that holds such words, then a shared word.
    """
    text = " ".join(words.lower().replace("-", " ").split())
    named = book.renamed.get(words.strip(), words.strip())
    if named in book.symptoms:
        return (named,)
    for fits in (_same, _holds, _shares):
        found = tuple(s.id for s in book.symptoms.values() if fits(text, s))
        if found:
            return found
    return ()


def symptoms_said(words: str, book: Book) -> tuple[str, ...]:
    """Ids of the symptoms for which these are the very words: an id, a name, what people say."""
    text = " ".join(words.lower().replace("-", " ").split())
    named = book.renamed.get(words.strip(), words.strip())
    if named in book.symptoms:
        return (named,)
    return tuple(s.id for s in book.symptoms.values() if _same(text, s))


def likeliest(words: str, book: Book, most: int = 5) -> tuple[str, ...]:
    """The symptoms nearest to a person's words, best first, to choose from.

    A word counts the more the fewer symptoms use it; a whole phrase that people use counts most.
    """
    text = " ".join(words.lower().replace("-", " ").split())
    mine = telling(text)
    said = {s.id: telling(" ".join(_phrases(s))) for s in book.symptoms.values()}
    used = {s.id: said[s.id] | telling(s.looks_like.lower()) for s in book.symptoms.values()}
    score: dict[str, float] = {}
    for symptom in book.symptoms.values():
        held = [len(p.split()) for p in _phrases(symptom) if f" {p} " in f" {text} "]
        score[symptom.id] = 2.0 * max(held, default=0)
        for word in mine:
            users = sum(any(alike(word, w) for w in theirs) for theirs in used.values())
            if any(alike(word, w) for w in used[symptom.id]):
                people_say = any(alike(word, w) for w in said[symptom.id])
                score[symptom.id] += (1.0 + people_say) * math.log(1.0 + len(used) / users)
    best = max(score.values(), default=0.0)
    found = [s for s in score if score[s] > 0.0 and score[s] >= NEAR * best]
    return tuple(sorted(found, key=lambda s: (-score[s], s))[:most])


def telling(text: str) -> set[str]:
    """The words of a text that tell something: longer than three letters and not in every one."""
    return {w.strip(".,;:()") for w in text.split() if len(w) > 3} - COMMON


def alike(one: str, other: str) -> bool:
    """True when one word begins as the other: `loose` and `loosened`."""
    return one.startswith(other) or other.startswith(one)


def _phrases(symptom: Symptom) -> tuple[str, ...]:
    said = (symptom.id, symptom.name, *symptom.in_words)
    return tuple(" ".join(p.lower().replace("-", " ").split()) for p in said)


def _same(text: str, symptom: Symptom) -> bool:
    return text in _phrases(symptom)


def _holds(text: str, symptom: Symptom) -> bool:
    return any(f" {p} " in f" {text} " for p in _phrases(symptom))


def _shares(text: str, symptom: Symptom) -> bool:
    mine = [w for w in text.split() if len(w) > 3]
    theirs = [w for phrase in _phrases(symptom) for w in phrase.split() if len(w) > 3]
    return any(a.startswith(b) or b.startswith(a) for a in mine for b in theirs)
