"""How often a supervisor and an image are asked for. Counted by hand; which setting asks for what is a programme rule,
that canals lying one behind the other need a second angle: Clark 1910 (from memory)."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.contract.plan_input import Override, Pattern, PlanInput, RootInput
from planning.contract.plan_value import AskedFor, Stage
from planning.run_sheet.graph import Action, Step
from planning.run_sheet.walk import Walk, expected_exit
from planning.techniques.technique import Setting, Technique
from planning.whole_tooth.plan import plan
from planning.work.mid_course import begun_by
from tests.planning.given import FOUND_JUNCTION, block, canal, confirmed, molar, technique

ACCEPTED = (Override(code="difficulty-high", canal=None, reason="Accepted for the test."),)


def teeth(name: str, **more: Any) -> PlanInput:
    """A molar whose MB2 joins MB1, a premolar of three roots, an incisor of two canals that part and join."""
    lengths = confirmed(20.5, 19.5, 1.0, "top")
    fields: dict[str, Any] = {"isolated": True, "overrides": ACCEPTED}
    if name != "molar":
        names = ("MB", "DB", "P") if name == "premolar" else ("B", "L")
        roots = names if name == "premolar" else ("single", "single")
        canals = [canal(key, root, *lengths, point="top") for key, root in zip(names, roots, strict=True)]
        if name == "incisor":
            canals[1] = replace(canals[1], junction=FOUND_JUNCTION)
            pattern = RootInput(name="single", pattern=Pattern.DIVIDE_AND_JOIN, main_canal="B")
            fields["roots"] = (pattern,)
        fields = {"roots": (), **fields, "tooth": "14" if name == "premolar" else "31", "canals": tuple(canals)}
    return molar(**(fields | more))


def asks(plan_input: PlanInput) -> AskedFor:
    asked = plan(plan_input).asks
    assert asked is not None
    return asked


# Bench, words: plan 1, length 1, cone and final size 1, final image 1. Clinic: plan, dam, length, length after flaring,
# final size, cone, final image: 7, and one more where a canal is flared after the one it joins.
# Exposures on the bench, molar: length 2 (MB2 behind MB1), after flaring 1 and MB2's 1, cones 1, final 1: 6.
# In the clinic the final size too, 2: 8. Three roots apart: one each. Two canals of one root: as MB1 and MB2.
COUNTED = [
    ("molar", Setting.EXTRACTED, 4, 6),
    ("premolar", Setting.EXTRACTED, 4, 4),
    ("incisor", Setting.EXTRACTED, 4, 6),
    ("molar", Setting.CLINIC, 8, 8),
    ("premolar", Setting.CLINIC, 7, 5),
    ("incisor", Setting.CLINIC, 8, 8),
]


@pytest.mark.parametrize(("name", "setting", "sign_offs", "exposures"), COUNTED)
def test_counts_of_a_crown_down(name: str, setting: Setting, sign_offs: int, exposures: int) -> None:
    asked = asks(teeth(name, setting=setting))
    assert (asked.sign_offs, asked.exposures) == (sign_offs, exposures)


@pytest.mark.parametrize("key", ["crown-down", "step-back"])
@pytest.mark.parametrize(("setting", "most"), [(Setting.EXTRACTED, 5), (Setting.CLINIC, 10)])
def test_a_molar_of_four_canals_asks_for_no_more_than_is_meant(key: str, setting: Setting, most: int) -> None:
    assert asks(teeth("molar", setting=setting, technique=technique(key))).sign_offs <= most


def test_a_block_of_one_canal_asks_for_four_sign_offs_and_three_images() -> None:
    """Plan, length, cone and final size, final image."""
    asked = asks(block())
    assert (asked.sign_offs, asked.exposures) == (4, 3)
    assert [stage.hold_point for stage in asked.stages] == ["length", "cone and final size", "final image"]


def stage(asked: AskedFor, phase: str) -> list[Stage]:
    return [stage_ for stage_ in asked.stages if stage_.phase == phase]


def test_which_canals_stand_on_each_exposure() -> None:
    asked = asks(teeth("molar", setting=Setting.CLINIC))
    (length,) = stage(asked, "length")
    assert [(exposure.canals, exposure.turned) for exposure in length.exposures] == [
        (("MB1", "DB", "P"), False),
        (("MB2",), True),
    ]
    assert [again.canals for again in stage(asked, "length-again")] == [("MB1", "DB", "P"), ("MB2",)]
    (cone,) = stage(asked, "cone")
    assert [exposure.canals for exposure in cone.exposures] == [("MB1", "MB2", "DB", "P")]


def test_roots_that_lie_one_behind_the_other_need_a_second_angle_too() -> None:
    lengths = confirmed(20.5, 19.5, 1.0, "top")
    two = tuple(canal(name, name, *lengths, point="top") for name in ("B", "P"))
    (length,) = stage(asks(molar(tooth="24", canals=two, roots=())), "length")
    assert [(exposure.canals, exposure.turned) for exposure in length.exposures] == [(("B",), False), (("P",), True)]


def test_a_programme_may_ask_for_more() -> None:
    """On the bench at every hold point: length after flaring 2 (MB2 later) and final size 1 more. Canal by canal: four
    canals at length, at cone and final size and at the end, and the plan: 13."""
    more = asks(teeth("molar", thresholds={"sign_offs.bench_more": 1}))
    assert more.sign_offs == 4 + 3
    assert asks(teeth("molar", thresholds={"sign_offs.each_canal": 1})).sign_offs == 1 + 3 * 4


def test_what_is_counted_is_what_the_orders_of_work_ask_for() -> None:
    """A slow twin: every image and sign-off on the expected ways, those of canals that come together told once."""
    for setting in Setting:
        made = plan(teeth("molar", setting=setting))
        assert made.asks is not None
        at = {
            (node.phase, node.action, canal_.canal)
            for canal_ in made.canals
            for node in (canal_.run_sheet.nodes[id_] for id_ in canal_.expected_path)
            if isinstance(node, Step) and node.action in (Action.IMAGE, Action.SIGN_OFF)
        }
        listed = {
            (stage_.phase, Action.SIGN_OFF, name)
            for stage_ in made.asks.stages
            if stage_.sign_offs
            for name in stage_.canals
        } | {
            (stage_.phase, Action.IMAGE, name)
            for stage_ in made.asks.stages
            for exposure in stage_.exposures
            for name in exposure.canals
        }
        assert listed == at


def test_on_the_bench_a_final_size_that_does_not_seat_is_still_for_the_supervisor() -> None:
    nodes = plan(molar()).canals[0].run_sheet.nodes
    short = nodes["confirm/short"]
    assert isinstance(short, Step)
    assert short.action is Action.SIGN_OFF
    assert "confirm/image" not in nodes
    assert "confirm/short" not in plan(teeth("molar", setting=Setting.CLINIC)).canals[0].run_sheet.nodes


def silent(crown_down: Technique) -> Technique:
    """A hold point without an image, for the clinic alone."""
    phases = tuple(
        replace(phase, image=False, hold_point_in=(Setting.CLINIC,)) if phase.key == "length-again" else phase
        for phase in crown_down.phases
    )
    return replace(crown_down, phases=phases)


def test_work_that_stands_at_a_hold_point_not_asked_for_any_more_goes_on_after_it() -> None:
    asked = molar(technique=silent(technique("crown-down")), thresholds={"sign_offs.bench_more": 1})
    walk = Walk(plan(asked).canals[0].run_sheet)
    while isinstance(node := walk.node, Step) and node.phase != "length-again":
        walk.leave(expected_exit(node))
    progress = begun_by(walk, length_mm=19.5)
    canals = (replace(asked.canals[0], progress=progress), *asked.canals[1:])
    now = plan(replace(asked, canals=canals, thresholds={}))
    start = now.canals[0].run_sheet.nodes[now.canals[0].run_sheet.start]
    assert start.id.startswith("first-binder/")
