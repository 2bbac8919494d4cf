"""When a change of the files changes what the book says, and what kind of change that is.

Decided from the loaded books alone, before any lint looks:

- nothing: the book is the same, but for the order of lists whose order says nothing;
- refused: the files do not load;
- another claim: the files load, and what differs is only (a) words for people, (b) a number or
  a word of a scale, (c) a part that may be left out, (d) the order of steps or answers, or (e) a
  plain choice between words that all fit. A person could have written it on purpose, and no look
  at one version alone can tell;
- fault: anything else that changes the book.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from diagnose.book.model import Book, Where

FREE_ORDER = frozenset(
    (
        *("in_words", "sources", "settles", "together_with", "needs", "tools", "changes"),
        *("spoiled_by", "cautions", "renewed_by", "shows", "leads_through", "look_alikes"),
        *("examples", "possible_when", "more_likely_when", "be_sure", "replaces", "complaint"),
        *("leads_to", "raises", "clears", "tests", "words", "then"),
    )
)


def meaning(book: Book) -> Any:
    """The book as plain tuples without places, lists of free order sorted."""
    return _plain(book, "")


def _plain(thing: Any, name: str) -> Any:
    if is_dataclass(thing) and not isinstance(thing, type):
        parts = ((f.name, getattr(thing, f.name)) for f in fields(thing))
        return {
            n: _plain(v, n)
            for n, v in parts
            if not isinstance(v, Where)
            and n not in ("version", "where")
            and not (n == "place" and isinstance(v, tuple))
        }
    if isinstance(thing, Mapping):
        return {k: _plain(v, str(k)) for k, v in thing.items()}
    if isinstance(thing, tuple):
        parts_ = [_plain(v, name) for v in thing]
        return tuple(sorted(parts_, key=repr)) if name in FREE_ORDER else tuple(parts_)
    return thing


def same(before: Any, after: Any) -> bool:
    """True when both say the same."""
    return bool(before == after)


def differences(before: Any, after: Any, path: str = "") -> Iterator[tuple[str, Any, Any]]:
    """(path, before, after) of the leaves that differ; None for a part that is not there."""
    if isinstance(before, dict) and isinstance(after, dict):
        for key in before.keys() | after.keys():
            yield from differences(before.get(key), after.get(key), f"{path}/{key}")
    elif isinstance(before, tuple) and isinstance(after, tuple):
        if len(before) == len(after):
            for n, (a, b) in enumerate(zip(before, after, strict=True)):
                yield from differences(a, b, f"{path}/{n}")
        else:
            yield path, before, after
    elif before != after:
        yield path, before, after


def another_claim(before: Any, after: Any) -> str:
    """Which kind of other claim the change makes; "" when it is a fault."""
    kinds = {_kind(a, b) for _, a, b in differences(before, after)}
    return "" if "" in kinds else " and ".join(sorted(kinds))


def _kind(before: Any, after: Any) -> str:
    numbers = (int, float)
    if isinstance(before, bool) or isinstance(after, bool):
        return "a part left out"
    if isinstance(before, numbers) and isinstance(after, numbers):
        return "another number"
    if isinstance(before, tuple) and isinstance(after, tuple):
        kept = [repr(x) for x in before]
        whole = all(repr(x) in kept for x in after)
        return "a part left out" if len(after) < len(before) and whole else ""
    if after is None or after == "" or after == () or after == {"tests": ()}:
        return "a part left out"
    if isinstance(before, str) and isinstance(after, str):
        return "other words" if " " in before or " " in after else "another word that fits"
    return ""
