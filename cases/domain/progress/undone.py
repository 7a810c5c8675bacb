"""What was taken back. It follows from the events alone, so it is decided before the fold."""

from __future__ import annotations

from collections.abc import Iterable

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import (
    InspectedPayload,
    ReplanPayload,
    ResumePayload,
    SignOffPayload,
    StepPayload,
    UndoPayload,
)
from cases.domain.events.registry import EVENTS, Undo


def undone(events: Iterable[CourseEvent]) -> frozenset[str]:
    """Ids of the events that do not count any more."""
    return taken_back(events)[0]


def taken_back(events: Iterable[CourseEvent]) -> tuple[frozenset[str], list[str]]:
    """Ids of the events that no longer count, and of the undos that take back nothing: their actor may not undo what
    they name, or it is too late."""
    standing: dict[str, dict[str, list[CourseEvent]]] = {}
    """By canal and actor: the events that moved the work and that nothing rests on yet, the latest at the end."""
    beside: dict[str, CourseEvent] = {}
    """By id: the events that may be taken back in any order."""
    gone, wrong = set(), []
    for event in events:
        own = standing.setdefault(event.canal, {}).setdefault(event.actor, [])
        if isinstance(event.payload, UndoPayload):
            named = event.payload.undoes
            taken = own.pop() if own and own[-1].id == named and may_undo(own[-1]) else None
            taken = taken or _beside(beside, named, event)
            if taken is None:
                wrong.append(event.id)
            else:
                gone.add(taken.id)
        elif EVENTS[event.kind].undo is Undo.ANY_TIME:
            beside[event.id] = event
        elif isinstance(event.payload, ReplanPayload):
            # The new plan rests on all that was done before it.
            standing.clear()
        elif isinstance(event.payload, SignOffPayload | ResumePayload):
            # It answers what was done in the canal before it, which from now on can no longer be taken back.
            standing.pop(event.canal)
        else:
            own.append(event)
    return frozenset(gone), wrong


def _beside(beside: dict[str, CourseEvent], named: str, undo: CourseEvent) -> CourseEvent | None:
    event = beside.get(named)
    if event is None or (event.actor, event.canal) != (undo.actor, undo.canal) or not may_undo(event):
        return None
    return beside.pop(named)


def may_undo(event: CourseEvent) -> bool:
    """Whether it is of a kind that may be taken back. Halts, sign-offs, discards and depths past the stop stay:
    something new answers them."""
    discards = isinstance(event.payload, InspectedPayload) and event.payload.found == "discarded"
    return EVENTS[event.kind].undo is not Undo.NEVER and not past_stop(event) and not discards


def past_stop(event: CourseEvent) -> bool:
    """Whether an instrument went deeper than the stop that was shown."""
    step = event.payload
    if not isinstance(step, StepPayload) or step.depth_um is None or step.stop_um is None:
        return False
    return step.depth_um > step.stop_um
