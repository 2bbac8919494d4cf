"""A mapping that cannot change, so that what holds it can be a key."""

from __future__ import annotations

from collections.abc import ItemsView, Iterator, Mapping


class FrozenMap(Mapping[str, str]):
    """Text by text, hashable; equal to any mapping with the same rows."""

    __slots__ = ("_hash", "_rows")

    def __init__(self, rows: Mapping[str, str]) -> None:
        self._rows = dict(rows)
        self._hash = hash(frozenset(self._rows.items()))

    def __getitem__(self, key: str) -> str:
        return self._rows[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self._rows)

    def __len__(self) -> int:
        return len(self._rows)

    def __hash__(self) -> int:
        return self._hash

    def __repr__(self) -> str:
        return repr(self._rows)

    def items(self) -> ItemsView[str, str]:
        """The rows, as fast as those of a dict."""
        return self._rows.items()
