"""How a recorded depth differs from where the instrument stopped: a little as a rule, and by any amount where it is a
slip."""

from __future__ import annotations

import math
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np

from planning.depth.rows import Floats
from planning.foundation.tables import Figures

ROUNDING = 1 / math.sqrt(12)  # standard deviation, in steps, of what is rounded to the nearest step
AT_MM = 1e-6  # as near as this is there
FAR = np.linspace(-8.0, 8.0, 1601)  # beyond this a double sees nothing of a normal distribution
BELOW = np.array([NormalDist().cdf(far) for far in FAR])


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """How a recorded depth differs from where the instrument stopped."""

    step_mm: float
    """Depths are read to this step."""
    more_sd_mm: float
    """Standard deviation besides the rounding."""
    wrong_share: float
    """Share of slips: they may lie anywhere from the orifice to the stop."""
    unusual_share: float
    """Share of right depths that may be called shorter or deeper than expected."""

    @property
    def sd_mm(self) -> float:
        return math.hypot(self.step_mm * ROUNDING, self.more_sd_mm)

    def likely(self, read_mm: float, stood_mm: Floats, stops_mm: Floats, from_mm: float) -> Likely:
        """How likely `read_mm` is to be read when the instrument stood at `stood_mm`, with the orifice at `from_mm`.

        A depth on a step stands for all depths that round to it. A depth at the stop says only that the instrument went
        at least so far.
        """
        at_stop, half_mm = stood_mm >= stops_mm - AT_MM, self.step_mm / 2
        way_mm = max(float(stops_mm.max()) - from_mm, self.step_mm)
        if read_mm >= stops_mm.min() - AT_MM:
            # Right in every sample that gets to its stop, and in others as far as their depth may have been rounded up
            # to it.
            right = np.where(at_stop, 1.0, 1 - self._below(stops_mm - half_mm, stood_mm))
            return Likely(right=(1 - self.wrong_share) * right, slip=self.wrong_share * self.step_mm / way_mm)
        if self.to_step(read_mm):
            near = self._below(read_mm + half_mm, stood_mm) - self._below(read_mm - half_mm, stood_mm)
            near = near / self.step_mm
        else:
            off = (read_mm - stood_mm) / self.more_sd_mm
            near = np.exp(-off * off / 2) / math.sqrt(2 * math.pi) / self.more_sd_mm
        right = np.where(at_stop, 0.0, near)
        return Likely(right=(1 - self.wrong_share) * right, slip=self.wrong_share / way_mm)

    def to_step(self, read_mm: float) -> bool:
        """Whether the depth lies on a step, as most that are read do."""
        return math.isclose(read_mm, round(read_mm / self.step_mm) * self.step_mm, abs_tol=AT_MM)

    def _below(self, read_mm: Floats | float, stood_mm: Floats) -> Floats:
        """Share of readings, before they are rounded, that lie below a depth."""
        return np.asarray(np.interp((read_mm - stood_mm) / self.more_sd_mm, FAR, BELOW), dtype=np.float64)


@dataclass(frozen=True, slots=True, kw_only=True)
class Likely:
    """How likely a depth was to be read, sample by sample: read right, and by a slip."""

    right: Floats
    slip: float


def reading(figures: Figures) -> Reading:
    """How depths are read, by the data tables or the programme."""
    return Reading(
        step_mm=figures["reading.step"],
        more_sd_mm=figures["reading.more_sd"],
        wrong_share=figures["reading.wrong_share"],
        unusual_share=figures["reading.unusual_share"],
    )
