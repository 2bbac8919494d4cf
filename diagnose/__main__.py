"""`python -m diagnose` and the console script."""

from __future__ import annotations

import sys


def main() -> None:
    """Run the command line and leave with its exit code."""
    from diagnose.cli.commands import diagnose
    from diagnose.cli.exits import run

    sys.exit(run(diagnose))


if __name__ == "__main__":
    main()
