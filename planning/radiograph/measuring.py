"""The front door: marks of one image to lengths, bends and places, each with how sure it is."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planning.foundation.bounds import refuse_outside, within
from planning.foundation.counts import refuse_too_many
from planning.foundation.errors import PlanningError, PointsDoNotFit, ScaleNotUsable
from planning.foundation.tables import Figures
from planning.lengths.readings import ConfirmingImage, ImageInterval, PreOperativeImage, Ratio, Reading
from planning.radiograph import bends, line, spread
from planning.radiograph.doubts import doubts
from planning.radiograph.line import Marks
from planning.radiograph.scale import scale_of, why_not
from planning.radiograph.spread import DIGITS, Slipped
from planning.radiograph.touch import Touch, says_of, touch_of
from planning.radiograph.values import Between, CanalLine, ImageMarks, LineMeasured, Measured, Pixel, Scale, ScaleState


def measure(marks: ImageMarks, figures: Figures) -> Measured:
    """Every line measured on one scale. Raises ScaleNotUsable, PointsDoNotFit, TooMuchWork, their path in the marks."""
    # It only counts: to look at each of too many would already be too much work.
    refuse_too_many(marks)
    tapped = figures["tapping.spread"] if marks.tapped_within_px is None else marks.tapped_within_px
    if not 0 < tapped <= figures["tapping.most"]:
        reason = f"marks within {tapped:g} px cannot be: above 0 to {figures['tapping.most']:g}."
        raise ScaleNotUsable(reason=reason, at=("tapped_within_px",))
    refuse_outside(marks)
    scale = scale_of(marks.facts, marks.known, tapped, figures)
    on = _On(marks, scale, touch_of(tapped, scale.row_per_column, figures), figures)
    lines = []
    for number, each in enumerate(marks.lines):
        try:
            lines.append(_measured(each, on))
        except PlanningError as refusal:
            raise refusal.below("lines", number) from None
    return Measured(scale=scale, lines=tuple(lines), touch_says=says_of([mark for _, mark in marks.places()], tapped))


@dataclass(frozen=True, slots=True)
class _On:
    """The image that lines are measured on."""

    marks: ImageMarks
    scale: Scale
    touch: Touch
    figures: Figures

    @property
    def unit(self) -> Marks:
        """The sides of a pixel, across and down: in millimetres, or in widths of a pixel where there is no scale."""
        scale = self.scale
        return np.array([scale.column_mm or 1.0, scale.row_mm or scale.row_per_column])

    def places(self, points: Sequence[Pixel]) -> tuple[Marks, Marks]:
        """Where marks lie, and how far each is off: one standard deviation."""
        unit = self.unit
        return np.array([(point.x_px, point.y_px) for point in points]) * unit, self.touch.slips(points, unit)

    def mm(self, value: float, off: Slipped) -> Between | None:
        """A length with its interval; None without a scale."""
        share = self.scale.spread_share
        if share is None:
            return None
        sd = math.hypot(off.sd, value * share)
        return spread.rounded(spread.between(value, sd, self.figures, off.more))


def _measured(of: CanalLine, on: _On) -> LineMeasured:
    _refuse_unfit(of)
    marks, slips = on.places(of.points)
    straight_to = of.orifice or 0
    distances = line.distances(marks, straight_to)
    along = float(distances[-1])
    mm = on.mm(along, spread.by_slips(lambda moved: line.length(moved, straight_to), marks, slips))
    most = within("length").most
    if mm is not None and mm.value > most:
        reason = f"the line is {mm.value:.1f} mm long; no canal is longer than {most:g}. Check the scale."
        raise PointsDoNotFit(reason=reason, at=("points",))
    tip = _tip_short(of, on)
    # Also told in widths of a pixel: that needs no scale.
    columns = along / float(on.unit[0])
    return LineMeasured(
        canal=of.canal,
        length_mm=mm,
        length_columns=round(columns, DIGITS),
        orifice_mm=None if mm is None or not straight_to else round(float(distances[straight_to]), DIGITS),
        bend=bends.of_line(of, marks, slips, distances, on.scale, on.figures),
        tip_short_mm=tip,
        tip_deeper_mm=_tip_deeper(of, on),
        reading=_reading(of, mm, tip, on, columns),
        places=_places(of, marks, on.unit, on.scale, straight_to),
        doubts=tuple(doubts(marks, on.figures)),
    )


def _tip_short(of: CanalLine, on: _On) -> Between | None:
    """The distance from the tip to the canal's end [mm]: above 0 short of it, below 0 past it, by how the last part
    runs.
    """
    if of.tip is None:
        return None
    both, slips = on.places((of.tip, of.points[-1]))
    before, end = on.places(of.points[-2:])[0]
    way = end - before

    def short(moved: Marks) -> float:
        gap = moved[1] - moved[0]
        return math.copysign(float(np.hypot(*gap)), float(gap @ way))

    # Where both marks nearly coincide, nobody knows on which side the tip lies: only both slips together are known.
    off = Slipped(0.0, float(np.hypot(*slips.max(axis=1))))
    if np.hypot(*(both[1] - both[0])) >= slips.min():
        off = Slipped(0.0, spread.from_tapping(short, both, slips))
    return on.mm(short(both), off)


def _tip_deeper(of: CanalLine, on: _On) -> Between | None:
    """How much deeper the tip was marked than it was set; None where either is missing. A large difference means a stop
    that slipped, or a scale that is off."""
    share = on.scale.spread_share
    if of.set_mm is None or of.tip is None or share is None:
        return None
    marks, slips = on.places((*of.points, of.tip))
    way = (marks[-2] - marks[-3]) / np.hypot(*(marks[-2] - marks[-3]))

    def deep(moved: Marks) -> float:
        # Along the line to the canal's end, and from there on straight: beyond the end nobody marked where the canal
        # runs.
        return line.length(moved[:-1], of.orifice or 0) + float((moved[-1] - moved[-2]) @ way)

    value, off = deep(marks), spread.by_slips(deep, marks, slips)
    sd = math.hypot(off.sd, value * share, on.figures["scale.instrument_spread"])
    return spread.rounded(spread.between(value - of.set_mm, sd, on.figures, off.more))


def _reading(of: CanalLine, mm: Between | None, tip: Between | None, on: _On, columns: float) -> Reading | None:
    """The line as a reading: a confirming image where an instrument stands at its stop; a ratio where an instrument was
    the known object and the detector's pixels are known; else the tooth's length on the image."""
    if not of.reference_point:
        return None
    if of.set_mm is not None and tip is not None:
        return ConfirmingImage(
            set_mm=of.set_mm,
            tip_short_mm=round(tip.value, 2),
            reference_point=of.reference_point,
            after_flaring=of.after_flaring,
            interval=_interval(tip, on.scale),
        )
    # No tooth is so short or so long: the marks are another thing's, or a slip.
    if mm is None or not within("length").holds(mm.value):
        return None
    known = on.marks.known
    detector = None if on.marks.facts is None else on.marks.facts.at_detector
    # In a ratio the magnification cancels out: both lengths are of one image.
    if known is not None and known.what == "instrument" and detector and not why_not(detector, on.figures):
        on_detector = np.array(
            [(point.x_px * detector.column_mm, point.y_px * detector.row_mm) for point in known.points]
        )
        return Ratio(
            instrument_mm=known.length_mm,
            instrument_on_image_mm=round(line.length(on_detector), 2),
            tooth_on_image_mm=round(columns * detector.column_mm, 2),
            reference_point=of.reference_point,
            after_flaring=of.after_flaring,
            interval=_interval(mm, on.scale),
        )
    return PreOperativeImage(
        tooth_mm=round(mm.value, 2),
        reference_point=of.reference_point,
        after_flaring=of.after_flaring,
        interval=_interval(mm, on.scale),
    )


def _interval(of: Between, scale: Scale) -> ImageInterval:
    """The interval that goes with the reading, widened where needed to hold the value: what slips add is taken off the
    interval and not off the value."""
    least, most = min(of.least, of.value), max(of.value if of.most is None else of.most, of.value)
    return ImageInterval(least_mm=round(least, 2), most_mm=round(most, 2), rests_on=scale.rests_on)


def _places(of: CanalLine, marks: Marks, unit: Marks, scale: Scale, straight_to: int) -> tuple[Pixel | None, ...]:
    if scale.state is ScaleState.UNCALIBRATED:
        return (None,) * len(of.places_mm)
    spots = line.places(marks, np.array(of.places_mm, dtype=float), straight_to) / unit
    return tuple(
        None if math.isnan(x) else Pixel(x_px=round(float(x), DIGITS), y_px=round(float(y), DIGITS)) for x, y in spots
    )


def _refuse_unfit(of: CanalLine) -> None:
    count = len(of.points)
    if count < 2:
        raise PointsDoNotFit(reason="a line has at least a first and a last mark.", at=("points",))
    for number in range(1, count):
        before, here = of.points[number - 1], of.points[number]
        if math.hypot(here.x_px - before.x_px, here.y_px - before.y_px) < 1:
            reason = "two marks lie on one pixel. Take one away."
            raise PointsDoNotFit(reason=reason, at=("points", number))
    order = [("orifice", of.orifice), ("leaves", of.leaves), ("straight_again", of.straight_again)]
    least = 0
    for name, place in order:
        if place is None:
            continue
        if not least <= place < count:
            reason = f"{name} is mark {place}, which does not come after the ones before it on this line."
            raise PointsDoNotFit(reason=reason, at=(name,))
        least = place + 1
    if of.straight_again is not None and of.leaves is None:
        raise PointsDoNotFit(reason="where the bend begins is not marked.", at=("leaves",))
    if of.leaves is not None and (of.leaves == (of.orifice or 0) or of.leaves == count - 1):
        reason = "where the canal leaves its axis lies between the orifice and the end."
        raise PointsDoNotFit(reason=reason, at=("leaves",))
