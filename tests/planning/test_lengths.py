"""Working length against textbook examples and hand calculation."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.foundation.errors import LengthOutOfBounds, OutOfBounds, ReadingNotUsable
from planning.foundation.tables import Figures
from planning.lengths.readings import (
    ApexLocator,
    ConfirmingImage,
    DirectSight,
    ImageInterval,
    Length,
    LengthState,
    PreOperativeImage,
    Ratio,
    Reading,
    Resorption,
)
from planning.lengths.working_length import LengthContext, settle

HERE = "buccal cusp"


def length(*readings: Reading, own: dict[str, float] | None = None, **about: Any) -> Length:
    fields: dict[str, Any] = {"canal": "B", "reference_point": HERE, "setting": "extracted"}
    return settle(readings, LengthContext(**(fields | about)), Figures(own))


def image(tooth_mm: float) -> PreOperativeImage:
    return PreOperativeImage(tooth_mm=tooth_mm, reference_point=HERE)


def confirming(set_mm: float, tip_short_mm: float, after_flaring: bool = False) -> ConfirmingImage:
    return ConfirmingImage(set_mm=set_mm, tip_short_mm=tip_short_mm, reference_point=HERE, after_flaring=after_flaring)


def locator(read_mm: float, repeat_mm: float | None = None, **more: Any) -> ApexLocator:
    repeat = read_mm if repeat_mm is None else repeat_mm
    return ApexLocator(read_mm=read_mm, repeat_mm=repeat, mark="apex", reference_point=HERE, **more)


def ratio(instrument_mm: float, on_image_mm: float, tooth_on_image_mm: float) -> Ratio:
    return Ratio(
        instrument_mm=instrument_mm,
        instrument_on_image_mm=on_image_mm,
        tooth_on_image_mm=tooth_on_image_mm,
        reference_point=HERE,
    )


# Ingle, Endodontics (from memory): pre-operative 23.0, tentative 22.0, tip 1.5 short: tooth 23.5, length 22.5.
def test_the_textbook_example_of_a_confirmed_length() -> None:
    length_ = length(image(23.0), confirming(22.0, 1.5))
    assert (length_.state, length_.working_length_mm, length_.estimate_mm) == (LengthState.SETTLED, 22.5, 22.0)


# Weine's set-backs (read second-hand) on a tip 0.2 mm short of the apex, set at 20.0: tooth 20.2.
@pytest.mark.parametrize(
    ("resorption", "working_length_mm"),
    [(Resorption.NONE, 19.2), (Resorption.BONE, 18.7), (Resorption.BONE_AND_ROOT, 18.2)],
)
def test_resorption_sets_the_length_back_further(resorption: Resorption, working_length_mm: float) -> None:
    assert length(confirming(20.0, 0.2), resorption=resorption).working_length_mm == working_length_mm


# Set at 20.0, tip 1.0 past the apex: tooth 19.0, length 18.0 (derived by hand).
def test_a_tip_past_the_apex_asks_for_a_further_image() -> None:
    length_ = length(confirming(20.0, -1.0))
    assert (length_.state, length_.stop_mm) == (LengthState.UNSETTLED, 18.0)
    assert "18.0" in length_.what_to_do


# Hand arithmetic: the tooth by image 28.0, as measured 21.0 + 1.0 = 22.0, 6.0 apart.
def test_a_measurement_far_from_its_estimate_settles_nothing() -> None:
    length_ = length(image(28.0), confirming(21.0, 1.0))
    assert (length_.state, length_.from_estimate_mm, length_.apart_mm) == (LengthState.UNSETTLED, 6.0, 6.0)
    assert "which reference point" in length_.what_to_do


# Tooth 22.0 as measured: 3.0 more on the image is the last that may be settled (the guideline's distance).
@pytest.mark.parametrize(("tooth_mm", "state"), [(25.0, LengthState.SETTLED), (25.1, LengthState.UNSETTLED)])
def test_an_estimate_tests_a_measurement(tooth_mm: float, state: LengthState) -> None:
    length_ = length(image(tooth_mm), confirming(21.0, 1.0))
    assert (length_.state, length_.stop_mm) == (state, 21.0)


# A set-back of 1.5 is more than the allowance of 1.0: the first instrument goes no deeper than the length will be.
def test_an_estimate_is_no_longer_than_the_length_that_is_measured_after_it() -> None:
    readings = (image(22.0), confirming(21.0, 1.0))
    length_ = length(*readings, resorption=Resorption.BONE)
    assert (length_.estimate_mm, length_.working_length_mm) == (20.5, 20.5)
    assert length(*readings).estimate_mm == 21.0


# What is taken off differs: with bone resorption 1.5 off the measured tooth of 22.0, always 1.0 off the image of 22.0.
def test_teeth_are_compared_not_what_is_left_of_them() -> None:
    assert length(image(22.0), confirming(21.0, 1.0), resorption=Resorption.BONE).from_estimate_mm == 0.0
    seen = DirectSight(seen_mm=22.0, reference_point=HERE)
    assert length(image(22.0), seen).from_estimate_mm == 0.0
    # 18.0 on an image of 19.0, tooth 23.0: 21.79 by ratio.
    assert length(ratio(18.0, 19.0, 23.0), confirming(21.0, 1.0)).from_estimate_mm == pytest.approx(0.21)


def marked(tooth_mm: float, least_mm: float, most_mm: float) -> PreOperativeImage:
    return replace(image(tooth_mm), interval=ImageInterval(least_mm=least_mm, most_mm=most_mm, rests_on="detector"))


# By hand: 22.0 less the safety allowance of 1.0, or less what the interval leaves open, whichever is more.
@pytest.mark.parametrize(("least_mm", "length_mm", "stop_mm"), [(21.4, 21.0, 21.0), (19.4, 19.4, 19.0)])
def test_an_estimate_goes_no_deeper_than_the_tooth_may_end(least_mm: float, length_mm: float, stop_mm: float) -> None:
    length_ = length(marked(22.0, least_mm, 24.0))
    assert length_.working_length_mm == pytest.approx(length_mm)
    assert length_.estimate_mm == stop_mm
    assert length_.estimated == ImageInterval(least_mm=least_mm, most_mm=24.0, rests_on="detector")


# By hand: off by half of 21.4 to 22.6, and by the 0.5 of two measurements that agree: the root of 0.6² + 0.5².
def test_how_far_an_estimate_may_be_off_is_its_own() -> None:
    length_ = length(marked(22.0, 21.4, 22.6), confirming(21.0, 1.0))
    assert (length_.state, length_.from_estimate_mm) == (LengthState.SETTLED, 0.0)
    assert length_.estimate_within_mm == pytest.approx(0.78, abs=0.005)
    assert length(image(22.0)).estimate_within_mm is None
    # What an uncertain estimate took off is not held against the measurement.
    assert length(marked(22.0, 19.4, 24.6), confirming(21.0, 1.0)).from_estimate_mm == 0.0


@pytest.mark.parametrize(("least_mm", "most_mm"), [(10.0, 23.0), (21.0, 45.0), (23.0, 21.0)])
def test_an_interval_that_says_nothing_is_refused(least_mm: float, most_mm: float) -> None:
    with pytest.raises((ReadingNotUsable, OutOfBounds)) as refused:
        length(marked(22.0, least_mm, most_mm))
    assert refused.value.pointer[:2] == (0, "interval")


def test_the_further_image_settles_it() -> None:
    length_ = length(confirming(20.0, -0.5), confirming(18.5, 1.0))
    assert (length_.state, length_.stop_mm) == (LengthState.SETTLED, 18.5)
    assert length_.readings[0].why.startswith("replaced")


# Grossman's ratio: 18.0 x 23.0 / 19.0 = 21.79; less 1.0 and down to half a millimetre: 20.5 (derived by hand).
@pytest.mark.parametrize(
    ("reading", "working_length_mm", "stop_mm"),
    [(ratio(18.0, 19.0, 23.0), 20.79, 20.5), (ratio(20.0, 22.0, 24.2), 21.0, 21.0)],
)
def test_the_ratio_gives_an_estimate(reading: Ratio, working_length_mm: float, stop_mm: float) -> None:
    length_ = length(reading)
    assert length_.state is LengthState.ESTIMATED
    assert (length_.working_length_mm, length_.stop_mm) == (working_length_mm, stop_mm)


@pytest.mark.parametrize("reading", [ratio(18.0, 9.5, 12.0), ratio(20.0, 24.5, 26.0), ratio(20.0, 16.0, 18.0)])
def test_a_distorted_image_gives_no_ratio(reading: Ratio) -> None:
    with pytest.raises(ReadingNotUsable, match="image"):
        length(reading)


# The estimate (21.0) and the confirmed length (21.5) are not two measurements of one thing: any average rounds
# down to 21.0.
def test_an_estimate_never_enters_a_confirmed_length() -> None:
    length_ = length(image(22.0), confirming(21.0, 1.5))
    assert (length_.stop_mm, length_.rests_on) == (21.5, ("confirming_image",))


# Image 21.0 against locator: 19.0 apart by 2.0, 20.0 by 1.0, 20.5 by 0.5 (bands: programme rule).
@pytest.mark.parametrize(
    ("read_mm", "state", "stop_mm"),
    [
        (19.5, LengthState.UNSETTLED, 19.0),
        (20.5, LengthState.TO_SETTLE, 20.0),
        (21.0, LengthState.SETTLED, 20.5),
        (21.5, LengthState.SETTLED, 21.0),
    ],
)
def test_image_and_locator_agree_within_bands(read_mm: float, state: LengthState, stop_mm: float) -> None:
    length_ = length(image(22.5), confirming(21.5, 0.5), locator(read_mm))
    assert (length_.state, length_.stop_mm) == (state, stop_mm)


def test_a_repeated_locator_reading_replaces_the_first() -> None:
    length_ = length(confirming(21.5, 0.5), locator(19.5), locator(21.5))
    assert (length_.state, length_.stop_mm) == (LengthState.SETTLED, 21.0)


@pytest.mark.parametrize(
    ("reading", "about"),
    [
        (locator(20.0, stable=False), {}),
        (locator(20.0, 20.6), {}),
        (locator(20.0), {"apex_mm": 0.65}),
        (locator(20.0), {"reference_point": "palatal cusp"}),
    ],
)
def test_a_locator_reading_that_does_not_count(reading: ApexLocator, about: dict[str, Any]) -> None:
    length_ = length(reading, **about)
    assert length_.state is LengthState.MISSING
    assert not length_.readings[0].counts


def test_a_locator_counts_up_to_the_widest_foramen_it_is_exact_in() -> None:
    """0.6 mm: BDJ Open 2020, introduction (read second-hand)."""
    assert length(locator(20.0), apex_mm=0.6).readings[0].counts
    assert not length(locator(20.0), apex_mm=0.61).readings[0].counts


def test_a_locator_alone_opens_nothing_in_the_clinic() -> None:
    assert length(locator(20.5), setting="clinic").state is LengthState.ESTIMATED
    assert length(locator(20.5), setting="extracted").state is LengthState.SETTLED


# 20.0 signed; after flaring 19.5, 18.5, 20.5 (shift 0.1-0.8 mm expected: Davis 2002; Kumar & Khambete 2013).
@pytest.mark.parametrize(
    ("set_mm", "state", "stop_mm"),
    [
        (19.5, LengthState.SETTLED, 19.5),
        (18.5, LengthState.UNSETTLED, 18.5),
        (20.5, LengthState.UNSETTLED, 20.0),
    ],
)
def test_length_after_flaring(set_mm: float, state: LengthState, stop_mm: float) -> None:
    length_ = length(confirming(20.0, 1.0), confirming(set_mm, 1.0, after_flaring=True))
    assert (length_.state, length_.stop_mm) == (state, stop_mm)


def test_a_tip_far_off_is_not_computed_from() -> None:
    length_ = length(image(21.0), confirming(20.0, 3.5))
    assert (length_.state, length_.working_length_mm) == (LengthState.UNSETTLED, None)


def test_direct_sight_needs_no_set_back_in_a_block() -> None:
    seen = DirectSight(seen_mm=16.5, reference_point=HERE)
    assert length(seen, setting="block").stop_mm == 16.5
    assert length(seen, setting="extracted").stop_mm == 15.5
    with pytest.raises(ReadingNotUsable, match="patient"):
        length(seen, setting="clinic")


@pytest.mark.parametrize("tooth_mm", [9.9, 36.1, 205.0])
def test_an_absurd_length_is_refused_with_its_place(tooth_mm: float) -> None:
    with pytest.raises(LengthOutOfBounds) as refused:
        length(image(21.0), image(tooth_mm))
    assert refused.value.pointer == (1, "tooth_mm")


def test_a_programme_sets_its_own_set_back() -> None:
    assert length(confirming(20.0, 1.0), own={"set_back.none": 0.5}).working_length_mm == 20.5


def test_no_reading_is_no_length() -> None:
    assert length().state is LengthState.MISSING
