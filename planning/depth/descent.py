"""In which pass the descending series arrives at its stop, sample by sample."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planning.contract.expected import SeriesPasses
from planning.depth.belief import NINE_TENTHS, TENTH, Belief, every, quantile
from planning.depth.reading import AT_MM
from planning.depth.rows import Floats, Rows
from planning.foundation.quantities import mm
from planning.instruments.iso_3630 import Instrument
from planning.run_sheet.graph import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class Series:
    """One pass of a technique."""

    steps: Sequence[tuple[Step, Instrument]]
    """To resistance, in order, from coronal flaring to the smallest of the series."""
    phase: str
    """Of the descending series itself."""
    most_passes: int


ARRIVED, DEPTH, WIDE = "arrived in pass", "canal depths after the series", "canal widths after the series"


class Descent:
    """The passes so far. What is known of each sample is kept in the belief, which at times resamples them together."""

    def __init__(self, belief: Belief, series: Series) -> None:
        self._belief, self._series = belief, series
        self._last, self._pass_number = "", 0
        # Infinite: has not arrived.
        belief.kept[ARRIVED] = every(np.inf, belief.count)

    def note(self, node: Step, pass_number: int, depths_mm: Floats) -> None:
        """Notes that an instrument of the series has been worked in a pass."""
        _note(self._belief, node, pass_number, depths_mm)
        self._belief.kept[DEPTH], self._belief.kept[WIDE] = self._belief.canals.depth_mm, self._belief.canals.wide_mm
        self._last, self._pass_number = node.id, pass_number

    def series_passes(self, expected: int) -> SeriesPasses:
        """The passes expected, and within how many a tenth and nine tenths of the samples arrive.

        Samples that have not arrived by then are worked further, from the canals that the expected passes left.
        """
        kept, most, weight = self._belief.kept, self._series.most_passes, self._belief.weight
        arrived = kept[ARRIVED].copy()
        later = np.flatnonzero(np.isinf(arrived))
        belief = self._belief.back_to(Rows(kept[DEPTH], kept[WIDE]), later)
        at = 1 + [node.id for node, _ in self._series.steps].index(self._last)
        pass_number = self._pass_number
        while pass_number <= most and quantile(arrived, weight, NINE_TENTHS) > pass_number:
            for node, instrument in self._series.steps[at:]:
                depths = belief.to_resistance(instrument, every(mm(node.stop_um or 0), belief.count))
                belief.stands(node.id, instrument, depths)
                if node.phase == self._series.phase:
                    _note(belief, node, pass_number, depths)
            arrived[later] = belief.kept[ARRIVED]
            at, pass_number = 0, pass_number + 1
        low, high = (quantile(arrived, weight, share) for share in (TENTH, NINE_TENTHS))
        # The band always holds the number that is expected.
        return SeriesPasses(expected=expected, low=int(min(low, expected)), high=int(min(max(high, expected), most)))


def _note(belief: Belief, node: Step, pass_number: int, depths_mm: Floats) -> None:
    at_stop = depths_mm >= mm(node.stop_um or 0) - AT_MM
    arrived = belief.kept[ARRIVED]
    belief.kept[ARRIVED] = np.where(at_stop, np.minimum(arrived, pass_number), arrived)
