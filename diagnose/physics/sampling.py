"""What a recording can show at its sampling rate, and where the rest turns up. All in Hz."""

from __future__ import annotations

import math

from diagnose.physics.catalogue import Calculation, Input
from diagnose.physics.errors import within

SHARE_OF_RATE = 0.4


def alias_frequency(frequency: float, sampling_rate: float) -> float:
    """Where a vibration (Hz) shows in a recording that samples too seldom (Hz).

    Folded into 0 to half the rate. Source: sampling theorem, any signal text. Raises OutOfRange.
    """
    within("frequency", frequency, "frequency", 0.0, 1e6)
    within("sampling_rate", sampling_rate, "frequency", 0.01, 1e7)
    folded = math.fmod(frequency, sampling_rate)
    return min(folded, sampling_rate - folded)


def highest_shown_frequency(sampling_rate: float) -> float:
    """The highest frequency (Hz) we read from a recording: 0.4 of its sampling rate (Hz).

    Half the rate is the theorem's bound; the rest is room for what leaks in. Raises OutOfRange.
    Source: sampling theorem, with a margin of ours (derived).
    """
    within("sampling_rate", sampling_rate, "frequency", 0.01, 1e7)
    return SHARE_OF_RATE * sampling_rate


_RATE = Input("sampling_rate", "frequency", "Samples taken in a second.")

CALCULATIONS = (
    Calculation(
        "alias-frequency",
        "where a vibration shows in a slow recording",
        (Input("frequency", "frequency", "The true frequency."), _RATE),
        "frequency",
        alias_frequency,
        "distance of the frequency from the nearest whole multiple of the rate",
        lambda inputs, result: (
            "It shows where it is."
            if abs(result - inputs["frequency"]) < 1e-9 * inputs["frequency"] + 1e-12
            else "It shows at a false place: record with a higher rate."
        ),
        "sampling theorem",
        "derived",
        "For a recorder without a filter in front, such as most phones' accelerometers.",
    ),
    Calculation(
        "highest-shown-frequency",
        "highest frequency to read from a recording",
        (_RATE,),
        "frequency",
        highest_shown_frequency,
        "0.4 x sampling rate",
        lambda _inputs, _result: "Peaks above this are refused: record with a higher rate.",
        "sampling theorem, with a margin of ours",
        "derived",
        "A phone's accelerometer is good to about 50 Hz whatever its rate.",
    ),
)
