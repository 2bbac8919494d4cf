"""A few plain questions one after the other, at a terminal: words, a pick, minutes, an answer."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from diagnose.cli.typed import command, pick, understand
from diagnose.view.folding import wrapped

if TYPE_CHECKING:
    from diagnose.book.model import Check

HEAD = "Enter leaves an answer out; q stops, and then nothing is changed."


class Left(Exception):
    """The person stopped; nothing is to be changed."""


@dataclass(frozen=True)
class Asker:
    """Asks through two functions; nothing in it is a terminal."""

    read: Callable[[], str]
    say: Callable[[str], None]

    def words(self, question: str, *, must: str = "", now: str = "") -> str:
        """Free words in one line. `must` says why an answer is needed; Enter keeps `now`."""
        keep = f"  (Enter keeps: {now})" if now else ""
        self.say("\n" + wrapped(question + keep))
        while True:
            line = " ".join(self.read().split())
            if command(line) == "quit":
                raise Left
            if line or now or not must:
                return line or now
            self.say(must)

    def pick(
        self, question: str, choices: Mapping[str, str], *, must: bool = False, now: str = ""
    ) -> str:
        """The key of one of the choices, shown with numbers; "" when left out."""
        found = self.picks(question, choices, must=must, now=now, most=1)
        return found[0] if found else ""

    def picks(
        self,
        question: str,
        choices: Mapping[str, str],
        *,
        must: bool = False,
        now: str = "",
        most: int = 99,
    ) -> tuple[str, ...]:
        """The keys of some of the choices, by number or by key."""
        keys = list(choices)
        keep = f"  (Enter keeps: {choices.get(now, now)})" if now else ""
        self.say("\n" + wrapped(question + keep))
        for number, key in enumerate(keys, 1):
            self.say(wrapped(choices[key], 6, f"{number:>4}  "))
        while True:
            line = " ".join(self.read().lower().split())
            if line not in keys and command(line) == "quit":
                raise Left
            if not line and (now or not must):
                return (now,) if now else ()
            found = _chosen(line, keys)
            if found and len(found) <= most:
                meant = "; ".join(choices[key] for key in found)
                by_number = all(part.isdecimal() for part in line.replace(",", " ").split())
                if not by_number and meant.lower() != line:
                    self.say(wrapped(meant, 5, "   = "))
                return found
            self.say(pick(len(keys)) if most == 1 else f"{pick(len(keys))} Several with commas.")

    def minutes(self, question: str) -> float | None:
        """A number of minutes; None when left out."""
        from diagnose.book.number_shapes import number

        while True:
            line = self.words(question).lower().removesuffix("min").removesuffix("minutes")
            if not line:
                return None
            value = number(line.strip())
            if value is not None and value >= 0:
                return value
            self.say("Type the minutes as a number: 40")

    def answer(self, check: Check, now: str = "") -> str:
        """The answer to a check as a case keeps it; "" when it is left out or not known."""
        from diagnose.book.numbered import numbered

        keep = f"  (Enter keeps: {now})" if now else ""
        self.say("\n" + wrapped(check.ask + keep))
        if check.kind == "number":
            self.say(f"      for example {check.example}")
        for number, name in numbered(check).items():
            self.say(wrapped(check.by_option[name].say, 6, f"{number:>4}  "))
        while True:
            line = understand(check, self.read())
            if line.kind == "quit":
                raise Left
            if line.kind == "answer":
                self._heard(check, line.value)
                return line.value
            if line.kind in ("keep", "unknown", "later"):
                return now
            self.say(line.value or "Type an answer, or Enter to leave it out.")

    def _heard(self, check: Check, value: str) -> None:
        """Say back what an answer picked from a list was taken for."""
        said = [check.by_option[p].say for p in value.split(", ") if p in check.by_option]
        if said:
            self.say(wrapped("; ".join(said), 5, "   = "))


def _chosen(line: str, keys: Sequence[str]) -> tuple[str, ...]:
    parts = [p.strip() for p in line.split(",")] if "," in line else line.split()
    found: list[str] = []
    for part in parts:
        if part.isdecimal() and 1 <= int(part) <= len(keys):
            found.append(keys[int(part) - 1])
        elif "-".join(part.split()) in keys:
            found.append("-".join(part.split()))
        else:
            return ("-".join(line.split()),) if "-".join(line.split()) in keys else ()
    return tuple(dict.fromkeys(found))


def ask_through(questions: Callable[[Asker], int]) -> int:
    """Ask at the terminal; the exit code. Raises click.Abort when interrupted."""
    import click

    from diagnose.cli.console import say, typed
    from diagnose.cli.exits import DONE

    say(HEAD)
    try:
        return questions(Asker(typed, say))
    except Left:
        say("Stopped; nothing was changed.")
        return DONE
    except (KeyboardInterrupt, EOFError):
        say("\nStopped; nothing was changed.")
        raise click.Abort from None
