"""Where the work on a tooth stands: the fold of everything that was recorded, in order.

A clinical fact is never refused for coming at the wrong moment: one that does not fit is set *out of course*, with the
reason, and moves nothing. The phone folds the same events by the same rules; both hold to one file of worked cases.

Written by hand: a state-machine library refuses a move that does not fit, and none exists in both languages.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import assert_never

from cases.domain.events import payloads as p
from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.events.registry import OF_WORK
from cases.domain.events.visit_payloads import ClosePayload, DamPayload, OnSitePayload, ReopenPayload
from cases.domain.progress.canal_progress import CanalProgress as CanalProgress
from cases.domain.progress.canal_progress import CanalState as CanalState
from cases.domain.progress.emergencies import Emergencies
from cases.domain.progress.out_of_course import OutOfCourse as OutOfCourse
from cases.domain.progress.put_right import of_an_image
from cases.domain.progress.taken_over import TakenOver
from cases.domain.progress.undone import taken_back
from cases.domain.progress.visit import Prerequisite, Visit
from planning.run_sheet.graph import Action, Do, Exit, RunSheet
from planning.run_sheet.walk import StepRefused, Walk
from planning.techniques.technique import Setting

Sheets = Mapping[str, RunSheet]
"""Run sheets of one plan by canal."""


OfVisit = ClosePayload | ReopenPayload | OnSitePayload | DamPayload
"""Concerns the room and the whole tooth, whatever plan was on the screen."""
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


@dataclass(slots=True)
class CaseState:
    """The whole tooth. Canals without a run sheet are not in it."""

    visit: Visit
    plan: str = ""
    """Hash of the plan in force; empty before there was one."""
    canals: dict[str, CanalProgress] = field(default_factory=dict)
    revoked_by: str | None = None
    """The event by which the approval of the plan in force was withdrawn."""
    emergencies: Emergencies = field(default_factory=Emergencies)
    turned_to: str = ""
    taken_over: TakenOver = field(default_factory=TakenOver)
    out_of_course: dict[str, OutOfCourse] = field(default_factory=dict)
    undone: tuple[str, ...] = ()

    @property
    def halted_by(self) -> str | None:
        """The emergency that stopped the work."""
        return self.emergencies.halted_by

    @property
    def saline_by(self) -> str | None:
        """The emergency since which every canal is irrigated with saline alone."""
        return self.emergencies.saline_by

    @property
    def missing(self) -> tuple[Prerequisite, ...]:
        """What has to be there before any canal is worked."""
        return self.missing_but(halted=self.halted_by is not None)

    def missing_but(self, *, halted: bool) -> tuple[Prerequisite, ...]:
        """The same, where `halted` says whether the work counts as halted."""
        revoked = (Prerequisite.REVOKED,) if self.revoked_by else ()
        return (*self.visit.missing(halted=halted), *revoked)


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


def _begun(sheets: Sheets) -> dict[str, CanalProgress]:
    canals = {name: CanalProgress(Walk(sheet)) for name, sheet in sheets.items()}
    for canal in canals.values():
        canal.every = canals
    return canals


# --- one event ---------------------------------------------------------------------------------------------------


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
            return _replan(course, plans, event, replan)
        case p.RevokedPayload():
            return _revoked(course, event)
        case p.StruckPayload() as struck:
            return _struck(course, event, struck)
        case p.TakeOverPayload() | p.GiveBackPayload():
            return None if course.taken_over.happened(event.kind, event.actor) else OutOfCourse.NOTHING_ASKED
        case payload:
            return _of_who_works(course, event, payload)


def _of_who_works(course: CaseState, event: CourseEvent, payload: OfVisit | OfPlan) -> OutOfCourse | None:
    """An event of the visit, of the whole tooth or of one canal; work counts only from somebody who works the case."""
    if event.kind in OF_WORK and event.actor in course.taken_over.ended:
        return OutOfCourse.NOT_WORKING
    if isinstance(payload, ClosePayload | ReopenPayload | OnSitePayload | DamPayload):
        return _visit(course, event, payload)
    canal = course.canals.get(event.canal)
    if event.plan != course.plan:
        return _by_another_plan(canal, payload)
    if event.canal == "":
        return _tooth(course, event, payload)
    return OutOfCourse.NO_CANAL if canal is None else _canal(course, canal, event, payload)


def _tooth(course: CaseState, event: CourseEvent, payload: OfPlan) -> OutOfCourse | None:
    """An event that names no canal and holds for the whole tooth."""
    moved = True
    match payload:
        case p.ResumePayload():
            moved = course.emergencies.resume(payload)
        case p.SignOffPayload():
            moved = course.visit.sign_off(event.node, payload.exit)
        case p.ReleasePayload():
            _release(course, payload)
        case p.AskPayload():
            pass
        case _:
            return OutOfCourse.NO_CANAL
    return None if moved else OutOfCourse.NOTHING_ASKED


def _canal(course: CaseState, canal: CanalProgress, event: CourseEvent, payload: OfPlan) -> OutOfCourse | None:
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
            canal.held = canal.held or CanalState.PAUSED
        case p.TurnPayload():
            course.turned_to = event.canal
        case p.AskPayload():
            canal.asking = event.id
        case p.ComePayload():
            canal.coming = event.id
        case p.ReleasePayload():
            _release(course, payload)
        case _:
            assert_never(payload)
    return None


# --- plans -------------------------------------------------------------------------------------------------------


def _replan(
    course: CaseState, plans: Mapping[str, Sheets], event: CourseEvent, payload: p.ReplanPayload
) -> OutOfCourse | None:
    """Puts a plan into force. Its run sheets begin where the work stands; a canal that is held or not released stays
    so."""
    if course.plan not in ("", payload.replaces) or event.plan not in plans:
        return OutOfCourse.OTHER_PLAN
    before = course.canals
    course.plan, course.canals, course.revoked_by = event.plan, _begun(plans[event.plan]), None
    for name in before.keys() & course.canals.keys():
        canal = course.canals[name]
        canal.released = before[name].released
        canal.held, canal.asked_by = before[name].held, before[name].asked_by
        canal.asking, canal.coming = before[name].asking, before[name].coming
    return None


def _revoked(course: CaseState, event: CourseEvent) -> OutOfCourse | None:
    if event.plan != course.plan:
        return OutOfCourse.OTHER_PLAN
    course.revoked_by = event.id
    return None


def _by_another_plan(canal: CanalProgress | None, payload: OfPlan) -> OutOfCourse | None:
    """An event that was recorded on the screen of another plan. A pause holds all the same. Work that the plan in force
    could not know of is set out of course, and its canal has to be planned anew."""
    if canal is not None and isinstance(payload, p.PausePayload):
        canal.held = canal.held or CanalState.PAUSED
        return None
    if canal is not None and isinstance(payload, p.StepPayload | p.ReadingPayload):
        canal.to_plan = True
    return OutOfCourse.OTHER_PLAN


def _release(course: CaseState, payload: p.ReleasePayload) -> None:
    """The last decision says which canals may not be worked; all others may."""
    left_out = {left.canal for left in payload.not_released}
    for name, canal in course.canals.items():
        canal.released = name not in left_out


def _struck(course: CaseState, event: CourseEvent, payload: p.StruckPayload) -> OutOfCourse | None:
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


# --- one canal ---------------------------------------------------------------------------------------------------


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
    canal.sign_off = None
    if isinstance(node, Do) and node.action is Action.IMAGE:
        canal.add_image(step.image_id)
    if step.depth_um is not None and stop_um is not None and step.depth_um > stop_um:
        canal.held, canal.asked_by = CanalState.PAST_STOP, event.id
    return None


def _shut(course: CaseState, canal: CanalProgress, event: CourseEvent) -> OutOfCourse | None:
    """Why no step counts in the canal now; None where it is open."""
    if missing := course.missing_but(halted=course.emergencies.halts(event.id)):
        return OutOfCourse(missing[0])
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
    if not isinstance(node, Do) or node.action is not Action.SIGN_OFF or node.id != event.node:
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
    if canal.held is None and canal.to_plan:
        return OutOfCourse.WITHHELD
    if event.node and not canal.walk.go_to(event.node):
        return OutOfCourse.OTHER_STEP
    if event.node:
        canal.sign_off = None
    canal.held = canal.asked_by = canal.asking = canal.coming = None
    return None


# --- the visit ---------------------------------------------------------------------------------------------------


def _visit(course: CaseState, event: CourseEvent, payload: OfVisit) -> OutOfCourse | None:
    """What is said of the visit holds for the tooth, whatever plan was on the screen."""
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
