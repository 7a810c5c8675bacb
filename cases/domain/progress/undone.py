"""What was taken back: a rule over the events alone, so that it is decided before the fold."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import BESIDE, NEVER_UNDONE, WORD_ON_A_CANAL, EventKind


def undone(events: Iterable[CourseEvent]) -> frozenset[str]:
    """Ids of the events that do not count any more."""
    return taken_back(events)[0]


def taken_back(events: Iterable[CourseEvent]) -> tuple[frozenset[str], list[str]]:
    """What does not count, and the undos that name something that is not to be taken back by their actor (any more)."""
    standing: dict[str, dict[str, list[CourseEvent]]] = {}
    """By canal and actor: what moved the work, the last at the end, as far as nothing has come to rest on it."""
    beside: dict[str, CourseEvent] = {}
    gone, wrong = set(), []
    for event in events:
        own = standing.setdefault(event.canal, {}).setdefault(event.actor, [])
        if event.kind is EventKind.UNDO:
            named = event.body.get("undoes")
            taken = own.pop() if own and own[-1].id == named and may_undo(own[-1]) else None
            taken = taken or _beside(beside, named, event)
            if taken is None:
                wrong.append(event.id)
            else:
                gone.add(taken.id)
        elif event.kind in BESIDE:
            beside[event.id] = event
        elif event.kind is EventKind.REPLAN:
            standing.clear()
        elif event.kind in WORD_ON_A_CANAL:
            standing.pop(event.canal)
        else:
            own.append(event)
    return frozenset(gone), wrong


def _beside(beside: dict[str, CourseEvent], named: Any, undo: CourseEvent) -> CourseEvent | None:
    one = beside.get(named)
    if one is None or (one.actor, one.canal) != (undo.actor, undo.canal) or not may_undo(one):
        return None
    return beside.pop(named)


def may_undo(event: CourseEvent) -> bool:
    """Halts, sign-offs, discards and readings past the stop stay: something new answers them."""
    return event.kind not in NEVER_UNDONE and not past_stop(event) and event.body.get("found") != "discarded"


def past_stop(event: CourseEvent) -> bool:
    """Whether an instrument went deeper than the stop that was shown."""
    depth, stop = event.body.get("depth_um"), event.body.get("stop_um")
    return depth is not None and stop is not None and depth > stop
