"""The course of a case: its events, and where the work stands after them."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.db.models import Max

from cases.domain.course import CanalCourse, CanalState, Course
from cases.models import TreatmentEvent, courses


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
    course = courses.course(case_id, rows)
    return TreatmentShown(
        position=rows[-1].position if rows else 0,
        course=course,
        canals=[_canal(name, canal) for name, canal in course.canals.items()] if course else [],
        events=[EventShown(row, json.loads(row.text)) for row in rows],
    )


def _canal(name: str, canal: CanalCourse) -> CanalShown:
    return CanalShown(name, canal.state, canal.walk.at, canal.walk.stop_um(), canal.asked_by)
