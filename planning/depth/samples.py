"""What is not known of a canal, drawn many times: its width, the hand that works it, the instruments' tolerances.

Uniform numbers are the raw output of a named bit generator and go through quantile tables (inverse transform sampling).
The library may change how its own distributions draw, but not that output: a seed gives the same samples for ever.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np

from planning.canal.initial_shape import Widths
from planning.canal.profile import Line
from planning.depth.contact_depth import LightTouch
from planning.depth.rows import Floats, Rows, Tools
from planning.foundation.bounds import within
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, corners

MOST_SAMPLES = int(within("samples").most)
# Corners of sampled canals that one plan may look at, all canals together. A corner takes a third of a microsecond, or
# a whole one where widths go up and down (2026-11-29, one core of a small server): five seconds at worst, and twice
# that where a caution closes steps. The check molar with MOST_SAMPLES takes three million.
MOST_WORK = 6_000_000
CORNERS_PER_INSERTION = 20  # of one sampled canal at one insertion, as a rule
SEEDS = 2**64  # a seed is taken modulo this: the generator takes no negative numbers
SHARES = np.arange(1, 1000) / 1000  # a thousandth cut off at either end: no canal is infinitely wide
QUANTILES = np.array([NormalDist().inv_cdf(share) for share in SHARES])
UNIFORM = 2.0**-53  # the upper 53 of 64 random bits are a double between 0 and 1
DROPPED_BITS = np.uint64(11)  # 64 less 53


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """How much things differ: standard deviations as shares, tolerances as bounds."""

    width_share: float
    end_share: float
    widening_share: float
    limit_share: float
    overcut_share: float
    taper_within_share: float
    tip_within_mm: float
    tip_within_large_mm: float
    large_above: float
    least_mm: float
    """No canal is narrower."""


def spread(widths: Widths, block: bool, figures: Figures) -> Spread:
    """The spreads by the data tables or the programme; the end has its own published one where there is one."""
    width_share = figures["samples.block_share" if block else "samples.width_share"]
    end = widths.levels[0]
    return Spread(
        width_share=width_share,
        end_share=width_share if widths.end_sd_mm is None else widths.end_sd_mm / end.narrow_mm,
        widening_share=width_share if block else figures["samples.widening_share"],
        limit_share=figures["samples.limit_share"],
        overcut_share=figures["samples.overcut_share"],
        taper_within_share=figures["instrument.taper_within_share"],
        tip_within_mm=figures["instrument.tip_within"],
        tip_within_large_mm=figures["instrument.tip_within_large"],
        large_above=figures["instrument.large_above"],
        least_mm=within("width").least,
    )


def low_side(narrow: Line, spread: Spread, share: float) -> Line:
    """A narrow canal: at every level only this share of all canals is narrower. It is computed, not drawn, so that it
    does not depend on the number of samples.
    """
    normal = NormalDist().inv_cdf(share)
    shares = [spread.width_share] * (len(narrow) - 1) + [spread.end_share]
    return tuple(
        (depth, max(wide * math.exp(_sigma(sd_share) * normal), spread.least_mm))
        for (depth, wide), sd_share in zip(narrow, shares, strict=True)
    )


class Samples:
    """Canals, hands and instruments drawn from one seed. What is drawn under one name does not depend on any other."""

    def __init__(self, *, count: int, seed: tuple[int, ...], spread: Spread) -> None:
        self.count = count
        self._seed = tuple(part % SEEDS for part in seed)
        self._spread = spread

    def canals(self, narrow: Line) -> Rows:
        """One canal for each sample. All its levels above the end are wider or narrower than usual together, and it
        widens from the end by more or less than usual.
        """
        depth, wide = (np.array(column) for column in zip(*narrow, strict=True))
        widens = _factors(self._spread.widening_share, self.normal("widening"))[:, None]
        wide = wide[-1] + widens * (wide - wide[-1])
        factors = np.repeat(_factors(self._spread.width_share, self.normal("width"))[:, None], len(narrow), axis=1)
        # The end has a spread of its own, apart from the levels above it.
        factors[:, -1] = _factors(self._spread.end_share, self.normal("end"))
        return Rows(np.tile(depth, (self.count, 1)), np.maximum(wide * factors, self._spread.least_mm))

    def limits_mm2(self, by: LightTouch) -> Floats:
        return by.limit_mm2 * _factors(self._spread.limit_share, self.normal("limit"))

    def overcuts_mm(self, by: LightTouch) -> Floats:
        return by.overcut_mm * _factors(self._spread.overcut_share, self.normal("overcut"))

    def tools(self, instrument: Instrument) -> Tools:
        """The instrument as it may be within its tolerances, once for each sample."""
        large = instrument.size > self._spread.large_above
        within_mm = self._spread.tip_within_large_mm if large else self._spread.tip_within_mm
        # Tolerances are bounds and no spreads: within them every value is as likely as any other.
        thicker = within_mm * (2 * self.uniform(f"tip {instrument.key}") - 1)
        steeper = 1 + self._spread.taper_within_share * (2 * self.uniform(f"taper {instrument.key}") - 1)
        from_tip, wide = (np.array(column) for column in zip(*corners(instrument), strict=True))
        grown = wide[0] + thicker[:, None] + (wide - wide[0]) * steeper[:, None]
        return Tools(from_tip, np.maximum(grown, self._spread.least_mm))

    def normal(self, of: str) -> Floats:
        return np.asarray(np.interp(self.uniform(of), SHARES, QUANTILES), dtype=np.float64)

    def uniform(self, of: str) -> Floats:
        """Numbers between 0 and 1, one for each sample; the same name gives the same numbers."""
        bits = np.random.PCG64((*self._seed, *of.encode()))
        return np.asarray((bits.random_raw(self.count) >> DROPPED_BITS) * UNIFORM, dtype=np.float64)


def _factors(share: float, normal: Floats) -> Floats:
    """Factors around 1 that differ by a share of themselves and are never below 0."""
    return np.asarray(np.exp(_sigma(share) * normal), dtype=np.float64)


def _sigma(share: float) -> float:
    """The standard deviation of the logarithm of such a factor."""
    return math.sqrt(math.log1p(share * share))
