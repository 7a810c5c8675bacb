"""What a list says of work at the chair, worked out by hand on a canal of three steps."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import ReplanPayload, StepPayload, UndoPayload
from cases.domain.progress import summary
from cases.domain.progress.canal_progress import CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.course import fold
from cases.domain.progress.summary import OutOfBand
from planning.depth.last_depth import Ahead, Awaited
from planning.run_sheet.graph import Action, End, Exit, RunSheet, Step, Target
from planning.techniques.technique import Setting

SIZE_25 = Step(
    id="shape/25",
    action=Action.INSTRUMENT,
    phase="shape",
    exits={Exit.REACHED: "sign", Exit.SHORT: "shape/20"},
    instrument="25/.04 continuous",
    stop_um=19_500,
    target=Target.TO_RESISTANCE,
)
SIZE_20 = Step(
    id="shape/20",
    action=Action.INSTRUMENT,
    phase="shape",
    exits={Exit.REACHED: "shape/25", Exit.SHORT: "shape/25"},
    instrument="20/.04 continuous",
    stop_um=19_500,
    target=Target.TO_RESISTANCE,
)
SIGN = Step(id="sign", action=Action.SIGN_OFF, phase="shape", exits={Exit.APPROVED: "end"}, hold_point="final_size")
SHEET = RunSheet(
    canal="P",
    start="shape/25",
    nodes={node.id: node for node in (SIZE_25, SIZE_20, SIGN, End(id="end", outcome="finished"))},
)
NAMES = {"25/.04 continuous": "25/.04", "20/.04 continuous": "20/.04"}
FIRST_TIME = Awaited(
    node="shape/25", pass_number=1, low_mm=15.0, high_mm=17.0, limits_mm=(14.0, 18.0), as_if_straight=False
)
SECOND_TIME = replace(FIRST_TIME, pass_number=2, low_mm=17.5, high_mm=18.5, limits_mm=(17.0, 19.0), as_if_straight=True)
BANDS = {"P": Ahead(awaited=(FIRST_TIME, SECOND_TIME))}


def step(id_: str, node: str, exit_: Exit, depth_um: int | None = None, **more: Any) -> CourseEvent:
    fields: dict[str, Any] = {"actor": "student", "plan": "A", "canal": "P"} | more
    return CourseEvent(id=id_, node=node, payload=StepPayload(exit=exit_, depth_um=depth_um), **fields)


def course(*events: CourseEvent) -> CaseState:
    in_force = CourseEvent(id="0", actor="v", plan="A", payload=ReplanPayload(replaces="A"))
    return fold({"A": {"P": SHEET}}, [in_force, *events], setting=Setting.EXTRACTED)


def outside(*events: CourseEvent) -> OutOfBand | None:
    (canal,) = summary.canals(course(*events), events, BANDS)
    return canal.out_of_band


FIRST = step("1", "shape/25", Exit.SHORT, 16_000)
SMALLER = step("2", "shape/20", Exit.SHORT, 18_000)


def test_a_depth_is_held_against_the_band_of_its_own_visit() -> None:
    assert outside(FIRST) is None
    # 16.0 was as expected the first time; the second time 17.5 to 18.5 is.
    assert outside(FIRST, SMALLER, step("3", "shape/25", Exit.SHORT, 16_000)) == OutOfBand(
        depth_um=16_000, low_um=17_500, high_um=18_500, as_if_straight=True
    )


def test_outside_its_band_a_depth_is_as_expected_up_to_the_limits() -> None:
    for depth_um, expected in ((13_999, False), (14_000, True), (14_999, True), (18_000, True), (18_001, False)):
        assert (outside(step("1", "shape/25", Exit.SHORT, depth_um)) is None) is expected


def test_only_the_last_depth_of_a_canal_counts() -> None:
    low = step("1", "shape/25", Exit.SHORT, 13_000)
    assert outside(low) is not None
    # Nothing is expected of the smaller one: no band, no remark.
    assert outside(low, SMALLER) is None


def test_what_was_undone_or_did_not_fit_is_no_remark() -> None:
    low = step("1", "shape/25", Exit.SHORT, 13_000)
    undo = CourseEvent(id="2", actor="student", plan="A", canal="P", payload=UndoPayload(undoes="1"))
    assert outside(low, undo) is None
    assert outside(step("1", "elsewhere", Exit.SHORT, 1_000)) is None


def test_the_step_in_hand_is_that_of_the_canal_the_student_turned_to() -> None:
    events = (FIRST,)
    step_in_hand = summary.in_hand(course(*events), events, "student", NAMES)
    assert step_in_hand is not None
    assert (step_in_hand.canal, step_in_hand.node, step_in_hand.instrument, step_in_hand.action) == (
        "P",
        "shape/20",
        "20/.04",
        Action.INSTRUMENT,
    )
    assert summary.in_hand(course(*events), events, "somebody else", NAMES) is None


def test_the_second_time_round_is_another_step_in_hand() -> None:
    events = (FIRST, SMALLER)
    step_in_hand = summary.in_hand(course(*events), events, "student", NAMES)
    assert step_in_hand is not None
    assert (step_in_hand.node, step_in_hand.pass_number) == ("shape/25", 2)


def test_a_canal_at_its_hold_point_says_what_it_waits_for() -> None:
    events = (step("1", "shape/25", Exit.REACHED),)
    (canal,) = summary.canals(course(*events), events, BANDS)
    assert (canal.state, canal.hold_point) == (CanalState.HOLD_POINT, "final_size")
