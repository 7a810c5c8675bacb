"""How deep an instrument goes with light touch: the contact-depth estimate.

With its tip at a depth, an instrument removes per millimetre of advance

    load = ∫ d · d' dz  over the flanks where it is wider than the canal  +  ½ (tip² - canal²) where the tip is

which is ½ (d_b² - d_a²) for every stretch in contact from d_a up to d_b. It rests at the deepest place to which the
load stays within the limit all the way in. Canal and instrument are straight between their corners, so between two
meetings of a corner with a wall the load is a quadratic in the depth: the search goes over the meetings and solves
one quadratic, and is exact.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from planning.canal.profile import Line, Stand, narrows_upwards, upper, volume_mm3
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Corners, Instrument, corners

APART_MM = 1e-9  # meetings closer together than this are one: rounding error of doubles
OVER_MM2 = 1e-12  # as much above the limit is rounding error


@dataclass(frozen=True, slots=True, kw_only=True)
class LightTouch:
    """How an instrument is led: the parameters of the estimate."""

    limit_mm2: float
    """Load at which light touch stops advancing."""
    overcut_mm: float
    """How much wider than itself an instrument leaves the canal."""
    strokes: int
    """In and out movements of one insertion."""


def light_touch(figures: Figures) -> LightTouch:
    """The parameters by the data tables or the programme."""
    return LightTouch(
        limit_mm2=figures["depth.limit"],
        overcut_mm=figures["depth.overcut"],
        strokes=figures.count("depth.strokes"),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Insertion:
    """One instrument having been in the canal."""

    depth_mm: float
    """Where its tip came to, from the reference point."""
    canal: Line
    """The canal after it."""
    removes_mm3: float


def insert(instrument: Instrument, canal: Line, stop_mm: float, by: LightTouch) -> Insertion:
    """The instrument led in to resistance, at most to its stop."""
    return stand(instrument, canal, to_resistance_mm(instrument, canal, stop_mm, by), by)


def to_resistance_mm(instrument: Instrument, canal: Line, stop_mm: float, by: LightTouch) -> float:
    """The depth [mm] to which light touch leads the instrument in, at most to its stop.

    Each further stroke finds its flanks freed by the overcut, and goes overcut/taper deeper than the one before. But
    before the face of the tip nothing was cut: so it goes no deeper than the face gets by itself.
    """
    outline = corners(instrument)
    first = rest_mm(outline, canal, stop_mm, by.limit_mm2)
    further = first + (by.strokes - 1) * advance_mm(instrument, by.overcut_mm)
    return min(stop_mm, further, max(first, face_mm(outline, canal, by.limit_mm2)))


def stand(instrument: Instrument, canal: Line, tip_mm: float, by: LightTouch) -> Insertion:
    """The round canal after the instrument has stood with its tip at a depth, and what that took off."""
    after = opened(instrument, canal, tip_mm, by)
    return Insertion(depth_mm=tip_mm, canal=after, removes_mm3=volume_mm3(after) - volume_mm3(canal))


def opened(instrument: Instrument, canal: Line, tip_mm: float, by: LightTouch) -> Line:
    """The canal after the instrument has stood with its tip at a depth, however it came there."""
    shape = Stand(instrument=instrument, tip_mm=min(tip_mm, canal[-1][0]))
    return upper(canal, shape.line(canal[0][0], by.overcut_mm))


def advance_mm(instrument: Instrument, overcut_mm: float) -> float:
    """How much deeper [mm] a second stroke goes: until the steepest flank meets the wall that the first stroke left.

    0 for an instrument without taper: only its tip cuts, and before the tip the first stroke has freed nothing.
    """
    steepest = max((d1 - d0) / (z1 - z0) for (z0, d0), (z1, d1) in pairwise(corners(instrument)))
    return overcut_mm / steepest if steepest > 0 else 0.0


def face_mm(instrument: Corners, canal: Line, limit_mm2: float) -> float:
    """How deep [mm] the tip's face gets by itself: to where ½ (tip² - canal²) passes the limit; infinite where it never
    does."""
    narrowest = math.sqrt(max(0.0, instrument[0][1] ** 2 - 2 * limit_mm2))
    if canal[0][1] < narrowest:
        return canal[0][0]
    for (a, wide_a), (b, wide_b) in pairwise(canal):
        if wide_b < narrowest:
            return a + (b - a) * (wide_a - narrowest) / (wide_a - wide_b)
    return math.inf


def rest_mm(instrument: Corners, canal: Line, stop_mm: float, limit_mm2: float) -> float:
    """Depth [mm] of the tip where the load first leaves the limit on the way in; the stop where it never does."""
    start_mm = canal[0][0]
    if stop_mm <= start_mm:
        return stop_mm
    edges = [start_mm, *_meetings(instrument, canal, start_mm, stop_mm), stop_mm]
    between = [(a, b) for a, b in pairwise(edges) if b - a > APART_MM]
    flanks, walls = _pieces(instrument), _pieces(canal)

    def over(tip_mm: float) -> float:
        return _load_mm2(flanks, walls, tip_mm) - limit_mm2

    first = 0
    if not narrows_upwards(canal):
        # Then the load never falls on the way in, so bisection finds the first stretch whose middle is over the limit:
        # the load leaves the limit in that one or in the one before.
        first = max(0, bisect_left(between, True, key=lambda ab: over((ab[0] + ab[1]) / 2) > 0) - 1)
    for a, b in between[first:]:
        leaves_mm = _leaves_limit(a, b, over)
        if leaves_mm is not None:
            return leaves_mm
    return stop_mm


def _leaves_limit(a_mm: float, b_mm: float, over: Callable[[float], float]) -> float | None:
    """Where between two neighbouring meetings the load first exceeds the limit; None where it does not.

    Between meetings the load is a quadratic in the depth. Three values from inside determine it; at a meeting itself
    the load may jump.
    """
    middle, half = (a_mm + b_mm) / 2, (b_mm - a_mm) / 2
    step = half / 2
    before, at, after = over(middle - step), over(middle), over(middle + step)
    slope = (after - before) / (2 * step)
    curve = (before - 2 * at + after) / (2 * step * step)
    if at - slope * half + curve * half * half > OVER_MM2:
        return a_mm
    # at + slope·v + curve·v² = 0: the root where it rises, in the form that does not lose digits
    # where slope² is much larger than 4 · curve · at (a textbook way with quadratics, from memory).
    inside = slope * slope / 2 / 2 - curve * at
    rises = slope / 2 + math.sqrt(inside) if inside > 0 else 0.0
    if rises <= 0:
        return None
    root = -at / rises
    return middle + root if -half <= root < half else None


def _meetings(instrument: Corners, canal: Line, start_mm: float, stop_mm: float) -> list[float]:
    """Depths of the tip at which a corner of one lies on a corner or a wall of the other, in order."""
    tips = {y + z for y, _ in canal for z, _ in instrument}
    for (z0, d0), (z1, d1) in pairwise(instrument):
        if d1 > d0:
            # A corner of the canal on a flank.
            tips |= {y + z0 + (c - d0) * (z1 - z0) / (d1 - d0) for y, c in canal if d0 <= c <= d1}
    for (y0, c0), (y1, c1) in pairwise(canal):
        if c1 != c0 and y1 > y0:
            # A corner of the instrument on a wall.
            tips |= {
                z + y0 + (d - c0) * (y1 - y0) / (c1 - c0) for z, d in instrument if min(c0, c1) <= d <= max(c0, c1)
            }
    return sorted(tip for tip in tips if start_mm < tip < stop_mm)


def load_mm2(instrument: Corners, canal: Line, tip_mm: float) -> float:
    """The load [mm²] with the tip at a depth; 0 above the orifice. At a jump, the load just before it."""
    return _load_mm2(_pieces(instrument), _pieces(canal), tip_mm)


def _load_mm2(flanks: Sequence[_Piece], walls: Sequence[_Piece], tip_mm: float) -> float:
    """The same, summed from the tip up the instrument's flanks, one wall of the canal after another."""
    at = bisect_left(walls, tip_mm, key=_start) - 1
    if at < 0:
        return 0.0
    start, c0, widens, _ = walls[at]
    face, canal_mm = flanks[0][1], c0 + widens * (tip_mm - start)
    doubled = face * face - canal_mm * canal_mm if face > canal_mm else 0.0
    for z0, d0, grows, end in flanks:
        low = z0
        while low < end and at >= 0:
            start, c0, widens, _ = walls[at]
            high = min(end, tip_mm - start)
            d_low, d_high = d0 + grows * (low - z0), d0 + grows * (high - z0)
            over_low = d_low - c0 - widens * (tip_mm - low - start)
            over_high = d_high - c0 - widens * (tip_mm - high - start)
            if over_low > 0 or over_high > 0:
                if over_low * over_high < 0:
                    meets = d_low + (d_high - d_low) * over_low / (over_low - over_high)
                    d_low, d_high = (d_low, meets) if over_low > 0 else (meets, d_high)
                doubled += d_high * d_high - d_low * d_low
            low = high
            if high < end:
                at -= 1
    return doubled / 2


_Piece = tuple[float, float, float, float]
"""Where a straight piece starts [mm], its diameter there [mm], how that grows [mm/mm], where it ends [mm]."""


def _pieces(points: Sequence[tuple[float, float]]) -> list[_Piece]:
    """The straight pieces of an outline; a step, which has no length, is left out."""
    return [(a, d0, (d1 - d0) / (b - a), b) for (a, d0), (b, d1) in pairwise(points) if b > a]


def _start(piece: _Piece) -> float:
    return piece[0]
