"""What a supervisor lets pass with a reason, and what nobody may."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planning.contract.cautions import catalogue
from planning.contract.plan_input import Irrigant, Junction, Override, PlanInput, RecordedDepth
from planning.contract.plan_value import CanalPlan, Caution, Plan, Severity
from planning.foundation.bounds import within
from planning.foundation.errors import OverrideNotPossible
from planning.foundation.tables import published
from planning.run_sheet.graph import Step
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from planning.work.joined import MAIN_FIRST, UNFINISHED
from tests.draws import draws
from tests.planning.given import block, four_canals, molar


def override_of(code: str, canal: str | None, reason: str = "seen on the image") -> tuple[Override, ...]:
    return (Override(code=code, canal=canal, reason=reason),)


def mb1(overrides: tuple[Override, ...] = (), **more: Any) -> PlanInput:
    canals = four_canals()
    return molar(canals=(replace(canals[0], **more), *canals[1:]), overrides=overrides)


def canal_of(planned: Plan, name: str) -> CanalPlan:
    return next(canal for canal in planned.canals if canal.canal == name)


def caution_of(planned: Plan, code: str) -> Caution:
    return next(caution for caution in planned.cautions if caution.code == code)


def phases_of(canal: CanalPlan) -> set[str]:
    return {node.phase for node in canal.run_sheet.nodes.values() if isinstance(node, Step)}


# 1.0 and 1.5 mm: the society's difficulty form; that a supervisor opens the canal is a programme rule.
def test_a_canal_that_a_supervisor_must_open_stays_closed_and_is_shown_whole() -> None:
    planned = plan(mb1(apex_mm=1.2))
    canal = canal_of(planned, "MB1")
    assert ([w.code for w in canal.withheld], phases_of(canal)) == (["apex-wide"], set())
    assert not canal.provisional
    assert "MB1" in {stop.canal for row in planned.stop_table for stop in row.stops}
    assert phases_of(canal_of(planned, "DB")) >= {"glide-path", "ascending", "cone"}


def test_once_a_supervisor_lets_it_pass_the_canal_opens_and_the_caution_stays_with_the_reason() -> None:
    opened = plan(mb1(apex_mm=1.2, overrides=override_of("apex-wide", "MB1")))
    canal, bar = canal_of(opened, "MB1"), caution_of(opened, "apex-wide")
    assert (canal.withheld, bar.severity, bar.overridden) == ((), Severity.STOP, "seen on the image")
    assert phases_of(canal) == phases_of(canal_of(plan(mb1()), "MB1"))


def test_an_override_is_for_its_own_canal() -> None:
    canals = tuple(replace(canal_input, apex_mm=1.2) for canal_input in four_canals())
    planned = plan(molar(canals=canals, overrides=override_of("apex-wide", "DB")))
    assert [c.canal for c in planned.canals if not c.withheld] == ["DB"]


def test_an_accepted_guess_of_the_junction_opens_the_joining_canal_to_it() -> None:
    canals = four_canals(junction=Junction(from_terminus_mm=3.0, method="image_estimate"))
    planned = plan(molar(canals=canals, overrides=override_of("junction-estimated", "MB2")))
    # 19.0 - 3.0, by hand.
    assert (canal_of(planned, "MB2").end_mm, canal_of(planned, "MB2").withheld) == (16.0, ())


def test_what_was_felt_past_the_stop_closes_the_canal_until_a_supervisor_lets_it_go_on() -> None:
    past = (RecordedDepth(node="glide-path/15-02", depth_mm=20.0),)
    closed = plan(mb1(felt=past))
    assert ([w.code for w in canal_of(closed, "MB1").withheld], closed.canals[2].withheld) == (["past-the-stop"], ())
    opened = plan(mb1(felt=past, overrides=override_of("past-the-stop", "MB1")))
    assert not canal_of(opened, "MB1").withheld


def test_a_blocked_canal_keeps_its_glide_path_open_and_nothing_that_shapes() -> None:
    stuck = (RecordedDepth(node="descending/40-04/recapitulate", depth_mm=18.0),) * 2
    canal = canal_of(plan(mb1(felt=stuck)), "MB1")
    assert phases_of(canal) == {"explore", "length", "glide-path"}
    assert canal.withheld[0].from_phase == "coronal-flaring"


NEVER = [
    (molar(setting=Setting.CLINIC), "isolation-missing", None),
    (block(choices=replace(block().choices, irrigant=Irrigant.SODIUM_HYPOCHLORITE)), "hypochlorite-in-block", None),
    (molar(), "length-unsettled", "MB1"),
    (molar(), "length-missing", "MB1"),
    (molar(), "junction-missing", "MB2"),
]


@pytest.mark.parametrize(("asked", "code", "canal"), NEVER, ids=[case[1] for case in NEVER])
def test_what_nobody_may_let_pass_is_refused(asked: PlanInput, code: str, canal: str | None) -> None:
    with pytest.raises(OverrideNotPossible) as refused:
        plan(replace(asked, overrides=override_of(code, canal)))
    assert refused.value.pointer == ("overrides", 0, "code")


@pytest.mark.parametrize(
    ("overrides", "pointer"),
    [
        (override_of("no-such-caution", None), ("overrides", 0, "code")),
        (override_of("curve-severe", "MB1"), ("overrides", 0, "code")),
        (override_of("apex-wide", "MB9"), ("overrides", 0, "canal")),
        (override_of("apex-wide", "MB1", reason="  "), ("overrides", 0, "reason")),
        (override_of("apex-wide", "MB1") * 2, ("overrides", 1)),
    ],
    ids=["unknown", "no stop", "no such canal", "no reason", "twice"],
)
def test_an_override_that_could_never_count_is_refused_with_its_place(
    overrides: tuple[Override, ...], pointer: tuple[str | int, ...]
) -> None:
    with pytest.raises(OverrideNotPossible) as refused:
        plan(mb1(apex_mm=1.2, overrides=overrides))
    assert refused.value.pointer == pointer


def test_an_override_whose_caution_went_away_does_nothing_and_says_so() -> None:
    planned = plan(mb1(overrides=override_of("apex-wide", "MB1")))
    note = caution_of(planned, "override-unused")
    assert (note.severity, note.canal) == (Severity.NOTE, "MB1")
    assert planned.canals == plan(mb1()).canals


def test_only_stops_may_be_overridden_and_every_stop_withholds() -> None:
    entries = catalogue().values()
    # That a joining canal is filled before its partner can be is a supervisor's to decide; nothing is wrong with it.
    assert {entry.code for entry in entries if entry.may_override and entry.severity is not Severity.STOP} == {
        UNFINISHED
    }
    withholding = {entry.code for entry in entries if entry.withholds}
    # An estimate is nobody's fault, and a canal that was not found is no work: neither is a stop.
    assert {entry.code for entry in entries if entry.severity is Severity.STOP} == withholding - {
        "length-estimated",
        "canal-not-found",
        # These say that another canal is in the way.
        MAIN_FIRST,
        UNFINISHED,
    }


@pytest.mark.parametrize("key", [entry.row for entry in catalogue().values() if entry.row])
def test_the_figure_a_caution_is_held_against_exists(key: str) -> None:
    assert key in published()


LONGEST_MM = within("depth").most  # a depth beyond it is a typing error and refused
STEPS = sorted(id_ for id_, node in canal_of(plan(mb1()), "MB1").run_sheet.nodes.items() if isinstance(node, Step))


@settings(max_examples=draws(60))
@given(
    node_depths=st.lists(st.tuples(st.sampled_from([*STEPS, "another/step"]), st.floats(0, LONGEST_MM)), max_size=12)
)
def test_whatever_was_felt_the_plan_is_made_and_what_stops_it_is_left_out_and_can_be_opened(
    node_depths: list[tuple[str, float]],
) -> None:
    depths = tuple(RecordedDepth(node=node, depth_mm=round(depth_mm, 2)) for node, depth_mm in node_depths)
    planned = plan(mb1(felt=depths))
    stops = {c.code for c in planned.cautions if c.canal == "MB1" and c.severity is Severity.STOP}
    canal = canal_of(planned, "MB1")
    assert stops == {w.code for w in canal.withheld}
    assert not phases_of(canal) & ({"descending", "ascending", "cone"} if stops else set())
    # MB2 joins MB1: it waits for it.
    waits = {w.code for c in planned.canals if c.canal == "MB2" for w in c.withheld}
    assert waits <= {MAIN_FIRST, UNFINISHED}
    assert bool(waits) == bool(stops)
    assert [c.withheld for c in planned.canals if c.canal in ("DB", "P")] == [()] * 2
    opened = plan(mb1(felt=depths, overrides=tuple(o for code in stops for o in override_of(code, "MB1"))))
    assert [c.withheld for c in opened.canals] == [()] * 4
