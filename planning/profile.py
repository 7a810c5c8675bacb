"""The shape that instruments leave: the upper envelope of what each is wide where it stood.

Exact for what is piecewise linear: corners are the instruments' own corners and the places where two cross.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from planning.instruments import HUNDREDTH_MM, Instrument, diameter_mm

STRAIGHT_MM2 = 1e-12  # rounding error of doubles over a canal's length, far below any instrument's tolerance


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """An instrument standing with its tip `tip_mm` from the reference point."""

    instrument: Instrument
    tip_mm: float

    def width_mm(self, at_mm: float) -> float:
        """Its diameter at a depth; 0 past its tip."""
        return 0.0 if at_mm > self.tip_mm else diameter_mm(self.instrument, self.tip_mm - at_mm)

    def corners_mm(self) -> tuple[float, ...]:
        """Depths where its outline bends: tip, largest flute, end of the cutting part."""
        one = self.instrument
        along = [0.0, one.cutting_part_mm]
        if one.largest_flute_mm is not None and one.taper:
            along.append((one.largest_flute_mm - one.size * HUNDREDTH_MM) / (one.taper * HUNDREDTH_MM))
        return tuple(self.tip_mm - z for z in along)


def outline(stands: Sequence[Stand], *, from_mm: float) -> tuple[tuple[float, float], ...]:
    """(depth mm, diameter mm) along the prepared canal, from `from_mm` down to the deepest tip.

    Empty without a stand below `from_mm`. A tip inside the shape gives a step: two points at one depth.
    """
    end = max((s.tip_mm for s in stands), default=from_mm)
    if end <= from_mm:
        return ()
    corners = {from_mm, end} | {c for s in stands for c in s.corners_mm() if from_mm < c < end}
    crossings = {x for pair in combinations(stands, 2) for x in _crossings(*pair, sorted(corners))}
    depths = sorted(corners | crossings)
    points: list[tuple[float, float]] = []
    for a, b in pairwise(depths):
        # Just inside the interval: at a tip the width is there on one side only.
        inside = [s for s in stands if s.tip_mm >= b]
        for at in (a, b):
            point = (at, max(s.width_mm(at) for s in inside))
            if not points or points[-1] != point:
                points.append(point)
    return _without_needless(points)


def _without_needless(points: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Leaves out points that lie on the straight line between their neighbours."""
    kept: list[tuple[float, float]] = []
    for number, (x, d) in enumerate(points):
        if kept and number + 1 < len(points):
            (x0, d0), (x1, d1) = kept[-1], points[number + 1]
            if abs((d - d0) * (x1 - x0) - (d1 - d0) * (x - x0)) < STRAIGHT_MM2:
                continue
        kept.append((x, d))
    return tuple(kept)


def _crossings(one: Stand, other: Stand, corners: Sequence[float]) -> list[float]:
    """Depths between two neighbouring corners where both are equally wide."""
    found = []
    for a, b in pairwise(corners):
        if min(one.tip_mm, other.tip_mm) < b:
            continue
        at_a = one.width_mm(a) - other.width_mm(a)
        at_b = one.width_mm(b) - other.width_mm(b)
        if at_a * at_b < 0:
            found.append(a + (b - a) * at_a / (at_a - at_b))
    return found
