"""The record of a case, made from what was charted, planned, decided and done. Values in, one value out.

values        what a record is, by what each part is about
case_history  what it is made from
words         what has a short name in the program, in plain words
sentences     events as a person would tell them
steps         what was done, compared with what was planned, canal by canal
shapes        where each canal ends and how wide it is, as planned and as done
sums          irrigants, instruments, images, sign-offs, halts, visits
cautions      what was warned of, and how that ended
deviations    what was not as planned, a line each
"""

from __future__ import annotations

from cases.domain.record.case_history import CaseHistory, RecordedEvent
from cases.domain.record.sentences import sentence_of
from cases.domain.record.values.timeline import TimelineEntry
from cases.domain.record.words import NOT_CHECKED, WHY


def timeline(history: CaseHistory) -> tuple[TimelineEntry, ...]:
    """Every event once, in order."""
    return tuple(_entry(history, fact) for fact in history.facts)


def _entry(history: CaseHistory, fact: RecordedEvent) -> TimelineEntry:
    why = history.course.out_of_course.get(fact.event.id) if history.course else None
    return TimelineEntry(
        position=fact.position,
        event_id=fact.event.id,
        at=fact.at,
        device_time=fact.device_time,
        who=fact.who,
        canal=fact.canal,
        kind=fact.kind,
        says=sentence_of(fact, history),
        version=history.version(fact).number,
        out_of_course=why,
        out_of_course_says=WHY[why] if why else "",
        undone=history.undone(fact),
        not_checked_says=NOT_CHECKED[fact.event.not_checked] if fact.event.not_checked else "",
    )
