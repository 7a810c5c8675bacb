"""Bends from marks: worked examples, circles with known answers, and how often the stated intervals hold."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.optimize import least_squares
from scipy.stats import binom

from planning.foundation.tables import Figures
from planning.radiograph import ImageMarks, bend, measure
from planning.radiograph.line import Marks
from planning.radiograph.values import CanalLine, MeasuredBend, Pixel, PixelSpacing, SpacingFacts
from tests.draws import draws


def canal(radius: float, degrees: float, marks: int = 5, straight: float = 10.0) -> Marks:
    """Straight down, then an arc to the right: in mm, the orifice first. Three marks on the straight part."""
    turn = np.radians(np.linspace(0, degrees, marks))
    curved = np.column_stack((radius * (1 - np.cos(turn)), straight + radius * np.sin(turn)))
    return np.vstack(([[0.0, 0.0], [0.0, straight / 2]], curved))


def seen(marks_mm: Marks, row_mm: float, column_mm: float, tapped_px: float = 1.0) -> MeasuredBend:
    """The bend as the front door says it, from marks on an image of that spacing."""
    points = tuple(Pixel(x_px=x / column_mm + 700, y_px=y / row_mm + 60) for x, y in marks_mm)
    facts = SpacingFacts(in_patient=PixelSpacing(row_mm=row_mm, column_mm=column_mm), calibration="fiducial")
    line = CanalLine(canal="MB", points=points, leaves=2)
    measured_bend = measure(ImageMarks(lines=(line,), facts=facts, tapped_within_px=tapped_px), Figures()).lines[0].bend
    assert measured_bend is not None
    return measured_bend


# Schneider's angle by hand: atan(2/4) = 26.565, atan(4/4) = 45; for one arc, its end to three digits, half its 40.
@pytest.mark.parametrize(
    ("end", "deg"), [((2, 14), 26.565), ((4, 14), 45.0), ((-2, 14), 26.565), ((2.340, 16.428), 20)]
)
def test_schneider_by_hand(end: tuple[float, float], deg: float) -> None:
    axis = np.array([[0.0, 0.0], [0.0, 10.0]])
    angle = abs(math.degrees(bend.to_side_rad(axis, axis[1], np.array(end))))
    assert angle == pytest.approx(deg, abs=5e-3)


def test_three_marks_give_the_circle_through_them() -> None:
    """Worked example: (0, 10), (0.603, 13.420) and (2.340, 16.428) lie on a circle of radius 10."""
    marks = np.array([[0, 10], [0.603, 13.420], [2.340, 16.428]])
    curve, _ = bend.curvature(marks, np.zeros_like(marks))
    assert 1 / curve == pytest.approx(10.0, abs=0.01)
    assert math.degrees(bend.turn_rad(marks, curve)) == pytest.approx(40.0, abs=0.05)


@pytest.mark.parametrize(("radius", "degrees"), [(2, 15), (2, 85), (6.17, 59), (10, 40), (12, 85), (40, 15), (40, 35)])
@pytest.mark.parametrize("spacing", [(0.02, 0.02), (0.05, 0.03), (0.021, 0.04)])
def test_an_arc_on_any_pixels_measures_itself(radius: float, degrees: float, spacing: tuple[float, float]) -> None:
    measured_bend = seen(canal(radius, degrees), *spacing)
    assert measured_bend.radius_mm is not None
    assert measured_bend.arc_deg == pytest.approx(degrees, abs=0.01)
    assert measured_bend.radius_mm.value == pytest.approx(radius, rel=1e-3)
    assert measured_bend.arc_mm == pytest.approx(radius * math.radians(degrees), rel=1e-3)
    assert measured_bend.schneider_deg.value == pytest.approx(degrees / 2, abs=0.01)


def test_a_straight_canal_has_no_radius() -> None:
    measured_bend = seen(np.array([[0.0, y] for y in (0, 5, 10, 13, 16)]), 0.03, 0.03)
    assert (measured_bend.radius_mm, measured_bend.arc_deg, measured_bend.schneider_deg.value) == (None, None, 0)


def test_the_fit_is_the_circle_of_least_squares() -> None:
    """scipy's least squares over centre and radius comes to the same circle, on noisy marks."""
    draw = np.random.default_rng(7)
    for _ in range(30):
        radius = draw.uniform(4, 20)
        marks = canal(radius, draw.uniform(30, 80), 7)[2:] + draw.normal(0, 0.05, (7, 2))
        curve, _ = bend.curvature(marks, np.zeros_like(marks))
        start = np.array([radius, 10.0, radius])
        other = least_squares(lambda p, m=marks: np.hypot(*(m - p[:2]).T) - p[2], start, xtol=1e-14, ftol=1e-14)
        assert 1 / curve == pytest.approx(abs(other.x[2]), rel=1e-4)


@pytest.mark.parametrize(("radius", "degrees"), [(6.0, 60.0), (10.0, 40.0), (15.0, 70.0)])
@pytest.mark.parametrize("spacing", [(0.03, 0.03), (0.045, 0.025)])
def test_the_intervals_hold_what_they_say(radius: float, degrees: float, spacing: tuple[float, float]) -> None:
    """Marks a pixel off at random, many times: an interval of 95 % holds the true value as often as that.

    The scale's own spread is in the radius's interval too and is not drawn here, so that one may hold more often.
    """
    count, row_mm, column_mm = draws(600, share=8), *spacing
    draw = np.random.default_rng(2026)
    true = canal(radius, degrees)
    held = {"angle": 0, "radius": 0}
    for _ in range(count):
        slipped = true + draw.normal(0, 1, true.shape) * [column_mm, row_mm]
        measured_bend = seen(slipped, row_mm, column_mm)
        held["angle"] += measured_bend.schneider_deg.least <= degrees / 2 <= (measured_bend.schneider_deg.most or 0)
        assert measured_bend.radius_mm is not None
        held["radius"] += measured_bend.radius_mm.least <= radius <= (measured_bend.radius_mm.most or math.inf)
    least, most = binom.interval(0.999, count, 0.95)
    assert least <= held["angle"] <= most
    assert held["radius"] >= least
