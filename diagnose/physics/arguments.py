"""The arguments of the formulas: one name, one meaning, one range over the whole of the physics."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import ParamSpec, TypeVar

from diagnose.physics.catalogue import Input
from diagnose.physics.dimensions import DIMENSIONS
from diagnose.physics.errors import within

P = ParamSpec("P")
R = TypeVar("R")


@dataclass(frozen=True)
class Argument:
    """A keyword of the formulas: its dimension, the range that makes sense (SI), and its help."""

    dimension: str
    lowest: float
    highest: float
    help: str


ARGUMENTS: dict[str, Argument] = {
    "wheel_diameter": Argument("length", 0.01, 2.0, "diameter of the wheel as it is now"),
    "new_diameter": Argument("length", 0.01, 2.0, "diameter of the wheel when new"),
    "worn_diameter": Argument("length", 0.01, 2.0, "diameter of the worn wheel"),
    "wheel_width": Argument("length", 1e-3, 0.5, "width of the wheel face"),
    "wheel_speed": Argument("speed", 1.0, 200.0, "speed of the wheel's rim"),
    "marked_speed": Argument("speed", 5.0, 200.0, "highest rim speed marked on the wheel"),
    "turning_speed": Argument("turning-speed", 1.0, 2000.0, "turning speed of the wheel"),
    "grit": Argument("number", 8.0, 400.0, "grit number of the wheel"),
    "depth": Argument("length", 1e-7, 5e-3, "depth of cut, one pass"),
    "crossfeed": Argument("length", 1e-6, 0.2, "crossfeed, one stroke"),
    "table_speed": Argument("speed", 1e-3, 2.0, "speed of the table where it cuts"),
    "width_of_cut": Argument("length", 1e-5, 0.5, "width cut at once (the crossfeed, or the part)"),
    "part_length": Argument("length", 1e-3, 10.0, "length of the part along the travel"),
    "grains_per_area": Argument("count-per-area", 1e3, 1e9, "cutting grains on an area of wheel"),
    "chip_ratio": Argument("ratio", 1.0, 100.0, "width of a chip over its thickness, 10 to 20"),
    "specific_energy": Argument("specific-energy", 1e8, 1e12, "energy to remove a volume"),
    "force_ratio": Argument("ratio", 0.5, 20.0, "push down over push along, 1.3 sharp to 3 dull"),
    "force": Argument("force", 1e-3, 1e5, "force along the travel"),
    "power": Argument("power", 1.0, 1e5, "power of the spindle motor"),
    "efficiency": Argument("ratio", 0.05, 1.0, "share of the motor's power that cuts"),
    "worn_share": Argument("ratio", 0.01, 1.0, "share of the face worn when the dress is due"),
    "effective_ratio": Argument(
        "ratio", 0.01, 1e5, "G times the shape of the worn corner, learned"
    ),
    "strokes": Argument("count", 1.0, 1e7, "strokes since the last dress"),
    "passes": Argument("count", 0.0, 1000.0, "spark-out passes without infeed"),
    "cut_share": Argument("ratio", 0.01, 1.0, "share of the set infeed that one pass cuts"),
    "share_left": Argument("ratio", 1e-4, 1.0, "share of the set infeed that may stay"),
    "face_time": Argument("time", 0.05, 3600.0, "seconds for the diamond across the face"),
    "dress_speed": Argument("speed", 1e-6, 1.0, "speed of the diamond across the face"),
    "dress_lead": Argument("length", 1e-7, 5e-3, "travel of the diamond in one turn of the wheel"),
    "dress_depth": Argument("length", 1e-7, 5e-4, "depth of one dressing pass"),
    "tip_radius": Argument("length", 1e-5, 1e-2, "radius of the diamond's tip"),
    "overlap": Argument(
        "ratio", 0.05, 1000.0, "turns of the wheel while the diamond passes a point"
    ),
    "steady_energy": Argument(
        "specific-energy", 1e8, 1e11, "part of the energy that chips carry off"
    ),
    "burn_constant": Argument("number", 0.1, 100.0, "burn constant of the metal (steel 7.2)"),
    "heat_share": Argument("ratio", 0.01, 1.0, "share of the heat that goes into the part"),
    "conductivity": Argument("conductivity", 0.1, 500.0, "heat conductivity of the part"),
    "diffusivity": Argument("diffusivity", 1e-8, 1e-3, "heat diffusivity of the part"),
    "warmth": Argument("temperature-difference", 0.0, 2000.0, "how much warmer than the gauge"),
    "gradient": Argument("temperature-difference", 0.0, 1000.0, "ground side warmer by"),
    "expansion": Argument("expansion", 1e-7, 1e-4, "expansion coefficient of the part"),
    "thickness": Argument("length", 1e-4, 1.0, "thickness of the part"),
    "bow": Argument("length", 0.0, 0.02, "bow in the middle of the length"),
    "other_bow": Argument("length", 1e-7, 0.02, "the bow it is set against, read the same way"),
    "size": Argument("length", 1e-4, 10.0, "size measured"),
    "skin_depth": Argument("length", 1e-7, 5e-3, "depth of the stressed skin"),
    "skin_stress": Argument("stress", -5e9, 5e9, "stress in the skin, tension above zero"),
    "elastic_modulus": Argument("pressure", 1e9, 1e12, "elastic modulus of the part"),
    "poisson": Argument("ratio", 0.0, 0.49, "Poisson's ratio of the part"),
    "balance_grade": Argument("balance-grade", 1e-5, 10.0, "balance grade: G 2.5 is 2.5 mm/s"),
    "rotor_mass": Argument("mass", 1e-3, 1e4, "mass of wheel and adapter"),
    "unbalance": Argument("unbalance", 0.0, 10.0, "unbalance: mass times radius"),
    "rim_radius": Argument("length", 1e-3, 1.0, "radius at which a weight sits"),
    "eccentricity": Argument("length", 0.0, 0.01, "how far the mass sits off the spindle's line"),
    "ways_friction": Argument("length", 1e-7, 1e-3, "arm of the rolling friction of the ways"),
    "pull": Argument("pressure", 0.0, 1e7, "pull of the chuck on thick mild steel"),
    "pole_pitch": Argument("length", 1e-4, 0.5, "pitch of the chuck's poles, north to north"),
    "material_share": Argument("ratio", 0.0, 1.0, "share of the pull for this steel and contact"),
    "part_width": Argument("length", 1e-4, 5.0, "width of the part across the travel"),
    "base": Argument("length", 1e-4, 5.0, "length of the base along the travel"),
    "height": Argument("length", 1e-4, 5.0, "height of the part above the chuck"),
    "friction": Argument("ratio", 0.01, 1.0, "friction of the part on the chuck, wet 0.1"),
    "delivered_constant": Argument("number", 0.01, 5.0, "class constant of ISO 6103, 0.16 to 0.63"),
    "table_speed_change": Argument("ratio", 0.02, 50.0, "new table speed over the old"),
    "wheel_speed_change": Argument("ratio", 0.1, 10.0, "new wheel speed over the old"),
    "depth_change": Argument("ratio", 0.001, 1000.0, "new depth over the old"),
    "wheel_diameter_change": Argument("ratio", 0.1, 10.0, "new wheel diameter over the old"),
    "wheel_mass": Argument("mass", 1e-3, 1e3, "mass of the wheel"),
}

EXAMPLES = {
    "wheel_diameter": "178 mm", "new_diameter": "178 mm", "worn_diameter": "140 mm",
    "wheel_width": "13 mm", "wheel_speed": "30 m/s", "marked_speed": "33 m/s", "grit": "46",
    "depth": "0.01 mm", "crossfeed": "0.3 mm", "width_of_cut": "0.3 mm", "part_length": "150 mm",
    "strokes": "120", "passes": "3", "cut_share": "0.5", "dress_speed": "190 mm/min",
    "dress_lead": "0.1 mm", "dress_depth": "0.02 mm", "tip_radius": "0.3 mm", "overlap": "4",
    "size": "50 mm", "warmth": "10 K", "thickness": "6 mm", "bow": "0.05 mm",
    "other_bow": "0.06 mm",
    "skin_stress": "400 MPa", "balance_grade": "2.5 mm/s", "rim_radius": "90 mm",
    "pole_pitch": "15 mm", "part_width": "50 mm", "base": "50 mm", "height": "40 mm",
    "shaft_speed": "1800 rpm", "balls": "8", "ball_diameter": "10 mm", "pitch_diameter": "50 mm",
    "pulley_diameter": "80 mm", "pulley_speed": "2850 rpm", "belt_length": "900 mm",
    "spacing": "3.3 mm", "spacing_uncertainty": "0.1 mm", "speed_uncertainty": "1 m/min",
    "spacing_slow": "2 mm", "spacing_fast": "4 mm", "speed_slow": "6 m/min",
    "speed_fast": "12 m/min", "frequency_slow": "40 Hz", "frequency_fast": "50 Hz",
    "wheel_slow": "2400 rpm", "wheel_fast": "3000 rpm", "marks": "8", "length": "25 mm",
    "module": "1.5 mm", "sampling_rate": "400 Hz", "poles": "2", "elements": "9",
    "mean_speed": "10 m/min", "number": "6", "rz": "4 µm", "bare": "10", "at_0": "14",
    "at_120": "14", "at_240": "4", "trial_mass": "5 g", "effective_ratio": "4",
    "step": "5 µm",
}  # fmt: skip


def example_of(name: str, dimension: str) -> str:
    """How a machinist might write this argument."""
    return EXAMPLES.get(name, DIMENSIONS[dimension].example)


def ranged(function: Callable[P, R]) -> Callable[P, R]:
    """The function, refusing with OutOfRange any argument outside its range in ARGUMENTS."""
    names = tuple(inspect.signature(function).parameters)

    @wraps(function)
    def checked(*args: P.args, **kwargs: P.kwargs) -> R:
        for name, value in (*zip(names, args, strict=False), *kwargs.items()):
            rule = ARGUMENTS[name]
            assert isinstance(value, (int, float))
            within(name, float(value), rule.dimension, rule.lowest, rule.highest)
        return function(*args, **kwargs)

    return checked


def inputs(*names: str, **defaults: str) -> tuple[Input, ...]:
    """The named arguments as inputs of a calculation; those in `defaults` may be left out."""
    asked = (*names, *(name for name in defaults if name not in names))
    return tuple(
        Input(name, ARGUMENTS[name].dimension, ARGUMENTS[name].help, defaults.get(name))
        for name in asked
    )
