"""The course of a tooth, held against the file of worked cases that the phone's walker answers too."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import NotChecked
from cases.domain.events.payloads import EventPayload, ReplanPayload
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.course import fold
from planning.foundation.encoding import Mode, decode, encode
from planning.run_sheet.graph import RunSheet
from planning.techniques.technique import Setting

SHARED = json.loads((Path(__file__).parents[1] / "shared" / "courses.json").read_text(encoding="utf-8"))
CASES = {case["name"]: case for case in SHARED["cases"]}
SHEETS = {name: decode(RunSheet, sheet) for name, sheet in SHARED["sheets"].items()}


def happened(number: int, event: dict[str, Any], canals: list[str]) -> CourseEvent:
    """What the file leaves out: a step by the student `s` on the plan `A` in the first canal."""
    return CourseEvent(
        id=str(number),
        actor=event.get("actor", "s"),
        plan=event.get("plan", "A"),
        canal=event.get("canal", canals[0]),
        node=event.get("node", ""),
        payload=payload({"kind": event.get("kind", "step"), **event.get("payload", {})}),
        not_checked=NotChecked(event["notChecked"]) if "notChecked" in event else None,
    )


def payload(body: dict[str, Any]) -> EventPayload:
    """As a device sends it, and as it is read wherever it is kept."""
    read: EventPayload = decode(EventPayload, body, Mode.KEPT)
    return read


def in_force(plan: str) -> CourseEvent:
    """The first plan is in force: before the events of every case of the file that does not begin with nothing."""
    return CourseEvent(id="0", actor="v", plan=plan, payload=ReplanPayload(replaces=plan))


def course_of(case: dict[str, Any]) -> CaseState:
    plans = {key: {canal: SHEETS[name] for canal, name in canals.items()} for key, canals in case["plans"].items()}
    canals = list(case["plans"]["A"])
    events = [happened(n, event, canals) for n, event in enumerate(case["events"], start=1)]
    if not case.get("from_nothing"):
        events.insert(0, in_force("A"))
    return fold(plans, events, setting=Setting(case.get("setting", "extracted")))


def test_the_files_run_sheets_are_as_the_api_sends_them() -> None:
    assert {name: encode(sheet) for name, sheet in SHEETS.items()} == SHARED["sheets"]


@pytest.mark.parametrize("name", CASES)
def test_worked_case(name: str) -> None:
    case, course = CASES[name], course_of(CASES[name])
    expected = case["expect"]
    assert {
        canal: {"at": progress.walk.at, "state": progress.state, "stop_um": progress.walk.stop_um()}
        for canal, progress in course.canals.items()
    } == expected["canals"]
    assert course.out_of_course == expected.get("out_of_course", {})
    assert list(course.undone) == expected.get("undone", [])
    assert (course.halted_by is not None) == expected.get("halted", False)
    assert (course.saline_by is not None) == expected.get("saline", False)
    if "emergencies" in expected:
        assert [
            {
                "id": emergency.id,
                "what": emergency.what,
                "correctedBy": emergency.corrected_by,
                "comingBy": emergency.coming_by,
            }
            for emergency in course.emergencies.open
        ] == expected["emergencies"]
    asking = {canal: progress.asking for canal, progress in course.canals.items() if progress.asking}
    coming = {canal: progress.coming for canal, progress in course.canals.items() if progress.coming}
    assert (asking, coming) == (expected.get("asking", {}), expected.get("coming", {}))
    assert course.visit.closed == expected.get("closed", False)
    assert course.visit.on_site == expected.get("on_site", "")
    assert course.visit.dam == expected.get("dam")
    assert course.visit.check_due == expected.get("check_due", False)
    assert list(course.missing) == expected.get("missing", [])
    assert course.taken_over.by == expected.get("taken_over", "")
    assert course.turned_to == expected.get("turned_to", "")
    assert course.plan == expected.get("plan", "A")
