"""The kinds of entry the knowledge has, and where each is written."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.book import (
    fields_before,
    fields_cards,
    fields_causes,
    fields_checks,
    fields_signs,
    fields_terms,
)
from diagnose.book.overrides import OVERRIDES
from diagnose.book.records import Group


@dataclass(frozen=True)
class Kind:
    """One kind: its field table, its folder or list file, one file each or a list.

    `place` is the folder below the knowledge folder; lists may also be one file `place`.yaml.
    """

    name: str
    place: str
    group: Group
    one_file_each: bool = False


def _may_override(group: Group) -> Group:
    return Group((*group.fields, OVERRIDES), group.what)


KINDS = (
    Kind("source", "sources", _may_override(fields_signs.SOURCE)),
    Kind("caution", "cautions", _may_override(fields_signs.CAUTION)),
    Kind("finding", "findings", _may_override(fields_signs.FINDING)),
    Kind("mechanism", "mechanisms", _may_override(fields_signs.MECHANISM)),
    Kind("rule", "rules", _may_override(fields_checks.RULE)),
    Kind("term", "terms", _may_override(fields_terms.TERM)),
    Kind("step", "before", _may_override(fields_before.TICK)),
    Kind("symptom", "symptoms", _may_override(fields_signs.SYMPTOM), one_file_each=True),
    Kind("check", "checks", _may_override(fields_checks.CHECK), one_file_each=True),
    Kind("card", "cards", _may_override(fields_cards.CARD), one_file_each=True),
    Kind("stop", "stops", _may_override(fields_checks.STOP), one_file_each=True),
    Kind("cause", "causes", _may_override(fields_causes.CAUSE), one_file_each=True),
)
BY_NAME = {kind.name: kind for kind in KINDS}
ROOMS = (
    "wheel",
    "dressing",
    "machine",
    "drive",
    "holding",
    "feeds",
    "coolant",
    "heat",
    "material",
    "measuring",
    "surroundings",
    "hand",
)
