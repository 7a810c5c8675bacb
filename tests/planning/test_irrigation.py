"""Needle depth against the arithmetic of ISO 9626 diameters and ISO 3630-1 tapers, worked out by hand."""

from __future__ import annotations

import pytest

from planning.errors import ChoiceNotPossible
from planning.irrigation import NeedleLimits, limits, outside_um
from planning.plan_input import Needle
from planning.tables import Figures
from tests.planning.given import OPEN_30, hand, rotary


def needle(end_mm: float, gauge: int = 30) -> NeedleLimits:
    return limits(Needle(gauge=gauge, tip="open"), round(end_mm * 1000), Figures())


# (0.32 - 0.20)/0.02 = 6.0 short in 20/.02; (0.32 - 0.25)/0.04 = 1.75 in 25/.04; 0.5 in 30/.04. Clearance 1.0.
@pytest.mark.parametrize(
    ("end_mm", "size", "taper", "now_mm"),
    [
        (19.5, 20, 2, 12.5),
        (18.0, 20, 2, 11.0),
        (21.5, 20, 2, 14.5),
        (19.5, 25, 4, 16.5),
        (19.5, 30, 4, 17.5),
        (16.0, 30, 4, 14.0),
    ],
)
def test_how_deep_the_needle_may_go_now(end_mm: float, size: int, taper: int, now_mm: float) -> None:
    assert needle(end_mm).now_um(rotary(size, taper), 5000) == now_mm * 1000


@pytest.mark.parametrize(("end_mm", "ceiling_mm"), [(19.5, 17.5), (16.0, 14.0), (18.0, 16.0), (21.5, 19.5)])
def test_an_open_needle_stays_two_millimetres_short(end_mm: float, ceiling_mm: float) -> None:
    assert needle(end_mm).ceiling_um == ceiling_mm * 1000


def test_before_anything_has_been_to_length_the_needle_stays_in_the_coronal_third() -> None:
    assert needle(19.5).now_um(None, 11_500) == 11_500


def test_a_shape_without_taper_narrower_than_the_needle_lets_it_no_deeper() -> None:
    assert needle(19.5).now_um(rotary(25, 0), 11_500) == 11_500


# ISO 9626 (from memory): 30 gauge at most 0.320 mm, 27 gauge at most 0.420 mm.
def test_planning_uses_the_largest_outside_diameter() -> None:
    assert (outside_um(OPEN_30), outside_um(Needle(gauge=27, tip="open"))) == (320, 420)
    assert needle(20.0, gauge=27).now_um(hand(40), 0) == 18_000


def test_an_unknown_gauge_is_refused() -> None:
    with pytest.raises(ChoiceNotPossible, match="gauge 14"):
        outside_um(Needle(gauge=14, tip="open"))
