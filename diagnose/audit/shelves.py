"""Where a book keeps each kind of entry."""

from __future__ import annotations

# kind -> the field of the book that holds it by id
SHELVES = {
    "cause": "causes",
    "check": "checks",
    "finding": "findings",
    "symptom": "symptoms",
    "mechanism": "mechanisms",
    "rule": "rules",
    "stop": "stops",
    "card": "cards",
    "caution": "cautions",
    "source": "sources",
    "term": "terms",
    "step": "before",
}
