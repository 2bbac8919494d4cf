"""The marking of a bonded wheel, ISO 525 / ANSI B74.13: read, written and explained.

Field order: [prefix] abrasive, grit, grade, [structure], bond, [maker's suffix], [speed].
Sources: Machinery's Handbook 31st ed. p. 1283 (grades, structure, bonds), confirmed; the full ISO
line with shape, sizes and speed, from memory.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from diagnose.physics.grains import SIZES, near_sizes

ABRASIVES = {
    "A": "alumina", "WA": "white alumina", "PA": "pink alumina", "RA": "ruby alumina",
    "HA": "single-crystal alumina", "SA": "ceramic or sintered alumina",
    "AZ": "alumina with zirconia", "Z": "zirconia alumina", "C": "silicon carbide",
    "GC": "green silicon carbide", "BC": "black silicon carbide",
}  # fmt: skip
BONDS = {
    "RF": "rubber, reinforced", "BF": "resin, reinforced", "MG": "magnesia", "PL": "plastic",
    "V": "vitrified (glass)", "S": "silicate", "E": "shellac", "R": "rubber", "B": "resin",
    "O": "oxychloride", "P": "epoxy or polyester",
}  # fmt: skip
MOST_OPEN = 25


class MarkingError(ValueError):
    """A wheel marking that cannot be read: `field` names the part at fault."""

    def __init__(self, field: str, message: str) -> None:
        self.field = field
        super().__init__(f"{field}: {message}")


@dataclass(frozen=True)
class Marking:
    """The parts of a marking; `structure` and `speed` (m/s) are None when they are left out."""

    abrasive: str
    grit: int
    grade: str
    bond: str
    structure: int | None = None
    prefix: str = ""
    suffix: str = ""
    speed: float | None = None

    @property
    def base(self) -> str:
        """The family of the abrasive: A for every alumina, C for every silicon carbide."""
        return "C" if self.abrasive.endswith("C") else "A"


def read_marking(text: str) -> Marking:
    """The marking as written on a wheel. Raises MarkingError naming the field at fault."""
    words = " ".join(text.upper().replace("–", "-").replace("×", "X").split())
    words, speed = _take_speed(_without_sizes(words))
    rest = _Rest(re.sub(r"(?<![\d])[-/](?=\S)|-(?=\D|$)", " ", words).strip())
    prefix = rest.take(r"\d{1,4}(?=[\s-]*[A-Z])")
    abrasive = _abrasive(rest, prefix)
    grit = _grit(rest)
    grade = _grade(rest)
    structure = _structure(rest)
    bond = _bond(rest)
    suffix = rest.words.replace(" ", "").strip("-")
    return Marking(abrasive, grit, grade, bond, structure, prefix, suffix, speed)


def write_marking(marking: Marking) -> str:
    """The marking in the usual order, `51 A 46 H 8 V BE 35 m/s`."""
    structure = "" if marking.structure is None else str(marking.structure)
    speed = "" if marking.speed is None else f"{marking.speed:g} m/s"
    parts = (
        marking.prefix, marking.abrasive, str(marking.grit), marking.grade, structure,
        marking.bond, marking.suffix, speed,
    )  # fmt: skip
    return " ".join(part for part in parts if part)


class _Rest:
    """What is left to read of a marking."""

    def __init__(self, words: str) -> None:
        self.words = words

    def take(self, pattern: str) -> str:
        """The text at the head that fits, removed from what is left; "" when nothing fits."""
        found = re.match(rf"[\s/-]*({pattern})", self.words)
        if found is None:
            return ""
        self.words = self.words[found.end() :]
        return found.group(1)

    @property
    def next(self) -> str:
        """The next word, for a message."""
        return self.words.strip().split(" ")[0]


def _without_sizes(words: str) -> str:
    sizes = re.search(r"\d+(?:[.,]\d+)?\s?X\s?\d+(?:[.,]\d+)?\s?X\s?\d+(?:[.,]\d+)?", words)
    return words[sizes.end() :].strip() if sizes else words


def _take_speed(words: str) -> tuple[str, float | None]:
    said = re.search(r"[\s-]+(\d+(?:[.,]\d+)?)\s*M/S$", words)
    said = said or re.search(r"(?<=[A-Z])\s*-\s*(\d{2,3})$", words)
    if said is None:
        return words, None
    return words[: said.start()], float(said.group(1).replace(",", "."))


def _abrasive(rest: _Rest, prefix: str) -> str:
    letters = rest.take("[A-Z]+")
    if letters in ABRASIVES:
        if rest.words.startswith("/F") or rest.words.startswith(" F"):
            rest.take("F")
        return letters
    if letters.endswith("F") and letters[:-1] in ABRASIVES:
        return letters[:-1]
    if letters in ("D", "B", "CBN", "SD"):
        raise MarkingError("abrasive", f"{letters} is diamond or CBN, marked to another scheme")
    if prefix and int(prefix) in SIZES:
        raise MarkingError("abrasive", f"the letter before the grit {prefix} is missing, as in A46")
    what = f"'{letters}' is not an abrasive" if letters else f"no letter where '{rest.next}' is"
    raise MarkingError("abrasive", f"{what}; A is alumina, C is silicon carbide")


def _grit(rest: _Rest) -> int:
    digits = rest.take(r"\d+")
    if not digits:
        raise MarkingError("grit", f"a number like 46 must follow the abrasive, not '{rest.next}'")
    for size in (digits, digits[:-1]):  # a last digit may name a mixture of sizes
        if size and int(size) in SIZES:
            return int(size)
    near = " and ".join(str(size) for size in near_sizes(int(digits)))
    raise MarkingError("grit", f"{digits} is not a size of the series; near it are {near}")


def _grade(rest: _Rest) -> str:
    letter = rest.take("[A-Z]")
    if not letter:
        raise MarkingError("grade", f"one letter A (soft) to Z (hard) is missing at '{rest.next}'")
    return letter


def _structure(rest: _Rest) -> int | None:
    digits = rest.take(r"\d+")
    if not digits:
        return None
    if not 0 <= int(digits) <= MOST_OPEN:
        raise MarkingError("structure", f"{digits} is outside 0 (dense) to {MOST_OPEN} (open)")
    return int(digits)


def _bond(rest: _Rest) -> str:
    for letters in BONDS:
        if rest.take(letters):
            return letters
    found = f"'{rest.next}' is not a bond" if rest.next else "the bond is missing"
    raise MarkingError("bond", f"{found}; V is vitrified, B is resin, R is rubber")


def explained(marking: Marking) -> list[tuple[str, str, str]]:
    """(field, as marked, what it means) for every field, those left out included."""
    return [(field, said, meaning) for field, tell in _TELL for said, meaning in (tell(marking),)]


def _tell_abrasive(m: Marking) -> tuple[str, str]:
    use = "steels" if m.base == "A" else "cast iron, brass, aluminium, and not steel"
    return m.abrasive, f"{ABRASIVES[m.abrasive]}: for {use}"


def _tell_grit(m: Marking) -> tuple[str, str]:
    from diagnose.physics.grains import MEAN_DIAMETER

    size = "coarse" if m.grit < 30 else "medium" if m.grit <= 60 else "fine"
    return str(m.grit), f"{size}, grains about {MEAN_DIAMETER[m.grit] * 1e3:.2g} mm"


def _tell_grade(m: Marking) -> tuple[str, str]:
    place = f"letter {ord(m.grade) - 64} of 26, A soft to Z hard"
    if m.grade >= "O":
        return m.grade, f"{place}: a bench-grinder grade, not for a surface grinder"
    if m.grade >= "L":
        return m.grade, f"{place}: hard for a surface grinder"
    return m.grade, f"{place}: how tightly the bond holds a grain, not how hard the grain is"


def _tell_structure(m: Marking) -> tuple[str, str]:
    if m.structure is None:
        return "-", "not said; the maker's standard spacing for this grit"
    space = "dense" if m.structure <= 4 else "medium" if m.structure <= 8 else "open"
    return str(m.structure), f"{space} spacing; a bigger number is more open"


def _tell_speed(m: Marking) -> tuple[str, str]:
    if m.speed is None:
        return "-", "not in the marking: read it on the label. No speed to be read is a stop"
    return f"{m.speed:g} m/s", "never run faster; the rpm on the label holds as well"


_TELL: tuple[tuple[str, Callable[[Marking], tuple[str, str]]], ...] = (
    ("prefix", lambda m: (m.prefix or "-", "the maker's own sign for the kind of grain")),
    ("abrasive", _tell_abrasive),
    ("grit", _tell_grit),
    ("grade", _tell_grade),
    ("structure", _tell_structure),
    ("bond", lambda m: (m.bond, BONDS[m.bond])),
    ("suffix", lambda m: (m.suffix or "-", "the maker's own sign for the bond")),
    ("speed", _tell_speed),
)
