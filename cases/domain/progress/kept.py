"""The fold of a case's events in a form that can be stored, so that new events are folded on from there.

Beside the state a few events are still needed: an open question for its words, a step for its image, an entry into a
canal because it was the instrument's first. They are stored with the state, which says all of every other event.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import ImagePayload, SignOffPayload, StepPayload, TurnPayload
from cases.domain.progress.canal_progress import CanalProgress, CanalState, SignOff
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.course import go_on
from cases.domain.progress.emergencies import Emergencies
from cases.domain.progress.lacking import is_image_step
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.progress.put_right import of_an_image
from cases.domain.progress.taken_over import TakenOver
from cases.domain.progress.visit import Visit
from planning.run_sheet.walk import Left, Walk

REACHES_BACK = frozenset({EventKind.UNDO, EventKind.STRUCK, EventKind.REPLAN})
"""Kinds that change what earlier events say: after one of these everything is folded from the start."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Folded:
    """A case's events, folded."""

    course: CaseState
    events: Sequence[CourseEvent]
    """Those that are still needed, in order; all of them after a fold from the start."""
    used: frozenset[str] = frozenset()
    """Events by which an instrument was used for the first time in a canal, or discarded."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptCanal:
    """One canal without its run sheet."""

    at: str
    passes: dict[str, int]
    depths_um: dict[str, list[int | None]]
    path: list[str]
    left: list[Left]
    held: CanalState | None
    asked_by: str | None
    to_plan: bool
    released: bool
    asking: str | None
    coming: str | None
    images: set[str]
    sign_off: SignOff | None
    reopened: set[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptFold:
    """A `Folded` without the run sheets. The order of its mappings counts: the first emergency halts the tooth."""

    visit: Visit
    plan: str
    canals: dict[str, KeptCanal]
    revoked_by: str | None
    emergencies: Emergencies
    turned_to: str
    taken_over: TakenOver
    out_of_course: dict[str, OutOfCourse]
    undone: tuple[str, ...]
    events: tuple[CourseEvent, ...]
    used: tuple[str, ...]


OF_WALK = ("at", "passes", "depths_um", "path", "left")
OF_CANAL = tuple(field.name for field in fields(KeptCanal) if field.name not in OF_WALK)
OF_CASE = tuple(field.name for field in fields(KeptFold) if field.name not in ("canals", "events", "used"))


def put_away(folded: Folded, sheets: Sheets) -> KeptFold:
    """The fold as it is stored. `sheets` are those of the plan in force."""
    course = folded.course
    return KeptFold(
        **{name: getattr(course, name) for name in OF_CASE},
        canals={name: _put_canal_away(canal) for name, canal in course.canals.items()},
        events=tuple(still_speaking(folded, sheets)),
        used=tuple(sorted(folded.used)),
    )


def follow(kept: KeptFold, sheets: Sheets, events: Sequence[CourseEvent]) -> Folded | None:
    """The stored fold, moved on by the events that came since; None where one of them reaches back, so that all has to
    be folded anew. `sheets` are those of the plan in force.
    """
    if any(event.kind in REACHES_BACK for event in events):
        return None
    canals = {name: _take_canal_up(kept_canal, Walk(sheets[name])) for name, kept_canal in kept.canals.items()}
    for canal in canals.values():
        canal.every = canals
    course = CaseState(**{name: getattr(kept, name) for name in OF_CASE}, canals=canals)
    go_on(course, {course.plan: sheets}, events)
    return Folded(course=course, events=[*kept.events, *events], used=frozenset(kept.used))


def _put_canal_away(canal: CanalProgress) -> KeptCanal:
    of_walk = {name: getattr(canal.walk, name) for name in OF_WALK}
    return KeptCanal(**of_walk, **{name: getattr(canal, name) for name in OF_CANAL})


def _take_canal_up(kept: KeptCanal, walk: Walk) -> CanalProgress:
    for name in OF_WALK:
        # A new walk has gone to its first step already, so everything that it holds is written over.
        setattr(walk, name, getattr(kept, name))
    return CanalProgress(walk, **{name: getattr(kept, name) for name in OF_CANAL})


def still_speaking(folded: Folded, sheets: Sheets) -> list[CourseEvent]:
    """The events that lists, hold points and counts of uses still need, as long as nothing reaches back."""
    course, events = folded.course, folded.events
    asking = {canal.asking for canal in course.canals.values()}
    # Where each person's hand was last in each canal: a list shows the step in hand by it.
    last_touch = {
        (event.actor, event.canal): event.id for event in events if isinstance(event.payload, StepPayload | TurnPayload)
    }
    speaking = {*folded.used, *asking, *last_touch.values(), *_of_images(course, events, sheets)}
    return [event for event in events if event.id in speaking]


def _of_images(course: CaseState, events: Iterable[CourseEvent], sheets: Sheets) -> set[str]:
    """Ids of the events that decide whether a hold point lacks its image: in each canal the last sign-off that counts
    and the images after it, and every correction of an image."""
    not_counting = set(course.undone).union(*(canal.reopened for canal in course.canals.values()))
    since: dict[str, list[str]] = {}
    put_right = set()
    for event in events:
        if of_an_image(event.payload):
            put_right.add(event.id)
        elif event.id in not_counting:
            continue
        elif isinstance(event.payload, SignOffPayload):
            since[event.canal] = [event.id]
        elif isinstance(event.payload, ImagePayload) or is_image_step(event, sheets):
            since.setdefault(event.canal, []).append(event.id)
    return put_right.union(*since.values())
