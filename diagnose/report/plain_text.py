"""Text from anywhere made fit for a page: nothing invisible, nothing that turns text round."""

from __future__ import annotations

import dataclasses
import re
from typing import Any, TypeVar

# Control signs (but tab and newline), lone surrogates, signs that reverse the reading order,
# non-characters: a page may not hold some of them, and the rest hide what a line says.
_UNFIT = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]"
)
SHOWN_AS = "\ufffd"

Record = TypeVar("Record")


def plain(text: str) -> str:
    """The text with newlines as one sign and every unfit sign shown as a replacement mark."""
    return _UNFIT.sub(SHOWN_AS, text.replace("\r\n", "\n").replace("\r", "\n"))


def all_plain(record: Record) -> Record:
    """The same frozen record with every text in it made plain."""
    made: Record = _plain(record)
    return made


def _plain(value: Any) -> Any:
    if isinstance(value, str):
        return plain(value)
    if isinstance(value, tuple):
        return tuple(map(_plain, value))
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        parts = {f.name: _plain(getattr(value, f.name)) for f in dataclasses.fields(value)}
        return dataclasses.replace(value, **parts)
    return value
