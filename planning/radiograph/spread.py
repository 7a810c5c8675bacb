"""How sure a number is that is computed from marks: the marks are moved a little, and the number is computed again."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from statistics import NormalDist
from typing import Final

import numpy as np

from planning.foundation.tables import Figures
from planning.radiograph.line import Marks
from planning.radiograph.values import Between

DIGITS: Final = 3  # a thousandth of a millimetre, of a degree or of a pixel: finer than any finger taps
_APART: Final = math.sqrt(3)  # standard deviations: where differences see a normal spread best
_STEP: Final = 1e-3  # share of a slip that is tried out: small enough to be straight, large enough for doubles


def from_tapping(number: Callable[[Marks], float], marks: Marks, slips: Marks) -> float:
    """One standard deviation of `number` where every mark is off by `slips` (by coordinate, one standard deviation)."""
    total = 0.0
    for place in np.ndindex(marks.shape):
        step = np.zeros_like(marks)
        step[place] = slips[place] * _STEP
        total += ((number(marks + step) - number(marks - step)) / (2 * _STEP)) ** 2
    return float(np.sqrt(total))


@dataclass(frozen=True, slots=True)
class Slipped:
    """What slips do to a number: how much larger they make it on average, and one standard deviation."""

    more: float
    sd: float


def by_slips(number: Callable[[Marks], float], marks: Marks, slips: Marks) -> Slipped:
    """The same as `from_tapping`, for slips as large as those of a finger on a whole photo.

    It goes to second order, by differences over the slip itself (divided-difference filter, Nørgaard et al. 2000, from
    memory): a mark beside a line makes it longer on whichever side it lies, which first order does not see.
    """
    at, more, square = number(marks), 0.0, 0.0
    for place in np.ndindex(marks.shape):
        step = np.zeros_like(marks)
        step[place] = slips[place] * _APART
        up, down = number(marks + step), number(marks - step)
        bend = (up + down - 2 * at) / (2 * _APART**2)
        more += bend
        # The second term is the spread of a parabola: for a normal slip its fourth moment, 3, less 1.
        square += ((up - down) / (2 * _APART)) ** 2 + (_APART**2 - 1) * bend**2
    return Slipped(more, math.sqrt(square))


def between(value: float, sd: float, figures: Figures, more: float = 0.0) -> Between:
    """The interval that holds the true value in the share of cases that the figures state.

    `more` is by how much slips make such a value larger on average.
    """
    reach = reach_of(figures) * sd
    return Between(value=value, least=value - more - reach, most=value - more + reach)


def to_either_side(measure: Between) -> Between:
    """The size of a measure without its sign, for one that may lie on either side of 0."""
    least, most = measure.least, measure.most or 0.0
    ends = sorted((abs(least), abs(most)))
    return Between(value=abs(measure.value), least=0.0 if least < 0 < most else ends[0], most=ends[1])


def rounded(measure: Between, least: float = -math.inf) -> Between:
    """Rounded for telling, and never below `least`: an angle is not below 0."""
    most = None if measure.most is None else round(measure.most, DIGITS)
    return Between(value=round(measure.value, DIGITS), least=round(max(least, measure.least), DIGITS), most=most)


def reach_of(figures: Figures) -> float:
    """Standard deviations from the middle to an interval's end."""
    return NormalDist().inv_cdf((1 + figures["interval.share"]) / 2)
