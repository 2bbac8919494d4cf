"""Which part of one list is which part of another: the same, moved, changed, gone or new."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

ALIKE = 0.5  # from here on a part counts as the other one, changed


@dataclass(frozen=True)
class Aligned:
    """Places in the old and the new list. `moved` and `changed` are (old place, new place)."""

    moved: tuple[tuple[int, int], ...]
    changed: tuple[tuple[int, int], ...]
    gone: tuple[int, ...]
    new: tuple[int, ...]


def align(
    old: Sequence[Hashable],
    new: Sequence[Hashable],
    names: Callable[[bool, int], str] = lambda *_: "",
    alike: Callable[[int, int], float] = lambda *_: 0.0,
) -> Aligned:
    """Pair the parts of two lists, each given in a form fit to be compared.

    `names(is_new, place)` is by what a part is known ("" = nothing), `alike(old, new)` how
    much two parts that differ have in common, from 0 to 1.
    """
    blocks = SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks()
    stay = [(b.a + n, b.b + n) for b in blocks for n in range(b.size)]
    left = [n for n in range(len(old)) if n not in {a for a, _ in stay}]
    right = [n for n in range(len(new)) if n not in {b for _, b in stay}]
    moved = _pairs(left, right, lambda a: (old[a],), lambda b: (new[b],))
    changed = _pairs(left, right, _only(names, False, left), _only(names, True, right))
    changed += _nearest(left, right, alike)
    return Aligned(tuple(moved), tuple(sorted(changed)), tuple(left), tuple(right))


def _pairs(
    left: list[int],
    right: list[int],
    of_old: Callable[[int], Hashable],
    of_new: Callable[[int], Hashable],
) -> list[tuple[int, int]]:
    """Pairs of the same key, taken out of both lists; a key of None fits nothing."""
    found: list[tuple[int, int]] = []
    for a in list(left):
        key = of_old(a)
        b = next((n for n in right if key is not None and of_new(n) == key), None)
        if b is not None:
            found.append((a, b))
            left.remove(a)
            right.remove(b)
    return found


def _only(
    names: Callable[[bool, int], str], is_new: bool, places: Sequence[int]
) -> Callable[[int], str | None]:
    """The name of a part, or None when it has none or shares it with another of the list."""
    often = Counter(names(is_new, n) for n in places)
    return lambda n: name if (name := names(is_new, n)) and often[name] == 1 else None


def _nearest(
    left: list[int], right: list[int], alike: Callable[[int, int], float]
) -> list[tuple[int, int]]:
    ranked = sorted((-alike(a, b), abs(a - b), a, b) for a in left for b in right)
    found: list[tuple[int, int]] = []
    for much, _, a, b in ranked:
        if -much >= ALIKE and a in left and b in right:
            found.append((a, b))
            left.remove(a)
            right.remove(b)
    return found
