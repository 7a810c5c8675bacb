"""How a canal bends on an image: Schneider's angle, the circle of its bend, and of a double bend both circles."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from planning.anatomy.curvature import BendShape, classes
from planning.foundation.bounds import within
from planning.foundation.errors import PointsDoNotFit
from planning.foundation.tables import Figures
from planning.radiograph import bend, spread, two_bends
from planning.radiograph.line import Marks
from planning.radiograph.spread import DIGITS
from planning.radiograph.two_bends import Arcs
from planning.radiograph.values import Between, CanalLine, MeasuredBend, OneBend, Scale

Floats = NDArray[np.float64]

CAUTIONS: Final = {
    BendShape.ONE: "",
    BendShape.DOUBLE: "The canal bends to one side, then to the other: radius and arc are those of the tighter bend.",
    BendShape.UNCLEAR: "The canal may bend to both sides and its marks do not tell the bends apart: it has no radius. "
    "Zoom in and mark both bends closely, at least three marks along each.",
}


def of_line(
    of: CanalLine, marks: Marks, slips: Marks, distances: Floats, scale: Scale, figures: Figures
) -> MeasuredBend | None:
    """How the canal bends; None where nobody marked where it leaves its axis. Raises PointsDoNotFit."""
    if of.leaves is None:
        return None
    line = _Line(of, marks, slips, distances, scale, figures)
    angle = line.schneider()
    shape, bends = line.bends()
    tightest = min(bends, key=lambda each: each.radius_mm.value, default=None)
    scaled = scale.spread_share is not None
    middle = tightest.middle_from_end_mm if tightest else line.from_end_mm(of.leaves, line.last)
    return MeasuredBend(
        schneider_deg=angle,
        radius_mm=tightest.radius_mm if tightest else None,
        arc_deg=tightest.arc_deg if tightest else None,
        arc_mm=tightest.arc_mm if tightest else None,
        begins_mm=round(float(distances[of.leaves]), DIGITS) if scaled else None,
        middle_from_end_mm=middle if scaled else None,
        classes=classes(angle.value),
        shape=shape,
        bends=bends if shape is BendShape.DOUBLE else (),
        caution=CAUTIONS[shape],
    )


def charted_deg(bend: MeasuredBend) -> float:
    """The angle that the canal is worked by: Schneider's, and of a double bend the largest of all.

    An S may end nearly in line with its axis, so that Schneider's angle of the whole canal is small.
    """
    return max(bend.schneider_deg.value, *(each.schneider_deg for each in bend.bends), 0.0)


@dataclass(frozen=True, slots=True)
class _Line:
    of: CanalLine
    marks: Marks
    slips: Marks
    distances: Floats
    scale: Scale
    figures: Figures

    @property
    def leaves(self) -> int:
        return self.of.leaves or 0

    @property
    def last(self) -> int:
        return self.of.straight_again or len(self.marks) - 1

    def schneider(self) -> Between:
        first, leaves = self.of.orifice or 0, self.leaves

        def schneider(moved: Marks) -> float:
            return math.degrees(bend.to_side_rad(moved[first : leaves + 1], moved[leaves], moved[-1]))

        angle = schneider(self.marks)
        if abs(angle) >= self.figures["curvature.most_deg"]:
            reason = f"a canal that bends by {abs(angle):.0f}° turns back. Mark it from the reference point to the end."
            raise PointsDoNotFit(reason=reason, at=("points", len(self.marks) - 1))
        off = spread.by_slips(schneider, self.marks, self.slips)
        return spread.rounded(spread.to_either_side(spread.between(angle, off.sd, self.figures, off.more)))

    def bends(self) -> tuple[BendShape, tuple[OneBend, ...]]:
        """The shape, and its bends that have a radius: one, or both of a double bend."""
        # Through two marks go circles of any size: a bend needs a third.
        if len(self.marks) - 1 - self.leaves < 2:
            return BendShape.ONE, ()
        # What lies above the orifice is no part of the canal: there the line is straight, as an instrument is.
        first = self.of.orifice or 0
        arcs = two_bends.possible(
            self.marks[first:], self.slips[first:], self.distances[first:], self.leaves - first, self.figures
        )
        share = arcs.both_ways(self._none_rad)
        sure = self.figures["bends.sure_share"]
        if share > sure:
            return BendShape.DOUBLE, self._both(arcs)
        if share > 1 - sure:
            return BendShape.UNCLEAR, ()
        return BendShape.ONE, self._single(arcs)

    def _single(self, arcs: Arcs) -> tuple[OneBend, ...]:
        """The one bend. It ends where its end was marked, else where the arcs that fit the marks say."""
        if self.of.straight_again is not None:
            return self._circle() if self.last - self.leaves >= 2 else ()
        to_one_side = arcs.one_way()
        least, most = to_one_side.quantiles(to_one_side.tightest(self._none_rad), self._tails)
        short = arcs.straight_on(self._none_rad, self.figures["bends.ends_share"])
        if short is None:
            return self._circle((least, most))
        curve, turn = (abs(short.quantiles(of, (0.5,))[0]) for of in (short.first, short.turns()[0]))
        radius = self._radius(curve, min(curve, least), max(curve, most))
        return () if radius is None else (_one(radius, turn, curve, self._middle(0.0, short.mean_passes())),)

    def _circle(self, ends: tuple[float, float] | None = None) -> tuple[OneBend, ...]:
        """The bend as one circle over its marks. `ends` are the bounds of its curvature, where slips of the marks are
        not all that makes it unsure."""
        curved = slice(self.leaves, self.last + 1)
        curve, sd = bend.curvature(self.marks[curved], self.slips[curved])
        reach = spread.reach_of(self.figures) * sd
        least, most = ends or (curve - reach, curve + reach)
        radius = self._radius(curve, min(curve, least), max(curve, most))
        if radius is None:
            return ()
        middle = self.from_end_mm(self.leaves, self.last)
        return (_one(radius, bend.turn_rad(self.marks[curved], curve), curve, middle),)

    def _both(self, arcs: Arcs) -> tuple[OneBend, ...]:
        """Both bends, from the orifice on.

        Which of the two is the tighter differs among the arcs that fit, so its interval is taken over the tighter one
        of every pair.
        """
        low, high = self._tails
        each = (abs(arcs.first), abs(arcs.second))
        tighter = np.maximum(*each)
        first_is = arcs.quantiles(each[0], (0.5,)) > arcs.quantiles(each[1], (0.5,))
        passes, bends = arcs.mean_passes(), []
        for curves, turns, from_, to, is_tighter in (
            (each[0], arcs.turns()[0], 0.0, passes, first_is),
            (each[1], arcs.turns()[1], passes, arcs.length, not first_is),
        ):
            least, curve, most = arcs.quantiles(tighter if is_tighter else curves, (low, 0.5, high))
            radius = self._radius(curve, least, most)
            if radius is None:
                return ()
            bends.append(_one(radius, abs(arcs.quantiles(turns, (0.5,))[0]), curve, self._middle(from_, to)))
        return tuple(bends)

    def _radius(self, curve: float, least: float, most: float) -> Between | None:
        """The radius, as one over the interval of the curvature: near a straight line only the curvature has a spread.

        By the marks alone a faint bend could be a kink that no canal has, so no bound is tighter than the tightest bend
        known. None for a radius below that which may as well be a straight line.
        """
        share = self.scale.spread_share
        # A radius beyond what can be charted is as good as a straight line.
        if share is None or curve * within("curve_radius").most < 1:
            return None
        tightest_mm = self.figures["bends.tightest"]
        sharpest = max(curve, 1 / tightest_mm)
        least, most = max(least, -sharpest), min(most, sharpest)
        by_scale = spread.reach_of(self.figures) * curve * share
        # Marks and scale are off independently, so what each adds to the interval is added by squares.
        ends = Between(
            value=curve,
            least=curve - math.hypot(curve - least, by_scale),
            most=curve + math.hypot(most - curve, by_scale),
        )
        ends = spread.to_either_side(ends)
        longest = None if ends.least == 0 else 1 / ends.least
        if longest is None and round(1 / curve, DIGITS) < tightest_mm:
            return None
        return spread.rounded(Between(value=1 / curve, least=1 / (ends.most or curve), most=longest))

    @property
    def _none_rad(self) -> float:
        """An arc that turns by less than this counts as straight: twice the Schneider's angle that does."""
        return 2 * math.radians(self.figures["bends.straight_deg"])

    @property
    def _tails(self) -> tuple[float, float]:
        """Shares below which the interval begins and ends."""
        tail = (1 - self.figures["interval.share"]) / 2
        return tail, 1 - tail

    def _middle(self, from_: float, to: float) -> float:
        """How far the middle of two places lies from the canal's end [mm]; the places are counted from where it leaves
        its axis.
        """
        return round(float(self.distances[-1] - self.distances[self.leaves]) - (from_ + to) / 2, DIGITS)

    def from_end_mm(self, first: int, last: int) -> float:
        """How far the middle between two marks lies from the canal's end [mm], along the canal."""
        middle = (self.distances[first] + self.distances[last]) / 2
        return round(float(self.distances[-1] - middle), DIGITS)


def _one(radius: Between, turn_rad: float, curve: float, middle_from_end_mm: float) -> OneBend:
    return OneBend(
        radius_mm=radius,
        arc_deg=round(math.degrees(turn_rad), DIGITS),
        arc_mm=round(turn_rad / curve, DIGITS),
        schneider_deg=round(math.degrees(turn_rad / 2), DIGITS),
        middle_from_end_mm=middle_from_end_mm,
    )
