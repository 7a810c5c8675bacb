"""The prepared outline against a dense sampling of the instruments themselves."""

from __future__ import annotations

import itertools
import math

from hypothesis import given
from hypothesis import strategies as st

from planning.canal.profile import Stand, outline, wider_mm
from tests.planning.given import hand, rotary

STANDS = st.lists(
    st.builds(
        Stand,
        instrument=st.builds(rotary, size=st.sampled_from((20, 25, 30, 40)), taper=st.sampled_from((2, 4, 6, 10))),
        tip_mm=st.integers(24, 48).map(lambda halves: halves / 2),
    ),
    min_size=1,
    max_size=4,
)


def read_off(points: tuple[tuple[float, float], ...], at_mm: float) -> float:
    """Width by straight line between the two points around a depth."""
    for (a, wide_a), (b, wide_b) in itertools.pairwise(points):
        if a < at_mm < b:
            return wide_a + (wide_b - wide_a) * (at_mm - a) / (b - a)
    raise AssertionError(f"{at_mm} is not between two points")


@given(STANDS)
def test_the_outline_is_the_widest_instrument_everywhere(stands: list[Stand]) -> None:
    points = outline(stands, from_mm=8.0)
    end = max(s.tip_mm for s in stands)
    for step in range(1, 200):
        at = 8.0 + (end - 8.0) * step / 200 + 1e-4
        if at < end and not any(abs(at - p[0]) < 1e-3 for p in points):
            assert abs(read_off(points, at) - max(s.width_mm(at) for s in stands)) < 1e-9


# 25/.02 at 20.0 alone: 0.25 at the tip, 0.25 + 0.02 x 12 = 0.49 at 8.0 (ISO 3630-1 arithmetic).
def test_one_instrument_is_its_own_outline() -> None:
    points = outline([Stand(instrument=hand(25), tip_mm=20.0)], from_mm=8.0)
    assert [(x, round(d, 3)) for x, d in points] == [(8.0, 0.49), (20.0, 0.25)]


def test_nothing_below_the_orifice_is_no_outline() -> None:
    assert outline([], from_mm=8.0) == ()
    assert outline([Stand(instrument=hand(25), tip_mm=7.0)], from_mm=8.0) == ()


def test_what_covers_no_depth_is_nowhere_wider() -> None:
    """An instrument whose stop lies above the orifice, where a junction ends a canal at once."""
    canal = ((9.0, 0.5), (16.0, 0.3))
    above = Stand(instrument=hand(25), tip_mm=7.0).line(9.0)
    assert [wider_mm(above, canal), wider_mm(canal, above)] == [-math.inf, -math.inf]
