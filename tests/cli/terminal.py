"""A person at a real terminal: types lines, presses Ctrl-C, hangs up."""

from __future__ import annotations

import fcntl
import os
import select
import subprocess
import sys
import termios
import time
from collections.abc import Mapping
from pathlib import Path

from tests.small import SMALL

LONGEST = 60.0  # seconds after which a screen is given up; no test waits for it
START = f"""
import sys
from pathlib import Path
import diagnose.book.locate as locate
locate.knowledge_folder = lambda: Path({str(SMALL)!r})
from diagnose.__main__ import main
sys.argv[0] = "diagnose"
main()
"""


class Terminal:
    """`diagnose` run as a process of its own whose three streams are one terminal.

    On the small book, or the shipped.
    """

    def __init__(
        self,
        folder: Path,
        *args: str,
        env: Mapping[str, str] | None = None,
        shipped: bool = False,
    ) -> None:
        self.master, slave = os.openpty()
        self.process = subprocess.Popen(
            [sys.executable, *(("-m", "diagnose") if shipped else ("-c", START)), *args],
            stdin=slave,
            stdout=slave,
            stderr=slave,
            cwd=folder,
            env={**os.environ, "DIAGNOSE_SHOP": str(folder / "shop"), **(env or {})},
            start_new_session=True,
            preexec_fn=lambda: fcntl.ioctl(0, termios.TIOCSCTTY, 0),
        )
        os.close(slave)
        self.screen = ""

    def see(self, text: str) -> None:
        """Wait until the text stands on the screen after what was seen before."""
        end = time.monotonic() + LONGEST
        while text not in self.screen:
            if time.monotonic() > end or not self._read():
                self.process.kill()
                self.process.wait()
                raise AssertionError(f"{text!r} never came; the screen says:\n{self.screen}")
        self.screen = self.screen.split(text, 1)[1]

    def type(self, line: str) -> None:
        """Wait for the prompt and type one line."""
        self.see("> ")
        os.write(self.master, f"{line}\n".encode())

    def press(self, key: bytes) -> None:
        """Wait for the prompt and press one key."""
        self.see("> ")
        os.write(self.master, key)

    def leave(self) -> tuple[int, str]:
        """Wait for the end: exit code and what was still written."""
        while self._read():
            pass
        code = self.process.wait(LONGEST)
        os.close(self.master)
        return code, self.screen

    def _read(self) -> bool:
        ready, _, _ = select.select([self.master], [], [], LONGEST)
        try:
            more = os.read(self.master, 65536) if ready else b""
        except OSError:  # the other end has closed
            return False
        self.screen += more.decode("utf-8", "replace").replace("\r\n", "\n")
        return bool(more)


CTRL_C, CTRL_D = b"\x03", b"\x04"
