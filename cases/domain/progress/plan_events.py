"""Events about plans: one comes into force, its approval is withdrawn, canals are released, a reading is struck."""

from __future__ import annotations

from collections.abc import Mapping

from cases.domain.events import payloads as p
from cases.domain.events.event import CourseEvent
from cases.domain.progress.canal_progress import CanalProgress
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.progress.put_right import of_an_image
from planning.run_sheet.walk import Walk


def put_into_force(
    course: CaseState, plans: Mapping[str, Sheets], event: CourseEvent, payload: p.ReplanPayload
) -> OutOfCourse | None:
    """Puts a plan into force. Its run sheets begin where the work stands; a canal that is held or not released stays
    so."""
    # Another plan has come into force since, or the sheets of this one are not here.
    if course.plan not in ("", payload.replaces) or event.plan not in plans:
        return OutOfCourse.OTHER_PLAN
    before = course.canals
    course.plan, course.canals, course.revoked_by = event.plan, _begun(plans[event.plan]), None
    # What a person has withheld goes on being withheld: a new plan answers none of it.
    for name in before.keys() & course.canals.keys():
        canal = course.canals[name]
        canal.released = before[name].released
        canal.held, canal.asked_by = before[name].held, before[name].asked_by
        canal.asking, canal.coming = before[name].asking, before[name].coming
    return None


def _begun(sheets: Sheets) -> dict[str, CanalProgress]:
    canals = {name: CanalProgress(Walk(sheet)) for name, sheet in sheets.items()}
    # A canal that joins another waits for it, so each has to see all.
    for canal in canals.values():
        canal.every = canals
    return canals


def revoke(course: CaseState, event: CourseEvent) -> OutOfCourse | None:
    if event.plan != course.plan:
        return OutOfCourse.OTHER_PLAN
    course.revoked_by = event.id
    return None


def release(course: CaseState, payload: p.ReleasePayload) -> None:
    """The last decision says which canals may not be worked; all others may."""
    left_out = {left.canal for left in payload.not_released}
    for name, canal in course.canals.items():
        canal.released = name not in left_out


def strike(course: CaseState, event: CourseEvent, payload: p.StruckPayload) -> OutOfCourse | None:
    """A struck reading sends its canal back to planning: the stops of any plan may rest on it.

    No stop rests on an image alone: a length taken from it is struck by an event of its own. But a sign-off that rested
    on a struck image has to be given again.
    """
    if image := of_an_image(payload):
        _image_put_right(course, event.canal, image)
        return None
    if event.canal not in course.canals:
        return OutOfCourse.NO_CANAL
    course.canals[event.canal].to_plan = True
    return None


def _image_put_right(course: CaseState, was: str, image: p.StruckPayload) -> None:
    """A struck image counts in no canal; one that was moved counts in its new canal and no longer in `was`."""
    moved_to = image.moved_to
    for name, canal in course.canals.items():
        if moved_to is None or (name == was and name != moved_to):
            canal.reopen(image.struck)
    if moved_to in course.canals:
        course.canals[moved_to].add_image(image.struck)
