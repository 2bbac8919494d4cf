"""What went wrong inside the program, kept in a file for those who can mend it."""

from __future__ import annotations

import platform
import tempfile
import traceback

from diagnose import __version__


def keep_fault(error: Exception) -> str:
    """Write versions and the trace of a fault to a file of its own; its path."""
    lines = [f"diagnose {__version__}, Python {platform.python_version()}, {platform.platform()}"]
    lines += traceback.format_exception(error)
    with tempfile.NamedTemporaryFile(
        "w", prefix="diagnose-fault-", suffix=".txt", delete=False, encoding="utf-8"
    ) as file:
        file.write("\n".join(lines))
    return file.name
