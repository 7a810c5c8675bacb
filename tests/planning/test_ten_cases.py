"""Ten ordinary cases, their orders of work held to what a teacher would read them for. Each rule says who says so."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from typing import NamedTuple

import pytest

from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import CanalPlan, Plan, Severity
from planning.foundation.quantities import um
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import reach_mm
from planning.run_sheet.graph import Action, Step
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.ten_cases import CASES, chosen, on_a_patient

BENCH, CLINIC = "bench", "clinic"
MOST_SIGN_OFFS = {BENCH: 5, CLINIC: 10}
"""Of a supervisor, in a molar of four canals: a programme rule; no case here asks for more."""


class Counts(NamedTuple):
    """Sign-offs and exposures by hand, as in `test_stages`; steps as they were when last read line by line."""

    sign_offs: int
    exposures: int
    most_steps: int
    cautions: tuple[str, ...] = ()
    """Codes, without the notes."""


# Two canals of one root, or cones of theirs that do not share their end, need a second angle: from memory, Clark 1910.
COUNTED = {
    ("molar with a joining canal", BENCH): Counts(4, 6, 161),
    ("molar with a joining canal", CLINIC): Counts(8, 8, 181),
    ("premolar with three roots", BENCH): Counts(4, 4, 168),
    ("premolar with three roots", CLINIC): Counts(7, 5, 183),
    ("incisor with two canals", BENCH): Counts(4, 6, 126, ("difficulty-high-bench",)),
    ("incisor with two canals", CLINIC): Counts(8, 8, 136, ("difficulty-high",)),
    ("canine of 27 mm", BENCH): Counts(4, 4, 37, ("difficulty-high-bench",)),
    ("canine of 27 mm", CLINIC): Counts(7, 5, 42, ("difficulty-high",)),
    ("molar with a mesial curve of 40 degrees", BENCH): Counts(
        4, 8, 125, (*("curve-supervisor",) * 2, "difficulty-high-bench", *("curve-severe",) * 2)
    ),
    ("molar with a mesial curve of 40 degrees", CLINIC): Counts(
        7, 10, 140, ("difficulty-high", *("curve-supervisor",) * 2, *("curve-severe",) * 2)
    ),
    ("molar with a wide palatal canal", BENCH): Counts(4, 4, 114, ("wide-canal", "usual-canal-missing")),
    ("molar with a wide palatal canal", CLINIC): Counts(7, 5, 126, ("wide-canal", "usual-canal-missing")),
    ("calcified incisor", BENCH): Counts(4, 4, 51),
    ("calcified incisor", CLINIC): Counts(7, 5, 56),
    ("molar with an oval distal canal", BENCH): Counts(4, 8, 130),
    ("molar with an oval distal canal", CLINIC): Counts(7, 10, 145),
    ("resorbed incisor", BENCH): Counts(4, 4, 35),
    ("resorbed incisor", CLINIC): Counts(7, 5, 40),
    ("training block", BENCH): Counts(4, 3, 68),
}


def given_of(name: str, where: str) -> PlanInput:
    return on_a_patient(CASES[name]()) if where == CLINIC else CASES[name]()


@cache
def planned(name: str, where: str) -> Plan:
    return plan(given_of(name, where))


every_case = pytest.mark.parametrize(("name", "where"), COUNTED)


def steps(canal: CanalPlan) -> list[Step]:
    nodes = (canal.run_sheet.nodes[id_] for id_ in canal.expected_path)
    return [node for node in nodes if isinstance(node, Step)]


def every_step(made: Plan) -> Iterator[tuple[CanalPlan, Step]]:
    """Those of ways that nobody expects too."""
    for canal in made.canals:
        for node in canal.run_sheet.nodes.values():
            if isinstance(node, Step):
                yield canal, node


@every_case
def test_what_it_asks_for(name: str, where: str) -> None:
    made, counted = planned(name, where), COUNTED[name, where]
    assert made.asks is not None
    warned = tuple(caution.code for caution in made.cautions if caution.severity is not Severity.NOTE)
    assert (made.asks.sign_offs, made.asks.exposures, warned) == (
        counted.sign_offs,
        counted.exposures,
        counted.cautions,
    )
    assert counted.sign_offs <= MOST_SIGN_OFFS[where]
    assert sum(len(steps(canal)) for canal in made.canals) <= counted.most_steps


# Nothing goes past the working length, and nothing past the junction: textbooks (from memory); Do & Seo 2021 (read).
@every_case
def test_no_stop_lies_past_the_end_of_its_canal(name: str, where: str) -> None:
    for canal, step in every_step(planned(name, where)):
        assert step.stop_um is None or canal.end_mm is None or step.stop_um <= um(canal.end_mm), (canal.canal, step.id)


# As deep as it is long, less what its rubber stop takes up: a programme rule.
@every_case
def test_every_instrument_reaches_its_stop(name: str, where: str) -> None:
    kit, figures = {instrument.key: instrument for instrument in given_of(name, where).kit.instruments}, Figures()
    for canal, step in every_step(planned(name, where)):
        if step.instrument and step.stop_um:
            assert step.stop_um <= um(reach_mm(kit[step.instrument], figures)), (canal.canal, step.id)


# 2 mm short of the end at least: CDA Essentials 2022;9(1), read second-hand. It never falls on the way: it only widens.
@every_case
def test_the_needle_keeps_its_distance_and_gains_on_the_way(name: str, where: str) -> None:
    for canal, step in every_step(planned(name, where)):
        if step.needle_at_most_um is not None and canal.end_mm is not None:
            assert step.needle_at_most_um <= um(canal.end_mm) - 2000, (canal.canal, step.id)
    for canal in planned(name, where).canals:
        depths = [step.needle_at_most_um for step in steps(canal) if step.needle_at_most_um is not None]
        assert depths == sorted(depths), canal.canal


# Irrigation after every instrument, the small one after every larger: textbooks, from memory.
@every_case
def test_every_instrument_is_followed_by_irrigation_and_a_larger_one_by_the_small_one(name: str, where: str) -> None:
    for canal in planned(name, where).canals:
        for step, rinsed, again in zip(way := steps(canal), way[1:], way[2:], strict=False):
            if step.action is Action.INSTRUMENT:
                assert rinsed.action is Action.IRRIGATE, (canal.canal, step.id)
                small = (step.instrument or "").startswith(("06", "08", "10"))
                assert small or again.action is Action.RECAPITULATE, (canal.canal, step.id)


# Nothing is done twice running: common practice.
@every_case
def test_no_step_repeats_the_one_before(name: str, where: str) -> None:
    for canal in planned(name, where).canals:
        for step, other in pairwise(steps(canal)):
            assert done(step) != done(other), (canal.canal, other.id)


def done(step: Step) -> tuple[object, ...]:
    return step.action, step.instrument, step.stop_um, step.irrigant


# Shaped, rinsed, dried, cone, its image, a sign-off, filled: textbooks, from memory.
@every_case
def test_a_canal_is_finished_in_order(name: str, where: str) -> None:
    for canal in planned(name, where).canals:
        if canal.final_size is None:
            assert not any(step.action in (Action.FIT_CONE, Action.FILL) for step in steps(canal))
            continue
        way = [step.action for step in steps(canal)]
        end = [Action.DRY, Action.FIT_CONE, Action.IMAGE, Action.SIGN_OFF, Action.FILL, Action.IMAGE, Action.SIGN_OFF]
        assert way[-7:] == end
        assert way[-8] is Action.IRRIGATE
        cone = next(step for step in steps(canal) if step.action is Action.FIT_CONE)
        assert cone.say.startswith(f"Cone of size {canal.final_size},")
        assert canal.obturation is not None
        assert canal.obturation.master_cone == canal.final_name


# Before a sign-off the image that it is about; what has to be in the canal for it is said: common practice, no source.
@every_case
def test_every_image_says_what_it_is_to_show(name: str, where: str) -> None:
    for canal, step in every_step(planned(name, where)):
        if step.action is Action.IMAGE:
            shows = ("back at its stop", "in place", "as far as it goes")
            assert any(each in step.say for each in shows), (canal.canal, step.id)


# Hypochlorite in patients, then EDTA and hypochlorite again; water alone in a block: guidelines, from memory.
@every_case
def test_every_canal_is_rinsed_with_what_its_setting_asks_for(name: str, where: str) -> None:
    for canal in planned(name, where).canals:
        used = [step.irrigant for step in steps(canal) if step.irrigant]
        if where == BENCH:
            assert set(used) == {"water" if planned(name, where).setting is Setting.BLOCK else "saline"}
        elif canal.final_size is not None:
            assert used[-2:] == ["edta", "sodium_hypochlorite"]
            assert set(used[:-2]) == {"sodium_hypochlorite"}


# One exposure shows several canals and one sign-off is about them: all have to have come there. A programme rule.
@every_case
def test_at_the_tray_all_canals_are_explored_before_their_lengths_are_taken(name: str, where: str) -> None:
    phases = [step.phase for step in planned(name, where).tray.steps]
    explored = phases.count("explore")
    assert phases[:explored] == ["explore"] * explored
    at_length = {canal for step in planned(name, where).tray.steps[:explored] for canal in step.canals}
    assert at_length == {canal.canal for canal in planned(name, where).canals}


# Sentences: said in full, once, without a name of the program's own.
@every_case
def test_every_step_says_what_to_do(name: str, where: str) -> None:
    for canal, step in every_step(planned(name, where)):
        assert step.say.endswith("."), (canal.canal, step.id)
        assert len(step.say) <= 200, (canal.canal, step.id)
        assert not {"None", "_", "  "} & {step.say[i : i + n] for n in (1, 2, 4) for i in range(len(step.say))}


def test_a_wide_canal_is_finished_once_its_size_has_been_chosen() -> None:
    """The kit's largest is chosen here, whatever a supervisor would: the rest of the order of work follows."""
    made = plan(chosen(CASES["molar with an oval distal canal"](), "D", 50))
    distal = next(canal for canal in made.canals if canal.canal == "D")
    assert distal.final_size == 50
    assert not distal.withheld
