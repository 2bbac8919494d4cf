"""A review as JSON: everything the view holds, nothing else."""

from __future__ import annotations

import dataclasses
from typing import Any

from diagnose.view.review import ReviewView

SCHEMA = 1


def review_json(view: ReviewView) -> dict[str, Any]:
    """The view as plain JSON data."""
    return {"schema": SCHEMA, "kind": "review", **dataclasses.asdict(view)}
