"""The front door: marks of one image to lengths, bends and places, each with how sure it is."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from planning.bounded import within
from planning.curvature import classes
from planning.errors import PlanningError, PointsDoNotFit, ScaleNotUsable, TooMuchWork
from planning.radiograph import bend, line, spread
from planning.radiograph.line import Marks
from planning.radiograph.scale import scale_of, why_not
from planning.radiograph.spread import DIGITS
from planning.radiograph.values import (
    Bend,
    Between,
    CanalLine,
    ImageMarks,
    KnownObject,
    LineMeasured,
    Measured,
    Pixel,
    Scale,
    ScaleState,
    SpacingFacts,
)
from planning.readings import ConfirmingImage, PreOperativeImage, Ratio, Reading
from planning.tables import Figures

MOST_LINES = 8  # more canals than any tooth has
MOST_POINTS = 40  # of one line: one every half millimetre
MOST_PLACES = 40  # of one line


def measure(given: ImageMarks, figures: Figures) -> Measured:
    """Every line measured on one scale. Raises ScaleNotUsable, PointsDoNotFit, TooMuchWork, their path in the marks."""
    if len(given.lines) > MOST_LINES:
        raise TooMuchWork(reason=f"{len(given.lines)} lines are more than {MOST_LINES}.", at=("lines",))
    tapped = figures["tapping.spread"] if given.tapped_within_px is None else given.tapped_within_px
    if not 0 < tapped <= figures["tapping.most"]:
        reason = f"marks within {tapped:g} px cannot be: above 0 to {figures['tapping.most']:g}."
        raise ScaleNotUsable(reason=reason, at=("tapped_within_px",))
    scale = scale_of(given.facts, given.known, tapped, figures)
    lines = []
    for number, each in enumerate(given.lines):
        try:
            lines.append(_measured(each, scale, given.facts, given.known, tapped, figures))
        except PlanningError as refusal:
            raise refusal.below("lines", number) from None
    return Measured(scale=scale, lines=tuple(lines))


def _measured(
    of: CanalLine,
    scale: Scale,
    facts: SpacingFacts | None,
    known: KnownObject | None,
    tapped: float,
    figures: Figures,
) -> LineMeasured:
    _refuse_unfit(of)
    # Widths of a pixel are the unit where there is no scale.
    unit = np.array([scale.column_mm or 1.0, scale.row_mm or scale.row_per_column])
    marks = np.array([(point.x_px, point.y_px) for point in of.points]) * unit
    slips = np.broadcast_to(tapped * unit, marks.shape)
    straight_to = of.orifice or 0
    distances = line.distances(marks, straight_to)
    along = float(distances[-1])
    off = spread.from_tapping(lambda moved: line.length(moved, straight_to), marks, slips)
    mm = _between(along, off, scale, figures)
    most = within("length").most
    if mm is not None and mm.value > most:
        reason = f"the line is {mm.value:.1f} mm long; no canal is longer than {most:g}. Check the scale."
        raise PointsDoNotFit(reason=reason, at=("points",))
    tip = _tip_short(of, marks, unit, scale, tapped, figures)
    return LineMeasured(
        canal=of.canal,
        length_mm=mm,
        length_columns=round(along / float(unit[0]), DIGITS),
        orifice_mm=None if mm is None or not straight_to else round(float(distances[straight_to]), DIGITS),
        bend=_bend(of, marks, slips, distances, scale, figures),
        tip_short_mm=tip,
        tip_deeper_mm=_tip_deeper(of, marks, unit, scale, tapped, figures),
        reading=_reading(of, mm, tip, facts, known, along / float(unit[0]), figures),
        places=_places(of, marks, unit, scale, straight_to),
    )


def _between(value: float, off: float, scale: Scale, figures: Figures) -> Between | None:
    """In mm; None without a scale."""
    if scale.spread_share is None:
        return None
    return spread.rounded(spread.between(value, math.hypot(off, value * scale.spread_share), figures))


def _bend(
    of: CanalLine, marks: Marks, slips: Marks, distances: NDArray[np.float64], scale: Scale, figures: Figures
) -> Bend | None:
    if of.leaves is None:
        return None
    first, leaves, last = of.orifice or 0, of.leaves, of.straight_again or len(marks) - 1

    def schneider(moved: Marks) -> float:
        return math.degrees(bend.schneider_rad(moved[first : leaves + 1], moved[leaves], moved[-1]))

    angle = schneider(marks)
    if angle >= figures["curvature.most_deg"]:
        reason = f"a canal that bends by {angle:.0f}° turns back. Mark it from the reference point to the end."
        raise PointsDoNotFit(reason=reason, at=("points", len(marks) - 1))
    found = spread.between(angle, spread.from_tapping(schneider, marks, slips), figures)
    curved = slice(leaves, last + 1)
    curve, sd = bend.curvature(marks[curved], slips[curved]) if last - leaves >= 2 else (0.0, 0.0)
    radius = _radius(curve, sd, scale, figures)
    turn = bend.turn_rad(marks[curved], curve)
    begins, ends = float(distances[leaves]), float(distances[last])
    whole = None if scale.spread_share is None else float(distances[-1])
    return Bend(
        schneider_deg=spread.rounded(found, least=0.0),
        radius_mm=radius,
        arc_deg=None if radius is None else round(math.degrees(turn), DIGITS),
        arc_mm=None if radius is None else round(turn / curve, DIGITS),
        begins_mm=None if whole is None else round(begins, DIGITS),
        middle_from_end_mm=None if whole is None else round(whole - (begins + ends) / 2, DIGITS),
        classes=classes(angle),
    )


def _radius(curve: float, sd: float, scale: Scale, figures: Figures) -> Between | None:
    """The interval is one of the curvature, turned over: a radius has no spread of its own near a straight line."""
    if scale.spread_share is None or curve * within("curve_radius").most < 1:
        return None
    reach = spread.reach_of(figures) * math.hypot(sd, curve * scale.spread_share)
    most = 1 / (curve - reach) if curve > reach else None
    return spread.rounded(Between(value=1 / curve, least=1 / (curve + reach), most=most))


def _tip_short(
    of: CanalLine, marks: Marks, unit: Marks, scale: Scale, tapped: float, figures: Figures
) -> Between | None:
    """Signed by the way the canal's last part runs: a tip behind the end is short of it."""
    if of.tip is None:
        return None
    tip = np.array([of.tip.x_px, of.tip.y_px]) * unit
    both = np.vstack((tip, marks[-1]))
    way = marks[-1] - marks[-2]

    def short(moved: Marks) -> float:
        gap = moved[1] - moved[0]
        return math.copysign(float(np.hypot(*gap)), float(gap @ way))

    # Marked on each other they are off by one mark's slip, and differences would divide by nothing.
    same = bool(np.hypot(*(both[1] - both[0])) < tapped * unit.min())
    slips = np.broadcast_to(tapped * unit, both.shape)
    off = float(math.sqrt(2) * tapped * unit.max()) if same else spread.from_tapping(short, both, slips)
    return _between(short(both), off, scale, figures)


def _tip_deeper(
    of: CanalLine, marks: Marks, unit: Marks, scale: Scale, tapped: float, figures: Figures
) -> Between | None:
    """The tip as it was marked against the tip as it was set: a stop that slipped, or a scale that is off."""
    if of.set_mm is None or of.tip is None or scale.spread_share is None:
        return None
    way = (marks[-1] - marks[-2]) / np.hypot(*(marks[-1] - marks[-2]))
    all_marks = np.vstack((marks, np.array([of.tip.x_px, of.tip.y_px]) * unit))

    def deep(moved: Marks) -> float:
        return line.length(moved[:-1], of.orifice or 0) + float((moved[-1] - moved[-2]) @ way)

    off = spread.from_tapping(deep, all_marks, np.broadcast_to(tapped * unit, all_marks.shape))
    off = math.hypot(off, deep(all_marks) * scale.spread_share, figures["scale.instrument_spread"])
    return spread.rounded(spread.between(deep(all_marks) - of.set_mm, off, figures))


def _reading(
    of: CanalLine,
    mm: Between | None,
    tip: Between | None,
    facts: SpacingFacts | None,
    known: KnownObject | None,
    columns: float,
    figures: Figures,
) -> Reading | None:
    """Confirming image where an instrument stands at its stop; ratio where one was the scale and the detector's pixels
    are known; else the tooth's length on the image."""
    if not of.reference_point:
        return None
    if of.set_mm is not None and tip is not None:
        return ConfirmingImage(
            set_mm=of.set_mm,
            tip_short_mm=round(tip.value, 2),
            reference_point=of.reference_point,
            after_flaring=of.after_flaring,
        )
    if mm is None or not within("length").holds(mm.value):
        return None
    detector = None if facts is None else facts.at_detector
    if known is not None and known.what == "instrument" and detector and not why_not(detector, figures):
        on_detector = np.array(
            [(point.x_px * detector.column_mm, point.y_px * detector.row_mm) for point in known.points]
        )
        return Ratio(
            instrument_mm=known.length_mm,
            instrument_on_image_mm=round(line.length(on_detector), 2),
            tooth_on_image_mm=round(columns * detector.column_mm, 2),
            reference_point=of.reference_point,
            after_flaring=of.after_flaring,
        )
    return PreOperativeImage(
        tooth_mm=round(mm.value, 2), reference_point=of.reference_point, after_flaring=of.after_flaring
    )


def _places(of: CanalLine, marks: Marks, unit: Marks, scale: Scale, straight_to: int) -> tuple[Pixel | None, ...]:
    if scale.state is ScaleState.UNCALIBRATED:
        return (None,) * len(of.places_mm)
    found = line.places(marks, np.array(of.places_mm, dtype=float), straight_to) / unit
    return tuple(
        None if math.isnan(x) else Pixel(x_px=round(float(x), DIGITS), y_px=round(float(y), DIGITS)) for x, y in found
    )


def _refuse_unfit(of: CanalLine) -> None:
    count = len(of.points)
    if count > MOST_POINTS or len(of.places_mm) > MOST_PLACES:
        what = "points" if count > MOST_POINTS else "places_mm"
        raise TooMuchWork(reason=f"one line may have {MOST_POINTS} points and as many places.", at=(what,))
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
