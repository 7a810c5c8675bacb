"""What was felt in each canal, over all versions of its plan: what later plans learn from."""

from __future__ import annotations

from collections.abc import Iterable

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.progress.undone import past_stop, undone
from planning.contract.plan_input import RecordedDepth
from planning.foundation.quantities import mm


def felt(events: Iterable[CourseEvent]) -> dict[str, tuple[RecordedDepth, ...]]:
    """The depths recorded in each canal, in the order of work. A fact out of course is a fact all the same.

    What was undone is left out, a depth that cannot be, and a depth past its stop that is settled: the stop had
    slipped, or a supervisor has let the canal go on.
    """
    every = list(events)
    gone = undone(every)
    found: dict[str, list[tuple[CourseEvent, RecordedDepth]]] = {}
    for event in every:
        depth_um = None if event.not_checked is NotChecked.DEPTH else event.body.get("depth_um")
        if event.kind is EventKind.STEP and event.id not in gone and event.canal and depth_um is not None:
            stop_um = event.body.get("stop_um")
            stop_mm = None if stop_um is None else mm(stop_um)
            one = RecordedDepth(node=event.node, depth_mm=mm(depth_um), stop_mm=stop_mm)
            found.setdefault(event.canal, []).append((event, one))
        elif event.kind is EventKind.ANSWER and event.body.get("cause") == "stop_moved":
            found[event.canal] = [each for each in found.get(event.canal, []) if each[0].id != event.body.get("asks")]
        elif event.kind is EventKind.RESUME and event.canal:
            found[event.canal] = [each for each in found.get(event.canal, []) if not past_stop(each[0])]
    return {canal: tuple(each for _, each in depths) for canal, depths in found.items() if depths}
