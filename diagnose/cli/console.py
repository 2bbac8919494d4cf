"""The terminal: results to standard output, talk to standard error, colour only when wanted."""

from __future__ import annotations

import errno
import io
import os
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager

import click


def prepare() -> None:
    """Let no console refuse a character: what it cannot show becomes a question mark."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def use_colour() -> bool | None:
    """False when NO_COLOR or TERM=dumb says so, True when FORCE_COLOR does, None to judge."""
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        return False
    return True if os.environ.get("FORCE_COLOR") else None


def at_a_terminal() -> bool:
    """True when a person sits at both ends: questions can be read and answered."""
    return sys.stdin.isatty() and sys.stderr.isatty()


def say(text: str = "") -> None:
    """Talk: questions, progress, notes."""
    click.echo(text, err=True)


class ReaderGone(Exception):
    """Nobody reads what is written any more, as in `diagnose ... | head -1`."""


PATIENCE = 1.0  # seconds of silence after which a person wonders


@contextmanager
def patience() -> Iterator[None]:
    """Say once that it is being worked out when that takes longer than a moment.

    Only at a terminal, and to standard error: a result is never mixed with it.
    """
    if not sys.stderr.isatty():
        yield
        return
    timer = threading.Timer(PATIENCE, say, ("working it out ...",))
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()


def tell(text: str) -> None:
    """A result. Raises ReaderGone."""
    try:
        click.echo(text.rstrip("\n"))
    except OSError as error:
        if error.errno in (errno.EPIPE, errno.EINVAL):  # EINVAL: the same on Windows
            raise ReaderGone from None
        raise


def typed(prompt: str = "> ") -> str:
    """One line from the person, without its end. Raises EOFError when there are no more."""
    click.echo(prompt, err=True, nl=False)
    line = sys.stdin.readline()
    if not line:
        raise EOFError
    return line.rstrip("\r\n")
