"""A drill as JSON: everything the view holds, nothing else."""

from __future__ import annotations

import dataclasses
from typing import Any

from diagnose.view.drill import DebriefView, ProgressView, TeacherView

SCHEMA = 1


def debrief_json(view: DebriefView) -> dict[str, Any]:
    """The debrief as plain JSON data."""
    return {"schema": SCHEMA, "kind": "debrief", **dataclasses.asdict(view)}


def progress_json(view: ProgressView) -> dict[str, Any]:
    """How a learner stands as plain JSON data."""
    return {"schema": SCHEMA, "kind": "progress", **dataclasses.asdict(view)}


def teacher_json(view: TeacherView) -> dict[str, Any]:
    """The summary for the teacher as plain JSON data."""
    return {"schema": SCHEMA, "kind": "teacher", **dataclasses.asdict(view)}
