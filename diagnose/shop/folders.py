"""What lies where in a shop folder."""

from __future__ import annotations

from pathlib import Path

MACHINES, WHEELS, CASES, CLOSED = "machines", "wheels", "cases", "cases/closed"
HEALTHY, KNOWLEDGE, PACKS = "healthy", "knowledge", "packs"
FOLDERS = (MACHINES, WHEELS, HEALTHY, CASES, CLOSED, KNOWLEDGE)


def packs(shop: Path) -> list[Path]:
    """The folders of the packs taken in, by name."""
    base = shop / PACKS
    found = base.iterdir() if base.is_dir() else ()
    return sorted(p for p in found if p.is_dir() and not p.name.startswith("."))


def own_knowledge(shop: Path) -> list[Path]:
    """Knowledge folders beside the shipped one: those of the packs, then the shop's own.

    The later one counts where two speak of the same.
    """
    folders = [p / KNOWLEDGE for p in packs(shop)] + [shop / KNOWLEDGE]
    return [p for p in folders if p.is_dir()]
