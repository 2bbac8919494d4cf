"""Walking through a view: the sources named anywhere in it."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import Any

from diagnose.view.result import SourceView


def sources_in(record: Any) -> Iterator[SourceView]:
    """Every source named anywhere in a view, in the order it is met."""
    if isinstance(record, SourceView):
        yield record
    elif isinstance(record, tuple):
        for part in record:
            yield from sources_in(part)
    elif dataclasses.is_dataclass(record):
        for field in dataclasses.fields(record):
            yield from sources_in(getattr(record, field.name))
