"""Rests and volumes of what fills a canal. Judges: hand arithmetic, a slow scan, shapely, scipy."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from planning.canal.filling import Filled, filling, rest, rest_mm
from planning.canal.profile import Line, volume_mm3
from planning.contract.obturation import FillingItem, Rest
from planning.foundation.tables import Figures
from tests.planning.given import cone, plugger, spreader

# 30/.04 to 20.0 from an orifice at 8.0: 0.30 at the end, 0.30 + 0.04 x 12 = 0.78 at the orifice.
SHAPE: Line = ((8.0, 0.78), (20.0, 0.30))


def canal(prepared: Line = SHAPE, natural: Line = ()) -> Filled:
    return Filled(initial_shape=natural, prepared=prepared, size=30, taper=4)


def at(item: FillingItem, prepared: Line = SHAPE) -> Rest:
    return rest(item, canal(prepared), Figures())


# By hand: 35 is 0.05 wider, 0.05/0.04 = 1.25 short; 25 would pass by as much. 30/.02 is held by its tip. 30/.06 is as
# wide as the orifice (0.78 - 0.30)/0.06 = 8 mm above its tip: it rests at 16.0. 40/.02: where the canal is 0.40 wide.
@pytest.mark.parametrize(
    ("item", "rests_mm", "short_mm"),
    [
        (cone(30, 4), 20.0, 0.0),
        (cone(35, 4), 18.75, 1.25),
        (cone(25, 4), 21.25, -1.25),
        (cone(30, 2), 20.0, 0.0),
        (cone(30, 6), 16.0, 4.0),
        (cone(40, 2), 17.5, 2.5),
        (plugger(50), 15.0, 5.0),
        (plugger(80), 8.0, 12.0),
    ],
)
def test_where_it_rests(item: FillingItem, rests_mm: float, short_mm: float) -> None:
    cone_rest = at(item)
    assert (cone_rest.rests_mm, cone_rest.short_mm) == (rests_mm, short_mm)


# ISO 6877 (from memory): 0.07 above size 25, 0.05 up to it. 0.07/0.04 = 1.75 mm; 0.05/0.04 = 1.25 mm, less the 1.25 a
# 25 would pass by.
def test_the_widest_that_a_cone_may_be_binds_early() -> None:
    assert at(cone(30, 4)).earliest_short_mm == 1.75
    assert at(cone(25, 4)).earliest_short_mm == 0.0


def test_a_cone_fits_if_by_its_name_it_rests_at_the_end() -> None:
    """By hand: 35 rests 1.25 short, between 3.0 short and 0.5 past; 40 2.5 short, between 4.25 and 0.75 short; the
    widest 20 passes by 1.25."""
    fits = {size: at(cone(size, 4)).fits for size in (20, 25, 30, 32, 35, 40)}
    assert fits == {20: False, 25: False, 30: True, 32: True, 35: False, 40: False}
    assert "a thin one may" in at(cone(35, 4)).says
    assert "at least 0.75 mm short" in at(cone(40, 4)).says
    assert "a thick one may" in at(cone(25, 4)).says
    assert "cut 2.5 mm off" in at(cone(20, 4)).says


def test_a_small_steep_cone_half_a_millimetre_off_lies_outside_its_tolerance() -> None:
    """0.05 over a taper of .12 is 0.42 mm: a cone that binds 0.5 short never gets to the end."""
    shape: Line = ((8.0, 1.63), (20.0, 0.19))
    assert not at(cone(25, 12), shape).fits


def test_a_loose_cone_cut_as_it_says_rests_at_the_end() -> None:
    """Arithmetic: 2.5 mm off a 20/.04 leaves an end of 0.20 + 2.5 x 0.04 = 0.30 mm."""
    assert at(cone(30, 4)).short_mm == 0.0


def test_pluggers_bind_four_to_five_millimetres_from_the_end_and_spreaders_within_two() -> None:
    """By hand in 30/.04: 0.46 to 0.50 wide there, so 50 fits, 45 and 55 do not; spreaders up to 0.38 at 2 mm."""
    assert [at(plugger(size)).fits for size in (45, 50, 55)] == [False, True, False]
    assert [at(spreader(size)).fits for size in (25, 35, 40)] == [True, True, False]


def test_the_master_cone_is_the_one_of_the_final_shape_or_else_the_nearest() -> None:
    def master(*items: FillingItem) -> str | None:
        return filling(items, canal(), Figures()).obturation.master_cone

    assert master(cone(25, 4), cone(30, 2), cone(30, 4), cone(35, 4)) == "30/.04"
    assert master(cone(25, 4), cone(30, 2), cone(35, 4)) == "30/.02"
    assert master(cone(31, 4), cone(32, 4)) == "31/.04"
    assert master(cone(20, 4), plugger(30)) is None
    assert master() is None


def test_a_straight_tool_thinner_than_the_canal_is_never_held_deeper_than_points_are_long() -> None:
    """ISO 6877 (from memory): points are 28 mm long."""
    assert at(FillingItem(kind="plugger", size=20, taper=0)).rests_mm == 28.0


def test_a_ledge_holds_what_the_canal_below_would_let_pass() -> None:
    ledge: Line = ((8.0, 0.9), (14.0, 0.9), (14.0, 0.4), (17.0, 0.6), (20.0, 0.6))
    assert rest_mm(0.45, 0.0, ledge) == 14.0
    assert rest_mm(0.35, 0.02, ledge) == pytest.approx(14.0 + 0.05 / 0.02)


# --- against independent judges ----------------------------------------------------------------------------------

STEPS = st.lists(st.tuples(st.floats(0.3, 4.0), st.floats(0.15, 1.2)), min_size=2, max_size=6)


def line(steps: list[tuple[float, float]]) -> Line:
    depth, points = 8.0, []
    for down, wide in steps:
        points.append((depth, wide))
        depth += down
    return tuple(points)


@given(STEPS, st.floats(0.1, 0.9), st.sampled_from((0.0, 0.02, 0.04, 0.06)))
def test_as_a_slow_scan_finds_it(steps: list[tuple[float, float]], tip_mm: float, taper: float) -> None:
    """The tip goes down in hundredths of a millimetre until the item is somewhere wider than the canal."""
    shape = line(steps)
    depths, widths = np.array([p[0] for p in shape]), np.array([p[1] for p in shape])
    every = np.unique(np.concatenate([np.linspace(depths[0], depths[-1], 2_001), depths]))
    room = np.interp(every, depths, widths)

    def held(tip_at: float) -> bool:
        inside = every <= tip_at
        return bool(np.any(tip_mm + taper * (tip_at - every[inside]) > room[inside] + 1e-9))

    depth_mm = rest_mm(tip_mm, taper, shape)
    slow = next((s for s in np.arange(depths[0], depths[-1], 0.01) if held(s)), None)
    if slow is None:
        assert depth_mm > depths[-1] - 0.02
    else:
        assert abs(depth_mm - slow) < 0.02


@given(STEPS, st.floats(0.1, 0.5), st.sampled_from((0.02, 0.04, 0.06)))
def test_where_it_rests_it_is_covered_by_the_canal_and_a_little_deeper_it_is_not(
    steps: list[tuple[float, float]], tip_mm: float, taper: float
) -> None:
    shape = line(steps)
    top, end = shape[0][0], shape[-1][0]
    depth_mm = rest_mm(tip_mm, taper, shape)
    if not top + 0.01 < depth_mm < end - 0.01:
        return
    half = [(x, d / 2) for x, d in shape]
    hollow = shapely.Polygon([*half, *((x, -r) for x, r in reversed(half))]).buffer(1e-6)

    def item(tip_at: float) -> shapely.Polygon:
        top_half, tip_half = (tip_mm + taper * (tip_at - top)) / 2, tip_mm / 2
        return shapely.Polygon([(top, top_half), (tip_at, tip_half), (tip_at, -tip_half), (top, -top_half)])

    assert hollow.covers(item(depth_mm))
    assert not hollow.covers(item(depth_mm + 0.005))


@given(STEPS)
def test_volume_as_quadrature_has_it(steps: list[tuple[float, float]]) -> None:
    shape = line(steps)
    depths, widths = [p[0] for p in shape], [p[1] for p in shape]
    by_quad, _ = quad(lambda x: math.pi / 4 * np.interp(x, depths, widths) ** 2, depths[0], depths[-1], points=depths)
    assert volume_mm3(shape) == pytest.approx(by_quad, rel=1e-7)


def test_volumes_by_hand() -> None:
    """Frusta: 20/.02 over 16 mm 1.90 mm³ before, 25/.06 7.83 after (5.93 more, a figure worked in the evidence); a cone
    25/.06 fills all of it, one of 25/.02 pi/12 x 16 x (0.57² + 0.57 x 0.25 + 0.25²) = 2.22."""
    shape: Line = ((4.0, 1.21), (20.0, 0.25))
    before: Line = ((4.0, 0.52), (20.0, 0.20))
    own = Filled(initial_shape=before, prepared=shape, size=25, taper=6)
    filled = filling([cone(25, 6)], own, Figures()).obturation.volumes
    assert filled.before_mm3 is not None
    assert filled.prepared_mm3 - filled.before_mm3 == pytest.approx(5.93, abs=0.011)
    assert (filled.cone_mm3, filled.to_fill_mm3) == (filled.prepared_mm3, 0.0)
    thin = filling([cone(25, 2)], own, Figures()).obturation.volumes
    assert thin.cone_mm3 == 2.22
    assert thin.to_fill_mm3 == pytest.approx(thin.prepared_mm3 - 2.22, abs=0.011)
