"""Where the work on a tooth stands: the fold of everything that was recorded, in order.

A clinical fact is never refused for coming at the wrong moment: one that does not fit is set *out of course*, with the
reason, and moves nothing. The phone folds the same events by the same rules; both hold to one file of worked cases.

Written by hand: a state-machine library refuses a move that does not fit, and none exists in both languages.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from cases.domain.events import payloads as p
from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind
from cases.domain.events.registry import OF_WORK
from cases.domain.events.visit_payloads import ClosePayload, DamPayload, OnSitePayload, ReopenPayload
from cases.domain.progress import canal_events, plan_events, visit_events
from cases.domain.progress.canal_events import OfPlan
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.progress.undone import taken_back
from cases.domain.progress.visit import Visit
from cases.domain.progress.visit_events import OfVisit
from planning.techniques.technique import Setting


def fold(plans: Mapping[str, Sheets], events: Iterable[CourseEvent], *, setting: Setting) -> CaseState:
    """The state of a tooth after all its events. Only events put a plan into force; before the first one does, none is.

    `plans` holds the run sheets of every version that was ever in force, by hash.
    """
    every = list(events)
    gone, not_to_undo = taken_back(every)
    course = CaseState(visit=Visit(setting=setting), undone=tuple(sorted(gone)))
    course.out_of_course.update(dict.fromkeys(not_to_undo, OutOfCourse.NOT_TO_UNDO))
    go_on(course, plans, (event for event in every if event.kind is not EventKind.UNDO and event.id not in gone))
    return course


def go_on(course: CaseState, plans: Mapping[str, Sheets], events: Iterable[CourseEvent]) -> None:
    """Moves the course on by these events. None of them may be an undo."""
    for event in events:
        why = _take(course, plans, event)
        if why is not None:
            course.out_of_course[event.id] = why


def _take(course: CaseState, plans: Mapping[str, Sheets], event: CourseEvent) -> OutOfCourse | None:
    """Moves the course by one event; says why where the event moves nothing."""
    match event.payload:
        case p.NotePayload() | p.InspectedPayload() | p.IrrigatedPayload() | p.WantedPayload() | p.UndoPayload():
            return None  # where the work stands is the same after them; what an undo takes back was left out before
        case p.ImagePayload(image_id=image_id):
            if event.canal in course.canals:
                course.canals[event.canal].add_image(image_id)
            return None
        case p.EmergencyPayload() as emergency:
            course.emergencies.tell(event.id, emergency)
            return None
        case p.CorrectedPayload() as correction:
            return None if course.emergencies.correct(event.id, correction) else OutOfCourse.NOTHING_ASKED
        case p.ComePayload() if not event.canal:
            course.emergencies.come(event.id)
            return None
        case p.ReplanPayload() as replan:
            return plan_events.put_into_force(course, plans, event, replan)
        case p.RevokedPayload():
            return plan_events.revoke(course, event)
        case p.StruckPayload() as struck:
            return plan_events.strike(course, event, struck)
        case p.TakeOverPayload() | p.GiveBackPayload():
            return None if course.taken_over.happened(event.kind, event.actor) else OutOfCourse.NOTHING_ASKED
        case payload:
            return _of_who_works(course, event, payload)


def _of_who_works(course: CaseState, event: CourseEvent, payload: OfVisit | OfPlan) -> OutOfCourse | None:
    """An event of the visit, of the whole tooth or of one canal; work counts only from somebody who works the case."""
    if event.kind in OF_WORK and event.actor in course.taken_over.ended:
        return OutOfCourse.NOT_WORKING
    if isinstance(payload, ClosePayload | ReopenPayload | OnSitePayload | DamPayload):
        return visit_events.take(course, event, payload)
    canal = course.canals.get(event.canal)
    if event.plan != course.plan:
        return canal_events.take_of_another_plan(canal, payload)
    if event.canal == "":
        return _tooth(course, event, payload)
    return OutOfCourse.NO_CANAL if canal is None else canal_events.take(course, canal, event, payload)


def _tooth(course: CaseState, event: CourseEvent, payload: OfPlan) -> OutOfCourse | None:
    """An event that names no canal and holds for the whole tooth."""
    moved = True
    match payload:
        case p.ResumePayload():
            moved = course.emergencies.resume(payload)
        case p.SignOffPayload():
            moved = course.visit.sign_off(event.node, payload.exit)
        case p.ReleasePayload():
            plan_events.release(course, payload)
        case p.AskPayload():
            pass
        case _:
            return OutOfCourse.NO_CANAL
    return None if moved else OutOfCourse.NOTHING_ASKED
