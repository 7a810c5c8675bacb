"""The first hand size is held: smaller ones, room above, once more, then the supervisor. The order is a judgement of
teaching (programme rule); that room comes before force is common practice, no source."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.contract.plan_input import Choices, Kit, PlanInput
from planning.instruments.iso_3630 import Use
from planning.lengths.readings import ConfirmingImage
from planning.run_sheet.graph import Action, Exit, Step
from planning.run_sheet.walk import Walk
from planning.techniques.technique import PhaseKind, Technique
from planning.whole_tooth.plan import plan
from tests.planning.given import (
    CHECK_KIT,
    HAND_SIZES,
    OPEN_30,
    block,
    canal,
    four_canals,
    kit,
    molar,
    technique,
)

WITH_06 = Kit(name="with 06", instruments=(*kit(hands=(6,)).instruments, *CHECK_KIT.instruments), needles=(OPEN_30,))
FLARED = ["25/.10", "25/.08"]


def tried(plan_input: PlanInput, *held: int) -> tuple[list[str], str]:
    """What is taken up while exploring where the hand sizes `held` never go; and the step after it."""
    walk = Walk(plan(plan_input).canals[0].run_sheet)
    names: list[str] = []
    while isinstance(node := walk.node, Step) and node.phase == "explore" and node.action is not Action.SIGN_OFF:
        assert len(names) < 20, "goes round"
        if node.action is Action.INSTRUMENT and node.instrument:
            names.append(node.instrument.split()[0])
            short = int(names[-1][:2]) in held or node.target == "to_resistance"
            walk.leave(Exit.SHORT if short else Exit.REACHED, (node.stop_um or 0) - 500 if short else None)
        else:
            walk.leave(Exit.DONE)
    return names, walk.at


SUPERVISOR = "explore/10-02/supervisor"
LADDER = [
    ("nothing held", CHECK_KIT, (), ["10/.02"], "length/image"),
    ("10", WITH_06, (10,), ["10/.02", "08/.02", "10/.02", *FLARED, "10/.02"], SUPERVISOR),
    ("10 and 08", WITH_06, (10, 8), ["10/.02", "08/.02", "06/.02", *FLARED, "08/.02"], SUPERVISOR),
    ("all three", WITH_06, (10, 8, 6), ["10/.02", "08/.02", "06/.02", *FLARED, "08/.02"], SUPERVISOR),
    ("no 06 in the kit", CHECK_KIT, (10, 8), ["10/.02", "08/.02", *FLARED, "08/.02"], SUPERVISOR),
    ("nothing smaller in the kit", kit(hands=(10, 15, 20, 25, 30, 35, 40), name="from 10"), (10,), [], SUPERVISOR),
]


@pytest.mark.parametrize(("with_kit", "held", "expected", "ends"), [c[1:] for c in LADDER], ids=[c[0] for c in LADDER])
def test_order_where_the_first_instrument_is_held(with_kit: Kit, held: Any, expected: list[str], ends: str) -> None:
    if not expected:
        rotaries = [instrument for instrument in CHECK_KIT.instruments if instrument.use is not Use.HAND]
        with_kit = kit(*rotaries, hands=(10, 15, 20, 25, 30, 35, 40, 45, 50))
        expected = ["10/.02", *FLARED, "10/.02"]
    assert tried(block(kit=with_kit), *held) == (expected, ends)


def test_a_canal_that_opens_after_flaring_goes_on() -> None:
    walk = Walk(plan(block(kit=WITH_06)).canals[0].run_sheet)
    left = {"explore/10-02": Exit.SHORT, "explore/10-02/08-02": Exit.SHORT, "explore/10-02/06-02": Exit.SHORT}
    while isinstance(node := walk.node, Step) and node.phase == "explore":
        walk.leave(left.get(node.id, next(e for e in (Exit.DONE, Exit.REACHED) if e in node.exits)))
    assert walk.path[-2:] == ["explore/10-02/last/irrigate", "length/image"]


def test_what_the_kit_has_not_is_said() -> None:
    nodes = plan(block(kit=CHECK_KIT)).canals[0].run_sheet.nodes
    room = nodes["explore/10-02/room/25-10"]
    assert isinstance(room, Step)
    assert room.say.startswith("The kit has no size 06.")
    with_06 = plan(block(kit=WITH_06)).canals[0].run_sheet.nodes["explore/10-02/room/25-10"]
    assert isinstance(with_06, Step)
    assert "no size" not in with_06.say


def test_room_is_made_in_the_coronal_third_alone() -> None:
    """Third of 19.5 from an orifice at 7.5: 7.5 + 12.0 / 3 = 11.5. By hand where the technique has no such instrument:
    step-down, Goerig 1982 (from memory): 15, 20, 25."""
    for key, wanted in (("crown-down", FLARED), ("step-back", ["15/.02", "20/.02", "25/.02"])):
        nodes = plan(molar(technique=technique(key))).canals[0].run_sheet.nodes.values()
        room = [node for node in nodes if isinstance(node, Step) and "/room/" in node.id and node.instrument]
        assert [node.instrument.split()[0] for node in room if node.instrument] == wanted
        assert {node.stop_um for node in room} == {11_500}


def test_by_a_length_in_doubt_no_room_is_made() -> None:
    """The tip is 1.5 past the apex: unsettled."""
    reading = ConfirmingImage(set_mm=20.0, tip_short_mm=-1.5, reference_point="MB cusp")
    canals = (canal("MB1", "MB", reading), *four_canals()[1:])
    nodes = plan(molar(canals=canals)).canals[0].run_sheet.nodes
    assert "explore/10-02" in nodes
    assert not [id_ for id_ in nodes if "/room/" in id_]


def test_exploring_may_begin_with_a_smaller_size() -> None:
    crown_down = technique("crown-down")
    phases = tuple(replace(p, from_size=8) if p.key == "explore" else p for p in crown_down.phases)
    plan_input = block(technique=replace(crown_down, phases=phases), kit=WITH_06)
    assert tried(plan_input, 10)[0] == ["08/.02", "10/.02", "08/.02", "10/.02", *FLARED, "10/.02"]


# --- the first to bind ---


def gauged(*held: int, final: int = 30) -> tuple[list[str], str]:
    """Sizes gauged after flaring where those of `held` do not go to the end, and where that leads."""
    choices = Choices(needle=OPEN_30)
    sheet = plan(molar(choices=choices, kit=CHECK_KIT)).canals[0]
    assert sheet.final_size == final
    walk = Walk(sheet.run_sheet)
    names: list[str] = []
    while isinstance(node := walk.node, Step) and (node.phase == "first-binder" or not names):
        if node.phase == "first-binder":
            names.append((node.instrument or "").split()[0])
            assert node.action is Action.GAUGE
            short = int(names[-1][:2]) in held
            walk.leave(Exit.SHORT if short else Exit.REACHED, 18_500 if short else 19_500)
        else:
            walk.leave(next(e for e in (Exit.DONE, Exit.APPROVED, Exit.REACHED) if e in node.exits))
    return names, walk.at


def test_after_flaring_the_first_to_bind_is_gauged() -> None:
    """The glide path made 20 loose: 25 is the first that can bind."""
    assert gauged(25, 30) == (["25/.02"], "descending/40-04")
    assert gauged(30) == (["25/.02", "30/.02"], "descending/40-04")


def test_an_end_wider_than_the_final_size_is_planned_anew() -> None:
    assert gauged() == (["25/.02", "30/.02"], "plan-again")


def test_gauging_is_not_done_again_in_the_next_pass() -> None:
    walk = Walk(plan(molar()).canals[0].run_sheet)
    while isinstance(node := walk.node, Step) and node.phase not in ("ascending", "confirm"):
        done = next((e for e in (Exit.DONE, Exit.APPROVED) if e in node.exits), None)
        short = node.target == "to_resistance"
        depth = (node.stop_um or 0) - max(0, 2000 - 500 * walk.passes[node.id]) if short else None
        walk.leave(done or (Exit.SHORT if short else Exit.REACHED), depth)
    assert walk.passes["coronal-flaring/25-10"] > 1
    assert walk.passes["first-binder/25-02"] == 1


def test_a_technique_without_flaring_has_nothing_to_gauge() -> None:
    step_back: Technique = technique("step-back")
    assert PhaseKind.GAUGE not in {phase.kind for phase in step_back.phases}


def test_a_kit_without_the_sizes_gauges_what_it_has() -> None:
    hands = tuple(size for size in HAND_SIZES if size != 25)
    rotaries = [instrument for instrument in CHECK_KIT.instruments if instrument.use is not Use.HAND]
    nodes = plan(molar(kit=kit(*rotaries, hands=hands))).canals[0].run_sheet.nodes
    assert [id_ for id_ in nodes if id_.startswith("first-binder/") and "-02" in id_] == ["first-binder/30-02"]
