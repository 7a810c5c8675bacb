"""The contact-depth estimate against a slow twin on a fine grid, against quadrature, and by its own properties."""

from __future__ import annotations

import math
import random
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from planning.canal.profile import Line, narrows_upwards
from planning.depth.contact_depth import LightTouch, advance_mm, insert, load_mm2, rest_mm, stand
from planning.foundation.errors import InstrumentNotDescribed
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Corners, DiameterAt, Instrument, Motion, Use, corners, refuse_undescribed
from tests.draws import draws
from tests.planning.given import hand, rotary
from tests.reference import slow_contact_depth

TOLD_MM = 0.02  # how far the two may lie apart
LIMITS = (0.005, 0.02, 0.05, 0.1, 0.15, 0.3)
BY = LightTouch(limit_mm2=0.15, overcut_mm=0.015, strokes=2)


def random_canal(rng: random.Random, *, may_narrow: bool = True) -> Line:
    """Up to five levels between end and orifice, a step at some of them; it starts 8 mm from the reference point."""
    height = rng.randint(400, 1200)
    levels = sorted(rng.sample(range(1, height), rng.randint(0, 5)))
    width, points = rng.uniform(0.06, 0.4), []
    narrows = may_narrow and rng.random() < 0.5
    for up in (0, *levels, height):
        points.append((8 + (height - up) / 100, width))
        if rng.random() < 0.2:
            width += rng.uniform(0, 0.05)
            points.append((8 + (height - up) / 100, width))
        width = max(0.05, width + rng.uniform(-0.05 if narrows else 0, 0.15))
    return tuple(reversed(points))


def random_instrument(rng: random.Random) -> Corners:
    """Of no, constant or variable taper, some with a cutting part shorter than the canal or a largest flute."""
    if rng.random() < 0.2:
        z = d = 0
        stated = [DiameterAt(from_tip_mm=0.0, diameter_mm=rng.choice((0.1, 0.2, 0.3)))]
        for _ in range(rng.randint(1, 4)):
            z, d = z + rng.randint(50, 400), d + rng.choice((0, 4, 8, 16))
            stated.append(DiameterAt(from_tip_mm=z / 100, diameter_mm=stated[0].diameter_mm + d / 100))
        return corners(rotary(20, 4, diameters=tuple(stated)))
    most = rng.choice((None, 0.7, 1.1))
    size, taper = rng.choice((6, 10, 20, 25, 40, 60)), rng.choice((0, 2, 4, 6, 8, 10))
    return corners(rotary(size, taper, cutting_part_mm=rng.randint(200, 1600) / 100, largest_flute_mm=most))


def told_apart(instrument: Corners, canal: Line, limit_mm2: float) -> float:
    stop_mm = canal[-1][0]
    slow_mm = slow_contact_depth.rest_mm(list(instrument), list(canal), stop_mm, limit_mm2)
    return abs(rest_mm(instrument, canal, stop_mm, limit_mm2) - slow_mm)


@pytest.mark.parametrize("seed", range(draws(20)))
def test_it_rests_where_the_slow_twin_does(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311  # nothing secret
    for _ in range(100):
        instrument, canal, limit_mm2 = random_instrument(rng), random_canal(rng), rng.choice(LIMITS)
        assert told_apart(instrument, canal, limit_mm2) <= TOLD_MM, (instrument, canal, limit_mm2)


DRAWN = st.integers(0, 10**9).map(random.Random)


@settings(max_examples=draws(200))
@given(DRAWN, st.floats(0.001, 0.5))
def test_it_rests_where_the_slow_twin_does_at_any_limit(rng: random.Random, limit_mm2: float) -> None:
    assert told_apart(random_instrument(rng), random_canal(rng), limit_mm2) <= TOLD_MM


STRAIGHT: Line = ((8.0, 0.35), (18.0, 0.15))


# Degenerate ones, by hand. Tip 40 without taper in a canal of .02 from 0.15: ½ (0.16 - c²) = 0.06 where c = 0.2,
# 2.5 mm short of the end. In a canal wider than everything, or with a cutting part that never meets the wall, nothing
# is in contact. Parallel walls meet all at once: 25/.02 is as wide as the canal where both are 0.25, with its tip
# 5 mm short of the end.
@pytest.mark.parametrize(
    ("instrument", "canal", "limit_mm2", "rests_mm"),
    [
        (rotary(40, 0), STRAIGHT, 0.06, 15.5),
        (rotary(25, 4), ((8.0, 2.0), (18.0, 1.0)), 0.001, 18.0),
        (hand(10), STRAIGHT, 0.001, 18.0),
        (rotary(10, 10, cutting_part_mm=0.5, largest_flute_mm=1.1), STRAIGHT, 0.001, 18.0),
        (hand(25), STRAIGHT, 0.001, 13.0),
        (rotary(25, 4), ((8.0, 0.2), (18.0, 0.2)), 0.0, 8.0),
    ],
)
def test_degenerate_ones_by_hand(instrument: Instrument, canal: Line, limit_mm2: float, rests_mm: float) -> None:
    assert rest_mm(corners(instrument), canal, canal[-1][0], limit_mm2) == pytest.approx(rests_mm, abs=1e-9)


def width_mm(line: Line | Corners, at_mm: float) -> float:
    for (a, wide_a), (b, wide_b) in pairwise(line):
        if a <= at_mm < b:
            return wide_a + (wide_b - wide_a) * (at_mm - a) / (b - a)
    return line[-1][1]


@settings(max_examples=50)
@given(DRAWN, st.floats(0.05, 0.95))
def test_the_load_is_the_integral_by_quadrature(rng: random.Random, share: float) -> None:
    canal, instrument = random_canal(rng), random_instrument(rng)
    tip_mm = 8 + share * (canal[-1][0] - 8)
    load = max(0.0, instrument[0][1] ** 2 - width_mm(canal, tip_mm) ** 2) / 2
    for (z0, d0), (z1, d1) in pairwise(instrument):
        end = min(z1, tip_mm - 8)
        if end <= z0:
            continue
        grows = (d1 - d0) / (z1 - z0)
        meets = [tip_mm - y for y, _ in canal if z0 < tip_mm - y < end]

        def removed(z: float, grows: float = grows) -> float:
            wide = width_mm(instrument, z)
            return wide * grows if wide > width_mm(canal, tip_mm - z) else 0.0

        load += sum(quad(removed, a, b, limit=200, epsabs=1e-7)[0] for a, b in pairwise([z0, *sorted(meets), end]))
    assert load_mm2(instrument, canal, tip_mm) == pytest.approx(load, abs=2e-4)


@given(DRAWN)
def test_load_never_falls_with_depth_where_the_canal_does_not_narrow_upwards(rng: random.Random) -> None:
    canal, instrument = random_canal(rng, may_narrow=False), random_instrument(rng)
    assert not narrows_upwards(canal)
    height = canal[-1][0] - 8
    loads = [load_mm2(instrument, canal, 8 + height * step / 100) for step in range(1, 100)]
    assert all(b >= a - 1e-9 for a, b in pairwise(loads))


@given(DRAWN, st.floats(0.001, 0.4), st.floats(0, 0.2))
def test_a_wider_canal_or_a_larger_limit_never_stops_it_higher(
    rng: random.Random, limit_mm2: float, more: float
) -> None:
    canal, instrument = random_canal(rng), random_instrument(rng)
    wider = tuple((x, d + more) for x, d in canal)
    stop_mm = canal[-1][0]
    rests_mm = rest_mm(instrument, canal, stop_mm, limit_mm2)
    assert rest_mm(instrument, wider, stop_mm, limit_mm2) >= rests_mm - 1e-9
    assert rest_mm(instrument, canal, stop_mm, limit_mm2 + more) >= rests_mm - 1e-9


KIT = (hand(20), rotary(25, 4), rotary(40, 4), rotary(25, 10, Use.CORONAL), rotary(30, 0))


@given(DRAWN, st.lists(st.sampled_from(KIT), min_size=1, max_size=4))
def test_preparation_never_narrows_and_removes_the_difference(rng: random.Random, used: list[Instrument]) -> None:
    canal = random_canal(rng)
    for instrument in used:
        done = insert(instrument, canal, canal[-1][0] - 0.25, BY)
        after = done.canal

        def ring(x: float, after: Line = after, before: Line = canal) -> float:
            return math.pi / 4 * (width_mm(after, x) ** 2 - width_mm(before, x) ** 2)

        corners_mm = sorted({round(x, 9) for x, _ in (*canal, *after)})
        middles = [(a + b) / 2 for a, b in pairwise(corners_mm)]
        assert all(width_mm(after, x) >= width_mm(canal, x) - 1e-9 for x in middles)
        removed = sum(quad(ring, a, b)[0] for a, b in pairwise(corners_mm))
        assert done.removes_mm3 == pytest.approx(removed, abs=1e-7)
        canal = after


# Worked example: from a canal of 20/.02 to 25/.06 over 16 mm removes 5.93 mm³ (frusta; derived).
def test_volume_removed_over_sixteen_millimetres() -> None:
    canal: Line = ((0.0, 0.52), (16.0, 0.2))
    exact = LightTouch(limit_mm2=9.0, overcut_mm=0.0, strokes=1)
    assert stand(rotary(25, 6), canal, 16.0, exact).removes_mm3 == pytest.approx(5.93, abs=0.005)


# Each stroke frees overcut/taper: 0.015/.04 = 0.375 mm; without taper the tip alone cuts, and nothing is freed.
def test_a_second_stroke_goes_deeper_by_overcut_over_taper() -> None:
    assert advance_mm(rotary(25, 4), 0.015) == pytest.approx(0.375)
    assert advance_mm(rotary(25, 0), 0.015) == 0.0
    once = LightTouch(limit_mm2=0.15, overcut_mm=0.015, strokes=1)
    first, second = (insert(rotary(25, 4), STRAIGHT, 18.0, by).depth_mm for by in (once, BY))
    assert second - first == pytest.approx(0.375)


# By hand. A shelf 1.2 wide below 12.0: its face alone, ½ (1.4² - 1.2²) = 0.26, is over 0.15. In a canal that narrows by
# .04 a millimetre 140/.02 is held at 14.339 by both (c = 1.3464: face ½ (1.4² - c²) = 0.0736, flanks up to 1.4536 wide,
# ½ (1.4536² - 1.4²) = 0.0764); two more strokes free the flanks for 1.5 mm, and the face stops where the canal is
# √(1.4² - 0.3) = 1.2884 wide, at 15.790. 30/.04 is held at 16.0 by flanks, ½ (0.62² - 0.5²) = 0.067, and face,
# ½ (0.3² - 0.2²) = 0.025, together; the next stroke frees the flanks, and the face by itself is let on.
@pytest.mark.parametrize(
    ("instrument", "canal", "limit_mm2", "stops_mm"),
    [
        (rotary(140, 2), ((8.0, 1.5), (12.0, 1.42), (12.0, 1.2), (18.0, 1.2)), 0.15, 12.0),
        (rotary(140, 2), ((8.0, 1.6), (18.0, 1.2)), 0.15, 15.790),
        (rotary(140, 2), ((8.0, 1.0), (18.0, 0.8)), 0.15, 8.0),
        (rotary(30, 4), ((8.0, 0.5), (16.0, 0.5), (16.0, 0.2), (18.0, 0.2)), 0.07, 16.0 + 2 * 0.375),
    ],
)
def test_no_stroke_takes_a_tip_where_its_face_alone_is_too_much(
    instrument: Instrument, canal: Line, limit_mm2: float, stops_mm: float
) -> None:
    by = LightTouch(limit_mm2=limit_mm2, overcut_mm=0.015, strokes=3)
    assert insert(instrument, canal, 18.0, by).depth_mm == pytest.approx(stops_mm, abs=5e-4)


def test_a_variable_taper_is_its_stated_diameters() -> None:
    stated = tuple(DiameterAt(from_tip_mm=z, diameter_mm=d) for z, d in ((0.0, 0.25), (4.0, 0.45), (16.0, 0.9)))
    instrument = Instrument(
        size=25,
        taper=5,
        motion=Motion.CONTINUOUS,
        use=Use.SHAPING,
        length_mm=25,
        cutting_part_mm=10,
        largest_flute_mm=0.6,
        diameters=stated,
    )
    # 0.45 at 4 mm, then 0.0375 per millimetre: 0.6 at 8 mm, where its flutes end.
    assert sum(corners(instrument), ()) == pytest.approx((0.0, 0.25, 4.0, 0.45, 8.0, 0.6))


@pytest.mark.parametrize(
    ("stated", "wrong"),
    [
        (((0.0, 0.25),), "at least one more"),
        (((1.0, 0.25), (4.0, 0.4)), "diameter at the tip"),
        (((0.0, 0.25), (4.0, 0.4), (4.0, 0.5)), "each place once"),
        (((0.0, 0.25), (4.0, 0.2)), "must not fall"),
        (((0.0, 0.0), (4.0, 0.2)), "above 0"),
        (((0.0, 0.25), (4.0, 1e308)), "greater than the instrument is long"),
    ],
)
def test_a_variable_taper_that_is_no_outline_is_refused(stated: Line, wrong: str) -> None:
    diameters = tuple(DiameterAt(from_tip_mm=z, diameter_mm=d) for z, d in stated)
    with pytest.raises(InstrumentNotDescribed, match=wrong) as refusal:
        refuse_undescribed(rotary(25, 4, diameters=diameters), Figures())
    assert refusal.value.pointer == ("diameters",)
