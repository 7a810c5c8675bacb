"""The arithmetic that a plan shows is true: worked out again by `ast` and fractions it comes to the number it is of."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given

from planning.contract.plan_input import PlanInput
from planning.contract.rationale import Calculation, RationaleInput, Rounding
from planning.lengths.readings import (
    ApexLocator,
    ConfirmingImage,
    DirectSight,
    ImageInterval,
    PreOperativeImage,
    Ratio,
    Reading,
    Resorption,
)
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.arithmetic import filled_in, refuse_untrue, refuse_untrue_plan, worked_out
from tests.planning.given import OPEN_30, block, canal, molar, technique
from tests.planning.test_properties import inputs, over_plans, planned
from tests.planning.test_shape_in_plans import PLANS

CUSP = "MB cusp"
SURE = ImageInterval(least_mm=20.31, most_mm=21.9, rests_on="instrument")
READINGS: dict[str, tuple[Reading, ...]] = {
    "image": (PreOperativeImage(tooth_mm=21.437, reference_point=CUSP),),
    "image, its interval counts": (PreOperativeImage(tooth_mm=21.9, reference_point=CUSP, interval=SURE),),
    "ratio": (Ratio(instrument_mm=18.5, instrument_on_image_mm=19.3, tooth_on_image_mm=22.1, reference_point=CUSP),),
    "ratio, its interval counts": (
        Ratio(
            instrument_mm=18.5,
            instrument_on_image_mm=19.3,
            tooth_on_image_mm=22.9,
            reference_point=CUSP,
            interval=SURE,
        ),
    ),
    "confirming": (ConfirmingImage(set_mm=19.5, tip_short_mm=1.3, reference_point=CUSP),),
    "past the apex": (ConfirmingImage(set_mm=20.5, tip_short_mm=-0.4, reference_point=CUSP),),
    "locator": (ApexLocator(read_mm=20.4, repeat_mm=20.2, mark="apex", reference_point=CUSP),),
    "at the constriction": (ApexLocator(read_mm=20.4, repeat_mm=20.6, mark="constriction", reference_point=CUSP),),
    "sight": (DirectSight(seen_mm=21.0, reference_point=CUSP),),
    "two that agree": (
        ConfirmingImage(set_mm=19.5, tip_short_mm=1.3, reference_point=CUSP),
        ApexLocator(read_mm=20.0, repeat_mm=20.1, mark="apex", reference_point=CUSP),
    ),
    "two that do not": (
        ConfirmingImage(set_mm=19.5, tip_short_mm=1.3, reference_point=CUSP),
        ApexLocator(read_mm=21.9, repeat_mm=21.9, mark="apex", reference_point=CUSP),
    ),
    "before and after flaring": (
        ConfirmingImage(set_mm=20.5, tip_short_mm=1.0, reference_point=CUSP),
        ConfirmingImage(set_mm=20.0, tip_short_mm=0.8, reference_point=CUSP, after_flaring=True),
    ),
}


@pytest.mark.parametrize("name", PLANS)
def test_every_line_of_a_plan_comes_to_its_number(name: str) -> None:
    assert refuse_untrue_plan(plan(PLANS[name])) > 0


@over_plans
@given(inputs())
def test_every_line_of_any_plan_comes_to_its_number(given_: PlanInput) -> None:
    refuse_untrue_plan(planned(given_))


@pytest.mark.parametrize("resorption", [Resorption.NONE, Resorption.BONE])
@pytest.mark.parametrize("key", ["crown-down", "step-back"])
@pytest.mark.parametrize("name", READINGS)
def test_every_line_comes_to_its_number_whatever_the_length_rests_on(
    name: str, key: str, resorption: Resorption
) -> None:
    canals = (canal("MB1", "MB", *READINGS[name], resorption=resorption),)
    made = plan(molar(canals=canals, roots=(), technique=technique(key), setting=Setting.EXTRACTED))
    refuse_untrue_plan(made)
    shown = {why.of for why in made.canals[0].rationales if why.calculations}
    assert {"length.working_length_mm", "length.stop_mm", "end_mm"} <= shown


def test_a_coronal_stop_reads_as_it_is_worked_out_by_hand() -> None:
    """7.5 and a third of the 11.5 that are left of 19 make 11.33, so the stop is set to 11."""
    made = plan(PLANS["junction not found"])
    why = next(each for each in made.canals[1].rationales if each.of == "stops.coronal")
    assert [filled_in(line) for line in why.calculations] == ["7.5 + (19.0 - 7.5) / 3.0"]
    assert (why.calculations[0].exact, why.calculations[0].result) == (11.333333, 11.0)


def test_two_readings_that_count_say_how_far_apart_they_lie() -> None:
    made = plan(molar(canals=(canal("MB1", "MB", *READINGS["two that agree"]),), roots=()))
    why = next(each for each in made.canals[0].rationales if each.of == "length.apart_mm")
    assert [filled_in(line) for line in why.calculations] == ["19.8 - 19.5"]


def test_a_block_of_instruments_as_long_as_its_canal_is_told_so() -> None:
    refuse_untrue_plan(plan(replace(block(), choices=replace(block().choices, needle=OPEN_30))))


SIGNS = {"×": "*", "⁄": "/", "−": "-", "least of (": "min(", "most of (": "max("}  # noqa: RUF001  # as they are shown
SHOWN = [each for each in json.loads(Path("tests/shared/calculations.json").read_text()) if each["line"]]


@pytest.mark.parametrize("shown", SHOWN, ids=lambda shown: shown["line"])
def test_a_line_is_true_as_it_is_shown(shown: dict[str, Any]) -> None:
    """The app writes these lines, which its own tests hold it to; here their text alone is read and worked out."""
    for sign, python in SIGNS.items():
        shown = {**shown, "line": shown["line"].replace(sign, python)}
    arithmetic, _, results = shown["line"].partition(" = ")
    exact, *rounded_to = results.split(" → ")
    decimals = len(exact.partition(".")[2])
    assert abs(worked_out(arithmetic) - Fraction(exact)) <= Fraction(11, 20) / 10**decimals
    assert float((rounded_to or [exact])[0]) == shown["result"]
    steps = {"half_mm_down": Fraction(1, 2), "hundredth_down": Fraction(1, 100)}
    if (step := steps.get(shown["rounding"])) is not None:
        assert math.floor(Fraction(exact) / step) * step == Fraction(str(shown["result"]))


TRUE = Calculation(
    formula="{orifice} + ({length} - {orifice}) / {parts}",
    inputs=tuple(
        RationaleInput(name=name, value=value, unit="mm")
        for name, value in (("orifice", 7.5), ("length", 19.0), ("parts", 3.0))
    ),
    exact=11.333333,
    rounding=Rounding.HALF_MM_DOWN,
    result=11.0,
    unit="mm",
)


@pytest.mark.parametrize(
    "wrong",
    [
        replace(TRUE, result=11.5),
        replace(TRUE, exact=11.3),
        replace(TRUE, rounding=Rounding.HUNDREDTH),
        replace(TRUE, formula="{orifice} + ({length} - {orifice}) / 2"),
        replace(TRUE, inputs=(*TRUE.inputs, RationaleInput(name="more", value=1.0, unit="mm"))),
    ],
    ids=["result", "exact", "rounding", "formula", "unused"],
)
def test_the_check_itself_finds_what_is_wrong(wrong: Calculation) -> None:
    refuse_untrue(TRUE, "stops.coronal")
    with pytest.raises(AssertionError):
        refuse_untrue(wrong, "stops.coronal")


def test_brackets_stand_where_they_are_needed() -> None:
    assert worked_out("8 - (3 - 2) * 2 / (4 * 1)") == worked_out("7.5")
