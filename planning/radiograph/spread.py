"""What a slip of the finger does to a number: first order, by differences."""

from __future__ import annotations

import math
from collections.abc import Callable
from statistics import NormalDist
from typing import Final

import numpy as np

from planning.radiograph.line import Marks
from planning.radiograph.values import Between
from planning.tables import Figures

DIGITS: Final = 3  # a thousandth of a millimetre, of a degree or of a pixel: finer than any finger taps
_STEP: Final = 1e-3  # share of a slip that is tried out: small enough to be straight, large enough for doubles


def from_tapping(number: Callable[[Marks], float], marks: Marks, slips: Marks) -> float:
    """One standard deviation of `number` where every mark is off by `slips` (by coordinate, one standard deviation)."""
    total = 0.0
    for place in np.ndindex(marks.shape):
        step = np.zeros_like(marks)
        step[place] = slips[place] * _STEP
        total += ((number(marks + step) - number(marks - step)) / (2 * _STEP)) ** 2
    return float(np.sqrt(total))


def between(value: float, sd: float, figures: Figures) -> Between:
    """The interval that holds the true value in the share of cases that the figures state."""
    reach = reach_of(figures) * sd
    return Between(value=value, least=value - reach, most=value + reach)


def rounded(found: Between, least: float = -math.inf) -> Between:
    """To what is told; an angle, which cannot be below 0, has that as its `least`."""
    most = None if found.most is None else round(found.most, DIGITS)
    return Between(value=round(found.value, DIGITS), least=round(max(least, found.least), DIGITS), most=most)


def reach_of(figures: Figures) -> float:
    """Standard deviations from the middle to an interval's end."""
    return NormalDist().inv_cdf((1 + figures["interval.share"]) / 2)
