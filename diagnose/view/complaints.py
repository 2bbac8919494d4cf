"""The list of complaints, and the three physical questions that find the right one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from diagnose.book.model import Symptom
from diagnose.view.folding import wrapped


@dataclass(frozen=True)
class Feature:
    """One physical question: its words, and each answer with its words."""

    ask: str
    answers: Mapping[str, str]
    sketches: Mapping[str, tuple[str, str, str]]


FEATURES = {
    "runs": Feature(
        "Which way do the marks run? The table runs left and right.",
        {
            "across": "across the travel, like the rungs of a ladder",
            "along": "along the travel, like rails",
            "slanted": "slanted, or crossing",
            "patches": "in patches or spots",
            "none": "no marks: the shape, the size or the wheel is wrong",
        },
        {
            "across": ("| | | | |", "| | | | |", "| | | | |"),
            "along": ("---------", "---------", "---------"),
            "slanted": ("/ / / / /", " / / / / ", "/ / / / /"),
            "patches": ("  ##   . ", " ####    ", "  #    ##"),
            "none": ("         ", "         ", "         "),
        },
    ),
    "spacing": Feature(
        "How far apart are they?",
        {
            "fine": "closer than you can count with the eye",
            "crossfeed": "about as far as the table steps over",
            "wide": "a few millimetres (1/16 to 1/2 in)",
            "long": "longer than the width of a hand, or once over the part",
            "none": "no spacing",
        },
        {},
    ),
    "regular": Feature(
        "Are they regular?",
        {
            "regular": "all alike, evenly spaced",
            "irregular": "no two alike",
            "none": "there is nothing to compare",
        },
        {},
    ),
}


def list_text(symptoms: Sequence[Symptom], families: bool = True) -> str:
    """Numbered complaints, under the heading of their family or in the order given."""
    lines: list[str] = []
    number = 0
    for family, group in groupby(symptoms, key=lambda s: s.family):
        heading = family.replace("-", " ").capitalize()
        if families:
            lines.append(f" {heading}")
        for symptom in group:
            number += 1
            name = symptom.name.removeprefix(f"{heading} - ") if families else symptom.name
            text = f"{name}: {symptom.looks_like}"
            lines.append(wrapped(text, 6, f"{number:>4}  "))
    return "\n".join(lines)


def features_text(name: str) -> str:
    """One of the three questions, with a sketch where that helps."""
    feature = FEATURES[name]
    lines = [feature.ask]
    for number, (value, words) in enumerate(feature.answers.items(), 1):
        lines.append(f"{number:>4}  {words}")
        if any(row.strip() for row in feature.sketches.get(value, ())):
            lines += [f"          {row}".rstrip() for row in feature.sketches[value]]
    lines.append("A number, or d can't tell")
    return "\n".join(lines)


def matching(symptoms: Sequence[Symptom], told: Mapping[str, str]) -> list[Symptom]:
    """The symptoms that agree with most of what was told; empty when nothing was."""
    if not told:
        return []
    fits = [sum(getattr(s, name) == value for name, value in told.items()) for s in symptoms]
    best = max(fits, default=0)
    return [s for s, fit in zip(symptoms, fits, strict=True) if fit == best and best > 0]
