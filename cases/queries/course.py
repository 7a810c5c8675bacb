"""The course of a case: its events, and where the work stands after them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.db.models import Max

from cases.domain.course import CanalCourse, CanalState, Course, Sheets, fold
from cases.domain.events import EventKind
from cases.domain.plan_life import Decision
from cases.models import ToothPlanVersion, TreatmentEvent, values


@dataclass(frozen=True, slots=True)
class EventShown:
    row: TreatmentEvent
    told: Any
    """The body as data."""


@dataclass(frozen=True, slots=True)
class CanalShown:
    """Where one canal stands."""

    canal: str
    state: CanalState
    node: str
    stop_um: int | None
    asked_by: str | None


@dataclass(frozen=True, slots=True)
class TreatmentShown:
    """What was recorded, and where the work stands after it."""

    position: int
    course: Course | None
    """None before a plan was approved."""
    canals: Sequence[CanalShown]
    events: Sequence[EventShown]


def position_of(case_id: UUID) -> int:
    """Of the last event; 0 where there is none."""
    return TreatmentEvent.objects.filter(case_id=case_id).aggregate(last=Max("position"))["last"] or 0


def treatment_of(case_id: UUID) -> TreatmentShown:
    """The events of the case and their fold."""
    rows = list(TreatmentEvent.objects.filter(case_id=case_id).select_related("actor").order_by("position"))
    course = _course(case_id, rows)
    return TreatmentShown(
        position=rows[-1].position if rows else 0,
        course=course,
        canals=[_canal(name, canal) for name, canal in course.canals.items()] if course else [],
        events=[EventShown(row, json.loads(row.text)) for row in rows],
    )


def _canal(name: str, canal: CanalCourse) -> CanalShown:
    return CanalShown(name, canal.state, canal.walk.at, canal.walk.stop_um(), canal.asked_by)


def _course(case_id: UUID, events: Sequence[TreatmentEvent]) -> Course | None:
    first = _begun_with(case_id, events)
    if first is None:
        return None
    sheets = {first.hash: _sheets(first)}
    taken_over = {row.plan_hash for row in events if row.kind == EventKind.REPLAN}
    for version in ToothPlanVersion.objects.filter(case_id=case_id, hash__in=taken_over):
        sheets[version.hash] = _sheets(version)
    return fold(sheets, first.hash, [values.happened(row) for row in events])


def _begun_with(case_id: UUID, events: Sequence[TreatmentEvent]) -> ToothPlanVersion | None:
    """The plan that work began on: that of the first event if it was approved, else the last approved one."""
    approved = (
        ToothPlanVersion.objects.filter(case_id=case_id, reviews__decision=Decision.APPROVED)
        .distinct()
        .order_by("-number")
    )
    by_hash = {version.hash: version for version in approved}
    begun = next((by_hash[event.plan_hash] for event in events if event.plan_hash in by_hash), None)
    return begun or next(iter(by_hash.values()), None)


def _sheets(version: ToothPlanVersion) -> Sheets:
    """The run sheets of a version by canal."""
    return {canal.canal: canal.run_sheet for canal in values.made(version).canals}
