"""Hardness scales of steel on one line: everything is kept in Vickers so that it can be compared.

Source: conversion table for non-austenitic steels of ASTM E140, from memory; below 20 HRC the
table itself calls its figures a guide only. Standing: from memory.
"""

from __future__ import annotations

from bisect import bisect_right

_ROCKWELL = (
    (0.0, 160.0), (10.0, 196.0), (20.0, 238.0), (25.0, 266.0), (30.0, 302.0), (35.0, 345.0),
    (40.0, 392.0), (45.0, 446.0), (50.0, 513.0), (52.0, 544.0), (55.0, 595.0), (58.0, 653.0),
    (60.0, 697.0), (62.0, 746.0), (64.0, 800.0), (65.0, 832.0), (66.0, 865.0), (67.0, 900.0),
    (68.0, 940.0), (70.0, 1076.0),
)  # fmt: skip
_VICKERS = tuple((vickers, rockwell) for rockwell, vickers in _ROCKWELL)
BRINELL_SHARE = 0.95


def _on_line(points: tuple[tuple[float, float], ...], x: float) -> float:
    at = min(max(bisect_right([p for p, _ in points], x), 1), len(points) - 1)
    (x0, y0), (x1, y1) = points[at - 1], points[at]
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def vickers_of_rockwell(rockwell: float) -> float:
    """HV of a steel of this HRC, by straight lines between the points of the table."""
    return _on_line(_ROCKWELL, rockwell)


def rockwell_of(vickers: float) -> float:
    """HRC of a steel of this HV; means little below 20 HRC (238 HV)."""
    return _on_line(_VICKERS, vickers)


def vickers_of_brinell(brinell: float) -> float:
    """HV of a steel of this HB: Brinell reads about 5 % lower over the whole of its scale."""
    return brinell / BRINELL_SHARE


def brinell_of(vickers: float) -> float:
    """HB of a steel of this HV."""
    return vickers * BRINELL_SHARE
