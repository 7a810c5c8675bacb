"""Planning anew in the middle of the work: what is done is not asked for again, what is withheld stays so."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

import pytest

from planning.contract.plan_input import CanalInput, PastInsertion, PlanInput
from planning.contract.plan_value import CanalPlan
from planning.lengths.readings import ConfirmingImage, DirectSight
from planning.run_sheet.graph import Action, End, Exit, RunSheet, Step, why_unsound
from planning.run_sheet.walk import Walk, expected_exit
from planning.whole_tooth.plan import plan
from planning.work.mid_course import LENGTH_MOVED, begun_by
from tests.draws import draws
from tests.planning.given import SECOND_KIT, block, molar, technique


def planned(plan_input: PlanInput, name: str = "single") -> CanalPlan:
    return next(canal for canal in plan(plan_input).canals if canal.canal == name)


def sheet_of(plan_input: PlanInput, name: str = "single") -> RunSheet:
    return planned(plan_input, name).run_sheet


def with_canal(plan_input: PlanInput, name: str = "single", **changes: Any) -> PlanInput:
    def changed(canal_input: CanalInput) -> CanalInput:
        return replace(canal_input, **changes) if canal_input.name == name else canal_input

    return replace(plan_input, canals=tuple(map(changed, plan_input.canals)))


def length_of(plan_input: PlanInput, name: str) -> float | None:
    return planned(plan_input, name).length.working_length_mm


def anew(plan_input: PlanInput, walk: Walk, name: str = "single", **changes: Any) -> RunSheet:
    """The order of work of a plan made where the walk stands, with changes of the canal."""
    progress = begun_by(walk, length_mm=length_of(plan_input, name))
    return sheet_of(with_canal(plan_input, name, progress=progress, **changes), name)


def to(walk: Walk, step: str) -> Walk:
    """As expected up to a step; what goes to resistance stops short, nobody says where."""
    while isinstance(walk.node, Step) and walk.at != step:
        walk.leave(expected_exit(walk.node))
    assert walk.at == step
    return walk


def answer(chance: random.Random, walk: Walk) -> tuple[Exit, int | None]:
    """Any answer a person could give: mostly as expected, at any depth, at times blocked or returned."""
    node = walk.node
    assert isinstance(node, Step)
    exits = list(node.exits)
    exit_ = expected_exit(node) if chance.random() < 0.7 else chance.choice(exits)
    if exit_ is Exit.SHORT and chance.random() < 0.9:
        return exit_, max(0, (walk.stop_um() or 0) - chance.choice((0, 500, 1_000, 2_500, 6_000)))
    return exit_, None


GIVEN = {"single": block(), "MB1": molar(), "MB2": molar(), "P": molar(technique=technique("step-back"))}


@pytest.mark.parametrize("name", GIVEN)
def test_a_plan_made_anew_goes_on_as_the_old_one_would_have(name: str) -> None:
    """The old order of work, walked on by the same answers, is the other way to the same steps, on random walks."""
    old = sheet_of(GIVEN[name], name)
    for seed in range(draws(15)):
        chance = random.Random(f"{name} {seed}")  # noqa: S311 - answers of a test
        walk = Walk(old)
        for _ in range(chance.randrange(70)):
            if isinstance(walk.node, Step):
                walk.leave(*answer(chance, walk))
        if walk.at == "plan-again":
            continue  # such a plan must differ, or it would stand there for ever
        new = Walk(anew(GIVEN[name], walk, name))
        assert not why_unsound(new.sheet)
        while isinstance(walk.node, Step):
            assert (new.at, new.stop_um(), new.passes[new.at]) == (walk.at, walk.stop_um(), walk.passes[walk.at])
            left = answer(chance, walk)
            walk.leave(*left)
            new.leave(*left)
        assert new.at == walk.at


@pytest.mark.parametrize("seed", range(draws(8)))
def test_whatever_was_done_and_whatever_changed_every_walk_ends(seed: int) -> None:
    """A bound on the steps: the longest sheet has fewer nodes than 400, each loop a bound of its own below 10."""
    chance = random.Random(seed)  # noqa: S311 - answers of a test
    plan_input = molar()
    for _ in range(4):
        name = chance.choice(("MB1", "MB2", "DB", "P"))
        walk = Walk(sheet_of(plan_input, name))
        for _ in range(chance.randrange(60)):
            if isinstance(walk.node, Step):
                walk.leave(*answer(chance, walk))
        before = next(canal_input for canal_input in plan_input.canals if canal_input.name == name)
        progress = begun_by(walk, length_mm=length_of(plan_input, name), before=before.progress)
        set_mm = chance.choice((18.5, 19.0, 19.5, 20.0, 21.0))
        taken = ConfirmingImage(set_mm=set_mm, tip_short_mm=1.0, reference_point=before.reference_point)
        plan_input = with_canal(plan_input, name, progress=progress, readings=(*before.readings, taken))
        end = Walk(sheet_of(plan_input, name))
        for _ in range(4_000):
            if isinstance(end.node, End):
                break
            end.leave(*answer(chance, end))
        assert isinstance(end.node, End)


def shorter(plan_input: PlanInput, by_mm: float = 0.5) -> dict[str, Any]:
    return {"readings": (DirectSight(seen_mm=16.5 - by_mm, reference_point="top"),)}


def test_a_length_that_moved_is_signed_off_before_the_work_goes_on() -> None:
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")
    new = Walk(anew(plan_input, walk, **shorter(plan_input)))
    assert isinstance(new.node, Step)
    assert (new.at, new.node.hold_point) == (LENGTH_MOVED, "length")
    new.leave(Exit.APPROVED)
    # 35 is one size above the final 30: it ends 1.0 short of 16.0.
    assert (new.at, new.stop_um()) == ("descending/35-04", 15_000)


def test_no_stop_of_the_new_plan_lies_beyond_the_new_length() -> None:
    plan_input = block()
    sheet = anew(plan_input, to(Walk(sheet_of(plan_input)), "descending/35-04"), **shorter(plan_input))
    assert max(node.stop_um for node in sheet.nodes.values() if isinstance(node, Step) and node.stop_um) == 16_000


def test_a_word_that_was_not_given_yet_is_asked_for_again() -> None:
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")
    progress = begun_by(walk, length_mm=16.5)
    once = with_canal(plan_input, progress=progress, **shorter(plan_input))
    waits = Walk(sheet_of(once))
    twice = Walk(sheet_of(with_canal(once, progress=begun_by(waits, length_mm=16.0))))
    assert twice.at == LENGTH_MOVED
    twice.leave(Exit.APPROVED)
    assert twice.at == "descending/35-04"
    # Once it was given it is not.
    waits.leave(Exit.APPROVED)
    assert Walk(sheet_of(with_canal(once, progress=begun_by(waits, length_mm=16.0)))).at == "descending/35-04"


def test_a_length_taken_where_its_own_word_is_due_needs_no_other() -> None:
    plan_input = molar(thresholds={"sign_offs.bench_more": 1})
    walk = to(Walk(sheet_of(plan_input, "DB")), "length-again/sign-off")
    taken = ConfirmingImage(set_mm=17.5, tip_short_mm=1.0, reference_point="DB cusp", after_flaring=True)
    before = next(canal_input for canal_input in plan_input.canals if canal_input.name == "DB").readings
    assert Walk(anew(plan_input, walk, "DB", readings=(*before, taken))).at == "length-again/sign-off"


def test_on_the_bench_a_length_that_moved_after_flaring_is_asked_for_itself() -> None:
    """There the image after flaring has no sign-off of its own."""
    plan_input = molar()
    walk = to(Walk(sheet_of(plan_input, "DB")), "length-again/image")
    taken = ConfirmingImage(set_mm=17.5, tip_short_mm=1.0, reference_point="DB cusp", after_flaring=True)
    before = next(canal_input for canal_input in plan_input.canals if canal_input.name == "DB").readings
    assert Walk(anew(plan_input, walk, "DB", readings=(*before, taken))).at == "length-moved/sign-off"


def test_where_the_length_grew_the_hand_instruments_go_to_the_new_end_first() -> None:
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")
    new = Walk(anew(plan_input, walk, **shorter(plan_input, -0.5)))
    new.leave(Exit.APPROVED)
    assert (new.at, new.stop_um(), new.passes[new.at]) == ("glide-path/10-02", 17_000, 1)


def test_an_estimate_that_was_confirmed_opens_what_comes_after_it() -> None:
    """The length is an estimate when the plan is approved, and confirmed at its own hold point."""
    plan_input = molar()
    before = next(canal_input for canal_input in plan_input.canals if canal_input.name == "P").readings
    estimated = with_canal(plan_input, "P", readings=before[:1])
    walk = to(Walk(sheet_of(estimated, "P")), "length/sign-off")
    new = Walk(anew(estimated, walk, "P", readings=before))
    assert new.at == "length/sign-off"
    new.leave(Exit.APPROVED)
    assert new.at == "glide-path/10-02"


def test_work_that_ended_at_what_was_withheld_goes_on_after_it() -> None:
    plan_input = molar()
    before = next(canal_input for canal_input in plan_input.canals if canal_input.name == "P").readings
    estimated = with_canal(plan_input, "P", readings=before[:1])
    walk = to(Walk(sheet_of(estimated, "P")), "plan-again")
    new = Walk(anew(estimated, walk, "P", readings=before))
    assert new.at == LENGTH_MOVED  # 21.0 by the estimate, 21.5 confirmed
    new.leave(Exit.APPROVED)
    assert new.at == "glide-path/10-02"


def test_what_is_withheld_stays_so() -> None:
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")
    apart = (*plan_input.canals[0].readings, ConfirmingImage(set_mm=14.0, tip_short_mm=0.5, reference_point="top"))
    assert Walk(anew(plan_input, walk, readings=apart)).at == "plan-again"


def test_withheld_once_it_goes_on_where_it_had_stood() -> None:
    plan_input = block()
    progress = begun_by(to(Walk(sheet_of(plan_input)), "descending/35-04"), length_mm=16.5)
    apart = (*plan_input.canals[0].readings, ConfirmingImage(set_mm=14.0, tip_short_mm=0.5, reference_point="top"))
    withheld = with_canal(plan_input, progress=progress, readings=apart)
    again = begun_by(Walk(sheet_of(withheld)), length_mm=16.5, before=progress)
    assert Walk(sheet_of(with_canal(plan_input, progress=again))).at == "descending/35-04"


def test_what_the_supervisor_sent_back_is_taken_up_anew() -> None:
    """A series short of length is answered with a smaller final size: the series from its start, its passes afresh."""
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/40-04")
    while walk.at != "descending/supervisor":
        assert isinstance(walk.node, Step)
        short = walk.node.action is Action.INSTRUMENT
        walk.leave(Exit.SHORT if short else expected_exit(walk.node), 9_000 if short else None)
    walk.leave(Exit.RETURNED)
    new = Walk(anew(plan_input, walk))
    assert (new.at, new.passes[new.at]) == ("descending/40-04", 1)


def test_a_finished_canal_stays_finished() -> None:
    plan_input = block()
    new = anew(plan_input, to(Walk(sheet_of(plan_input)), "finished"))
    assert (new.start, list(new.nodes)) == ("finished", ["finished"])


def test_a_step_that_is_not_there_any_more_starts_its_phase_anew() -> None:
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")
    progress = begun_by(walk, length_mm=16.5)
    other = with_canal(replace(plan_input, kit=SECOND_KIT), progress=progress)
    assert Walk(sheet_of(other)).at == "descending/40-06"


def test_another_technique_starts_from_its_own_beginning() -> None:
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")
    progress = begun_by(walk, length_mm=16.5)
    other = with_canal(replace(plan_input, technique=technique("step-back")), progress=progress)
    assert Walk(sheet_of(other)).at == Walk(sheet_of(replace(plan_input, technique=technique("step-back")))).at


# --- what is expected from there ----------------------------------------------------------------------------------


def made(*insertions: tuple[str, str, float]) -> tuple[PastInsertion, ...]:
    return tuple(
        PastInsertion(
            step=step, phase=step.split("/")[0], instrument=key, depth_mm=depth, stop_mm=16.5, to_resistance=True
        )
        for step, key, depth in insertions
    )


def test_the_canal_is_expected_as_the_work_so_far_has_left_it() -> None:
    """The same insertions, made by the plan's own steps or before it: the same canal after them."""
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/40-04")
    done = [left for left in walk.left if getattr(walk.sheet.nodes[left.node], "action", None) is Action.INSTRUMENT]
    keys = {node.id: node.instrument for node in walk.sheet.nodes.values() if isinstance(node, Step)}
    before = made(*((left.node, keys[left.node] or "", (left.depth_um or 16_500) / 1000) for left in done))
    progress = begun_by(walk, length_mm=16.5, made=before)
    ahead = planned(with_canal(plan_input, progress=progress)).expectation
    whole = planned(plan_input).expectation
    assert ahead is not None
    assert whole is not None
    assert ahead.steps[0].node == "descending/40-04"
    assert ahead.prepared != ()
    assert ahead.initial_shape == whole.initial_shape
    assert ahead.steps[0].depth_mm > whole.steps[len(done)].depth_mm  # flared to 16.5 here, to resistance there


def test_depths_of_an_earlier_order_of_work_move_the_bands_of_the_later_one() -> None:
    plan_input = replace(block(), samples=200)
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")

    def median(depth_mm: float) -> float:
        before = made(("descending/40-04", "40/.04 continuous", depth_mm))
        expectation = planned(with_canal(plan_input, progress=begun_by(walk, length_mm=16.5, made=before))).expectation
        assert expectation is not None
        return expectation.steps[0].depth_mm

    assert median(8.0) < median(10.0)


def test_an_instrument_that_the_kit_has_no_more_leaves_no_trace() -> None:
    plan_input = block()
    walk = to(Walk(sheet_of(plan_input)), "descending/35-04")
    gone = begun_by(walk, length_mm=16.5, made=made(("descending/99-99", "99/.99 continuous", 9.0)))
    without = begun_by(walk, length_mm=16.5)
    steps = [planned(with_canal(plan_input, progress=each)).expectation for each in (gone, without)]
    assert steps[0] is not None
    assert steps[1] is not None
    assert steps[0].steps == steps[1].steps


def test_a_plan_made_in_mid_course_is_a_whole_plan() -> None:
    """The shape is judged as a whole: stops, outline and filling are those of the work from its beginning."""
    plan_input = block()
    old = plan(plan_input)
    expected = old.canals[0].expectation
    assert expected is not None
    walk = to(Walk(sheet_of(plan_input)), "ascending/30-04")
    before = [step for step in expected.steps if not step.node.startswith("ascending/")]
    done = made(*((step.node, step.instrument, step.depth_mm) for step in before))
    new = plan(with_canal(plan_input, progress=begun_by(walk, length_mm=16.5, made=done)))
    assert (new.stop_table, new.canals[0].outline) == (old.stop_table, old.canals[0].outline)
    assert new.canals[0].obturation == old.canals[0].obturation
    assert len(new.tray.steps) < len(old.tray.steps)


def test_a_phase_is_over_with_its_word_however_often_that_was_asked_for() -> None:
    walk = Walk(plan(block()).canals[0].run_sheet)
    returned = False
    while isinstance(node := walk.node, Step):
        if node.id == "fill/sign-off" and not returned:
            returned = True
            walk.leave(Exit.RETURNED)
        else:
            walk.leave(expected_exit(node))
    assert walk.passes["fill/sign-off"] == 2
    progress = begun_by(walk, length_mm=16.5)
    assert (progress.phase, progress.over) == ("fill", True)
