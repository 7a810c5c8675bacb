"""Needle depth against the arithmetic of ISO 9626 diameters and ISO 3630-1 tapers, worked out by hand."""

from __future__ import annotations

import pytest

from planning.canal.profile import Line, Stand, upper
from planning.contract.plan_input import Needle
from planning.foundation.errors import ChoiceNotPossible
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument
from planning.work.irrigation import NeedleLimits, chamber_says, free_mm, limits, outside_um
from tests.planning.given import OPEN_30, hand, rotary

ORIFICE_MM = 7.5


def needle(end_mm: float, gauge: int = 30, most_um: int | None = None) -> NeedleLimits:
    of = Needle(gauge=gauge, tip="open")
    return limits(
        of, orifice_um=round(ORIFICE_MM * 1000), end_um=round(end_mm * 1000), most_um=most_um, figures=Figures()
    )


def after(instrument: Instrument, end_mm: float) -> Line:
    return Stand(instrument=instrument, tip_mm=end_mm).line(ORIFICE_MM)


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
    assert needle(end_mm).now_um(after(rotary(size, taper), end_mm)) == now_mm * 1000


@pytest.mark.parametrize(("end_mm", "ceiling_mm"), [(19.5, 17.5), (16.0, 14.0), (18.0, 16.0), (21.5, 19.5)])
def test_an_open_needle_stays_two_millimetres_short(end_mm: float, ceiling_mm: float) -> None:
    assert needle(end_mm).ceiling_um == ceiling_mm * 1000


# An end at 8.5, a millimetre below the orifice: 2.0 short of it is 6.5, in the crown.
def test_in_a_canal_that_ends_at_once_the_needle_stays_above_its_orifice() -> None:
    assert (needle(8.5).now_um(()), needle(8.5).ceiling_um) == (6500, 6500)


def test_where_nothing_is_known_of_the_canal_the_chamber_is_rinsed() -> None:
    assert needle(19.5).now_um(()) == 7500


def test_what_is_narrower_than_the_needle_lets_it_no_deeper() -> None:
    shape = after(rotary(25, 0), 19.5)
    assert needle(19.5).now_um(shape) == 7500
    assert needle(19.5).chamber_alone(needle(19.5).now_um(shape))


# A canal 0.26 mm at its end, 0.30 at 12.0 and 0.42 at its orifice: as wide as 0.32 at 7.5 + 4.5 · 0.10 / 0.12 = 11.25,
# and 1.0 less is 10.25.
def test_a_natural_canal_too_narrow_for_the_needle_limits_it_from_the_first() -> None:
    natural = ((7.5, 0.42), (12.0, 0.30), (20.0, 0.26))
    assert free_mm(natural, 0.32) == pytest.approx(11.25)
    assert needle(20.0).now_um(natural) == 10_000


def test_a_wide_canal_lets_it_to_its_ceiling_before_anything_has_been_in() -> None:
    assert needle(20.0).now_um(((7.5, 0.9), (20.0, 0.4))) == 18_000


def test_it_never_falls_while_the_canal_gets_wider() -> None:
    shape: Line = ((7.5, 0.42), (12.0, 0.30), (20.0, 0.26))
    depths = []
    for instrument in (hand(10), hand(15), hand(20), rotary(25, 4), rotary(30, 4)):
        shape = upper(shape, after(instrument, 20.0))
        depths.append(needle(20.0).now_um(shape))
    assert depths == sorted(depths)
    assert depths[-1] == 18_000


# A waist: 0.30 at 10.0 between two wider stretches. What lies beyond it does not count.
def test_it_is_free_only_as_far_as_it_is_free_all_the_way() -> None:
    waist = ((7.5, 0.50), (10.0, 0.30), (15.0, 0.50), (20.0, 0.40))
    assert free_mm(waist, 0.32) == pytest.approx(7.5 + 2.5 * 0.18 / 0.20)


def test_a_step_stops_it() -> None:
    assert free_mm(((0.0, 0.6), (10.0, 0.5), (10.0, 0.2), (20.0, 0.2)), 0.32) == 10.0


# 31 gauge is at most 0.267 mm (ISO 9626): in a canal 0.30 wide all along it is free to the end, 30 gauge nowhere.
def test_where_it_is_free_nowhere_a_thinner_one_that_is_free_is_named() -> None:
    even = ((7.5, 0.30), (20.0, 0.30))
    assert chamber_says(needle(20.0), even).endswith("31 G, to 18.0 mm at most.")
    assert chamber_says(needle(20.0), ((7.5, 0.25), (20.0, 0.15))).endswith("rinse the chamber.")


# ISO 9626 (from memory): 30 gauge at most 0.320 mm, 27 gauge at most 0.420 mm. 27 gauge in 40/.02 binds 1.0 short.
def test_planning_uses_the_largest_outside_diameter() -> None:
    assert (outside_um(OPEN_30), outside_um(Needle(gauge=27, tip="open"))) == (320, 420)
    assert needle(20.0, gauge=27).now_um(after(hand(40), 20.0)) == 18_000


def test_where_the_junction_is_not_known_it_stays_where_it_is_told() -> None:
    assert needle(20.0, most_um=11_000).now_um(((7.5, 0.9), (20.0, 0.4))) == 11_000


def test_an_unknown_gauge_is_refused() -> None:
    with pytest.raises(ChoiceNotPossible, match="gauge 14"):
        outside_um(Needle(gauge=14, tip="open"))
