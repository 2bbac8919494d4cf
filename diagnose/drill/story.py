"""The story of a drilled case, as a machinist would tell it; nobody and no shop is named."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.book.model import Book
from diagnose.drill.drawn import Drill
from diagnose.drill.showing import in_words
from diagnose.drill.usual import COOLING, MATERIALS
from diagnose.view.drill import Opening

DRIVES = {
    "belt": "the spindle is driven by a belt",
    "direct": "the wheel sits on the motor shaft",
    "coupling": "motor and spindle are joined by a coupling",
    "inverter-direct": "the wheel sits on the motor shaft, and an inverter feeds it",
}
GRAINS = {
    "alumina": "alumina",
    "silicon-carbide": "silicon carbide",
    "boron-nitride-or-diamond": "diamond or boron nitride",
}


def opening(book: Book, drill: Drill, learner: str = "", units: str = "metric") -> Opening:
    """What is told at the start."""
    symptom = book.symptoms[drill.complaint]
    title = f"Drill {drill.seed}" + (", from the shop's own cases" if drill.from_shop else "")
    return Opening(
        title, drill.seed, drill.level, learner, story(book, drill, units), symptom.name,
        symptom.looks_like,
    )  # fmt: skip


def story(book: Book, drill: Drill, units: str = "metric") -> tuple[str, ...]:
    """Part and material, machine, wheel, complaint: one line each."""
    told = {n: in_words(book.checks[n], v, units) for n, v in drill.given.items()}
    symptom = book.symptoms[drill.complaint]
    lines = (_part(drill, told), _machine(drill, told), _wheel(drill, told))
    return (*(line for line in lines if line), f"What is wrong: {symptom.looks_like}.")


def _part(drill: Drill, told: Mapping[str, str]) -> str:
    material = MATERIALS.get(
        drill.given.get("work-material", ""), told.get("work-material", "metal")
    )
    kind = "plate" if drill.thin else "block"
    sizes = [told[n] for n in ("part-length", "part-base", "part-thickness") if n in told]
    by = f", {' by '.join(sizes)}" if sizes else ""
    cooling = COOLING.get(drill.given.get("wet-or-dry", ""), "")
    return f"A {kind} of {material}{by}" + (f", {cooling}." if cooling else ".")


def _machine(drill: Drill, told: Mapping[str, str]) -> str:
    power = f" of {told['machine-power']}" if "machine-power" in told else ""
    drive = DRIVES.get(drill.given.get("drive", ""), "")
    return f"A surface grinder{power}" + (f"; {drive}." if drive else ".")


def _wheel(drill: Drill, told: Mapping[str, str]) -> str:
    size = " x ".join(told[n] for n in ("wheel-diameter", "wheel-width") if n in told)
    grain = GRAINS.get(drill.given.get("wheel-abrasive", ""), told.get("wheel-abrasive", ""))
    what = [grain] if grain else []
    what += [f"grit {told['wheel-grit']}"] if "wheel-grit" in told else []
    what += [f"grade {told['wheel-grade']}"] if "wheel-grade" in told else []
    what += [size] if size else []
    return f"The wheel: {', '.join(what)}." if what else ""
