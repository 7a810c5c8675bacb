"""The order of work of a crown-down in a training block, and of a step-back.

The order is common practice, no source: hand glide path, coronal flaring with steep tapers, a descending series of one
taper to resistance, repeated from coronal flaring until its smallest is at length, then up to the final size.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import pytest

from planning.contract.plan_input import CanalChoice, Choices, PlanInput
from planning.contract.plan_value import CanalPlan
from planning.run_sheet.graph import (
    Action,
    Ask,
    End,
    Exit,
    Gained,
    Node,
    PassesBelow,
    RunSheet,
    Step,
    Target,
    why_unsound,
)
from planning.run_sheet.walk import expected_exit, expected_path
from planning.whole_tooth.plan import plan
from tests.planning.given import OPEN_30, SECOND_KIT, block, molar, technique


def only_canal(plan_input: PlanInput) -> CanalPlan:
    return plan(plan_input).canals[0]


def worked(canal: CanalPlan, smallest: str = "descending/25-04") -> list[str]:
    """Instruments in order, the series' smallest at length in the second pass and everything else as hoped for."""
    nodes = [canal.run_sheet.nodes[id_] for id_ in expected_path(canal.run_sheet, smallest, passes=2)]
    return [
        node.instrument.split()[0]
        for node in nodes
        if isinstance(node, Step) and node.action is Action.INSTRUMENT and node.instrument
    ]


def chosen(final_size: int, glide_path_to_size: int | None = None) -> Choices:
    sizes = (CanalChoice(canal="single", final_size=final_size),)
    return Choices(needle=OPEN_30, glide_path_to_size=glide_path_to_size, canals=sizes)


FLARING = ["25/.10", "25/.08"]
DOWN = ["40/.04", "35/.04", "30/.04", "25/.04"]


def test_order_of_a_crown_down_in_a_block() -> None:
    canal = only_canal(block(choices=chosen(30)))
    explored, glide_path = ["10/.02"], ["10/.02", "15/.02", "20/.02"]
    assert worked(canal) == [*explored, *glide_path, *FLARING, *DOWN, *FLARING, *DOWN, "30/.04"]


def test_order_with_a_kit_of_other_sizes_and_tapers() -> None:
    plan_input = block(kit=SECOND_KIT, choices=chosen(25, glide_path_to_size=15))
    flaring, down = ["35/.12", "30/.09"], ["35/.06", "30/.06", "25/.06", "20/.06"]
    instruments = worked(only_canal(plan_input), smallest="descending/20-06")
    assert instruments == ["10/.02", "10/.02", "15/.02", *flaring, *down, *flaring, *down, "25/.06"]


def test_every_size_up_to_the_final_one_is_used_once_each() -> None:
    assert worked(only_canal(block(choices=chosen(45))))[-4:] == ["30/.04", "35/.04", "40/.04", "45/.04"]


def ids(sheet: RunSheet, exit_: Exit, node: str) -> str:
    step = sheet.nodes[node]
    assert isinstance(step, Step | Ask)
    return step.exits[exit_]


def size_of(node: Step) -> int:
    return int((node.instrument or "0").split("/")[0])


def test_irrigation_and_the_small_file_follow_every_instrument_larger_than_it() -> None:
    sheet = only_canal(block()).run_sheet
    for node in sheet.nodes.values():
        if (
            isinstance(node, Step)
            and node.action is Action.INSTRUMENT
            and size_of(node) > 10
            and node.phase != "explore"
        ):
            for left_by in node.exits.values():
                irrigated = sheet.nodes[left_by]
                assert isinstance(irrigated, Step)
                assert irrigated.action is Action.IRRIGATE
                small = sheet.nodes[irrigated.exits[Exit.DONE]]
                assert isinstance(small, Step)
                assert small.action is Action.RECAPITULATE
                assert (small.instrument, small.stop_um) == ("10/.02 hand", 16_500)


def test_one_that_stops_short_on_the_way_up_is_answered_by_the_next_larger_used_short() -> None:
    sheet = only_canal(block(choices=chosen(35))).run_sheet
    room = sheet.nodes["ascending/30-04/make-room"]
    assert isinstance(room, Step)
    assert (room.instrument, room.target, room.stop_um) == ("35/.04 continuous", Target.TO_RESISTANCE, 15_500)
    assert room.shorter_than is not None
    assert (room.shorter_than.node, room.shorter_than.less_um) == ("ascending/30-04", 1000)
    bound = sheet.nodes["ascending/30-04/room"]
    assert isinstance(bound, Ask)
    assert isinstance(bound.question, PassesBelow)
    assert bound.question.n == 2


def test_passes_are_compared_by_half_a_millimetre_and_bounded() -> None:
    sheet = only_canal(block()).run_sheet
    gained, passes = sheet.nodes["descending/gained"], sheet.nodes["descending/passes"]
    assert isinstance(gained, Ask)
    assert isinstance(gained.question, Gained)
    assert gained.question.least_um == 500
    assert isinstance(passes, Ask)
    assert isinstance(passes.question, PassesBelow)
    assert passes.exits[Exit.YES] == "coronal-flaring/25-10/after-25-10"


def test_the_final_size_is_confirmed_by_hand_and_by_an_image() -> None:
    canal = only_canal(block(choices=chosen(30), thresholds={"sign_offs.bench_more": 1}))
    end = [id_ for id_ in canal.expected_path if id_.startswith("confirm/")]
    assert end == ["confirm/30-02", "confirm/larger", "confirm/image", "confirm/sign-off"]
    larger = canal.run_sheet.nodes["confirm/larger"]
    assert isinstance(larger, Step)
    assert larger.instrument == "35/.02 hand"
    # The one that has to stay short is not asked for at its stop.
    assert (larger.target, expected_exit(larger)) == (Target.TO_RESISTANCE, Exit.SHORT)


def test_a_cone_that_is_returned_is_fitted_anew_before_the_next_image() -> None:
    nodes = only_canal(block()).run_sheet.nodes
    again = nodes["cone/image-again"]
    assert isinstance(again, Ask)
    assert again.exits == {Exit.YES: "cone/fit", Exit.NO: "plan-again"}


def test_an_image_says_what_has_to_be_in_the_canal_for_it() -> None:
    """Small, after the glide path its largest, the final size; a cone; what blocks. Common practice, no source."""
    crown_down = plan(molar(thresholds={"sign_offs.bench_more": 1})).canals[0].run_sheet.nodes
    shown = {
        "length": "10/.02",
        "length-again": "20/.02",
        "confirm": "30/.02",
        "cone": "The cone",
        "fill": "The filling",
    }
    for phase, what in shown.items():
        assert says(crown_down[f"{phase}/image"]).startswith(what), phase
    by_hand = plan(molar(technique=technique("step-back"))).canals[0].run_sheet.nodes
    assert says(by_hand["length-again/image"]).startswith("30/.02 back at its stop")
    assert says(crown_down["glide-path/blocked/image"]).startswith("10/.02 as far as it goes without a push")


def says(node: Node) -> str:
    assert isinstance(node, Step)
    return node.say


def test_hold_points_in_a_block_in_order() -> None:
    canal = only_canal(block())
    assert held(canal) == ["length", "cone and final size", "final image"]
    asked_everywhere = only_canal(block(thresholds={"sign_offs.bench_more": 1}))
    assert held(asked_everywhere) == ["length", "final size", "cone", "final image"]


def held(canal: CanalPlan) -> list[str]:
    nodes = [canal.run_sheet.nodes[id_] for id_ in canal.expected_path]
    return [node.hold_point for node in nodes if isinstance(node, Step) and node.hold_point]


# Textbooks (from memory): each next size 1 mm shorter; master 25 at 20.0: 30 at 19, 35 at 18, 40 at 17.
def test_step_back_arithmetic() -> None:
    plan_input = block(technique=technique("step-back"), choices=chosen(25))
    sheet = only_canal(plan_input).run_sheet
    stops = {n.instrument: n.stop_um for n in sheet.nodes.values() if isinstance(n, Step) and n.phase == "stepping"}
    end_um = 16_500
    assert {k: end_um - v for k, v in stops.items() if k and v and v < end_um} == {
        "30/.02 hand": 1000,
        "35/.02 hand": 2000,
        "40/.02 hand": 3000,
    }


# The taper that follows: sizes 0.05 mm apart at 1 mm steps give 0.05 mm per mm (derived).
def test_step_back_gives_its_wall_taper() -> None:
    points = only_canal(block(technique=technique("step-back"), choices=chosen(25))).outline
    at = {p.from_reference_mm: p.diameter_mm for p in reversed(points)}
    assert at[16.5] == 0.25
    assert (at[13.5] - at[16.5]) / 3 == pytest.approx(0.05)


def test_step_back_recapitulates_with_the_final_size() -> None:
    sheet = only_canal(block(technique=technique("step-back"), choices=chosen(25))).run_sheet
    between = sheet.nodes["stepping/30-02/recapitulate"]
    assert isinstance(between, Step)
    assert between.instrument == "25/.02 hand"


@pytest.mark.parametrize("key", ["crown-down", "step-back"])
def test_an_unbounded_way_back_would_be_found(key: str) -> None:
    sheet = only_canal(block(technique=technique(key))).run_sheet
    assert why_unsound(sheet) == ""
    asks = [n for n in sheet.nodes.values() if isinstance(n, Ask) and isinstance(n.question, PassesBelow)]
    image_again = next(n for n in asks if n.id == "length/image-again")
    unbounded = replace(image_again, exits={**image_again.exits, Exit.NO: "length/image"})
    assert "for ever" in why_unsound(replace(sheet, nodes={**sheet.nodes, image_again.id: unbounded}))


@pytest.mark.parametrize("seed", range(60))
def test_a_way_back_is_told_as_it_is_walked_wherever_there_is_one(seed: int) -> None:
    """Judged by following every way as far as it leads."""
    dice = random.Random(seed)  # noqa: S311 - a fixed seed, no secret
    steps = [str(number) for number in range(dice.randint(2, 12))]
    ways = {step: dice.sample(steps, dice.randint(1, 2)) for step in steps if dice.random() < 0.7}
    nodes: dict[str, Node] = {step: End(id=step, outcome="finished") for step in steps}
    for step, onward in ways.items():
        exits = dict(zip((Exit.REACHED, Exit.SHORT), onward, strict=False))
        nodes[step] = Step(id=step, action=Action.GAUGE, phase="any", exits=exits)
    ahead = {step: set(ways.get(step, ())) for step in steps}
    for _ in steps:
        ahead = {step: reached.union(*(ahead[to] for to in reached)) for step, reached in ahead.items()}
    said = why_unsound(RunSheet(canal="single", start="0", nodes=nodes))
    assert bool(said) == any(step in reached for step, reached in ahead.items())
    if said:
        way = said.removeprefix("it could go round for ever: ").split(" → ")
        assert way[0] == way[-1]
        assert all(onward in ways[step] for step, onward in pairwise(way))


def test_a_step_that_leads_nowhere_would_be_found() -> None:
    sheet = only_canal(block()).run_sheet
    node = sheet.nodes["length/image"]
    assert isinstance(node, Step)
    astray = replace(node, exits={**node.exits, Exit.DONE: "nowhere"})
    assert "nowhere" in why_unsound(replace(sheet, nodes={**sheet.nodes, node.id: astray}))


def needle_mm(canal: CanalPlan, ids_: Sequence[str]) -> list[float]:
    nodes = [canal.run_sheet.nodes[id_] for id_ in ids_]
    return [n.needle_at_most_um / 1000 for n in nodes if isinstance(n, Step) and n.needle_at_most_um is not None]


def test_the_needle_goes_deeper_as_the_end_grows_wider_and_ends_two_short() -> None:
    canal = only_canal(block(choices=chosen(35)))
    depths = needle_mm(canal, canal.expected_path)
    # Coronal third 5.5; 15/.02: 16.5 - 8.5 - 1.0; 20/.02: 16.5 - 6.0 - 1.0; 30/.04: 15.0, ceiling 14.5.
    assert list(dict.fromkeys(depths)) == [5.5, 7.0, 9.5, 13.5, 14.5]
