"""What is expected of the work that remains, as it goes on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from planning.contract.expected import ExpectedStep
from planning.contract.plan_input import PlanInput, RecordedDepth
from planning.run_sheet.graph import Action, Exit, RunSheet, Step
from planning.run_sheet.walk import Walk, expected_exit
from planning.whole_tooth.plan import plan
from planning.work.bands import CanalBands, bands
from tests.planning.given import block, molar

SAMPLED = replace(block(), samples=200, seed=7)


def sheet_of(plan_input: PlanInput, name: str = "single") -> RunSheet:
    return next(canal.run_sheet for canal in plan(plan_input).canals if canal.canal == name)


def walked(plan_input: PlanInput, depths_um: Sequence[int]) -> Walk:
    """A walk on which the instruments stopped at these depths, all else having gone as it should."""
    walk, ahead = Walk(sheet_of(plan_input)), list(depths_um)
    while isinstance(node := walk.node, Step):
        if node.action is not Action.INSTRUMENT:
            walk.leave(expected_exit(node))
        elif not ahead:
            break
        else:
            walk.leave(Exit.SHORT, ahead.pop(0))
    return walk


def with_felt(plan_input: PlanInput, walk: Walk) -> PlanInput:
    """The same plan asked for anew with the depths of the walk in its input."""
    felt = tuple(
        RecordedDepth(node=left.node, depth_mm=left.depth_um / 1000) for left in walk.left if left.depth_um is not None
    )
    return replace(plan_input, canals=(replace(plan_input.canals[0], felt=felt),))


def steps(canal_bands: tuple[CanalBands, ...]) -> tuple[ExpectedStep, ...]:
    return canal_bands[0].expectation.steps


FIRST_PASS_UM = (16_500, 16_500, 16_500, 16_500, 9_500, 11_000, 13_500, 14_000, 15_000, 15_500)
"""Check values (common practice, no source): a training block of 16.5 mm, hand sizes at length, then the first pass."""


def test_before_anything_is_done_they_are_the_plans_own() -> None:
    walk = walked(SAMPLED, ())
    assert bands(SAMPLED, {"single": walk})[0].expectation == plan(SAMPLED).canals[0].expectation


def test_an_order_of_work_read_from_the_record_is_the_same() -> None:
    """Kept texts have their keys sorted: nothing may hang on the order in which a sheet lists its steps."""
    sheet = sheet_of(SAMPLED)
    kept = replace(sheet, nodes=dict(sorted(sheet.nodes.items())))
    assert bands(SAMPLED, {"single": Walk(kept)}) == bands(SAMPLED, {"single": Walk(sheet)})


def test_they_are_what_a_plan_says_that_knows_the_same_depths() -> None:
    """The other way to the same numbers: the depths in the plan's input, each at its own pass of the step."""
    for so_far in range(1, len(FIRST_PASS_UM) + 1):
        walk = walked(SAMPLED, FIRST_PASS_UM[:so_far])
        canal_bands = bands(SAMPLED, {"single": walk})
        assert canal_bands[0].done == so_far
        assert canal_bands[0].expectation == plan(with_felt(SAMPLED, walk)).canals[0].expectation


def test_a_depth_moves_what_remains_and_nothing_that_is_done() -> None:
    before, after = (steps(bands(SAMPLED, {"single": walked(SAMPLED, FIRST_PASS_UM[:n])})) for n in (7, 8))
    assert before[:7] == after[:7]
    assert before[8:] != after[8:]
    assert after[7].felt is not None
    assert (after[7].low_mm, after[7].depth_mm) == (None, 14.0)


def test_the_last_depth_is_told_with_the_band_it_was_expected_in() -> None:
    """By the bands as they were before it."""
    before, after = (bands(SAMPLED, {"single": walked(SAMPLED, FIRST_PASS_UM[:n])})[0] for n in (7, 8))
    was, last = before.expectation.steps[7], after.last
    assert last is not None
    assert (last.node, last.pass_number, last.depth_mm) == (was.node, was.pass_number, 14.0)
    assert (last.low_mm, last.high_mm) == (was.low_mm, was.high_mm)
    assert last.felt == after.expectation.steps[7].felt


def test_the_way_goes_on_from_where_the_work_stands_however_it_came_there() -> None:
    """A block in the middle of the first pass: the estimate alone would never have gone there."""
    walk = walked(SAMPLED, FIRST_PASS_UM[:8])
    assert isinstance(walk.node, Step)
    while walk.node.action is not Action.RECAPITULATE:
        walk.leave(expected_exit(walk.node))
    walk.leave(Exit.BLOCKED)
    canal_bands = bands(SAMPLED, {"single": walk})
    ahead = [(step.node, step.pass_number) for step in steps(canal_bands)[canal_bands[0].done :]]
    # Once it passes again the hand sizes open the way and the phase starts anew: its first instrument a second time.
    assert ahead[:3] == [("descending/blocked/15-02", 1), ("descending/blocked/20-02", 1), ("descending/40-04", 2)]


def test_a_step_that_a_supervisor_named_is_gone_on_from() -> None:
    walk = walked(SAMPLED, FIRST_PASS_UM[:4])
    assert walk.go_to("descending/30-04")
    canal_bands = bands(SAMPLED, {"single": walk})
    assert steps(canal_bands)[4].node == "descending/30-04"


def test_short_without_a_depth_says_only_that_the_step_was_made() -> None:
    walk = walked(SAMPLED, FIRST_PASS_UM[:6])
    walk.leave(Exit.SHORT)
    canal_bands = bands(SAMPLED, {"single": walk})
    assert (canal_bands[0].done, steps(canal_bands)[6].felt) == (7, None)


def test_canals_are_moved_by_their_own_depths_alone() -> None:
    plan_input = replace(molar(), samples=50)
    made = {canal.canal: canal for canal in plan(plan_input).canals}
    walks = {name: Walk(canal.run_sheet) for name, canal in made.items()}
    walks["P"].leave(Exit.SHORT, 18_000)
    expectations = {each.canal: each.expectation for each in bands(plan_input, walks)}
    assert {name for name, each in expectations.items() if each != made[name].expectation} == {"P"}


def test_a_canal_that_is_not_worked_has_none() -> None:
    plan_input = replace(molar(), samples=50)
    walks = {canal.canal: Walk(canal.run_sheet) for canal in plan(plan_input).canals if canal.canal != "DB"}
    assert [each.canal for each in bands(plan_input, walks)] == ["MB1", "MB2", "P"]


def test_depths_that_no_sample_explains_are_said_to_be() -> None:
    """Coronal flaring stops on the first millimetre, the whole series goes to its stop: no canal drawn is like that."""
    walk = walked(SAMPLED, (*FIRST_PASS_UM[:4], 1_000, 1_000, 16_000, 3_000))
    assert bands(SAMPLED, {"single": walk})[0].expectation.few_agree
