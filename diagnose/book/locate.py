"""Where the shipped knowledge lies: in a checkout beside the code, else in the package."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent.parent


def _folder(name: str) -> Path:
    checkout = PACKAGE.parent / name
    if (PACKAGE.parent / "pyproject.toml").is_file() and checkout.is_dir():
        return checkout
    return PACKAGE / "data" / name


def knowledge_folder() -> Path:
    """The folder of the shipped knowledge."""
    return _folder("knowledge")


def shared_folder() -> Path:
    """The folder of what shops pass to each other: demo shop, example cases."""
    return _folder("shared")


def reports_folder() -> Path:
    """Where pages go by default: `reports` of a checkout, else a folder of that name here."""
    checkout = PACKAGE.parent / "reports"
    in_checkout = (PACKAGE.parent / "pyproject.toml").is_file()
    return checkout if in_checkout and checkout.is_dir() else Path("reports")
