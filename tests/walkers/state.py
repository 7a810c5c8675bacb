"""Whether the phone's walker comes to the states that were folded here, or told by the server."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from cases.domain.events.event import CourseEvent
from cases.domain.progress.case_state import CaseState, Sheets
from planning.foundation.encoding import encode
from planning.techniques.technique import Setting
from tests.walkers.phone import holds

State = dict[str, Any]


def state_of(course: CaseState) -> State:
    """All that a course says, as plain values; what is read of one on the phone stands in same-state.test.ts."""
    canals = course.canals.items()
    return {
        "canals": {name: [progress.walk.at, progress.state, progress.walk.stop_um()] for name, progress in canals},
        "sign_offs": {
            name: [progress.asking, progress.coming, progress.asked_by, sorted(progress.reopened)]
            for name, progress in canals
        },
        "out_of_course": course.out_of_course,
        "undone": sorted(course.undone),
        "halted_by": course.halted_by,
        "saline_by": course.saline_by,
        "emergencies": [
            [emergency.id, emergency.what, emergency.corrected_by, emergency.coming_by]
            for emergency in course.emergencies.open
        ],
        "missing": list(course.missing),
        "visit": [course.visit.closed, course.visit.on_site, course.visit.dam],
        "check_due": course.visit.check_due,
        "turned_to": course.turned_to,
        "taken_over": course.taken_over.by,
        "revoked_by": course.revoked_by,
        "plan": course.plan,
    }


def for_the_phone(event: CourseEvent) -> dict[str, Any]:
    return {
        **{name: getattr(event, name) for name in ("id", "kind", "actor", "plan", "canal", "node")},
        "payload": encode(event.payload),
        "notChecked": event.not_checked or "",
    }


def agrees(
    plans: Mapping[str, Sheets], states: Sequence[tuple[Setting, Sequence[CourseEvent], State]], *, folder: Path
) -> None:
    """Has the phone fold the events and hold what comes out against each state. Raises CalledProcessError."""
    sent = {
        "plans": {plan: {name: encode(sheet) for name, sheet in sheets.items()} for plan, sheets in plans.items()},
        "states": [
            {"setting": setting, "events": [for_the_phone(event) for event in events], "expect": state}
            for setting, events, state in states
        ],
    }
    holds("same-state.test.ts", sent, folder=folder)
