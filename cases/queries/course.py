"""The course of a case: its events, and where the work stands after them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.db.models import Subquery

from cases.domain.plans.lifecycle import Decision
from cases.domain.progress.course import CanalProgress, CanalState, CaseState
from cases.domain.progress.lacking import Lacking, lacking
from cases.mapping import courses
from cases.mapping.courses import course_event
from cases.models import Case, Review, ToothPlanVersion, TreatmentEvent


@dataclass(frozen=True, slots=True)
class EventShown:
    row: TreatmentEvent
    payload: Any
    """The body as data."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalShown:
    """Where one canal stands."""

    canal: str
    state: CanalState
    node: str
    stop_um: int | None
    asked_by: str | None
    asking: str | None
    coming: str | None
    lacking: tuple[Lacking, ...]


@dataclass(frozen=True, slots=True)
class TreatmentShown:
    """What was recorded, and where the work stands after it."""

    position: int
    course: CaseState | None
    """None before a plan was in force."""
    canals: Sequence[CanalShown]
    events: Sequence[EventShown]


def tag_of(case_id: UUID) -> str:
    """Another one whenever the course is another: after every event, and once work may begin."""
    events = TreatmentEvent.objects.filter(case_id=case_id).order_by("-position")
    approved = Review.objects.filter(version__case_id=case_id, decision=Decision.APPROVED).order_by("-at")
    position, last, review = (
        Case.objects.filter(pk=case_id)
        .values_list(
            Subquery(events.values("position")[:1]),
            # A server that was restored comes to the same position once more, with something else at it.
            Subquery(events.values("pk")[:1]),
            Subquery(approved.values("version__number")[:1]),
        )
        .get()
    )
    return f"{position or 0}.{review or 0}.{str(last or '')[-12:]}"


def treatment_of(case_id: UUID) -> TreatmentShown:
    """The events of the case and their fold."""
    rows = list(TreatmentEvent.objects.filter(case_id=case_id).select_related("actor").order_by("position"))
    course = courses.fold_case(case_id, rows)
    return TreatmentShown(
        position=rows[-1].position if rows else 0,
        course=course,
        canals=_canals(case_id, course, rows) if course else [],
        events=[EventShown(row, json.loads(row.text)) for row in rows],
    )


def _canals(case_id: UUID, course: CaseState, rows: Sequence[TreatmentEvent]) -> list[CanalShown]:
    version = courses.plan_facts(
        ToothPlanVersion.objects.values_list("pk", flat=True).get(case=case_id, hash=course.plan)
    )
    events = [course_event(row) for row in rows]
    return [
        _canal(
            name,
            canal,
            lacking(name, canal, version.lengths[name], events, version.sheets, set(course.undone)),
        )
        for name, canal in course.canals.items()
    ]


def _canal(name: str, canal: CanalProgress, lacks: tuple[Lacking, ...]) -> CanalShown:
    return CanalShown(
        canal=name,
        state=canal.state,
        node=canal.walk.at,
        stop_um=canal.walk.stop_um(),
        asked_by=canal.asked_by,
        asking=canal.asking,
        coming=canal.coming,
        lacking=lacks,
    )
