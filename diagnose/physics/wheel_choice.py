"""The wheel to begin with for a job, and how far the wheel in use is from it, field by field."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.physics.catalogue import Answer, Line, WordInput, Worked
from diagnose.physics.errors import within
from diagnose.physics.grains import sizes_apart
from diagnose.physics.marking import ABRASIVES, Marking, explained, read_marking, write_marking
from diagnose.physics.quantities import read_quantity
from diagnose.physics.tables import WHEELS, WheelRow

CONTACTS = ("narrow", "ordinary", "broad")
_SOFTER = {"narrow": -1, "ordinary": 0, "broad": 1}
SOFTEST = "E"  # no row of the handbook is softer
STEELS = ("soft-steel", "alloy-steel", "hardened-steel")
HARDENED = 513.0  # HV, 50 HRC
TOUGH = 302.0  # HV, 30 HRC
NAMES = {"A": "alumina (A, white or pink best for hard steel)", "C": "silicon carbide (C)"}
_DIAMOND = "Cemented carbide and ceramics want a diamond wheel made for them, not a bonded grain."


@dataclass(frozen=True)
class Choice:
    """The range of wheels to begin with: families of abrasive, grit, grade letters, structure."""

    abrasives: tuple[str, ...]
    grit: tuple[int, int]
    grade: tuple[str, str]
    structure: tuple[int, int]
    bond: str
    row: WheelRow


def steel_of(hardness: float) -> str:
    """The row of steel for a hardness (HV): soft below 30 HRC, hardened from 50 HRC."""
    within("hardness", hardness, "hardness", 50.0, 1100.0)
    return STEELS[(hardness >= TOUGH) + (hardness >= HARDENED)]


def choose(metal: str, contact: str = "ordinary", thin: bool = False, wet: bool = True) -> Choice:
    """The wheel to begin with on a light reciprocating machine, horizontal spindle.

    Broad contact, thin work and a dry cut each open the range a letter softer (two at the most;
    the second also closes its hard end), narrow or interrupted contact a letter harder; thin work
    also more open. Source: the handbook row and common practice. KeyError for an unknown metal
    or contact.
    """
    row = WHEELS[metal]
    softer = min(_SOFTER[contact] + thin + (not wet), 2)
    low = max(ord(row.grade[0]) - max(softer, 0), ord(SOFTEST))
    high = ord(row.grade[1]) - (softer - 1 if softer > 0 else softer)
    structure = (row.structure[0], row.structure[1] + 2 * thin)
    return Choice(row.abrasives, row.grit, (chr(low), chr(high)), structure, row.bond, row)


def described(choice: Choice) -> str:
    """The choice as a marking with ranges: `A 46 to 60, H to J, 8, V`."""
    fields = (_span(*choice.grit), _span(*choice.grade), _span(*choice.structure), choice.bond)
    return f"{' or '.join(choice.abrasives)} " + ", ".join(fields)


def _span(low: object, high: object) -> str:
    return str(low) if low == high else f"{low} to {high}"


def distances(choice: Choice, used: Marking) -> list[tuple[str, str]]:
    """(field, how far the wheel in use is from the choice) for abrasive, grit, grade and so on."""
    return [
        ("abrasive", _abrasive(choice, used)),
        ("grit", _grit(choice, used)),
        ("grade", _grade(choice, used)),
        ("structure", _structure(choice, used)),
        ("bond", "as wanted" if used.bond == choice.bond else f"{used.bond}, not {choice.bond}"),
    ]


def letters_harder(choice: Choice, used: Marking) -> int:
    """Letters by which the wheel in use is harder than the range (below zero: softer)."""
    low, high = (ord(letter) for letter in choice.grade)
    return max(ord(used.grade) - high, 0) + min(ord(used.grade) - low, 0)


def _abrasive(choice: Choice, used: Marking) -> str:
    if used.base in choice.abrasives:
        return "as wanted"
    why = "it wears fast on steel" if used.base == "C" else "it loads and glazes there"
    return f"{ABRASIVES[used.abrasive]}, not {NAMES[choice.abrasives[0]]}: {why}"


def _grit(choice: Choice, used: Marking) -> str:
    low, high = choice.grit
    if low <= used.grit <= high:
        return "as wanted"
    edge, word = (high, "finer: it heats and loads") if used.grit > high else (low, "coarser")
    return f"{_steps(abs(sizes_apart(edge, used.grit)), 'size')} {word}"


def _grade(choice: Choice, used: Marking) -> str:
    harder = letters_harder(choice, used)
    if harder == 0:
        return "as wanted"
    word = "harder: it glazes and burns" if harder > 0 else "softer: it wears and loses size"
    return f"{_steps(abs(harder), 'letter')} {word}"


def _structure(choice: Choice, used: Marking) -> str:
    if used.structure is None:
        return "not marked, cannot tell"
    low, high = choice.structure
    if low <= used.structure <= high:
        return "as wanted"
    word = "denser: it loads" if used.structure < low else "more open: it wears sooner"
    return f"{abs(used.structure - (low if used.structure < low else high))} {word}"


def _steps(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def marking_answer(marking: str) -> Answer:
    """Every field of a marking, explained. Raises MarkingError naming the field at fault."""
    read = read_marking(marking)
    lines = tuple(Line(field, f"{said}: {meaning}") for field, said, meaning in explained(read))
    return Answer(lines, f"Read as {write_marking(read)}. {_bench(read)}".strip())


def _bench(read: Marking) -> str:
    if read.grade >= "O":
        return "This is a bench-grinder grade: on a surface grinder it glazes and burns at once."
    return ""


def choice_answer(
    metal: str,
    contact: str = "ordinary",
    hardness: str = "",
    thin: str = "no",
    wet: str = "yes",
    marking: str = "",
) -> Answer:
    """The wheel to begin with, and the distance of the one in use when its marking is given.

    A hardness as written, `60 HRC`, chooses among the steels. Raises OutOfRange, MarkingError and
    QuantityError.
    """
    if metal in ("carbide", "ceramic"):
        return Answer((Line("wheel to begin with", "diamond"),), _DIAMOND)
    by_hardness = hardness and metal in STEELS
    row = steel_of(read_quantity(hardness, "hardness").value) if by_hardness else metal
    choice = choose(row, contact, thin == "yes", wet == "yes")
    lines = [Line("wheel to begin with", described(choice))]
    if choice.row.hint:
        lines.append(Line("hint", choice.row.hint))
    if row != metal:
        lines.append(Line("taken as", f"{row}, for the hardness of {hardness}"))
    lines.append(Line("source", f"{choice.row.source} ({choice.row.standing})"))
    if not marking:
        return Answer(tuple(lines), _ADVICE)
    used = read_marking(marking)
    lines += [Line(field, distance) for field, distance in distances(choice, used)]
    return Answer(tuple(lines), _verdict(choice, used))


_ADVICE = (
    "Hard work wants a soft wheel, soft work a harder one. Green wheels are for iron, brass and "
    "carbide, not for hard steel. Dress and settings come before buying a wheel."
)


def _verdict(choice: Choice, used: Marking) -> str:
    off = [field for field, distance in distances(choice, used) if _is_off(distance)]
    if not off:
        return (
            "The wheel in use is in the range: look at the dress and the settings, not the wheel."
        )
    return f"Off the range: {', '.join(off)}. Try an open dress and the settings first."


def _is_off(distance: str) -> bool:
    return distance != "as wanted" and not distance.startswith("not marked")


_MARKING = WordInput("marking", "the marking of the wheel in use, like A46H8V", default="")

WORKED = (
    Worked(
        id="wheel-marking",
        name="a wheel marking, field by field",
        inputs=(WordInput("marking", "the marking as it stands on the wheel", example="A46H8V"),),
        function=marking_answer,
        formula="abrasive, grit, grade, structure, bond, in that order",
        source="ANSI B74.13 and ISO 525 as printed in Machinery's Handbook 31st ed. p. 1283",
        standing="confirmed",
        limits="Bonded wheels of alumina and silicon carbide; makers' prefixes are their own.",
    ),
    Worked(
        id="wheel-choice",
        name="the wheel to begin with, and how far the one in use is from it",
        inputs=(
            WordInput("metal", "what is ground", (*WHEELS, "carbide", "ceramic")),
            WordInput("contact", "width of contact", CONTACTS, "ordinary"),
            WordInput("hardness", "hardness of a steel, like 60 HRC", default=""),
            WordInput("thin", "thin work that bends or heats", ("no", "yes"), "no"),
            WordInput("wet", "coolant on the contact", ("no", "yes"), "yes"),
            _MARKING,
        ),
        function=choice_answer,
        formula="row of the handbook, softer for broad, thin or dry, harder for narrow",
        source="Machinery's Handbook 31st ed. p. 1328 Table 2a and common practice",
        standing="from memory",
        limits="Starting points for a light machine with a reciprocating table.",
    ),
)
