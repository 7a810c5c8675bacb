"""How a canal curves, from points tapped on an image: angles, radii, arcs, and what the published schemes call it.

Plane geometry; points in mm in the plane of the image. The method of points is Schneider's, that of angle and radius
Pruett's; how they hang together for a single arc follows from the angle between tangent and chord being half the arc's.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from typing import Annotated, Literal

from planning.foundation import tables
from planning.foundation.bounds import within
from planning.foundation.errors import PointsDoNotFit
from planning.foundation.tables import Figures

DIGITS = 3  # a thousandth of a millimetre or of a degree: finer than any finger taps
_STRAIGHT_MM = 1e-6  # a bow of less than a nanometre is rounding error of doubles: such points lie on a line


class BendShape(StrEnum):
    ONE = "one"
    """To one side."""
    DOUBLE = "double"
    """To one side and then to the other."""
    UNCLEAR = "unclear"
    """To both sides, or it may be: the marks do not tell one bend from the other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """A place on the image."""

    x_mm: Annotated[float, within("plane_place")]
    y_mm: Annotated[float, within("plane_place")]


@dataclass(frozen=True, slots=True, kw_only=True)
class TappedCurve:
    """A canal's curve as it was tapped, orifice side first."""

    axis: Point
    """On the straight coronal part."""
    leaves: Point
    """Where the canal leaves the axis of its coronal part."""
    end: Point
    """The foramen."""
    on_curve: Point | None = None
    """On the curve, between where it leaves the axis and the end."""
    straight_again: Point | None = None
    """Where the curve ends and a straight part runs on to the foramen."""
    other_view_deg: Annotated[float, within("bend_in_view")] | None = None
    """The same curve's angle in a view at a right angle to this one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arc:
    """The curve as part of a circle, by one of three constructions."""

    by: Literal["three_points", "tangents", "one_arc"]
    """Three points on the curve; the tangents along both straight parts; or the whole curve taken as one arc that
    begins along the axis."""
    angle_deg: float
    """Between the tangents at both ends."""
    radius_mm: float
    length_mm: float
    """Along the arc."""
    straightened_mm: float
    """What the canal loses in length if this arc becomes its chord: a part of what flaring takes, never a bound."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveClass:
    scheme: str
    name: str | None
    """None: the scheme has no name for this angle."""
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Curvature:
    angle_deg: float
    """Schneider's: between the coronal axis and the line from where the canal leaves it to the end."""
    chord_mm: float
    """From where it leaves the axis to the end."""
    arcs: tuple[Arc, ...]
    """The best known first; empty for a straight canal."""
    in_space_deg: float | None
    """Of both views together; None with one view."""
    classes: tuple[CurveClass, ...]
    """What each published scheme calls the angle, or the angle in space where there are two views."""


def measure(curve: TappedCurve, figures: Figures) -> Curvature:
    """The curve's angle, arcs and classes. Raises PointsDoNotFit."""
    _refuse_unfit(curve, figures)
    angle = schneider_deg(curve)
    if angle >= figures["curvature.most_deg"]:
        reason = f"a canal that bends by {angle:.0f}° turns back. Tap the points from the orifice to the end."
        raise PointsDoNotFit(reason=reason, at=("end",))
    arcs = (_three_points(curve), _tangents(curve), one_arc(angle, _apart(curve.leaves, curve.end)))
    other = curve.other_view_deg
    space = None if other is None else in_space_deg(angle, other)
    return Curvature(
        angle_deg=round(angle, DIGITS),
        chord_mm=round(_apart(curve.leaves, curve.end), DIGITS),
        arcs=tuple(arc for arc in arcs if arc is not None),
        in_space_deg=None if space is None else round(space, DIGITS),
        classes=classes(angle if space is None else space),
    )


def schneider_deg(curve: TappedCurve) -> float:
    """Angle [degrees] between the coronal axis and the chord to the end (Schneider 1971)."""
    return _between_deg(curve.axis, curve.leaves, curve.leaves, curve.end)


def one_arc(schneider: float, chord_mm: float) -> Arc | None:
    """The arc that begins along the axis and ends at the foramen: it turns by twice Schneider's angle."""
    half = math.radians(schneider)
    if math.sin(half) * chord_mm < _STRAIGHT_MM:
        return None
    return _arc("one_arc", 2 * half, chord_mm / (2 * math.sin(half)))


def circle_radius_mm(p: Point, q: Point, r: Point) -> float | None:
    """Radius [mm] of the circle through three points; None where they lie on a line."""
    twice_area = abs((q.x_mm - p.x_mm) * (r.y_mm - p.y_mm) - (q.y_mm - p.y_mm) * (r.x_mm - p.x_mm))
    longest = max(_apart(p, q), _apart(q, r), _apart(r, p))
    # Twice the area over the longest side is how far the third point lies off that side.
    if twice_area < _STRAIGHT_MM * longest:
        return None
    # The circumscribed circle: the product of the sides over four times the area.
    return _apart(p, q) * _apart(q, r) * _apart(r, p) / (2 * twice_area)


def in_space_deg(one_view: float, other_view: float) -> float:
    """Angle [degrees] of a curve seen in two views at right angles, each below 90."""
    # Each tangent is a part across the axis over the same length along it, and the two parts are at right angles.
    return math.degrees(math.atan(math.hypot(math.tan(math.radians(one_view)), math.tan(math.radians(other_view)))))


def classes(angle_deg: float) -> tuple[CurveClass, ...]:
    """What each published scheme calls an angle."""
    by_scheme: dict[str, CurveClass] = {}
    for row in tables.rows("curvature_classes"):
        inside = _inside(angle_deg, row["least_deg"], row["least_in"], row["most_deg"], row["most_in"])
        scheme = row["scheme"]
        # A scheme is listed even where none of its classes holds the angle.
        if inside or scheme not in by_scheme:
            name = row["class"] if inside else None
            by_scheme[scheme] = CurveClass(scheme=scheme, name=name, source=row["source"], know=row["know"])
    return tuple(by_scheme.values())


def _inside(angle: float, least: str, least_in: str, most: str, most_in: str) -> bool:
    over = not least or angle > float(least) or (least_in == "yes" and angle == float(least))
    under = not most or angle < float(most) or (most_in == "yes" and angle == float(most))
    return over and under


def _three_points(curve: TappedCurve) -> Arc | None:
    if curve.on_curve is None:
        return None
    last = curve.straight_again or curve.end
    radius = circle_radius_mm(curve.leaves, curve.on_curve, last)
    if radius is None:
        return None
    # The angle at the middle point stands on the rest of the circle: the arc turns by twice what it lacks to 180.
    turn = 2 * math.radians(_between_deg(curve.leaves, curve.on_curve, curve.on_curve, last))
    return _arc("three_points", turn, radius)


def _tangents(curve: TappedCurve) -> Arc | None:
    """Radius = tangent length / tan(half the angle), by the shorter tangent, so that the arc fits (Pruett 1997)."""
    if curve.straight_again is None:
        return None
    (ux, uy), (wx, wy) = _way(curve.axis, curve.leaves), _way(curve.straight_again, curve.end)
    cross = ux * wy - uy * wx
    turn = math.atan2(abs(cross), ux * wx + uy * wy)
    gx, gy = _way(curve.leaves, curve.straight_again)
    apart = _apart(curve.leaves, curve.straight_again)
    if abs(cross) * apart < _STRAIGHT_MM:
        return None
    # Where the straight parts meet: leaves + before·u = straight_again - after·w, solved by Cramer's rule.
    before, after = apart * (gx * wy - gy * wx) / cross, apart * (ux * gy - uy * gx) / cross
    if min(before, after) <= 0:
        reason = "the two straight parts do not meet between the points where the curve begins and ends."
        raise PointsDoNotFit(reason=reason, at=("straight_again",))
    return _arc("tangents", turn, min(before, after) / math.tan(turn / 2))


def _arc(by: Literal["three_points", "tangents", "one_arc"], turn: float, radius: float) -> Arc:
    # The arc less its chord.
    lost = radius * turn - 2 * radius * math.sin(turn / 2)
    return Arc(
        by=by,
        angle_deg=round(math.degrees(turn), DIGITS),
        radius_mm=round(radius, DIGITS),
        length_mm=round(radius * turn, DIGITS),
        straightened_mm=round(lost, DIGITS),
    )


def _refuse_unfit(curve: TappedCurve, figures: Figures) -> None:
    """Raises PointsDoNotFit where neighbouring points coincide or lie farther apart than any tooth is long."""
    least, most = figures["curvature.points_apart"], within("length").most
    names = [name for name in ("axis", "leaves", "on_curve", "straight_again", "end") if getattr(curve, name)]
    # Neighbours, and also both ways that are measured from `leaves`: to the last point of the curve and to the end.
    for before, name in (*pairwise(names), ("leaves", names[-2]), ("leaves", "end")):
        if before == name:
            continue
        apart = _apart(getattr(curve, before), getattr(curve, name))
        if not least <= apart <= most:
            reason = f"{before} and {name} lie {apart:.3g} mm apart; {least:g} to {most:g} mm can be. Tap again."
            raise PointsDoNotFit(reason=reason, at=(name,))
    other = curve.other_view_deg
    if other is not None and not 0 <= other < figures["curvature.most_deg"]:
        reason = f"an angle of {other:g}° in the other view cannot be: 0 to below {figures['curvature.most_deg']:g}°."
        raise PointsDoNotFit(reason=reason, at=("other_view_deg",))


def _apart(p: Point, q: Point) -> float:
    return math.hypot(q.x_mm - p.x_mm, q.y_mm - p.y_mm)


def _way(p: Point, q: Point) -> tuple[float, float]:
    """Direction from one point to another, of length 1."""
    apart = _apart(p, q)
    return (q.x_mm - p.x_mm) / apart, (q.y_mm - p.y_mm) / apart


def _between_deg(a: Point, b: Point, c: Point, d: Point) -> float:
    """Angle [degrees] between the ways a→b and c→d."""
    (ux, uy), (wx, wy) = _way(a, b), _way(c, d)
    return math.degrees(math.atan2(abs(ux * wy - uy * wx), ux * wx + uy * wy))
