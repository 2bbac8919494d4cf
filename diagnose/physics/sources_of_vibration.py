"""What on this machine can shake, how often, and which of it the marks fit.

Every source is known only so well; a frequency fits a source when their ranges meet. Where more
than one fits, arithmetic cannot split them, and the experiment that can is named, by drive.
Sources of the frequencies: `vibration`, `running_parts`, `bearings`. The experiments are common
practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from diagnose.physics.bearings import (
    SLIP,
    Bearing,
    ball_frequency,
    cage_frequency,
    inner_race_frequency,
    outer_race_frequency,
)
from diagnose.physics.errors import within
from diagnose.physics.running_parts import belt_frequency, pump_frequency, twice_line_frequency
from diagnose.physics.trials import Drive

WHEEL_HARMONICS = 3
_LINE_SHARE = 0.005  # how far mains may stray


class Kind(Enum):
    """What kind of thing a source is; kinds are told apart by different experiments."""

    ROTATING = "rotating"
    ELECTRICAL = "electrical"
    AUXILIARY = "auxiliary"
    PLACE = "fixed in place"


@dataclass(frozen=True)
class Machine:
    """What is known of the machine; None is not known, and then that source is left out.

    Turning speeds rev/s, lengths m, `line_frequency` Hz (what the inverter gives, if there is
    one). `speed_share` is how well the turning speeds are known: 0.02 for a nameplate, 0.003 for
    a tachometer. `auxiliaries` are (name, Hz) of things that run beside it.
    """

    drive: Drive | None = None
    turning_speed: float | None = None
    motor_speed: float | None = None
    line_frequency: float | None = None
    pulley_diameter: float | None = None
    belt_length: float | None = None
    pump_speed: float | None = None
    pump_elements: float | None = None
    rack_pitch: float | None = None
    roller_pitch: float | None = None
    bearings: tuple[Bearing, ...] = ()
    auxiliaries: tuple[tuple[str, float], ...] = ()
    speed_share: float = 0.02


@dataclass(frozen=True)
class Source:
    """One source and the range of its frequency (Hz)."""

    id: str
    name: str
    kind: Kind
    lowest: float
    highest: float

    @property
    def frequency(self) -> float:
        """The middle of the range (Hz)."""
        return 0.5 * (self.lowest + self.highest)


@dataclass(frozen=True)
class Match:
    """Which sources a frequency fits, and what would tell them apart."""

    fits: tuple[Source, ...]
    told_apart: bool
    experiments: tuple[str, ...]
    said: str


@dataclass
class _List:
    share: float
    found: list[Source] = field(default_factory=list)

    def add(
        self, name: str, words: str, kind: Kind, hertz: float, below: float, above: float
    ) -> None:
        """Note a source whose frequency (Hz) is known to these shares below and above."""
        low, high = hertz * max(0.0, 1.0 - below), hertz * (1.0 + above)
        self.found.append(Source(name, words, kind, low, high))


def sources_of_vibration(machine: Machine, table_speed: float | None = None) -> tuple[Source, ...]:
    """Every source of this machine that what is known of it allows.

    What is fixed in place (rack teeth, rollers) has a frequency only at a `table_speed` (m/s).
    Raises OutOfRange.
    """
    found = _List(machine.speed_share)
    _wheel_and_motor(machine, found)
    _belt(machine, found)
    _electrical(machine, found)
    _auxiliary(machine, found)
    _bearings(machine, found)
    if table_speed is not None:
        _in_place(machine, table_speed, found)
    return tuple(found.found)


def match_sources(
    lowest: float, highest: float, machine: Machine, table_speed: float | None = None
) -> Match:
    """The sources a frequency between `lowest` and `highest` (Hz) fits. Raises OutOfRange.

    With a `table_speed` (m/s) what is fixed in place is looked at too.
    """
    within("lowest", lowest, "frequency", 1e-3, 1e6)
    within("highest", highest, "frequency", lowest, 1e6)
    sources = sources_of_vibration(machine, table_speed)
    fits = tuple(s for s in sources if s.lowest <= highest and s.highest >= lowest)
    if not fits:
        known = "none of the sources known of this machine" if sources else "no source is known"
        said = f"{_shown(lowest, highest)} fits {known}."
        return Match((), False, (_what_else(machine),), said)
    names = ", ".join(source.name for source in fits)
    if len(fits) == 1:
        return Match(fits, True, (_proof(fits[0]),), f"It fits {names}, and only that.")
    said = f"It fits {names}: arithmetic cannot tell these apart."
    return Match(fits, False, _experiments(fits, machine), said)


def _wheel_and_motor(machine: Machine, found: _List) -> None:
    wheel, share = machine.turning_speed, found.share
    together = machine.drive in (Drive.DIRECT, Drive.INVERTER) and machine.motor_speed in (
        None,
        wheel,
    )
    if wheel is not None:
        words = "the wheel and the motor, which turn together" if together else "the wheel"
        for n in range(1, WHEEL_HARMONICS + 1):
            times = {1: "one turn", 2: "twice a turn", 3: "three times a turn"}[n]
            name = f"wheel-{n}x"
            found.add(name, f"{words} ({times})", Kind.ROTATING, n * wheel, share, share)
    if machine.motor_speed is not None and not together:
        hertz = machine.motor_speed
        found.add("motor-1x", "the motor (one turn)", Kind.ROTATING, hertz, share, share)


def _belt(machine: Machine, found: _List) -> None:
    if machine.drive not in (None, Drive.BELT, Drive.INVERTER) or machine.turning_speed is None:
        return
    if machine.pulley_diameter is None or machine.belt_length is None:
        return
    once = belt_frequency(machine.pulley_diameter, machine.turning_speed, machine.belt_length)
    # Pitch diameter and slip of a belt are known to a few per cent at best.
    share = found.share + 0.02
    found.add("belt-1x", "the belt (once round)", Kind.ROTATING, once, share, share)
    found.add("belt-2x", "the belt (twice a round)", Kind.ROTATING, 2 * once, share, share)


def _electrical(machine: Machine, found: _List) -> None:
    if machine.line_frequency is None:
        return
    hertz = twice_line_frequency(machine.line_frequency)
    words = "the motor's hum (twice the line frequency)"
    if machine.drive is Drive.INVERTER:
        words = "the motor's hum (twice what the inverter gives)"
    found.add("line-2x", words, Kind.ELECTRICAL, hertz, _LINE_SHARE, _LINE_SHARE)


def _auxiliary(machine: Machine, found: _List) -> None:
    share = found.share
    if machine.pump_speed is not None:
        hertz = machine.pump_speed
        found.add("pump-1x", "the hydraulic pump (one turn)", Kind.AUXILIARY, hertz, share, share)
        if machine.pump_elements is not None:
            hertz = pump_frequency(machine.pump_speed, machine.pump_elements)
            words = "the hydraulic pump (each piston or vane)"
            found.add("pump-pulses", words, Kind.AUXILIARY, hertz, share, share)
    for name, hertz in machine.auxiliaries:
        found.add(f"auxiliary-{name}", name, Kind.AUXILIARY, hertz, share, share)


def _bearings(machine: Machine, found: _List) -> None:
    if machine.turning_speed is None:
        return
    for number, one in enumerate(machine.bearings, start=1):
        shape = (machine.turning_speed, one.ball_diameter, one.pitch_diameter, one.contact_angle)
        parts = {
            "outer race": outer_race_frequency(one.balls, *shape),
            "inner race": inner_race_frequency(one.balls, *shape),
            "a ball": 2.0 * ball_frequency(*shape),
            "cage": cage_frequency(*shape),
        }
        for part, hertz in parts.items():
            name = f"bearing-{number}-{part.removeprefix('a ').replace(' ', '-')}"
            words = f"bearing {number} ({part})"
            found.add(name, words, Kind.ROTATING, hertz, found.share + SLIP, found.share)


def _in_place(machine: Machine, table_speed: float, found: _List) -> None:
    within("table_speed", table_speed, "speed", 1e-3, 2.0)
    parts = (
        ("rack", "the teeth of the rack", machine.rack_pitch),
        ("rollers", "the rollers or balls of the ways", machine.roller_pitch),
    )
    for name, words, pitch in parts:
        if pitch is not None:
            within(f"{name}_pitch", pitch, "length", 1e-4, 1.0)
            found.add(name, words, Kind.PLACE, table_speed / pitch, 0.02, 0.02)


_TABLE = (
    "Table half as fast or half as fast again, and count: spacing that stays is fixed in place."
)
_COAST = (
    "Coast-down, wheel well clear of the work, table stopped: power off. Shake gone at once is "
    "electrical; fading with the speed is rotating."
)
_OFF = "Switch the things beside it off one by one, and make a pass each time."


def _experiments(fits: tuple[Source, ...], machine: Machine) -> tuple[str, ...]:
    kinds = {source.kind for source in fits}
    named = []
    if Kind.PLACE in kinds and len(kinds) > 1:
        named.append(_TABLE)
    if Kind.ELECTRICAL in kinds and kinds & {Kind.ROTATING}:
        named.append(_COAST)
    if Kind.AUXILIARY in kinds:
        named.append(_OFF)
    if sum(source.kind is Kind.ROTATING for source in fits) > 1:
        named.append(_between_rotating(machine.drive))
    return tuple(named) or (_TABLE if kinds == {Kind.PLACE} else _COAST,)


def _between_rotating(drive: Drive | None) -> str:
    if drive is Drive.BELT:
        return "Power locked out, belts off; then run the motor alone and feel it."
    if drive is Drive.INVERTER:
        return "Set the wheel a tenth slower, never faster: what moves with it turns with it."
    if drive is Drive.DIRECT:
        return (
            "Wheel and adapter off (loose parts removed), run the bare spindle: shake that stays "
            "is motor or spindle; gone, wheel or mounting."
        )
    return "Say first how the wheel is driven: belt, direct or inverter."


def _proof(source: Source) -> str:
    if source.kind is Kind.PLACE:
        return _TABLE
    if source.kind is Kind.AUXILIARY:
        return _OFF
    return _COAST


def _what_else(machine: Machine) -> str:
    missing = [
        words
        for words, value in (
            ("how the wheel is driven", machine.drive),
            ("the wheel's turning speed", machine.turning_speed),
            ("the line frequency", machine.line_frequency),
        )
        if value is None
    ]
    if missing:
        return f"Say {', '.join(missing)}; then {_TABLE[0].lower()}{_TABLE[1:]}"
    return f"{_TABLE} If it follows, the cut may be shaking itself: rough dress and watch."


def _shown(lowest: float, highest: float) -> str:
    if highest - lowest < 0.1:
        return f"{lowest:.1f} Hz"
    return f"{lowest:.1f} to {highest:.1f} Hz"
