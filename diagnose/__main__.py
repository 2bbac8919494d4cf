"""`python -m diagnose` and the console script."""

from __future__ import annotations

import gc
import sys

# Reading the book makes some hundred thousand objects that all stay: looking through them for
# rubbish every 700 costs a third of the time to the first question.
SELDOM = 100_000


def main() -> None:
    """Run the command line and leave with its exit code."""
    gc.set_threshold(SELDOM)
    from diagnose.cli.commands import diagnose
    from diagnose.cli.exits import run

    sys.exit(run(diagnose))


if __name__ == "__main__":
    main()
