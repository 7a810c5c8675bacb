"""The course of a case: its events, and where the work stands after them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.contrib.admin.models import LogEntry
from django.db.models import QuerySet, Subquery
from django.db.models.functions import Coalesce

from cases.domain.plans.lifecycle import Decision
from cases.domain.progress.canal_progress import CanalProgress, CanalState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.kept import REACHES_BACK
from cases.domain.progress.lacking import Lacking, lacking
from cases.mapping import folds
from cases.mapping.folds import CaseFolded
from cases.models import Case, Review, TreatmentEvent
from cases.models.prepared import Prepared


@dataclass(frozen=True, slots=True)
class EventShown:
    row: TreatmentEvent
    payload: Any
    """What the event carries, as JSON data."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalCourseShown:
    """Where the work on one canal stands."""

    canal: str
    state: CanalState
    node: str
    """The present step."""
    stop_um: int | None
    asked_by: str | None
    """The event whose question is open."""
    asking: str | None
    """The event by which the student asked for a sign-off."""
    coming: str | None
    """The event by which a supervisor said that they come."""
    lacking: tuple[Lacking, ...]
    """What the hold point is about and is not there; a supervisor may approve it all the same."""


@dataclass(frozen=True, slots=True)
class TreatmentShown:
    """What was recorded, and where the work stands after it."""

    position: int
    course: CaseState | None
    """None before a plan was in force."""
    canals: Sequence[CanalCourseShown]
    events: Sequence[EventShown]
    after: UUID | None
    """The event that they came after; None: they are all of the case."""


def tag_of(case_id: UUID) -> str:
    """A tag that changes whenever the course does: with every event, once work may begin, and with every change by the
    administration, which alone gives people other names.
    """
    ((position, last, review, change),) = _NEWEST(case_id)
    return f"{position or 0}.{review or 0}.{change or 0}.{str(last or '')[-12:]}"


def _newest(case_id: UUID) -> QuerySet[Case, tuple[int | None, UUID | None, int | None, int | None]]:
    events = TreatmentEvent.objects.filter(case_id=case_id).order_by("-position")
    approved = Review.objects.filter(version__case_id=case_id, decision=Decision.APPROVED).order_by("-at")
    return Case.objects.filter(pk=case_id).values_list(
        Subquery(events.values("position")[:1]),
        # A restored server comes to the same position once more, with another event at it.
        Subquery(events.values("pk")[:1]),
        Subquery(approved.values("version__number")[:1]),
        Subquery(LogEntry.objects.order_by("-pk").values("pk")[:1]),
    )


_NEWEST = Prepared(_newest)


def treatment_of(case_id: UUID, *, after: UUID | None = None) -> TreatmentShown:
    """The fold of the case's events, and the events that came after `after`; all of them where the case has no such, or
    where one of the later ones changes what earlier ones say."""
    rows = _rows(case_id, after)
    if after and any(row.kind in REACHES_BACK for row in rows):
        after, rows = None, _rows(case_id, None)
    work = folds.folded(case_id, new=rows, after=after)
    if work is not None and (not rows or rows[-1].position < work.position):
        # More came in meanwhile.
        rows = [row for row in _rows(case_id, after) if row.position <= work.position]
    # Where nothing is left the case has the event, or none at all.
    since = rows[0].position - 1 if rows else TreatmentEvent.objects.filter(case_id=case_id).count()
    shown = [EventShown(row, json.loads(row.text)) for row in rows]
    course = work.folded.course if work else None
    if course is not None and since:
        shown_ids = {str(each.row.pk) for each in shown}
        course.out_of_course = {id_: why for id_, why in course.out_of_course.items() if id_ in shown_ids}
    return TreatmentShown(
        position=rows[-1].position if rows else since,
        after=after if since else None,
        course=course,
        canals=_canals(work) if work else [],
        events=shown,
    )


def _all_rows(case_id: UUID) -> QuerySet[TreatmentEvent]:
    return TreatmentEvent.objects.filter(case_id=case_id).select_related("actor").order_by("position")


def _later_rows(case_id: UUID, after: UUID) -> QuerySet[TreatmentEvent]:
    named = Subquery(TreatmentEvent.objects.filter(case_id=case_id, pk=after).values("position"))
    return _all_rows(case_id).filter(position__gt=Coalesce(named, 0))


_ALL_ROWS, _LATER_ROWS = Prepared(_all_rows), Prepared(_later_rows)


def _rows(case_id: UUID, after: UUID | None) -> list[TreatmentEvent]:
    """The case's events after the event `after`; all of them where it has no such event."""
    return _LATER_ROWS(case_id, after) if after else _ALL_ROWS(case_id)


def _canals(work: CaseFolded) -> list[CanalCourseShown]:
    course, version = work.folded.course, work.facts
    return [
        _canal(
            name,
            canal,
            lacking(name, canal, version.lengths[name], work.folded.events, version.sheets, set(course.undone)),
        )
        for name, canal in course.canals.items()
    ]


def _canal(name: str, canal: CanalProgress, lacks: tuple[Lacking, ...]) -> CanalCourseShown:
    return CanalCourseShown(
        canal=name,
        state=canal.state,
        node=canal.walk.at,
        stop_um=canal.walk.stop_um(),
        asked_by=canal.asked_by,
        asking=canal.asking,
        coming=canal.coming,
        lacking=lacks,
    )
