"""What is expected of every insertion: the way through the order of work, by the estimate or by what was recorded."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from planning.anatomy.curvature import BendShape
from planning.contract.expected import Expectation, ExpectedStep, InitialShape, ProfilePoint
from planning.contract.plan_input import CanalChoice, Choices, PlanInput, RecordedDepth
from planning.contract.plan_value import CanalPlan
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import OutOfBounds
from planning.run_sheet.graph import Action, Step
from planning.run_sheet.walk import Walk
from planning.whole_tooth.plan import plan
from tests.planning.given import OPEN_30, block, four_canals, molar, technique

SIZES = Choices(needle=OPEN_30, canals=(CanalChoice(canal="single", final_size=30),))


def only(plan_input: PlanInput) -> tuple[CanalPlan, Expectation]:
    canal = plan(plan_input).canals[0]
    assert canal.expectation is not None
    return canal, canal.expectation


def block_felt(*felt: tuple[str, float]) -> PlanInput:
    plan_input = block(choices=SIZES)
    recorded = tuple(RecordedDepth(node=node, depth_mm=depth) for node, depth in felt)
    return replace(plan_input, canals=(replace(plan_input.canals[0], felt=recorded),))


# The trade's pattern (common practice): two passes, then room has to be made before 30/.04 is at length.
def test_a_training_block_is_expected_to_take_two_passes() -> None:
    canal, expected = only(block(choices=SIZES))
    assert expected.series_passes is not None
    assert (expected.series_passes.expected, expected.makes_room) == (2, True)
    numbers = [step.pass_number for step in expected.steps if step.node == "descending/40-04"]
    assert numbers == [1, 2]
    assert canal.expected_path[-1] == "finished"


def test_every_worked_step_of_the_expected_path_has_an_expectation() -> None:
    for canal in plan(molar()).canals:
        worked = [
            id_
            for id_ in canal.expected_path
            if isinstance(node := canal.run_sheet.nodes[id_], Step) and node.action is Action.INSTRUMENT
        ]
        assert canal.expectation is not None
        assert [step.node for step in canal.expectation.steps] == worked


def volume_mm3(points: tuple[ProfilePoint, ...], natural: InitialShape) -> float:
    """Sum over thin slices of what ellipse and circle cover together, by their larger radius in every direction."""
    depths = np.arange(points[0].from_reference_mm, points[-1].from_reference_mm, 0.01)
    sides = np.array([(p.from_reference_mm, p.narrow_mm, p.wide_mm) for p in natural.points]).T
    a, b = (np.interp(depths, sides[0], side)[:, None] / 2 for side in sides[1:])
    r = np.interp(depths, *np.array([(p.from_reference_mm, p.diameter_mm) for p in points]).T)[:, None] / 2
    around = np.linspace(0, math.pi / 2, 181)
    radius = np.maximum(a * b / np.hypot(b * np.cos(around), a * np.sin(around)), r)
    return float(np.trapezoid(2 * np.trapezoid(radius**2, around, axis=1), depths))


def test_what_is_removed_is_the_difference_of_the_shapes() -> None:
    for canal in plan(molar()).canals:
        expected = canal.expectation
        assert expected is not None
        natural = tuple(
            ProfilePoint(from_reference_mm=p.from_reference_mm, diameter_mm=p.narrow_mm)
            for p in expected.initial_shape.points
        )
        before = volume_mm3(natural, expected.initial_shape)
        for step in expected.steps:
            after = volume_mm3(step.shape, expected.initial_shape)
            # Shapes are told to 0.001 mm and 0.01 mm along the canal.
            assert after - before == pytest.approx(step.removes_mm3, abs=0.04)
            before = after


def test_nothing_is_expected_past_its_stop() -> None:
    for canal in plan(molar()).canals:
        assert canal.expectation is not None
        for step in canal.expectation.steps:
            node = canal.run_sheet.nodes[step.node]
            assert isinstance(node, Step)
            assert node.stop_um is not None
            assert step.depth_mm <= node.stop_um / 1000


# Acceptance case of a block worked by hand: 16.5, two passes felt, 30/.04 stops at 16.0, room is made to 15.0.
FELT = (
    *(("coronal-flaring/25-10", 9.5), ("coronal-flaring/25-08", 11.0)),
    *(("descending/40-04", 13.5), ("descending/35-04", 14.0), ("descending/30-04", 15.0), ("descending/25-04", 15.5)),
    *(("coronal-flaring/25-10", 11.5), ("coronal-flaring/25-08", 12.5)),
    *(("descending/40-04", 14.0), ("descending/35-04", 14.5), ("descending/30-04", 15.5), ("descending/25-04", 16.5)),
    ("ascending/30-04", 16.0),
)


def felt_steps(expected: Expectation) -> list[ExpectedStep]:
    return [step for step in expected.steps if step.node.split("/")[0] in ("coronal-flaring", "descending")]


def test_recorded_depths_take_the_place_of_expected_ones() -> None:
    canal, expected = only(block_felt(*FELT))
    assert [(s.node, s.depth_mm) for s in felt_steps(expected)] == list(FELT[:-1])
    room = next(s for s in expected.steps if s.node.endswith("make-room"))
    assert room.depth_mm == 15.0
    assert [s.depth_mm for s in expected.steps if s.node == "ascending/30-04"] == [16.0, 16.5]
    assert canal.expected_path[-1] == "finished"


# Three passes at the same depths: two without gain, and the supervisor is asked.
def test_passes_without_gain_lead_to_the_supervisor() -> None:
    canal, _ = only(block_felt(*FELT[:6] * 3))
    assert "descending/supervisor" in canal.expected_path


# A depth past the stop is a fact: it counts as reached, and the shape ends where the canal does.
def test_a_depth_past_the_stop_counts_as_reached() -> None:
    _, expected = only(block_felt(*FELT[:5], ("descending/25-04", 17.5)))
    step = next(s for s in expected.steps if s.node == "descending/25-04")
    assert (step.depth_mm, step.shape[-1].from_reference_mm) == (17.5, 16.5)
    assert not [s for s in expected.steps if s.node == "descending/25-04" and s.pass_number > 1]


@pytest.mark.parametrize("depth_mm", [-1.0, 37.0, 1e308])
def test_a_depth_that_no_instrument_reaches_is_refused_where_it_is(depth_mm: float) -> None:
    with pytest.raises(OutOfBounds) as refusal:
        plan(block_felt(FELT[0], ("descending/40-04", depth_mm)))
    assert refusal.value.pointer == ("canals", 0, "felt", 1, "depth_mm")


def test_an_estimated_length_is_expected_by_the_phases_that_are_tabled() -> None:
    canals = four_canals()
    mb1 = replace(canals[0], readings=canals[0].readings[:1])
    canal = plan(molar(canals=(mb1, *canals[1:]))).canals[0]
    assert canal.provisional
    assert canal.expectation is not None
    assert any(step.node.startswith("descending/") for step in canal.expectation.steps)
    assert not any(id_.startswith("descending/") for id_ in canal.expected_path)


def test_a_withheld_canal_has_what_its_open_steps_give() -> None:
    mb2 = plan(molar(canals=four_canals(junction=None))).canals[1]
    assert mb2.withheld
    assert mb2.expectation is not None
    assert {step.instrument for step in mb2.expectation.steps} == {"10/.02 hand"}
    assert mb2.expectation.series_passes is None


# Step-back: hand instruments are worked to their stops.
def test_hand_instruments_are_worked_to_their_stops() -> None:
    canal, expected = only(block(technique=technique("step-back"), choices=SIZES))
    walk = Walk(canal.run_sheet)
    for step in expected.steps:
        node = walk.sheet.nodes[step.node]
        assert isinstance(node, Step)
        assert step.depth_mm == (node.stop_um or 0) / 1000
    assert expected.series_passes is None


# --- with samples --------------------------------------------------------------------------------------------------


def sampled(plan_input: PlanInput, seed: int = 1) -> PlanInput:
    return replace(plan_input, samples=200, seed=seed)


def test_samples_give_bands_around_the_median_and_the_chance_of_the_stop() -> None:
    for canal in plan(sampled(molar())).canals:
        assert canal.expectation is not None
        assert canal.expectation.samples == 200
        for step in canal.expectation.steps:
            if step.low_mm is None or step.high_mm is None:
                # Worked to its stop by hand, however often that takes.
                assert step.instrument.endswith("hand")
            else:
                assert step.low_mm <= step.high_mm
                assert step.reach_share is not None
                assert 0 <= step.reach_share <= 1


def test_the_same_seed_gives_the_same_text() -> None:
    text, same, other = (canonical_text(plan(sampled(molar(), seed))) for seed in (1, 1, 2))
    assert text == same != other


def test_recorded_depths_narrow_the_bands_of_what_is_left() -> None:
    def wide(plan_input: PlanInput) -> float:
        _, expected = only(sampled(plan_input))
        step = next(s for s in expected.steps if s.node == "descending/25-04" and s.pass_number == 1)
        assert step.low_mm is not None
        assert step.high_mm is not None
        return step.high_mm - step.low_mm

    usual = (("coronal-flaring/25-10", 5.0), ("coronal-flaring/25-08", 6.5), ("descending/40-04", 8.5))
    assert wide(block_felt(*usual, ("descending/35-04", 10.5), ("descending/30-04", 12.5))) < wide(block_felt())


@pytest.mark.parametrize(("depth_mm", "verdict"), [(3.0, "shorter"), (5.0, "as_expected"), (9.5, "longer")])
def test_a_recorded_depth_is_told_against_its_band(depth_mm: float, verdict: str) -> None:
    _, expected = only(sampled(block_felt(("coronal-flaring/25-10", depth_mm))))
    step = next(s for s in expected.steps if s.node == "coronal-flaring/25-10")
    assert step.felt == verdict
    assert (step.low_mm, step.high_mm, step.reach_share) == (None, None, None)
    # Once a depth is recorded more samples are drawn.
    assert expected.samples == 800


def test_depths_that_fit_no_canal_say_that_few_samples_agree() -> None:
    odd = (("descending/40-04", 3.0), ("descending/35-04", 15.0), ("descending/30-04", 4.0), ("descending/25-04", 14.0))
    _, expected = only(sampled(block_felt(("coronal-flaring/25-10", 9.5), *odd, *odd)))
    assert expected.few_agree
    assert not only(sampled(block_felt(("coronal-flaring/25-10", 5.0))))[1].few_agree


def test_passes_are_told_with_their_spread() -> None:
    _, expected = only(sampled(block(choices=SIZES)))
    assert expected.series_passes is not None
    assert expected.series_passes.low is not None
    assert expected.series_passes.high is not None
    assert 1 <= expected.series_passes.low <= expected.series_passes.expected <= expected.series_passes.high <= 3


# --- a bend ---------------------------------------------------------------------------------------------------------


def bent(deg: float | None, *, sampled_: bool = True) -> Expectation:
    canals = four_canals()
    plan_input = molar(canals=(replace(canals[0], curvature_deg=deg), *canals[1:]), samples=200 if sampled_ else 0)
    expected = plan(plan_input).canals[0].expectation
    assert expected is not None
    return expected


@pytest.mark.parametrize(("deg", "straight"), [(None, False), (0.0, False), (9.9, False), (10.0, True), (34.0, True)])
def test_from_ten_degrees_on_every_expected_depth_says_that_it_is_of_a_straight_canal(
    deg: float | None, straight: bool
) -> None:
    """10 degrees: the project's own limit."""
    assert {step.as_if_straight for step in bent(deg).steps} == {straight}
    assert {step.as_if_straight for step in bent(deg, sampled_=False).steps} == {straight}


@pytest.mark.parametrize("shape", [BendShape.DOUBLE, BendShape.UNCLEAR])
def test_a_canal_that_may_bend_both_ways_is_never_straight_whatever_its_angle(shape: BendShape) -> None:
    """Where an S ends it may run nearly straight on; its strains go by a curve from the data tables, which is told."""
    first = replace(four_canals()[0], curvature_deg=2.0, bend_shape=shape)
    planned = plan(molar(canals=(first, *four_canals()[1:]))).canals[0]
    assert planned.expectation is not None
    assert {step.as_if_straight for step in planned.expectation.steps} == {True}
    assert planned.strain
    assert all(strain.taken for strain in planned.strain)


def test_in_a_bend_bands_are_wider_on_the_shallow_side_alone() -> None:
    """By the row, a millimetre, and not above the orifice."""
    pairs = zip(bent(9.0).steps, bent(34.0).steps, strict=True)
    banded = [(step, other) for step, other in pairs if step.low_mm is not None]
    assert len(banded) > 3
    for straight, curved in banded:
        orifice_mm = straight.shape[0].from_reference_mm
        for of in ("low_mm", "short_below_mm"):
            assert getattr(curved, of) == pytest.approx(max(getattr(straight, of) - 1.0, orifice_mm), abs=2e-3)
        for of in ("depth_mm", "high_mm", "deep_above_mm", "reach_share"):
            assert getattr(curved, of) == getattr(straight, of)
