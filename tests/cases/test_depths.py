"""What was felt at the chair, as later plans learn from it."""

from __future__ import annotations

from typing import Any

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import AnswerPayload, EventPayload, ResumePayload, StepPayload, UndoPayload
from cases.domain.progress.depths import recorded_depths
from planning.contract.plan_input import RecordedDepth
from planning.run_sheet.graph import Exit

STEP, STOP_UM = "descending/40-04", 19_500


def step(id_: str, depth_um: int | None, canal: str = "MB1", **more: Any) -> CourseEvent:
    payload = StepPayload(exit=Exit.SHORT, depth_um=depth_um, stop_um=STOP_UM)
    return happened(id_, payload, canal=canal, node=STEP, **more)


def happened(id_: str, payload: EventPayload, **more: Any) -> CourseEvent:
    fields: dict[str, Any] = {"actor": "priya", "plan": "a", "canal": "MB1"}
    return CourseEvent(id=id_, payload=payload, **(fields | more))


def depths_mm(*events: CourseEvent) -> list[float]:
    return [each.depth_mm for each in recorded_depths(events).get("MB1", ())]


def test_depths_are_told_by_canal_in_the_order_of_work() -> None:
    by_canal = recorded_depths([step("1", 12_000), step("2", 11_500, canal="P"), step("3", 12_500, plan="b")])
    assert by_canal == {
        "MB1": (
            RecordedDepth(node=STEP, depth_mm=12.0, stop_mm=19.5),
            RecordedDepth(node=STEP, depth_mm=12.5, stop_mm=19.5),
        ),
        "P": (RecordedDepth(node=STEP, depth_mm=11.5, stop_mm=19.5),),
    }


def test_a_step_without_a_depth_tells_none() -> None:
    assert recorded_depths([step("1", None)]) == {}


def test_what_was_undone_is_left_out() -> None:
    undo = happened("2", UndoPayload(undoes="1"))
    assert depths_mm(step("1", 12_000), undo, step("3", 13_000)) == [13.0]


def test_past_the_stop_stays_until_it_is_settled() -> None:
    past = step("1", 20_000)
    not_known = happened("2", AnswerPayload(asks="1", cause="not_known"))
    assert depths_mm(past, not_known) == [20.0]
    slipped = happened("2", AnswerPayload(asks="1", cause="stop_moved"))
    assert depths_mm(step("0", 12_000), past, slipped) == [12.0]


def test_a_supervisor_who_lets_the_canal_go_on_settles_it() -> None:
    on = happened("2", ResumePayload(reason="seen"), actor="vale")
    assert depths_mm(step("0", 12_000), step("1", 20_000), on, step("3", 13_000)) == [12.0, 13.0]
    elsewhere = happened("2", ResumePayload(reason="seen"), actor="vale", canal="P")
    assert depths_mm(step("1", 20_000), elsewhere) == [20.0]
