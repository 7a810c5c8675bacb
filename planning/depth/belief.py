"""How sure the estimate is of one canal, and what it learns from the depths that are recorded.

Many sampled canals are worked step by step alongside the one that is planned. Each recorded depth, give or take its
uncertainty, takes the place of the simulated one in every sample, and each sample counts for as much as it made that
depth likely. When few count for much, they are drawn anew from one another by their weights: what has not been drawn
yet, the next instrument's tolerances for one, is fresh in every copy.
"""

from __future__ import annotations

import math
from copy import copy
from dataclasses import dataclass
from typing import Literal

import numpy as np

from planning.depth.contact_depth import Touch, advance_mm
from planning.depth.contact_rows import Floats, Rows, Tools, rest_mm, stood, wide_at
from planning.depth.samples import MOST_WORK, QUANTILES, SHARES, Samples
from planning.errors import TooMuchWork
from planning.graph import Do
from planning.instruments import Instrument
from planning.profile import Line
from planning.quantities import mm, um
from planning.tables import Figures

ROUNDING = 1 / math.sqrt(12)  # standard deviation, in steps, of what is rounded to the nearest step
TENTH, NINE_TENTHS = 0.1, 0.9  # the band that is told: four fifths of the samples
AT_MM = 1e-6  # as near as this is there


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """How a recorded depth differs from where the instrument stopped."""

    sd_mm: float
    wrong_share: float


def reading(figures: Figures) -> Reading:
    """By the data tables or the programme."""
    step_mm, more_mm = figures["reading.step"], figures["reading.more_sd"]
    return Reading(sd_mm=math.hypot(step_mm * ROUNDING, more_mm), wrong_share=figures["reading.wrong_share"])


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Where an instrument is expected to stop."""

    median_mm: float
    low_mm: float
    high_mm: float
    reach_share: float

    def judged(self, depth_mm: float) -> Literal["as_expected", "shorter", "longer"]:
        """How a recorded depth lies against it."""
        if depth_mm < self.low_mm:
            return "shorter"
        return "longer" if depth_mm > self.high_mm else "as_expected"


class Work:
    """What the samples of one canal have cost: corners of their outlines that were looked at."""

    def __init__(self, most: int) -> None:
        self.left = most

    def spend(self, corners: int, samples: int) -> None:
        """Raises TooMuchWork."""
        self.left -= corners
        if self.left < 0:
            fewer = max(1, samples // 2)
            reason = (
                f"So many insertions in {samples} sampled canals are more work than one request may ask for. "
                f"Ask for {fewer} samples or fewer, or leave out recorded depths and measured widths."
            )
            raise TooMuchWork(reason=reason, at=("samples",))


class Belief:
    """The sampled canals of one canal, as far as they have been worked."""

    def __init__(
        self, samples: Samples, narrow: Line, by: Touch, reading: Reading, *, most_work: int = MOST_WORK
    ) -> None:
        self.canals: Rows = samples.canals(narrow)
        self.kept: dict[str, Floats] = {}
        """What else is kept of every sample, by name."""
        self.few_agree = False
        """A recorded depth is more likely to be wrong than to fit any of the samples."""
        self._samples, self._by, self._reading = samples, by, reading
        self._limits, self._overcuts = samples.limits_mm2(by), samples.overcuts_mm(by)
        self._weight: Floats = every(1 / samples.count, samples.count)
        self._tools: dict[str, Tools] = {}
        self._work = Work(most_work)

    @property
    def count(self) -> int:
        return self._samples.count

    @property
    def weight(self) -> Floats:
        """What every sample counts for; together 1."""
        return self._weight

    @property
    def worth(self) -> float:
        """How many equal samples the weighted ones are worth."""
        return float(1 / (self._weight**2).sum())

    def tools(self, one: Instrument) -> Tools:
        if one.key not in self._tools:
            self._tools[one.key] = self._samples.tools(one)
        return self._tools[one.key]

    def stops_mm(self, node: Do) -> Floats:
        """The stop of a step in every sample; one that depends on another step's depth goes by the sample's own."""
        stops, shorter = every(mm(node.stop_um or 0), self.count), node.shorter_than
        if shorter is None or shorter.node not in self.kept:
            return stops
        return np.minimum(stops, self.kept[shorter.node] - mm(shorter.less_um))

    def led(self, one: Instrument, stops_mm: Floats) -> Floats:
        """Where the instrument comes to in every sample, led in by light touch. Raises TooMuchWork."""
        flanks = max(1, len(self.tools(one).from_tip_mm) - 1)
        self._work.spend(self.canals.depth_mm.size * flanks, self.count)
        first = rest_mm(self.tools(one), self.canals, stops_mm, self._limits)
        further = (self._by.strokes - 1) * advance_mm(one, 1.0) * self._overcuts
        return np.minimum(stops_mm, first + further)

    def band(self, step: str, depths_mm: Floats, stops_mm: Floats) -> Band:
        """What a depth recorded there is expected to say."""
        weight, at_stop = self._weight, depths_mm >= stops_mm - AT_MM
        noise = self._reading.sd_mm * self._samples.normal(f"reading {step}")
        read = np.where(at_stop, stops_mm, np.minimum(depths_mm + noise, stops_mm))
        return Band(
            median_mm=_rounded(quantile(depths_mm, weight, 1 / 2)),
            low_mm=_rounded(quantile(read, weight, TENTH)),
            high_mm=_rounded(quantile(read, weight, NINE_TENTHS)),
            reach_share=round(float(weight[at_stop].sum()), 3),
        )

    def learn(self, step: str, depth_mm: float, depths_mm: Floats, stops_mm: Floats) -> Floats:
        """Weighs the samples by a recorded depth; where the instrument stood in every sample, given that depth.

        Reached says how far a sample at least went, no more.
        """
        sd_mm, wrong_share = self._reading.sd_mm, self._reading.wrong_share
        at_stop, off = depths_mm >= stops_mm - AT_MM, (depth_mm - depths_mm) / sd_mm
        reached = depth_mm >= stops_mm.min() - AT_MM
        if reached:
            likely, wrong = np.where(at_stop, 1.0, 1 - _below(off)), 1.0
        else:
            likely = np.where(at_stop, 0.0, np.exp(-off * off / 2) / math.sqrt(2 * math.pi) / sd_mm)
            # A wrong reading may lie anywhere on the way in.
            wrong = 1 / float(np.ptp(self.canals.depth_mm))
        self._weigh((1 - wrong_share) * likely, wrong_share * wrong)
        if reached:
            return every(depth_mm, self.count)
        stood_mm = depth_mm + sd_mm * self._samples.normal(f"stood {step}")
        return np.minimum(stood_mm, mm(um(float(stops_mm.max()))))

    def passed(self, one: Instrument, depth_mm: float) -> None:
        """A hand instrument went to a depth without cutting: the canal is at least as wide as its tip there.

        One that is held says only that it was held somewhere, and teaches nothing.
        """
        tip_mm = self.tools(one).wide_mm[:, 0]
        fits = wide_at(self.canals, every(depth_mm, self.count)[:, None])[:, 0] >= tip_mm - AT_MM
        wrong_share = self._reading.wrong_share
        self._weigh(np.where(fits, 1 - wrong_share, 0.0), wrong_share)

    def _weigh(self, fits: Floats, wrong: float) -> None:
        """By how likely each sample made what was recorded: right, or wrong."""
        right = float((self._weight * fits).sum())
        self.few_agree = self.few_agree or right < wrong
        self._weight = self._weight * (fits + wrong) / (right + wrong)
        if self.worth < self.count / 2:
            self._draw_anew()

    def _draw_anew(self) -> None:
        """Every sample as often as it counts for, in even steps through the weights."""
        steps = (np.arange(self.count) + 1 / 2) / self.count
        chosen = np.minimum(np.searchsorted(np.cumsum(self._weight), steps), self.count - 1)
        self.canals = self.canals.picked(chosen)
        self.kept = {name: values[chosen] for name, values in self.kept.items()}
        self._limits, self._overcuts = self._limits[chosen], self._overcuts[chosen]
        self._tools = {key: tools.picked(chosen) for key, tools in self._tools.items()}
        self._weight = every(1 / self.count, self.count)

    def stands(self, step: str, one: Instrument, depths_mm: Floats) -> None:
        """The instrument has stood there in every sample. Raises TooMuchWork."""
        self._work.spend(self.canals.depth_mm.size, self.count)
        self.kept[step] = depths_mm
        end = self.canals.depth_mm[:, -1]
        self.canals = stood(self.tools(one), self.canals, np.minimum(depths_mm, end), self._overcuts)

    def back_to(self, canals: Rows) -> Belief:
        """The same samples with their canals as they were at an earlier step."""
        earlier = copy(self)
        earlier.canals, earlier.kept = canals, dict(self.kept)
        return earlier


def quantile(values: Floats, weight: Floats, share: float) -> float:
    """The value below which a share of the weight lies."""
    order = np.argsort(values, kind="stable")
    upto = np.cumsum(weight[order])
    return float(values[order][min(int(np.searchsorted(upto, share - AT_MM)), len(values) - 1)])


def _below(normal: Floats) -> Floats:
    """Share of a normal distribution below a value, from the same table as the samples."""
    return np.asarray(np.interp(normal, QUANTILES, SHARES), dtype=np.float64)


def _rounded(depth_mm: float) -> float:
    return mm(um(depth_mm))


def every(depth_mm: float, count: int) -> Floats:
    """One depth in every sample."""
    return np.full(count, depth_mm)
