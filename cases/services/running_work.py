"""Keeps where the work on a case stands, so that a list of a thousand running cases folds none of them."""

from __future__ import annotations

import json
from collections.abc import Mapping

from cases.domain.course import CanalState, Course
from cases.domain.events import FROM_HERE, EventKind
from cases.models import Case, RunningWork, TreatmentEvent, courses
from planning.encoding import canonical_text
from planning.graph import Do

WAITS = frozenset({CanalState.HOLD_POINT, CanalState.PAUSED, CanalState.PAST_STOP, CanalState.TO_CHECK})
"""States that only a supervisor ends, or an answer that one will want to see."""


def keep(case: Case) -> None:
    """Folds the events of the case; the caller holds the case."""
    events = list(case.events.order_by("position"))
    course = courses.course(case.pk, events)
    if course is None or all(event.kind in FROM_HERE for event in events):
        return
    asked = {str(event.pk): event for event in events if event.kind == EventKind.ASK}
    canals = [_canal(name, course, asked) for name in course.canals]
    halted = course.halted_by is not None
    over = course.closed or all(canal["state"] == CanalState.FINISHED for canal in canals)
    waits = halted or any(canal["state"] in WAITS for canal in canals)
    before = RunningWork.objects.filter(case=case).first()
    since = (before and before.waiting_since) or events[-1].server_time
    RunningWork.objects.update_or_create(
        case=case,
        defaults={
            "position": events[-1].position,
            "halted": halted,
            # An emergency stays on the list until a supervisor resumes, whatever else was recorded.
            "finished": over and not halted,
            "waiting_since": since if waits else None,
            "changed_at": events[-1].server_time,
            "text": canonical_text(canals),
        },
    )


def _canal(name: str, course: Course, asked: Mapping[str, TreatmentEvent]) -> dict[str, str | bool]:
    """What a list says of one canal: its state, what it waits for, and what is asked."""
    canal = course.canals[name]
    node = canal.walk.node
    hold_point = node.hold_point if isinstance(node, Do) and canal.state is CanalState.HOLD_POINT else None
    asking = asked.get(canal.asking or "")
    return {
        "canal": name,
        "state": canal.state.value,
        "hold_point": hold_point or "",
        "asked": asking is not None,
        "note": json.loads(asking.text)["note"] if asking else "",
        "coming": canal.coming is not None,
    }
