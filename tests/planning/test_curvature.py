"""Curves from points. Geometry by hand; curves drawn the other way round, from an arc to its points, are the judge."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning.anatomy.curvature import (
    Arc,
    Point,
    TappedCurve,
    circle_radius_mm,
    classes,
    in_space_deg,
    measure,
    one_arc,
    schneider_deg,
)
from planning.foundation.errors import PointsDoNotFit
from planning.foundation.tables import Figures


def at(x_mm: float, y_mm: float) -> Point:
    return Point(x_mm=x_mm, y_mm=y_mm)


def tapped(*end: float, **more: Point | float) -> TappedCurve:
    return TappedCurve(axis=at(0, 0), leaves=at(0, 10), end=at(*end), **more)  # type: ignore[arg-type]


def by(arcs: tuple[Arc, ...]) -> dict[str, Arc]:
    return {arc.by: arc for arc in arcs}


# Schneider's construction by hand: atan(2/4) = 26.565 degrees, atan(4/4) = 45.
@pytest.mark.parametrize(("end", "deg"), [((2, 14), 26.565), ((4, 14), 45.0), ((0, 14), 0.0), ((-2, 14), 26.565)])
def test_schneider(end: tuple[float, float], deg: float) -> None:
    assert schneider_deg(tapped(*end)) == pytest.approx(deg, abs=1e-3)


def test_the_published_schemes_do_not_agree_and_leave_gaps() -> None:
    named = {each.scheme: each.name for each in classes(26.565)}
    assert (named["Schneider"], named["AAE case difficulty"]) == ("severe", "moderate")
    assert {each.scheme: each.name for each in classes(22.0)}["Schneider"] is None
    ends = [[each.name for each in classes(deg)][:2] for deg in (5.0, 10.0, 20.0, 25.0, 30.0, 30.1)]
    assert ends == [
        ["straight", "low"],
        ["moderate", "moderate"],
        ["moderate", "moderate"],
        ["severe", "moderate"],
        ["severe", "moderate"],
        ["severe", "severe"],
    ]


def test_one_arc_by_hand() -> None:
    """Radius 10, turning by 40 degrees from (0, 10): it ends at (10 - 10 cos 40, 10 + 10 sin 40) = (2.340, 16.428).
    Schneider half of 40; chord 20 sin 20 = 6.840; arc 10 x 0.698 = 6.981; straightened 6.981 - 6.840 = 0.141."""
    curvature = measure(tapped(2.33956, 16.42788), Figures())
    assert curvature.angle_deg == pytest.approx(20.0, abs=1e-3)
    assert curvature.chord_mm == pytest.approx(6.840, abs=1e-3)
    (arc,) = curvature.arcs
    assert arc.by == "one_arc"
    assert [arc.radius_mm, arc.angle_deg, arc.length_mm] == pytest.approx([10.0, 40.0, 6.981], abs=2e-3)
    assert arc.straightened_mm == pytest.approx(0.141, abs=2e-3)


# dL = R theta - 2 R sin(theta/2), by hand.
@pytest.mark.parametrize(
    ("radius_mm", "turn_deg", "lost_mm"), [(5, 40, 0.07), (5, 60, 0.24), (10, 30, 0.06), (10, 40, 0.14), (15, 27, 0.07)]
)
def test_length_lost_when_straightened(radius_mm: float, turn_deg: float, lost_mm: float) -> None:
    chord = 2 * radius_mm * math.sin(math.radians(turn_deg / 2))
    arc = one_arc(turn_deg / 2, chord)
    assert arc is not None
    assert round(arc.straightened_mm, 2) == lost_mm


def test_three_points_by_hand() -> None:
    """On a circle around (10, 10) of radius 10, at 0, 20 and 40 degrees."""
    assert circle_radius_mm(at(0, 10), at(0.603, 13.420), at(2.340, 16.428)) == pytest.approx(10.0, abs=5e-3)
    assert circle_radius_mm(at(0, 0), at(1, 1), at(3, 3)) is None


@given(st.floats(2, 20), st.floats(4, 120), st.floats(0.2, 0.8), st.sampled_from((-1, 1)))
def test_three_points_and_one_arc_find_the_arc_they_lie_on(radius: float, turn: float, share: float, side: int) -> None:
    def on_arc(deg: float) -> Point:
        rad = math.radians(deg)
        return at(side * radius * (1 - math.cos(rad)), 10 + radius * math.sin(rad))

    apart = radius * math.radians(turn) * min(share, 1 - share)
    if apart < 0.2 or radius * math.radians(turn) > 30:
        return
    curve = TappedCurve(axis=at(0, 0), leaves=at(0, 10), end=on_arc(turn), on_curve=on_arc(turn * share))
    for arc in measure(curve, Figures()).arcs:
        assert arc.radius_mm == pytest.approx(radius, rel=1e-3, abs=2e-3)
        assert arc.angle_deg == pytest.approx(turn, abs=2e-3)


@given(st.floats(2, 12), st.floats(5, 85), st.floats(1, 8))
def test_tangents_find_an_arc_between_two_straight_parts(radius: float, turn: float, straight: float) -> None:
    """Angle and radius where the arc ends before the canal does (Pruett, Clement & Carnes 1997)."""
    rad = math.radians(turn)
    ends = at(radius * (1 - math.cos(rad)), 10 + radius * math.sin(rad))
    foramen = at(ends.x_mm + straight * math.sin(rad), ends.y_mm + straight * math.cos(rad))
    curve = TappedCurve(axis=at(0, 0), leaves=at(0, 10), end=foramen, straight_again=ends)
    arc = by(measure(curve, Figures()).arcs)["tangents"]
    assert arc.angle_deg == pytest.approx(turn, abs=2e-3)
    assert arc.radius_mm == pytest.approx(radius, abs=2e-3)


# By hand: tan² 30 = 1/3 twice: atan(sqrt(2/3)) = 39.23; with a straight second view nothing changes.
def test_an_angle_in_space_from_two_views() -> None:
    assert in_space_deg(30, 30) == pytest.approx(39.2315, abs=1e-3)
    assert in_space_deg(26.0, 0) == pytest.approx(26.0)
    curvature = measure(tapped(2, 14, other_view_deg=40.0), Figures())
    # tan 26.565 = 1/2 and tan 40 = 0.8391: atan(sqrt(0.25 + 0.7041)) = 44.33 by hand.
    assert curvature.in_space_deg == pytest.approx(44.33, abs=5e-3)
    assert {each.scheme: each.name for each in curvature.classes}["AAE case difficulty"] == "severe"


def test_a_straight_canal_has_no_arc() -> None:
    curvature = measure(tapped(0, 15, on_curve=at(0, 12), straight_again=at(0, 13)), Figures())
    assert (curvature.angle_deg, curvature.arcs) == (0.0, ())


@pytest.mark.parametrize(
    ("curve", "at_"),
    [
        (tapped(0, 10), "end"),
        (tapped(0, 5), "end"),
        (tapped(0, 60), "end"),
        (tapped(2, 14, on_curve=at(0, 10.01)), "on_curve"),
        (tapped(0, 10, on_curve=at(1, 12)), "end"),
        (tapped(2, 15, straight_again=at(-1, 14)), "straight_again"),
        (tapped(2, 14, other_view_deg=90.0), "other_view_deg"),
        (tapped(2, 14, other_view_deg=-1.0), "other_view_deg"),
    ],
)
def test_points_that_are_no_canal_are_refused(curve: TappedCurve, at_: str) -> None:
    with pytest.raises(PointsDoNotFit) as refused:
        measure(curve, Figures())
    assert refused.value.pointer == (at_,)
