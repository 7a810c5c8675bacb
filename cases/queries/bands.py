"""What is expected of the work that remains on a case, brought up to date with every depth that was recorded."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any
from uuid import UUID

from django.core.cache import cache

from cases.models import ToothPlanVersion, TreatmentEvent, courses, values
from planning.bands import bands
from planning.encoding import encode

KEPT_S = 24 * 60 * 60  # a visit and its evening; how many are kept is the cache's own bound


@dataclass(frozen=True, slots=True, kw_only=True)
class BandsShown:
    """After the event at `position`. They are no part of what was approved: only the order of work was."""

    plan_hash: str | None
    """None before a plan was approved."""
    position: int
    canals: Any
    """`planning.bands.CanalBands` as JSON data."""


def bands_of(case_id: UUID) -> BandsShown:
    """By the plan that is worked and its own samples. What was undone or set out of course does not count."""
    events = list(TreatmentEvent.objects.filter(case_id=case_id).order_by("position"))
    position = events[-1].position if events else 0
    course = courses.course(case_id, events)
    if course is None:
        return BandsShown(plan_hash=None, position=position, canals=[])
    key = f"bands-{case_id}-{position}-{course.plan}"
    found = cache.get(key)
    if found is None:
        version = ToothPlanVersion.objects.only("input_text").get(case_id=case_id, hash=course.plan)
        walks = {name: canal.walk for name, canal in course.canals.items()}
        found = encode(bands(values.given(version), walks))
        cache.set(key, found, KEPT_S)
    return BandsShown(plan_hash=course.plan, position=position, canals=found)
