"""How sure the estimate is of one canal, and what it learns from the depths that are recorded.

A particle filter (Gordon, Salmond & Smith 1993, from memory). The particles are sampled canals, which are worked step
by step alongside the one that is planned. A recorded depth gives every sample a weight: how likely that depth was in
it. A depth may be a slip, so each sample also draws whether to believe it. Where it does, its simulated depth becomes
the recorded one, give or take the uncertainty of the reading; where it takes the depth for a slip, nothing changes in
it. When a few samples have most of the weight, all are resampled by their weights. What has not been drawn yet, the
next instrument's tolerances for one, is drawn for every copy on its own.
"""

from __future__ import annotations

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass

import numpy as np

from planning.canal.profile import Line
from planning.depth import kernel
from planning.depth.contact_depth import LightTouch, advance_mm
from planning.depth.contact_rows import face_mm, rest_mm
from planning.depth.reading import AT_MM, Likely, Reading
from planning.depth.rows import Floats, Picked, Rows, Tools, wide_at
from planning.depth.samples import MOST_WORK, Samples
from planning.foundation.errors import TooMuchWork
from planning.foundation.quantities import mm, um
from planning.instruments.iso_3630 import Instrument
from planning.run_sheet.graph import Step

TENTH, NINE_TENTHS = 0.1, 0.9  # the band that is told: four fifths of the samples
STRANGE = 2  # depths running that hardly any sample explains: one may be a slip


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """Where an instrument is expected to stop."""

    median_mm: float
    low_mm: float
    high_mm: float
    short_below_mm: float
    """A depth recorded above this place is shorter than expected: hardly any right one lies there."""
    deep_above_mm: float
    """A depth recorded below this place is deeper than expected."""
    reach_share: float
    """Share of the samples in which the instrument comes to its stop."""


class Work:
    """What the samples of one canal may still cost, in corners of outlines that are looked at."""

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
    """The sampled canals that stand for one canal, worked as far as it has been."""

    def __init__(
        self,
        samples: Samples,
        narrow: Line,
        by: LightTouch,
        reading: Reading,
        *,
        shallow_mm: float = 0.0,
        most_work: int = MOST_WORK,
    ) -> None:
        """`shallow_mm` is by how much a bend may stop instruments higher: the samples themselves are straight."""
        self.canals: Rows = samples.canals(narrow)
        self.kept: dict[str, Floats] = {}
        """What else is kept of every sample, by name."""
        self._strange = 0
        """How many depths in a row were likelier slips than right by any sample."""
        self._samples, self._by, self._reading, self._shallow_mm = samples, by, reading, shallow_mm
        self._rows: Picked = slice(None)
        """Which of the samples these are."""
        self._limits, self._overcuts = samples.limits_mm2(by), samples.overcuts_mm(by)
        self._weight: Floats = every(1 / samples.count, samples.count)
        self._tools: dict[str, Tools] = {}
        self._work = Work(most_work)

    @property
    def count(self) -> int:
        return len(self._limits)

    @property
    def weight(self) -> Floats:
        """The weight of every sample; together 1."""
        return self._weight

    @property
    def worth(self) -> float:
        """How many equal samples the weighted ones are worth: the effective sample size (Kong, Liu & Wong
        1994, from memory)."""
        return float(1 / (self._weight**2).sum())

    @property
    def few_agree(self) -> bool:
        """The last recorded depths hardly fit any of the samples."""
        return self._strange >= STRANGE

    def tools(self, instrument: Instrument) -> Tools:
        if instrument.key not in self._tools:
            self._tools[instrument.key] = self._samples.tools(instrument).picked(self._rows)
        return self._tools[instrument.key]

    def stops_mm(self, node: Step) -> Floats:
        """The stop of a step in every sample; one that depends on another step's depth goes by the sample's own."""
        stops, shorter = every(mm(node.stop_um or 0), self.count), node.shorter_than
        if shorter is None or shorter.node not in self.kept:
            return stops
        # As for a walker: the step's own stop is never exceeded.
        return np.minimum(stops, self.kept[shorter.node] - mm(shorter.less_um))

    def to_resistance(self, instrument: Instrument, stops_mm: Floats) -> Floats:
        """The depth at which light touch takes the instrument to rest in every sample. Raises TooMuchWork."""
        flanks = max(1, len(self.tools(instrument).from_tip_mm) - 1)
        self._work.spend(self.canals.depth_mm.size * flanks, self.count)
        first = rest_mm(self.tools(instrument), self.canals, stops_mm, self._limits)
        further = first + (self._by.strokes - 1) * advance_mm(instrument, 1.0) * self._overcuts
        by_face = np.maximum(first, face_mm(self.tools(instrument), self.canals, self._limits))
        return np.minimum(stops_mm, np.minimum(further, by_face))

    def band(self, step: str, depths_mm: Floats, stops_mm: Floats) -> Band:
        """The band of a depth that will be recorded at this step and is no slip."""
        weight, at_stop, reading = self._weight, depths_mm >= stops_mm - AT_MM, self._reading
        normal = self._samples.normal(f"reading {step}")

        def read(sd_mm: float, tail: float) -> list[float]:
            # Whoever is at the stop reads the stop. Any other depth is read with the spread of readings, and never past
            # the stop.
            depths = np.where(at_stop, stops_mm, np.minimum(depths_mm + sd_mm * normal, stops_mm))
            return quantiles(depths, weight, (tail, 1 - tail))

        low_mm, high_mm = read(reading.sd_mm, TENTH)
        # A typed depth was rounded: it is unusual only if all that rounds to it is, so half a step more at either side.
        half_mm = reading.step_mm / 2
        least_mm, most_mm = read(reading.more_sd_mm, reading.unusual_share / 2)
        return Band(
            median_mm=_rounded(quantile(depths_mm, weight, 1 / 2)),
            low_mm=_rounded(self._higher(low_mm)),
            high_mm=_rounded(high_mm),
            short_below_mm=_rounded(self._higher(least_mm - half_mm)),
            deep_above_mm=_rounded(most_mm + half_mm),
            reach_share=round(float(weight[at_stop].sum()), 3),
        )

    def _higher(self, depth_mm: float) -> float:
        # Not above the orifice, unless it lies there already.
        return max(depth_mm - self._shallow_mm, min(depth_mm, self._orifice_mm))

    @property
    def _orifice_mm(self) -> float:
        return float(self.canals.depth_mm[0, 0])

    def learn(self, step: str, read_mm: float, depths_mm: Floats, stops_mm: Floats) -> Floats:
        """Weighs the samples by a recorded depth, and returns where the instrument now stands in every sample.

        In a sample that takes the depth for a slip, that is the simulated depth, else the recorded one. "Reached" only
        says that the instrument went at least so far.
        """
        reading = self._reading
        likely = self._noted(reading.likely(read_mm, depths_mm, stops_mm, self._orifice_mm))
        # The chance by Bayes that this depth is a slip and no right reading, in each sample.
        slipped = self._samples.uniform(f"slip {step}") * (likely.right + likely.slip) < likely.slip
        stood_mm = every(read_mm, self.count)
        # Only short of the stop has the depth a spread: at the stop the instrument stood at the stop.
        if read_mm < stops_mm.min() - AT_MM:
            stood_mm = stood_mm + reading.more_sd_mm * self._samples.normal(f"stood {step}")
            # Every depth that rounds to the recorded one is equally likely.
            if reading.to_step(read_mm):
                stood_mm = stood_mm + reading.step_mm * (self._samples.uniform(f"rounded {step}") - 1 / 2)
            stood_mm = np.clip(stood_mm, self._orifice_mm, mm(um(float(stops_mm.max()))))
        return self._weigh(likely, np.where(slipped, depths_mm, stood_mm))

    def passed(self, instrument: Instrument, depth_mm: float) -> None:
        """Weighs the samples by a hand instrument that went to a depth without cutting: the canal there is at least as
        wide as its tip. One that is held teaches nothing: where it is held is not known.
        """
        # The tip alone: it is the part that has to go through what is narrowest.
        tip_mm = self.tools(instrument).wide_mm[:, 0]
        fits = wide_at(self.canals, every(depth_mm, self.count)[:, None])[:, 0] >= tip_mm - AT_MM
        slip = self._reading.wrong_share
        self._weigh(self._noted(Likely(right=np.where(fits, 1 - slip, 0.0), slip=slip)), tip_mm)

    def _noted(self, likely: Likely) -> Likely:
        """The likelihoods as they are, but equal ones after two depths in a row that look like slips: then the canal is
        like none of the samples, and every sample has to believe what was recorded.
        """
        self._strange = self._strange + 1 if float((self._weight * likely.right).sum()) < likely.slip else 0
        return Likely(right=every(1.0, self.count), slip=0.0) if self.few_agree else likely

    def _weigh(self, likely: Likely, kept: Floats) -> Floats:
        """Weighs every sample by how likely the record is in it. Returns `kept`, resampled wherever the samples are."""
        weight = self._weight * (likely.right + likely.slip)
        self._weight = weight / weight.sum()
        # Not at every depth, since each resampling replaces some samples by copies of others. Below half of their
        # number in worth: common practice.
        return kept[self._drawn_anew()] if self.worth < self.count / 2 else kept

    def _drawn_anew(self) -> Picked:
        """Systematic resampling (Kitagawa 1996, from memory): even steps through the summed weights pick every sample
        about as often as its weight says. Returns the number of the old sample that each new one copies.
        """
        steps = (np.arange(self.count) + 1 / 2) / self.count
        chosen = np.minimum(np.searchsorted(np.cumsum(self._weight), steps), self.count - 1)
        self.canals = self.canals.picked(chosen)
        self._pick(chosen)
        self._weight = every(1 / self.count, self.count)
        return chosen

    def _pick(self, rows: Picked) -> None:
        self.kept = {name: values[rows] for name, values in self.kept.items()}
        self._limits, self._overcuts = self._limits[rows], self._overcuts[rows]
        self._tools = {key: tools.picked(rows) for key, tools in self._tools.items()}

    def stands(self, step: str, instrument: Instrument, depths_mm: Floats) -> None:
        """Opens every sampled canal by the instrument at its depth there. Raises TooMuchWork."""
        self._work.spend(self.canals.depth_mm.size, self.count)
        self.kept[step] = depths_mm
        # Below its end there is no canal that could be opened.
        end = self.canals.depth_mm[:, -1]
        tips_mm = np.minimum(depths_mm, end)
        self.canals = kernel.running.stood(self.tools(instrument), self.canals, tips_mm, self._overcuts)

    def back_to(self, canals: Rows, rows: Picked) -> Belief:
        """Some of the samples with their canals as they were at an earlier step."""
        # A shallow copy on purpose: what these samples cost still counts towards the same work.
        earlier = copy(self)
        earlier.canals, earlier._rows = canals.picked(rows), rows
        earlier._pick(rows)
        return earlier


def quantile(values: Floats, weight: Floats, share: float) -> float:
    """The value below which a share of the weight lies."""
    return quantiles(values, weight, (share,))[0]


def quantiles(values: Floats, weight: Floats, shares: Sequence[float]) -> list[float]:
    order = np.argsort(values, kind="stable")
    # The inverse of the weighted distribution function: a value of the samples, never one between two.
    upto = np.cumsum(weight[order])
    at = np.searchsorted(upto, np.array(shares) - AT_MM)
    return [float(value) for value in values[order][np.minimum(at, len(values) - 1)]]


def _rounded(depth_mm: float) -> float:
    return mm(um(depth_mm))


def every(depth_mm: float, count: int) -> Floats:
    """One depth in every sample."""
    return np.full(count, depth_mm)
