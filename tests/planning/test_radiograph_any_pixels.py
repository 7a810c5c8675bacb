"""The same canal on any image: rows and columns apart by different amounts, turned, mirrored, moved. Known answers by
the formulas of the circle and the line; intervals counted over canals and pixels drawn at random.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from planning.anatomy.curvature import BendShape
from planning.foundation.tables import Figures
from planning.radiograph import ImageMarks, measure
from planning.radiograph.line import Marks
from planning.radiograph.values import CanalLine, KnownObject, LineMeasured, Pixel, PixelSpacing, SpacingFacts
from tests.draws import draws

LEAVES = 2  # third mark of `canal`


@dataclass(frozen=True, kw_only=True)
class View:
    """How the plane of the tooth, in mm, comes on to an image."""

    row_mm: float
    column_mm: float
    turned_deg: float = 0.0
    mirrored: bool = False
    magnified: float = 1.0

    def of(self, places_mm: Marks) -> tuple[Pixel, ...]:
        turn = math.radians(self.turned_deg)
        x, y = places_mm.T * [[-1.0 if self.mirrored else 1.0], [1.0]] * self.magnified
        across, down = x * math.cos(turn) - y * math.sin(turn), x * math.sin(turn) + y * math.cos(turn)
        return tuple(
            Pixel(x_px=float(a) / self.column_mm + 900, y_px=float(d) / self.row_mm + 300)
            for a, d in zip(across, down, strict=True)
        )

    @property
    def facts(self) -> SpacingFacts:
        spacing = PixelSpacing(row_mm=self.row_mm, column_mm=self.column_mm)
        return SpacingFacts(in_patient=spacing, calibration="fiducial")


# Rows up to 1.9 times as far apart as columns, or the other way round: beyond twice no spacing is believed.
VIEWS = st.builds(
    lambda column_mm, tall, **more: View(row_mm=column_mm * tall, column_mm=column_mm, **more),
    column_mm=st.floats(0.02, 0.04),
    tall=st.floats(0.53, 1.9),
    turned_deg=st.floats(-60, 60),
    mirrored=st.booleans(),
)
TALL, WIDE = View(row_mm=0.05, column_mm=0.03), View(row_mm=0.03, column_mm=0.05, turned_deg=33)


def canal(radius: float, degrees: float, straight: float) -> Marks:
    """Straight down, then an arc to the right; three marks on the straight part, five on the arc."""
    turn = np.radians(np.linspace(0, degrees, 5))
    curved = np.column_stack((radius * (1 - np.cos(turn)), straight + radius * np.sin(turn)))
    return np.vstack(([[0.0, 0.0], [0.0, straight / 2]], curved))


def measured(view: View, points: tuple[Pixel, ...], leaves: int | None = LEAVES) -> LineMeasured:
    line = CanalLine(canal="MB", points=points, leaves=leaves)
    return measure(ImageMarks(lines=(line,), facts=view.facts), Figures()).lines[0]


@given(VIEWS, st.floats(2, 17), st.floats(12, 85), st.floats(6, 9))
def test_an_arc_is_the_same_on_any_image(view: View, radius: float, degrees: float, straight: float) -> None:
    """Length = straight part + radius times angle; Schneider's angle of one arc is half of it (tangent and chord)."""
    line = measured(view, view.of(canal(radius, degrees, straight)))
    assert line.length_mm is not None
    assert line.bend is not None
    assert line.bend.radius_mm is not None
    assert line.length_mm.value == pytest.approx(straight + radius * math.radians(degrees), rel=2e-3)
    assert line.bend.radius_mm.value == pytest.approx(radius, rel=2e-3)
    assert line.bend.arc_deg == pytest.approx(degrees, abs=0.05)
    assert line.bend.schneider_deg.value == pytest.approx(degrees / 2, abs=0.05)


@given(VIEWS, st.floats(5, 25), st.lists(st.integers(1, 19), min_size=1, max_size=5, unique=True))
def test_marks_on_a_straight_line_are_as_long_as_it(view: View, length: float, between: list[int]) -> None:
    """Pythagoras, wherever the marks between lie."""
    down = np.array([0, *sorted(between), 20]) * length / 20
    line = measured(view, view.of(np.column_stack((np.zeros_like(down), down))), leaves=None)
    assert line.length_mm is not None
    assert line.length_mm.value == pytest.approx(length, rel=1e-3)


# Worked examples by hand: a(0,0), b(0,10), c as given; Schneider's angle by atan, of an arc half its 40.
@pytest.mark.parametrize("view", [TALL, WIDE], ids=["tall", "wide"])
@pytest.mark.parametrize(("end", "deg"), [((2, 14), 26.57), ((4, 14), 45.0), ((2.340, 16.428), 20.0)])
def test_worked_angles(view: View, end: tuple[float, float], deg: float) -> None:
    marks = np.array([[0, 0], [0, 10], end])
    line = measured(view, view.of(marks), leaves=1)
    assert line.bend is not None
    assert line.bend.schneider_deg.value == pytest.approx(deg, abs=0.01)


@pytest.mark.parametrize("view", [TALL, WIDE], ids=["tall", "wide"])
def test_a_worked_arc(view: View) -> None:
    """(0, 10), (0.603, 13.420), (2.340, 16.428): radius 10.0, 40 degrees, arc 6.981, all by hand."""
    marks = np.array([[0, 0], [0, 5], [0, 10], [0.603, 13.420], [2.340, 16.428]])
    bend = measured(view, view.of(marks)).bend
    assert bend is not None
    assert bend.radius_mm is not None
    assert bend.radius_mm.value == pytest.approx(10.0, abs=0.02)
    assert bend.arc_deg == pytest.approx(40.0, abs=0.1)
    assert bend.arc_mm == pytest.approx(6.981, abs=0.01)


@given(VIEWS)
def test_a_tooth_magnified_is_put_right_by_what_stands_in_it(view: View) -> None:
    """Worked example: 400 mm to the detector, the tooth 15 mm in front of it, so 25.0 mm show as 25.97 (400 / 385)."""
    larger = replace(view, magnified=400 / 385)
    down = np.column_stack((np.zeros(2), [0.0, 25.0]))
    shown = measured(larger, larger.of(down), leaves=None).length_mm
    assert shown is not None
    assert shown.value == pytest.approx(25.97, abs=0.01)
    instrument = KnownObject(what="instrument", length_mm=20.0, points=larger.of(down * [1, 0.8]))
    line = CanalLine(canal="MB", points=larger.of(down))
    true = measure(ImageMarks(lines=(line,), known=instrument, facts=larger.facts), Figures()).lines[0].length_mm
    assert true is not None
    assert true.value == pytest.approx(25.0, rel=1e-3)


def test_intervals_hold_as_often_as_they_say_on_any_image() -> None:
    """Many canals, pixels and slips at random: 95 % of the intervals hold the true angle, length and radius.

    Length and radius hold the scale's own spread too, which is not drawn: they may hold more often, never less.
    """
    count, draw, held = draws(600), np.random.default_rng(20261127), {"angle": 0, "length": 0, "radius": 0}
    with_radius = 0
    tapped_px = Figures()["tapping.spread"]
    for _ in range(count):
        radius, degrees, straight = draw.uniform(4, 15), draw.uniform(25, 75), draw.uniform(8, 14)
        row_mm, column_mm = draw.uniform(0.025, 0.048, 2)
        view = View(row_mm=row_mm, column_mm=column_mm, turned_deg=draw.uniform(-40, 40), mirrored=draw.random() < 0.5)
        slips = draw.normal(0, tapped_px, (7, 2))
        true = view.of(canal(radius, degrees, straight))
        marked = tuple(Pixel(x_px=p.x_px + x, y_px=p.y_px + y) for p, (x, y) in zip(true, slips, strict=True))
        line = measured(view, marked)
        assert line.bend is not None
        assert line.length_mm is not None
        if line.bend.shape is not BendShape.ONE:
            continue  # what may bend to both sides has no radius
        assert line.bend.radius_mm is not None
        with_radius += 1
        for name, interval, truth in (
            ("angle", line.bend.schneider_deg, degrees / 2),
            ("length", line.length_mm, straight + radius * math.radians(degrees)),
            ("radius", line.bend.radius_mm, radius),
        ):
            held[name] += interval.least <= truth <= (math.inf if interval.most is None else interval.most)
    assert with_radius >= 0.98 * count
    least, most = binom.interval(0.999, with_radius, 0.95)
    assert least <= held["angle"] <= most
    assert held["length"] >= least
    assert held["radius"] >= least
