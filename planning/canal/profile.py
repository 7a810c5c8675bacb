"""Outlines of canals and instruments, and the shape that instruments leave: the upper envelope of where each stood.

Exact for what is piecewise linear: corners are the corners of what is laid over another and the places where two cross.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce
from itertools import pairwise

from planning.anatomy import ovals
from planning.contract.expected import InitialShape
from planning.instruments.iso_3630 import Instrument, corners, diameter_mm

STRAIGHT_MM2 = 1e-12  # rounding error of doubles over a canal's length, far below any instrument's tolerance

Line = tuple[tuple[float, float], ...]
"""(depth mm, diameter mm), reference point side first; straight between points, two points at one depth are a step."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """An instrument standing with its tip `tip_mm` from the reference point."""

    instrument: Instrument
    tip_mm: float

    def width_mm(self, at_mm: float) -> float:
        """Its diameter at a depth; 0 past its tip."""
        return 0.0 if at_mm > self.tip_mm else diameter_mm(self.instrument, self.tip_mm - at_mm)

    def line(self, from_mm: float, wider_mm: float = 0.0) -> Line:
        """Its outline from `from_mm` down to its tip, `wider_mm` thicker than the instrument; empty where the tip lies
        above `from_mm`. Above the cutting part the outline stays as wide as the end of that.
        """
        if self.tip_mm <= from_mm:
            return ()
        points = [(self.tip_mm - z, d + wider_mm) for z, d in corners(self.instrument) if self.tip_mm - z > from_mm]
        # It begins where the canal does: outlines that are laid over each other start at one depth.
        top = (from_mm, self.width_mm(from_mm) + wider_mm)
        return (top, *reversed(points))


def outline(stands: Sequence[Stand], *, from_mm: float) -> Line:
    """The prepared canal from `from_mm` down to the deepest tip; empty without a stand below `from_mm`."""
    return reduce(upper, (stand.line(from_mm) for stand in stands), ())


def upper(first: Line, second: Line) -> Line:
    """The wider of the two at every depth that either covers; both start at one depth.

    A tip inside the shape gives a step.
    """
    if not first or not second:
        return first or second
    depths = sorted({x for x, _ in first} | {x for x, _ in second})
    points: list[tuple[float, float]] = []
    widths = zip(pairwise(depths), _pieces(first, depths), _pieces(second, depths), strict=True)
    for (a, b), (one_a, one_b), (other_a, other_b) in widths:
        # Both ends of every stretch: where the next stretch begins at another width, the two points make the step.
        points.append((a, max(one_a, other_a)))
        at_a, at_b = one_a - other_a, one_b - other_b
        if at_a * at_b < 0:
            share = at_a / (at_a - at_b)
            points.append((a + share * (b - a), one_a + share * (one_b - one_a)))
        points.append((b, max(one_b, other_b)))
    return _without_needless(points)


def wider_mm(first: Line, second: Line) -> float:
    """By how much `first` is wider than `second` where that is most, at depths that both cover; below 0 where it is
    narrower all the way, or covers none of them. Both start at one depth."""
    if not first or not second:
        return -math.inf
    depths = sorted({x for x, _ in first} | {x for x, _ in second})
    most_mm = -math.inf
    for mine, its in zip(_pieces(first, depths), _pieces(second, depths), strict=True):
        # A width of 0 at both ends means that a line has ended above.
        if any(mine) and any(its):
            most_mm = max(most_mm, mine[0] - its[0], mine[1] - its[1])
    return most_mm


def upto(line: Line, end_mm: float) -> Line:
    """The part of the line above a depth that it reaches."""
    kept = [point for point in line if point[0] < end_mm]
    for (a, wide_a), (b, wide_b) in pairwise(line):
        if a < end_mm <= b:
            kept.append((end_mm, wide_a + (wide_b - wide_a) * (end_mm - a) / (b - a)))
    return tuple(kept)


def _pieces(line: Line, depths: Sequence[float]) -> list[tuple[float, float]]:
    """Diameter just inside both ends of every stretch between neighbouring depths; 0 past the line's end."""
    pieces = []
    at, last = 0, len(line) - 1
    for a, b in pairwise(depths):
        while at < last and line[at + 1][0] <= a:
            at += 1
        if at == last:
            pieces.append((0.0, 0.0))
            continue
        (x0, d0), (x1, d1) = line[at], line[at + 1]
        grows = (d1 - d0) / (x1 - x0)
        # At a corner its own diameter: a computed one would differ by rounding and make a step of it.
        pieces.append((d0 + grows * (a - x0), d1 if b == x1 else d0 + grows * (b - x0)))
    return pieces


def _without_needless(points: Sequence[tuple[float, float]]) -> Line:
    """Leaves out points that lie on the straight line between their neighbours, and doubles."""
    kept: list[tuple[float, float]] = []
    for number, (x, d) in enumerate(points):
        if kept and kept[-1] == (x, d):
            continue
        if kept and number + 1 < len(points):
            (x0, d0), (x1, d1) = kept[-1], points[number + 1]
            if abs((d - d0) * (x1 - x0) - (d1 - d0) * (x - x0)) < STRAIGHT_MM2:
                continue
        kept.append((x, d))
    return tuple(kept)


def narrow_line(initial_shape: InitialShape) -> Line:
    """The outline of the canal's narrow side: it is what binds an instrument."""
    return tuple((point.from_reference_mm, point.narrow_mm) for point in initial_shape.points)


def narrows_upwards(line: Line) -> bool:
    """Whether the canal is somewhere narrower on the orifice side than deeper down."""
    return any(deeper > above for (_, above), (_, deeper) in pairwise(line))


def wide_line(initial_shape: InitialShape) -> Line:
    """The outline of the canal's wide side."""
    return tuple((point.from_reference_mm, point.wide_mm) for point in initial_shape.points)


def volume_mm3(line: Line, initial_shape: InitialShape | None = None) -> float:
    """Volume [mm³] of a round canal of this outline, exactly; of an oval one that has been made as wide as that, of
    the oval and the round shape in its middle together."""
    if initial_shape is None:
        return math.fsum(ovals.frustum_mm3(x1 - x0, (d0, d1), (d0, d1)) for (x0, d0), (x1, d1) in pairwise(line))
    outlines = (narrow_line(initial_shape), wide_line(initial_shape), line)
    depths = sorted({x for outline in outlines for x, _ in outline if line[0][0] <= x <= line[-1][0]})
    narrow, wide, across = (_pieces(outline, depths) for outline in outlines)
    # Where the round shape leaves one side of the oval behind a stretch ends, as it does at every corner.
    crossings = {x for side in (narrow, wide) for x in map(_crossing, pairwise(depths), across, side) if x is not None}
    if crossings:
        depths = sorted({*depths, *crossings})
        narrow, wide, across = (_pieces(outline, depths) for outline in outlines)
    return math.fsum(map(ovals.volume_mm3, [b - a for a, b in pairwise(depths)], narrow, wide, across))


def _crossing(between: tuple[float, float], first: tuple[float, float], second: tuple[float, float]) -> float | None:
    """The depth between two depths at which two outlines cross that are straight there; None where they do not."""
    at_a, at_b = first[0] - second[0], first[1] - second[1]
    return between[0] + at_a / (at_a - at_b) * (between[1] - between[0]) if at_a * at_b < 0 else None
