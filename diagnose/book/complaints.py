"""From a person's words for a bad part to the symptom they mean."""

from __future__ import annotations

from diagnose.book.model import Book, Symptom


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
