"""What an event of the visit changes: who is in the room, the dam, the end of a visit and the next one."""

from __future__ import annotations

from typing import assert_never

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.events.visit_payloads import ClosePayload, DamPayload, OnSitePayload, ReopenPayload
from cases.domain.progress.canal_progress import CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.out_of_course import OutOfCourse

OfVisit = ClosePayload | ReopenPayload | OnSitePayload | DamPayload
"""Concerns the room and the whole tooth, whatever plan was on the screen."""


def take(course: CaseState, event: CourseEvent, payload: OfVisit) -> OutOfCourse | None:
    """Moves the visit by one event, whatever plan was on the screen; why where the event moves nothing."""
    visit = course.visit
    match payload:
        case ClosePayload():
            moved = visit.close()
            if moved:
                course.taken_over.happened(EventKind.CLOSE, event.actor)
        case ReopenPayload():
            return _reopen(course, event, payload)
        case OnSitePayload() if event.not_checked is NotChecked.ROOM:
            return OutOfCourse.NOT_CHECKED
        case OnSitePayload():
            moved = visit.name(payload.supervisor_id)
        case DamPayload():
            moved = visit.isolate(payload.state)
        case _:
            assert_never(payload)
    return None if moved else OutOfCourse.CLOSED


def _reopen(course: CaseState, event: CourseEvent, payload: ReopenPayload) -> OutOfCourse | None:
    """Opens the next visit. An unfinished canal that was not found as it was left is withheld.

    A reference point that has gone counts even where another phone had opened the visit before.
    """
    unfinished = {name: canal for name, canal in course.canals.items() if canal.state is not CanalState.FINISHED}
    gone = {check.canal for check in payload.found if check.reference_point} & set(unfinished)
    for name in gone:
        unfinished[name].to_plan = True
    # Where the named supervisor is not known here the visit opens all the same, with nobody named in the room.
    on_site = "" if event.not_checked is NotChecked.ROOM else payload.supervisor_id
    if not course.visit.reopen(on_site, protected=payload.protected):
        return None if gone else OutOfCourse.NOTHING_ASKED
    for name, canal in unfinished.items():
        if name not in gone.union(payload.as_left) and canal.held is None:
            canal.held = CanalState.TO_CHECK
    return None
