"""What a list says of a canal's last depth is what the chair says of it: over drawn courses, by the same samples.

The chair shows what `bands` makes of the whole walk; a list has it from the last time that this was asked for.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from random import Random

import pytest

from planning.contract.expected import Judged
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import CanalPlan
from planning.depth.last_depth import Ahead, ahead, last_depth
from planning.run_sheet.graph import Action, Exit, Step
from planning.run_sheet.walk import Walk, expected_exit
from planning.whole_tooth.plan import plan
from planning.work.bands import bands
from tests.planning.given import block, molar

SAMPLES = 40
COURSES = 3
PHASES = ("cone", "fill")  # nothing is expected in a band from there on


def bent_molar() -> PlanInput:
    first, *others = molar().canals
    return molar(canals=(replace(first, curvature_deg=25, curve_radius_mm=6.0), *others))


TEETH = {"block": block, "bent molar": bent_molar}


@cache
def planned(tooth: str) -> tuple[PlanInput, CanalPlan]:
    plan_input = replace(TEETH[tooth](), samples=SAMPLES)
    return plan_input, plan(plan_input).canals[0]


def drawn(number: int) -> Random:
    return Random(number)  # noqa: S311  # nothing secret


def leave(walk: Walk, dice: Random) -> bool:
    """One step; whether an instrument went in. Where it goes to resistance it stops anywhere in its last 4 mm."""
    node, stop_um = walk.node, walk.stop_um()
    assert isinstance(node, Step)
    if node.action is not Action.INSTRUMENT or stop_um is None:
        walk.leave(expected_exit(node))
        return False
    depth_um = stop_um - 500 * dice.randrange(9) if expected_exit(node) is Exit.SHORT else stop_um
    walk.leave(Exit.REACHED if depth_um >= stop_um else Exit.SHORT, depth_um)
    return True


def shown(last: Judged | None, walk: Walk) -> Judged | None:
    """The chair says it of the last instrument alone."""
    made = [left for left in walk.left if is_insertion(walk, left.node)]
    return last if last and made and (last.node, last.pass_number) == (made[-1].node, made[-1].pass_number) else None


def is_insertion(walk: Walk, step: str) -> bool:
    node = walk.sheet.nodes[step]
    return isinstance(node, Step) and node.action is Action.INSTRUMENT


@pytest.mark.parametrize("tooth", TEETH)
def test_list_and_chair_say_the_same_of_every_depth(tooth: str) -> None:
    plan_input, canal = planned(tooth)
    shown_depths = set()
    for number in range(COURSES):
        dice, walk, known = drawn(number), Walk(canal.run_sheet), ahead(canal.expectation)
        while isinstance(walk.node, Step) and walk.node.phase not in PHASES and len(walk.left) < 60:
            if not leave(walk, dice):
                continue
            (canal_bands,) = bands(plan_input, {canal.canal: walk})
            before, known = last_depth(known, walk), ahead(canal_bands.expectation, canal_bands.last)
            chair = shown(canal_bands.last, walk)
            # Before the bands were asked for again, and after.
            assert (before, last_depth(known, walk)) == (chair, chair), walk.left[-1]
            shown_depths.add(chair and (chair.felt, chair.as_if_straight))
    bent = tooth == "bent molar"
    assert shown_depths == {None, ("shorter", bent), ("as_expected", bent), ("longer", bent)}


def test_by_the_plan_alone_it_may_say_otherwise() -> None:
    """Else the test above would prove nothing: what was felt before moves what is expected."""
    plan_input, canal = planned("block")
    differs = 0
    for number in range(COURSES):
        dice, walk = drawn(number), Walk(canal.run_sheet)
        while isinstance(walk.node, Step) and walk.node.phase not in PHASES and len(walk.left) < 60:
            if leave(walk, dice):
                (canal_bands,) = bands(plan_input, {canal.canal: walk})
                differs += last_depth(ahead(canal.expectation), walk) != shown(canal_bands.last, walk)
    assert differs > 0


def test_a_depth_that_was_taken_back_is_not_said_of_the_one_told_instead() -> None:
    _, canal = planned("block")
    walk, again = Walk(canal.run_sheet), Walk(canal.run_sheet)
    dice = drawn(1)
    while not (isinstance(walk.node, Step) and walk.node.phase == "coronal-flaring"):
        leave(walk, dice)
    for _ in walk.left:
        leave(again, dice)
    step = walk.at
    walk.leave(Exit.SHORT, 5_000)
    again.leave(Exit.SHORT, 5_500)
    last = Judged(node=step, pass_number=1, depth_mm=5.0, low_mm=6.0, high_mm=7.0, felt="shorter")
    assert last_depth(Ahead(last=last), walk) == last
    assert last_depth(Ahead(last=last), again) is None
