"""Instrument geometry against ISO 3630-1 arithmetic."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.foundation.errors import InstrumentNotDescribed
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import (
    DiameterAt,
    colour,
    diameter_mm,
    outline,
    refuse_undescribed,
    size_above,
    sizes,
)
from tests.planning.given import hand, rotary

# ISO 3630-1: +0.02 up to size 10, +0.05 from 10 to 60, +0.10 from 60 to 140 (step rule as in "The Beauty and Sorrow
# in Endodontics" p. 29 for 10-60; the rest derived).
SERIES = (6, 8, 10, *range(15, 61, 5), *range(70, 141, 10))
# Qualtrough et al., Principles of Operative Dentistry (2005) p. 63: the colours repeat from size 15.
REPEATING = ("white", "yellow", "red", "blue", "green", "black")


def test_the_series_follows_its_step_rule() -> None:
    assert sizes() == SERIES


def test_colours_repeat_in_order_from_15() -> None:
    assert [colour(size) for size in SERIES[3:]] == [REPEATING[i % 6] for i in range(len(SERIES) - 3)]
    assert [colour(size) for size in (6, 8, 10)] == ["pink", "grey", "purple"]


def test_a_half_size_has_no_colour_and_no_place_in_the_series() -> None:
    assert colour(17) is None
    assert size_above(17) is None
    assert size_above(140) is None
    assert size_above(15, 3) == 30


# Geometry of ISO 3630-1: diameter = tip + taper x distance, worked out by hand.
@pytest.mark.parametrize(
    ("size", "taper", "at_mm", "diameter"),
    [
        (15, 2, 3, 0.21),
        (15, 2, 16, 0.47),
        (25, 2, 16, 0.57),
        (40, 2, 16, 0.72),
        (25, 4, 16, 0.89),
        (25, 6, 16, 1.21),
        (30, 6, 16, 1.26),
        (40, 6, 16, 1.36),
        (30, 4, 5, 0.50),
        (25, 6, 5, 0.55),
    ],
)
def test_diameter_along_the_instrument(size: int, taper: int, at_mm: float, diameter: float) -> None:
    assert diameter_mm(rotary(size, taper), at_mm) == pytest.approx(diameter, abs=1e-12)


@pytest.mark.parametrize("size", SERIES)
def test_d16_of_every_size_at_standard_taper(size: int) -> None:
    assert diameter_mm(hand(size), 16) == pytest.approx(size / 100 + 0.32, abs=1e-12)


def test_the_diameter_grows_no_more_past_cutting_part_and_largest_flute() -> None:
    assert diameter_mm(hand(25), 20) == diameter_mm(hand(25), 16)
    assert diameter_mm(rotary(25, 10, largest_flute_mm=1.0), 16) == 1.0


def test_a_steep_taper_must_state_its_largest_flute() -> None:
    with pytest.raises(InstrumentNotDescribed, match="largest diameter"):
        refuse_undescribed(rotary(25, 8, largest_flute_mm=None), Figures())


# Worked by hand: 25/.08 reaches a largest flute of 1.05 mm after (105 - 25) / 8 = 10 mm.
@pytest.mark.parametrize(
    ("largest_flute_mm", "drawn"),
    [
        (None, [(0, 0.25), (16, 1.53)]),
        (1.05, [(0, 0.25), (10, 1.05), (16, 1.05)]),
        (1.6, [(0, 0.25), (16, 1.53)]),
    ],
)
def test_an_instrument_is_drawn_with_a_point_where_its_taper_ends(
    largest_flute_mm: float | None, drawn: list[tuple[float, float]]
) -> None:
    instrument = replace(rotary(25, 8), cutting_part_mm=16, largest_flute_mm=largest_flute_mm)
    assert [(p.from_tip_mm, p.diameter_mm) for p in outline(instrument)] == drawn


def test_a_variable_taper_is_drawn_as_it_is_described() -> None:
    described = tuple(DiameterAt(from_tip_mm=z, diameter_mm=d) for z, d in [(0, 0.25), (3, 0.5), (12, 0.9)])
    assert outline(replace(rotary(25, 8), diameters=described)) == described
