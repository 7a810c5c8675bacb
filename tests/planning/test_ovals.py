"""An oval canal with a round preparation in it: share of wall, area, volume. Judges: hand arithmetic, shapely's
polygons, scipy's integrals."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.special import ellipe, ellipeinc

from planning.anatomy.ovals import area_mm2, reached_share
from planning.canal.profile import Line, narrow_line, upto, volume_mm3
from planning.contract.expected import CanalWidth, InitialShape
from planning.whole_tooth.plan import plan
from tests.planning import ten_cases

WIDTHS = st.floats(0.1, 0.5)
FLATTER = st.floats(1.0, 7.0)


def by_shapely(narrow_mm: float, wide_mm: float, round_mm: float) -> float:
    around = np.linspace(0, 2 * math.pi, 40_001)
    oval = shapely.LineString(np.column_stack([narrow_mm / 2 * np.cos(around), wide_mm / 2 * np.sin(around)]))
    preparation = shapely.Point(0, 0).buffer(round_mm / 2, quad_segs=5_000)
    return float(oval.intersection(preparation).length / oval.length)


# Medians of foramina by Wolf et al. 2017, table 5, with sizes 25, 30, 35, 40.
@pytest.mark.parametrize(
    ("narrow_mm", "wide_mm", "round_mm"),
    [(0.33, 0.42, 0.35), (0.24, 0.39, 0.25), (0.24, 0.39, 0.30), (0.30, 0.46, 0.40), (0.29, 2.11, 0.80)],
)
def test_as_shapely_cuts_it(narrow_mm: float, wide_mm: float, round_mm: float) -> None:
    assert reached_share(narrow_mm, wide_mm, round_mm) == pytest.approx(
        by_shapely(narrow_mm, wide_mm, round_mm), abs=2e-4
    )


@given(WIDTHS, FLATTER, st.floats(0.001, 0.999))
def test_as_elliptic_integrals_have_it(narrow: float, flatter: float, between: float) -> None:
    wide = narrow * flatter
    across = narrow + between * (wide - narrow)
    if not narrow < across < wide:
        return
    upto = math.asin(math.sqrt((across**2 - narrow**2) / (wide**2 - narrow**2)))
    m = 1 - (narrow / wide) ** 2
    assert reached_share(narrow, wide, across) == pytest.approx(ellipeinc(upto, m) / ellipe(m), abs=1e-9)


def test_nothing_before_the_narrow_side_everything_from_the_wide_one() -> None:
    assert [reached_share(0.24, 0.40, size) for size in (0.20, 0.24, 0.40, 0.45)] == [0.0, 0.0, 1.0, 1.0]
    assert [reached_share(0.30, 0.30, size) for size in (0.25, 0.30)] == [0.0, 1.0]


def covered_mm2(narrow_mm: float, wide_mm: float, round_mm: float, corners: int = 2_000) -> float:
    around = np.linspace(0, 2 * math.pi, corners + 1)
    oval = shapely.Polygon(np.column_stack([narrow_mm / 2 * np.cos(around), wide_mm / 2 * np.sin(around)]))
    preparation = shapely.Polygon(np.column_stack([round_mm / 2 * np.cos(around), round_mm / 2 * np.sin(around)]))
    return float(oval.union(preparation).area)


@given(WIDTHS, FLATTER, st.floats(0.5, 1.5))
def test_area_as_shapely_unites_the_two(narrow: float, flatter: float, share: float) -> None:
    wide = narrow * flatter
    area = area_mm2(*(np.array([each]) for each in (narrow, wide, narrow + share * (wide - narrow))))
    assert area[0] == pytest.approx(covered_mm2(narrow, wide, narrow + share * (wide - narrow)), rel=1e-5)


def oval(*levels: tuple[float, float, float]) -> InitialShape:
    points = tuple(CanalWidth(from_reference_mm=x, narrow_mm=n, wide_mm=w) for x, n, w in levels)
    return InitialShape(points=points, source="", know="")


# By hand, over 10 mm: an elliptic cylinder 0.3 by 1.2 wide is pi/4 x 0.3 x 1.2 x 10 = 2.827 mm³ where a round one of
# 0.3 is 0.707. A frustum from 0.2 by 0.2 to 0.4 by 1.0: mean of the products, as both grow by straight lines,
# pi/4 x 10 x (2 x 0.04 + 2 x 0.4 + 0.2 x 1.0 + 0.4 x 0.2)/6 = 1.518. A round shape wider than all of it counts alone.
@pytest.mark.parametrize(
    ("canal", "prepared", "mm3"),
    [
        (oval((0.0, 0.3, 1.2), (10.0, 0.3, 1.2)), ((0.0, 0.3), (10.0, 0.3)), 2.827),
        (oval((0.0, 0.4, 1.0), (10.0, 0.2, 0.2)), ((0.0, 0.4), (10.0, 0.2)), 1.518),
        (oval((0.0, 0.4, 1.0), (10.0, 0.2, 0.2)), ((0.0, 2.0), (10.0, 1.0)), math.pi / 12 * 10 * (4 + 2 + 1)),
    ],
)
def test_volumes_of_oval_canals_by_hand(canal: InitialShape, prepared: Line, mm3: float) -> None:
    assert volume_mm3(prepared, canal) == pytest.approx(mm3, abs=5e-4)


DISTAL = oval((6.0, 0.9, 2.4), (15.0, 0.59, 1.07), (18.0, 0.34, 0.5), (19.0, 0.35, 0.46), (20.0, 0.3, 0.46))


# Crossings with both sides, a step, a round shape narrower and wider than the oval, and an end short of the canal's.
@pytest.mark.parametrize(
    "prepared",
    [
        ((6.0, 0.9), (12.0, 0.75), (12.0, 0.7), (15.0, 0.66), (19.5, 0.4)),
        ((6.0, 2.6), (9.0, 1.4), (14.0, 0.7), (20.0, 0.5)),
        ((6.0, 1.0), (20.0, 0.44)),
    ],
)
def test_volume_as_quadrature_over_shapelys_slices_has_it(prepared: Line) -> None:
    def covered(x: float) -> float:
        sides = np.array([(p.from_reference_mm, p.narrow_mm, p.wide_mm) for p in DISTAL.points]).T
        across = np.interp(x, *np.array(prepared).T)
        return covered_mm2(np.interp(x, sides[0], sides[1]), np.interp(x, sides[0], sides[2]), across, 720)

    corners = sorted({x for x, _ in prepared} | {p.from_reference_mm for p in DISTAL.points})
    pieces = [(a, b) for a, b in pairwise(corners) if b <= prepared[-1][0]]
    expected = sum(quad(covered, a + 1e-9, b - 1e-9, limit=50, epsabs=1e-5)[0] for a, b in pieces)
    assert volume_mm3(prepared, DISTAL) == pytest.approx(expected, rel=1e-3)


def test_as_it_was_an_oval_canal_is_its_ellipse() -> None:
    narrow = upto(narrow_line(DISTAL), 19.5)
    ellipses = [
        (b - a) * (2 * n0 * w0 + 2 * n1 * w1 + n0 * w1 + n1 * w0) / 6
        for (a, n0, w0), (b, n1, w1) in (
            ((6.0, 0.9, 2.4), (15.0, 0.59, 1.07)),
            ((15.0, 0.59, 1.07), (18.0, 0.34, 0.5)),
            ((18.0, 0.34, 0.5), (19.0, 0.35, 0.46)),
            ((19.0, 0.35, 0.46), (19.5, 0.325, 0.46)),
        )
    ]
    assert volume_mm3(narrow, DISTAL) == pytest.approx(math.pi / 4 * sum(ellipses), rel=1e-9)


# A round instrument touches the two near walls of an oval alone: geometry. That this is told: a programme rule.
def test_a_plan_says_of_an_oval_canal_that_instruments_may_go_deeper() -> None:
    canals = {canal_plan.canal: canal_plan for canal_plan in plan(ten_cases.molar_with_an_oval_distal_canal()).canals}
    round_ = plan(ten_cases.training_block()).canals[0]
    for canal, oval in ((canals["D"], True), (round_, False)):
        rule = next(each.rule for each in canal.rationales if each.of == "expectation.steps")
        assert ("may go deeper than is said" in rule) is oval
