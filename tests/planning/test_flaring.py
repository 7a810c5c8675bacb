"""Coronal flaring: an instrument that has nothing left to cut is passed over.

By the shapes of ISO 3630-1: at one stop 25/.08 is 0.25 mm at its tip and 1.05 after 10 mm, within 25/.10 with 0.25 and
1.25; 40/.08 is 0.40 and 1.20, wider at the tip. That nothing is worked that cuts nothing: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from planning.contract.expected import ExpectedStep
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import CanalPlan
from planning.foundation.quantities import um
from planning.instruments.iso_3630 import Use
from planning.run_sheet.graph import Exit, RunSheet, Step
from planning.run_sheet.walk import Walk
from planning.whole_tooth.plan import plan
from tests.planning.given import CHECK_KIT, block, molar, rotary

STEEP, LESS = "25/.10", "25/.08"
STOP_UM = 11_500
"""Third of MB1's 19.5 from an orifice at 7.5: 7.5 + 12.0 / 3."""


def flared(sheet: RunSheet, *depths_um: int | None, passes: int = 1) -> list[str]:
    """Names of the flaring instruments where they stop at these depths one after another, None at the stop; whatever
    follows them in a pass stops half a millimetre deeper each time."""
    walk, names, depths = Walk(sheet), list[str](), list(depths_um)
    while walk.passes.get("descending/40-04", 0) < passes:
        node = walk.node
        assert isinstance(node, Step)
        if node.phase == "coronal-flaring" and node.instrument and "recapitulate" not in node.id:
            names.append(node.instrument.split()[0])
            depth_um = depths.pop(0) if depths else None
            walk.leave(Exit.REACHED if depth_um is None else Exit.SHORT, depth_um)
        elif node.target == "to_resistance":
            walk.leave(Exit.SHORT, (node.stop_um or 0) - 3_000 + 500 * walk.passes[node.id])
        else:
            walk.leave(next(e for e in (Exit.DONE, Exit.APPROVED, Exit.REACHED) if e in node.exits))
    return names


def of_mb1(plan_input: PlanInput) -> RunSheet:
    return plan(plan_input).canals[0].run_sheet


def test_what_lies_within_one_that_came_to_its_stop_is_passed_over() -> None:
    assert flared(of_mb1(molar())) == [STEEP]


def test_where_that_stopped_short_it_is_worked() -> None:
    assert flared(of_mb1(molar()), STOP_UM - 500) == [STEEP, LESS]


def test_what_is_wider_anywhere_is_worked() -> None:
    kit = replace(CHECK_KIT, instruments=(rotary(40, 8, Use.CORONAL), *CHECK_KIT.instruments))
    assert flared(of_mb1(molar(kit=kit))) == [STEEP, "40/.08"]


def test_the_next_pass_works_none_that_came_to_its_stop() -> None:
    sheet = of_mb1(molar())
    assert flared(sheet, passes=2) == [STEEP]
    short, shorter = STOP_UM - 500, STOP_UM - 1000
    assert flared(sheet, shorter, short, passes=2) == [STEEP, LESS, STEEP]
    assert flared(sheet, shorter, None, passes=2) == [STEEP, LESS, STEEP]
    assert flared(sheet, shorter, None, short, passes=2) == [STEEP, LESS, STEEP]


def test_room_for_an_instrument_that_is_held_is_made_by_the_same_rule() -> None:
    walk, names = Walk(of_mb1(molar())), list[str]()
    while isinstance(node := walk.node, Step) and node.phase == "explore" and not node.id.endswith("/last"):
        if node.instrument and "/room/" in node.id:
            names.append(node.instrument.split()[0])
            walk.leave(Exit.REACHED)
        elif Exit.SHORT in node.exits:
            walk.leave(Exit.SHORT, (node.stop_um or 0) - 4_000)
        else:
            walk.leave(Exit.DONE)
    assert names == [STEEP]


def flaring(canal: CanalPlan) -> list[ExpectedStep]:
    assert canal.expectation is not None
    return [step for step in canal.expectation.steps if step.node.startswith("coronal-flaring/")]


def test_what_may_be_passed_over_is_still_laid_out() -> None:
    """Expected where the estimate has the steep one stop short, in a block; spare where not, in a palatal canal."""
    for plan_input, expected in ((block(), True), (replace(molar(), canals=molar().canals[3:], roots=()), False)):
        made = plan(plan_input)
        laid = {item.instrument.name.split()[0]: item.expected for item in made.tray_list}
        worked = {step.instrument.split()[0]: step.depth_mm for step in flaring(made.canals[0])}
        assert laid[STEEP]
        assert laid[LESS] is (LESS in worked) is expected
        stop_mm = next(row.stops[0].stop_mm for row in made.stop_table if row.instrument.name.startswith(LESS))
        assert (um(worked[STEEP]) < um(stop_mm)) is expected
