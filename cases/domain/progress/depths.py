"""What was felt in each canal, over all versions of its plan: what later plans learn from."""

from __future__ import annotations

from collections.abc import Iterable

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import NotChecked
from cases.domain.events.payloads import AnswerPayload, ResumePayload, StepPayload
from cases.domain.progress.undone import past_stop, undone
from planning.contract.plan_input import RecordedDepth
from planning.foundation.quantities import mm


def recorded_depths(events: Iterable[CourseEvent]) -> dict[str, tuple[RecordedDepth, ...]]:
    """The depths recorded in each canal, in the order of work. An event out of course counts too: it did happen.

    Left out are what was undone, a depth deeper than any tooth, and a depth past its stop once that is settled: the
    stop had slipped, or a supervisor has let the canal go on.
    """
    every = list(events)
    gone = undone(every)
    by_canal: dict[str, list[tuple[CourseEvent, RecordedDepth]]] = {}
    for event in every:
        of_canal = by_canal.setdefault(event.canal, [])
        match event.payload:
            case StepPayload() as step if event.canal and event.id not in gone:
                if (depth := _recorded(event, step)) is not None:
                    of_canal.append((event, depth))
            case AnswerPayload(asks=asks, cause="stop_moved"):
                by_canal[event.canal] = [each for each in of_canal if each[0].id != asks]
            case ResumePayload() if event.canal:
                by_canal[event.canal] = [each for each in of_canal if not past_stop(each[0])]
    return {canal: tuple(each for _, each in depths) for canal, depths in by_canal.items() if depths}


def _recorded(event: CourseEvent, step: StepPayload) -> RecordedDepth | None:
    if step.depth_um is None or event.not_checked is NotChecked.DEPTH:
        return None
    stop_mm = None if step.stop_um is None else mm(step.stop_um)
    return RecordedDepth(node=event.node, depth_mm=mm(step.depth_um), stop_mm=stop_mm)
