"""What a lint is: an id, a page of explanation, a good and a bad example, and how it looks.

A lint either looks at the whole book (`look`) or gives its name and page to faults that the
reading of the files finds by itself (`known_by`: patterns of what the reading says).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from diagnose.audit.study import Study

Step = str | int


@dataclass(frozen=True)
class Remark:
    """Something wrong at a place of an entry: `path` leads from the entry to the field.

    `kind` is cause, check, finding, symptom, mechanism, rule, stop, caution, source or words.
    """

    kind: str
    entry: str
    path: tuple[Step, ...]
    what: str
    mend: str = ""
    near: str = ""


@dataclass(frozen=True)
class Lint:
    """One lint. `good` stands in `file` of the sample knowledge; `bad` in its place is found."""

    id: str
    says: str
    page: str
    file: str
    good: str
    bad: str
    found_in: str = ""  # where the bad example is found, when that is not `file`
    look: Callable[[Study], Iterator[Remark]] | None = None
    known_by: tuple[str, ...] = ()
    dear: bool = False  # works the belief of every cause or complaint

    def knows(self, what: str) -> bool:
        """True when a fault of the reading is of this lint."""
        return any(re.search(pattern, what) for pattern in self.known_by)
