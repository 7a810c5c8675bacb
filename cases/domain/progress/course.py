"""Where the work on a tooth stands: the fold of everything that was recorded, in order.

A clinical fact is never refused for coming at the wrong moment: one that does not fit is set *out of course*, with the
reason, and moves nothing. The phone folds the same events by the same rules; both hold to one file of worked cases.

Written by hand: a library for states refuses a move that does not fit, and there is none that is one in both languages.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from cases.domain.access.who_tells import OF_WORK
from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import MOVES_NOTHING, OF_THE_VISIT, EventKind, NotChecked
from cases.domain.progress.canal_course import CanalCourse as CanalCourse
from cases.domain.progress.canal_course import CanalState as CanalState
from cases.domain.progress.emergencies import OF_AN_EMERGENCY, Emergencies
from cases.domain.progress.out_of_course import OutOfCourse as OutOfCourse
from cases.domain.progress.taken_over import TakenOver
from cases.domain.progress.undone import taken_back
from cases.domain.progress.visit import Prerequisite, Visit
from planning.run_sheet.graph import Action, Do, Exit, RunSheet
from planning.run_sheet.walk import StepRefused, Walk
from planning.techniques.technique import Setting

Sheets = Mapping[str, RunSheet]
"""Run sheets of one plan by canal."""


OF_THE_TOOTH = frozenset({EventKind.RESUME, EventKind.SIGN_OFF, EventKind.RELEASE, EventKind.ASK, EventKind.COME})
"""May come without a canal."""
TAKES_OVER = frozenset({EventKind.TAKE_OVER, EventKind.GIVE_BACK})


@dataclass(slots=True)
class Course:
    """The whole tooth. Canals without a run sheet are not in it."""

    visit: Visit
    plan: str = ""
    """Hash of the plan in force; empty before there was one."""
    canals: dict[str, CanalCourse] = field(default_factory=dict)
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
        """The same, said of a halt as it is told."""
        revoked = (Prerequisite.REVOKED,) if self.revoked_by else ()
        return (*self.visit.missing(halted=halted), *revoked)


def fold(plans: Mapping[str, Sheets], events: Iterable[CourseEvent], *, setting: Setting) -> Course:
    """The course of a tooth. Which plan is in force the events alone say; before the first says so, none is.

    `plans` holds the run sheets of every version that was ever in force, by hash.
    """
    every = list(events)
    gone, not_to_undo = taken_back(every)
    course = Course(visit=Visit(setting=setting), undone=tuple(sorted(gone)))
    course.out_of_course.update(dict.fromkeys(not_to_undo, OutOfCourse.NOT_TO_UNDO))
    for event in every:
        if event.kind is EventKind.UNDO or event.id in gone:
            continue
        why = _take(course, plans, event)
        if why is not None:
            course.out_of_course[event.id] = why
    return course


def _begun(sheets: Sheets) -> dict[str, CanalCourse]:
    canals = {name: CanalCourse(Walk(sheet)) for name, sheet in sheets.items()}
    for canal in canals.values():
        canal.every = canals
    return canals


# --- one event ---------------------------------------------------------------------------------------------------


def _take(course: Course, plans: Mapping[str, Sheets], event: CourseEvent) -> OutOfCourse | None:
    """Moves the course by one event; says why where the event moves nothing."""
    if event.kind in MOVES_NOTHING:
        if event.kind is EventKind.IMAGE and event.canal in course.canals:
            course.canals[event.canal].purpose(event.body.get("image_id"))
        return None
    if event.kind in OF_AN_EMERGENCY and not (event.canal and event.kind is EventKind.COME):
        # Holds for the tooth, whatever plan was on the screen.
        return None if course.emergencies.take(event.kind, event.id, event.body) else OutOfCourse.NOTHING_ASKED
    if event.kind is EventKind.REPLAN:
        return _replan(course, plans, event)
    if event.kind is EventKind.REVOKED:
        return _revoked(course, event)
    if event.kind is EventKind.STRUCK:
        return _struck(course, event)
    if event.kind in TAKES_OVER:
        return None if course.taken_over.happened(event.kind, event.actor) else OutOfCourse.NOTHING_ASKED
    if event.kind in OF_WORK and event.actor in course.taken_over.ended:
        return OutOfCourse.NOT_WORKING
    if event.kind in OF_THE_VISIT:
        return _visit(course, event)
    if event.plan != course.plan:
        return _by_another_plan(course, event)
    if event.canal not in course.canals and (event.canal or event.kind not in OF_THE_TOOTH):
        return OutOfCourse.NO_CANAL
    return _TAKE[event.kind](course, event)


def _replan(course: Course, plans: Mapping[str, Sheets], event: CourseEvent) -> OutOfCourse | None:
    """A plan's run sheets begin where the work stands; what is held or not released stays so."""
    if course.plan not in ("", event.body.get("replaces")) or event.plan not in plans:
        return OutOfCourse.OTHER_PLAN
    before = course.canals
    course.plan, course.canals, course.revoked_by = event.plan, _begun(plans[event.plan]), None
    for name in before.keys() & course.canals.keys():
        canal = course.canals[name]
        canal.released = before[name].released
        canal.held, canal.asked_by = before[name].held, before[name].asked_by
        canal.asking, canal.coming = before[name].asking, before[name].coming
    return None


def _revoked(course: Course, event: CourseEvent) -> OutOfCourse | None:
    if event.plan != course.plan:
        return OutOfCourse.OTHER_PLAN
    course.revoked_by = event.id
    return None


def _by_another_plan(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """What an earlier plan's screen told late. A pause holds all the same; work that this plan could not know of is
    set out of course, and its canal is planned once more."""
    canal = course.canals.get(event.canal)
    if canal is not None and event.kind is EventKind.PAUSE:
        return _pause(course, event)
    if canal is not None and event.kind in (EventKind.STEP, EventKind.READING):
        canal.to_plan = True
    return OutOfCourse.OTHER_PLAN


def _release(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """The last decision says which canals may not be worked; all others may."""
    left_out = {one["canal"] for one in event.body.get("not_released", ())}
    for name, canal in course.canals.items():
        canal.released = name not in left_out
    return None


def _step(course: Course, event: CourseEvent) -> OutOfCourse | None:
    canal = course.canals[event.canal]
    if why := _shut(course, canal, event):
        return why
    node = canal.walk.node
    if node.id != event.node:
        return OutOfCourse.OTHER_STEP
    if canal.state in (CanalState.HOLD_POINT, CanalState.WAITS):
        return OutOfCourse.WITHHELD
    stop = canal.walk.stop_um()
    if why := _leave(canal, event):
        return why
    canal.word = None
    if isinstance(node, Do) and node.action is Action.IMAGE:
        canal.purpose(event.body.get("image_id"))
    depth = event.body.get("depth_um")
    if depth is not None and stop is not None and depth > stop:
        canal.held, canal.asked_by = CanalState.PAST_STOP, event.id
    return None


def _shut(course: Course, canal: CanalCourse, event: CourseEvent) -> OutOfCourse | None:
    if missing := course.missing_but(halted=course.emergencies.halts(event.id)):
        return OutOfCourse(missing[0])
    if event.not_checked is NotChecked.DEPTH:
        return OutOfCourse.NOT_CHECKED
    shut = canal.held is not None or canal.to_plan or not canal.released
    return OutOfCourse.WITHHELD if shut else None


def _leave(canal: CanalCourse, event: CourseEvent) -> OutOfCourse | None:
    exit_ = event.body.get("exit")
    if exit_ not in set(Exit):
        return OutOfCourse.NO_SUCH_EXIT
    try:
        canal.walk.leave(Exit(exit_), event.body.get("depth_um"))
    except StepRefused:
        return OutOfCourse.NO_SUCH_EXIT
    canal.asking = canal.coming = None
    return None


def _sign_off(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """Answers the hold point it names, of a canal or of the visit; a halt does not stop a supervisor's word."""
    if not event.canal:
        moved = course.visit.sign_off(event.node, event.body.get("exit"))
        return None if moved else OutOfCourse.NOTHING_ASKED
    canal = course.canals[event.canal]
    node = canal.walk.node
    if not isinstance(node, Do) or node.action is not Action.SIGN_OFF or node.id != event.node:
        return OutOfCourse.OTHER_STEP
    if why := _leave(canal, event):
        return why
    canal.signed(event.id, approved=event.body.get("exit") == Exit.APPROVED)
    return None


def _ask(course: Course, event: CourseEvent) -> OutOfCourse | None:
    if event.canal:
        course.canals[event.canal].asking = event.id
    return None


def _come(course: Course, event: CourseEvent) -> OutOfCourse | None:
    if event.canal:
        course.canals[event.canal].coming = event.id
    return None


def _answer(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """A stop that had slipped lets the canal go on; any other cause is for the supervisor."""
    canal = course.canals[event.canal]
    if canal.held is not CanalState.PAST_STOP or event.body.get("asks") != canal.asked_by:
        return OutOfCourse.NOTHING_ASKED
    canal.asked_by = None
    canal.held = None if event.body.get("cause") == "stop_moved" else CanalState.PAUSED
    return None


def _reading(course: Course, event: CourseEvent) -> OutOfCourse | None:
    course.canals[event.canal].to_plan = True
    return None


def _struck(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """Whatever plan stood: its stops may rest on what was struck. No stop rests on an image alone: a length that was
    taken from it is struck for itself. A word that rested on it is asked for again."""
    if event.body.get("what") == "image":
        _image_put_right(course, event)
        return None
    if event.canal not in course.canals:
        return OutOfCourse.NO_CANAL
    course.canals[event.canal].to_plan = True
    return None


def _image_put_right(course: Course, event: CourseEvent) -> None:
    """Struck it counts in no canal; put to another one, not where it was."""
    image_id, moved_to = str(event.body.get("struck")), event.body.get("moved_to")
    for name, canal in course.canals.items():
        if moved_to is None or (name == event.canal and name != moved_to):
            canal.reopen(image_id)
    if moved_to in course.canals:
        course.canals[moved_to].purpose(image_id)


def _pause(course: Course, event: CourseEvent) -> OutOfCourse | None:
    canal = course.canals[event.canal]
    canal.held = canal.held or CanalState.PAUSED
    return None


def _resume(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """The tooth, or one canal; `node` says where the canal goes on if not where it stood."""
    if not event.canal:
        return None if course.emergencies.resume(event.body) else OutOfCourse.NOTHING_ASKED
    canal = course.canals[event.canal]
    if canal.held is None and canal.to_plan:
        return OutOfCourse.WITHHELD
    if event.node and not canal.walk.go_to(event.node):
        return OutOfCourse.OTHER_STEP
    if event.node:
        canal.word = None
    canal.held = canal.asked_by = canal.asking = canal.coming = None
    return None


def _turn(course: Course, event: CourseEvent) -> OutOfCourse | None:
    course.turned_to = event.canal
    return None


def _visit(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """What is said of the visit holds for the tooth, whatever plan was on the screen."""
    visit, body = course.visit, event.body
    if event.kind is EventKind.ON_SITE and event.not_checked is NotChecked.ROOM:
        return OutOfCourse.NOT_CHECKED
    match event.kind:
        case EventKind.CLOSE:
            if not visit.close():
                return OutOfCourse.CLOSED
            course.taken_over.happened(event.kind, event.actor)
            return None
        case EventKind.REOPEN:
            return _reopen(course, event)
        case EventKind.ON_SITE:
            return None if visit.name(body) else OutOfCourse.CLOSED
        case _:
            return None if visit.isolate(body) else OutOfCourse.CLOSED


def _reopen(course: Course, event: CourseEvent) -> OutOfCourse | None:
    """Canals that were not found as they were left stay withheld, finished ones excepted.

    That a reference point has gone holds also where another phone has opened the visit before.
    """
    unfinished = {name: canal for name, canal in course.canals.items() if canal.state is not CanalState.FINISHED}
    gone = {row["canal"] for row in event.body.get("found", ()) if row.get("reference_point")} & set(unfinished)
    for name in gone:
        unfinished[name].to_plan = True
    # The visit opens all the same where nobody knows who was in the room: then nobody was named.
    nobody = {"supervisor_id": ""} if event.not_checked is NotChecked.ROOM else {}
    if not course.visit.reopen({**event.body, **nobody}):
        return None if gone else OutOfCourse.NOTHING_ASKED
    as_left = set(event.body.get("as_left", ()))
    for name, canal in unfinished.items():
        if name not in as_left | gone and canal.held is None:
            canal.held = CanalState.TO_CHECK
    return None


_TAKE = {
    EventKind.STEP: _step,
    EventKind.SIGN_OFF: _sign_off,
    EventKind.ASK: _ask,
    EventKind.COME: _come,
    EventKind.RELEASE: _release,
    EventKind.ANSWER: _answer,
    EventKind.READING: _reading,
    EventKind.PAUSE: _pause,
    EventKind.RESUME: _resume,
    EventKind.TURN: _turn,
}
