"""How difficult a case is.

The counting rule is checked against the worked rows 'two moderate: moderate; three: high; one high: high' of the
professional society's case difficulty form of 2022; where the levels begin, by the figures of the data tables.
"""

from __future__ import annotations

import itertools
from dataclasses import replace
from typing import Any

import pytest

from planning.contract.canal_facts import Finding
from planning.contract.difficulty import Difficulty, factors
from planning.contract.plan_input import Override, Pattern, PlanInput, RootInput
from planning.contract.plan_value import Caution, Plan, Severity
from planning.foundation import tables
from planning.foundation.errors import FactorNotKnown, OverrideNotPossible
from planning.lengths.readings import PreOperativeImage, Ratio
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.given import CHECK_KIT, block, canal, confirmed, molar

NOT_FROM_PLAN = [factor for factor in factors().values() if not factor.from_plan]


# Long enough for any tooth.
LONG_KIT = replace(
    CHECK_KIT, instruments=tuple(replace(instrument, length_mm=31) for instrument in CHECK_KIT.instruments)
)


def premolar(**more: Any) -> PlanInput:
    """A tooth that shows nothing difficult by itself."""
    single = canal("single", "single", *confirmed(22.0, 21.0, 0.5, "tip"), point="tip")
    return molar(**({"tooth": "34", "canals": (single,), "roots": (), "kit": LONG_KIT} | more))


def with_canal(**changes: Any) -> PlanInput:
    plan_input = premolar()
    return replace(plan_input, canals=(replace(plan_input.canals[0], **changes),))


def by_ratio(tooth_on_image_mm: float) -> Ratio:
    return Ratio(
        instrument_mm=20, instrument_on_image_mm=19, tooth_on_image_mm=tooth_on_image_mm, reference_point="tip"
    )


def counted(plan_input: PlanInput) -> Difficulty:
    difficulty = plan(plan_input).difficulty
    assert difficulty is not None
    return difficulty


def found_in(plan_input: PlanInput) -> dict[str, str]:
    return {factor.code: factor.level for factor in counted(plan_input).factors}


@pytest.mark.parametrize(
    ("high", "moderate", "level"),
    [(0, 0, "low"), (0, 1, "moderate"), (0, 2, "moderate"), (0, 3, "high"), (1, 0, "high"), (1, 1, "high")],
)
def test_the_counting_rule(high: int, moderate: int, level: str) -> None:
    levels = itertools.chain(["high"] * high, ["moderate"] * moderate, itertools.repeat("low"))
    recorded = tuple(f"{factor.key}:{each}" for factor, each in zip(NOT_FROM_PLAN, levels, strict=False))
    difficulty = counted(premolar(factors=recorded))
    assert difficulty.level == level
    assert [factor.level for factor in difficulty.factors] == ["high"] * high + ["moderate"] * moderate
    assert difficulty.rule.startswith(f"{high} high and {moderate} moderate.")


@pytest.mark.parametrize("factor", NOT_FROM_PLAN, ids=lambda factor: factor.key)
def test_every_factor_counts_as_it_is_recorded(factor: Any) -> None:
    for each in factor.levels:
        difficulty = counted(premolar(factors=(each.code,)))
        assert difficulty.level == each.level
        assert all(
            (counted_factor.code, counted_factor.from_plan) == (factor.key, False)
            for counted_factor in difficulty.factors
        )


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ({"curvature_deg": 9.9}, {}),
        ({"curvature_deg": 10}, {"curvature": "moderate"}),
        ({"curvature_deg": 30}, {"curvature": "moderate"}),
        ({"curvature_deg": 30.1}, {"curvature": "high"}),
        ({"apex_mm": 0.9}, {}),
        ({"apex_mm": 1.0}, {"apex": "moderate"}),
        ({"apex_mm": 1.5}, {"apex": "moderate"}),
        ({"finding": Finding.SEARCHED_NOT_FOUND}, {"orifices": "moderate"}),
        ({"readings": (PreOperativeImage(tooth_mm=25.0, reference_point="tip"),)}, {}),
        ({"readings": (PreOperativeImage(tooth_mm=25.5, reference_point="tip"),)}, {"length": "high"}),
        # 20 mm shown as 19: of the tooth, 23.75 are 25 and 24.7 are 26.
        ({"readings": (by_ratio(23.75),)}, {}),
        ({"readings": (by_ratio(24.7),)}, {"length": "high"}),
        # What was measured in the canal goes before an estimate, whichever came later.
        ({"readings": (*confirmed(26.0, 25.0, 0.5, "tip"), by_ratio(23.75))}, {"length": "high"}),
    ],
)
def test_what_a_canal_shows(changes: dict[str, Any], expected: dict[str, str]) -> None:
    assert found_in(with_canal(**changes)) == expected


@pytest.mark.parametrize(("tooth", "level"), [("11", None), ("35", None), ("46", "moderate"), ("37", "high")])
def test_the_kind_of_tooth(tooth: str, level: str | None) -> None:
    assert found_in(premolar(tooth=tooth)).get("kind") == level


@pytest.mark.parametrize(
    ("pattern", "level"),
    [
        (Pattern.UNKNOWN, None),
        (Pattern.SEPARATE, None),
        (Pattern.JOIN, None),
        (Pattern.DIVIDE, "high"),
        (Pattern.JOIN_AND_DIVIDE, "high"),
        (Pattern.DIVIDE_AND_JOIN, "high"),
    ],
)
def test_a_canal_that_divides(pattern: Pattern, level: str | None) -> None:
    plan_input = premolar(roots=(RootInput(name="single", pattern=pattern),))
    assert found_in(plan_input).get("division") == level


def test_several_canals_make_a_factor_count_once_and_at_its_highest() -> None:
    curved = tuple(
        replace(canal_input, curvature_deg=angle)
        for canal_input, angle in zip(molar().canals, (12, 20, 31, 5), strict=True)
    )
    difficulty = counted(molar(canals=curved))
    assert [(factor.code, factor.level) for factor in difficulty.factors] == [
        ("curvature", "high"),
        ("kind", "moderate"),
    ]
    assert difficulty.factors[0].says.endswith("(DB: 31 degrees)")


def test_recording_a_low_level_does_not_take_away_what_the_plan_shows() -> None:
    plan_input = replace(with_canal(curvature_deg=20), factors=("curvature:low",))
    (curvature,) = counted(plan_input).factors
    assert (curvature.code, curvature.level, curvature.from_plan) == ("curvature", "moderate", True)


def test_a_person_may_know_more_than_the_plan_shows() -> None:
    plan_input = replace(with_canal(curvature_deg=20), factors=("curvature:high",))
    (curvature,) = counted(plan_input).factors
    assert (curvature.level, curvature.from_plan) == ("high", False)


def test_a_training_block_has_no_difficulty() -> None:
    assert plan(block(factors=("cooperation:high",))).difficulty is None


def test_a_programme_counts_by_its_own_figures() -> None:
    recorded = ("health:moderate", "opening:moderate")
    assert counted(premolar(factors=recorded)).level == "moderate"
    assert counted(premolar(factors=recorded, thresholds={"difficulty.moderate_high": 2})).level == "high"
    with_own = replace(with_canal(curvature_deg=20), thresholds={"difficulty.curved_deg": 25})
    assert found_in(with_own) == {}


@pytest.mark.parametrize(
    ("recorded", "number", "says"),
    [
        (("luck:high",), 0, "'luck' is no factor"),
        (("health",), 0, "'health' is no level of 'health'. There are: health:low"),
        (("health:low", "opening:awful"), 1, "no level of 'opening'"),
        (("division:moderate",), 0, "There are: division:low, division:high"),
        (("health:low", "health:high"), 1, "there twice"),
    ],
)
def test_a_factor_that_is_not_known_is_refused(recorded: tuple[str, ...], number: int, says: str) -> None:
    for plan_input in (premolar(factors=recorded), block(factors=recorded)):
        with pytest.raises(FactorNotKnown, match=says) as refusal:
            plan(plan_input)
        assert refusal.value.pointer == ("factors", number)


HIGH = ("cooperation:high",)


def difficult(made: Plan) -> Caution:
    return next(caution for caution in made.cautions if caution.code.startswith("difficulty"))


def test_a_high_case_of_a_patient_waits_for_a_supervisor() -> None:
    plan_input = premolar(setting=Setting.CLINIC, isolated=True, factors=HIGH)
    shut = plan(plan_input)
    assert (difficult(shut).code, difficult(shut).severity) == ("difficulty-high", Severity.STOP)
    assert "Cannot keep still" in difficult(shut).says
    assert {reason.code for reason in shut.canals[0].withheld} == {"difficulty-high"}
    assert shut.tray.steps == ()

    accepted = Override(code="difficulty-high", canal=None, reason="I stay beside the chair.")
    opened = plan(replace(plan_input, overrides=(accepted,)))
    assert difficult(opened).overridden == "I stay beside the chair."
    assert not opened.canals[0].withheld
    assert opened.difficulty == shut.difficulty


def test_a_high_tooth_on_the_bench_is_warned_of_and_not_kept_closed() -> None:
    made = plan(premolar(factors=HIGH))
    assert (difficult(made).code, difficult(made).severity) == ("difficulty-high-bench", Severity.CAUTION)
    assert not made.canals[0].withheld
    accepted = Override(code="difficulty-high-bench", canal=None, reason="Good practice.")
    with pytest.raises(OverrideNotPossible):
        plan(premolar(factors=HIGH, overrides=(accepted,)))


def test_a_moderate_case_waits_for_nobody() -> None:
    made = plan(premolar(setting=Setting.CLINIC, isolated=True, factors=("opening:moderate",)))
    assert made.difficulty is not None
    assert made.difficulty.level == "moderate"
    assert not made.canals[0].withheld


def test_factors_are_told_with_their_source_and_start_at_low() -> None:
    assert {factor.group for factor in factors().values()} == {"patient", "diagnosis", "tooth", "additional"}
    assert all(factor.source and factor.know in tables.KNOWN_HOW for factor in factors().values())
    assert all(
        {"low", "high"} >= {each.level for each in factor.levels} - {"moderate"} for factor in factors().values()
    )
