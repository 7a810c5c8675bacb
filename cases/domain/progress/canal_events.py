"""What an event of one canal changes, where the plan in force was on the screen."""

from __future__ import annotations

from typing import assert_never

from cases.domain.events import payloads as p
from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import NotChecked
from cases.domain.progress.canal_progress import CanalProgress, CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.progress.plan_events import release
from planning.run_sheet.graph import Action, Exit, Step
from planning.run_sheet.walk import StepRefused

OfPlan = (
    p.StepPayload
    | p.AnswerPayload
    | p.ReadingPayload
    | p.SignOffPayload
    | p.TurnPayload
    | p.PausePayload
    | p.ResumePayload
    | p.ReleasePayload
    | p.AskPayload
    | p.ComePayload
)
"""Counts only for the plan that was on the screen."""


def take(course: CaseState, canal: CanalProgress, event: CourseEvent, payload: OfPlan) -> OutOfCourse | None:
    """Moves the canal by one event of the plan in force; why where the event moves nothing."""
    match payload:
        case p.StepPayload():
            return _step(course, canal, event, payload)
        case p.SignOffPayload():
            return _sign_off(canal, event, payload)
        case p.AnswerPayload():
            return _answer(canal, payload)
        case p.ResumePayload():
            return _resume(canal, event)
        case p.ReadingPayload():
            canal.to_plan = True
        case p.PausePayload():
            # A reason that holds the canal already, an instrument past its stop for one, is not written over.
            canal.held = canal.held or CanalState.PAUSED
        case p.TurnPayload():
            course.turned_to = event.canal
        case p.AskPayload():
            canal.asking = event.id
        case p.ComePayload():
            canal.coming = event.id
        case p.ReleasePayload():
            release(course, payload)
        case _:
            assert_never(payload)
    return None


def take_of_another_plan(canal: CanalProgress | None, payload: OfPlan) -> OutOfCourse | None:
    """An event that was recorded on the screen of another plan. A pause holds all the same. Work that the plan in force
    could not know of is set out of course, and its canal has to be planned anew."""
    if canal is not None and isinstance(payload, p.PausePayload):
        canal.held = canal.held or CanalState.PAUSED
        return None
    if canal is not None and isinstance(payload, p.StepPayload | p.ReadingPayload):
        canal.to_plan = True
    return OutOfCourse.OTHER_PLAN


def _step(course: CaseState, canal: CanalProgress, event: CourseEvent, step: p.StepPayload) -> OutOfCourse | None:
    if why := _shut(course, canal, event):
        return why
    node = canal.walk.node
    if node.id != event.node:
        return OutOfCourse.OTHER_STEP
    if canal.state in (CanalState.HOLD_POINT, CanalState.WAITS):
        return OutOfCourse.WITHHELD
    stop_um = canal.walk.stop_um()  # of this step: once it is left, the walk has the next one's
    if why := _leave(canal, step.exit, step.depth_um):
        return why
    # The work has gone on from the sign-off: it stays, whatever becomes of the image that it rested on.
    canal.sign_off = None
    if isinstance(node, Step) and node.action is Action.IMAGE:
        canal.add_image(step.image_id)
    # The step counts, as it did happen; what holds the canal is the question why.
    if step.depth_um is not None and stop_um is not None and step.depth_um > stop_um:
        canal.held, canal.asked_by = CanalState.PAST_STOP, event.id
    return None


def _shut(course: CaseState, canal: CanalProgress, event: CourseEvent) -> OutOfCourse | None:
    """Why no step counts in the canal now; None where it is open."""
    if missing := course.missing_but(halted=course.emergencies.halts(event.id)):
        return OutOfCourse(missing[0])
    # Deeper than any tooth: kept, but no stop may come to rest on it.
    if event.not_checked is NotChecked.DEPTH:
        return OutOfCourse.NOT_CHECKED
    shut = canal.held is not None or canal.to_plan or not canal.released
    return OutOfCourse.WITHHELD if shut else None


def _leave(canal: CanalProgress, exit_: Exit, depth_um: int | None = None) -> OutOfCourse | None:
    """Leaves the present step. What was asked of a supervisor is settled once the canal goes on."""
    try:
        canal.walk.leave(exit_, depth_um)
    except StepRefused:
        return OutOfCourse.NO_SUCH_EXIT
    canal.asking = canal.coming = None
    return None


def _sign_off(canal: CanalProgress, event: CourseEvent, payload: p.SignOffPayload) -> OutOfCourse | None:
    """Answers the hold point that the event names. Unlike a step, a sign-off counts during a halt too."""
    node = canal.walk.node
    if not isinstance(node, Step) or node.action is not Action.SIGN_OFF or node.id != event.node:
        return OutOfCourse.OTHER_STEP
    if why := _leave(canal, Exit(payload.exit)):
        return why
    canal.signed(event.id, approved=payload.exit == "approved")
    return None


def _answer(canal: CanalProgress, payload: p.AnswerPayload) -> OutOfCourse | None:
    """A stop that had slipped lets the canal go on; any other cause is for the supervisor."""
    if canal.held is not CanalState.PAST_STOP or payload.asks != canal.asked_by:
        return OutOfCourse.NOTHING_ASKED
    canal.asked_by = None
    canal.held = None if payload.cause == "stop_moved" else CanalState.PAUSED
    return None


def _resume(canal: CanalProgress, event: CourseEvent) -> OutOfCourse | None:
    """Lets the canal go on, at the step that the event names or else where it stood."""
    # It waits for new stops, and those come with a plan, not with a supervisor's word.
    if canal.held is None and canal.to_plan:
        return OutOfCourse.WITHHELD
    if event.node and not canal.walk.go_to(event.node):
        return OutOfCourse.OTHER_STEP
    if event.node:
        canal.sign_off = None
    canal.held = canal.asked_by = canal.asking = canal.coming = None
    return None
