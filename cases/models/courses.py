"""Where the work on a case stands: its events folded over the run sheets of its plans."""

from __future__ import annotations

from collections.abc import Sequence
from uuid import UUID

from cases.domain.course import Course, Sheets, fold
from cases.domain.events import FROM_HERE, EventKind
from cases.domain.plan_life import Decision
from cases.models import values
from cases.models.events import TreatmentEvent
from cases.models.plans import ToothPlanVersion


def course(case_id: UUID, events: Sequence[TreatmentEvent]) -> Course | None:
    """The fold of the case's events; None before a plan was approved."""
    first = _begun_with(case_id, events)
    if first is None:
        return None
    sheets = {first.hash: _sheets(first)}
    taken_over = {row.plan_hash for row in events if row.kind == EventKind.REPLAN}
    for version in ToothPlanVersion.objects.filter(case_id=case_id, hash__in=taken_over):
        sheets[version.hash] = _sheets(version)
    return fold(sheets, first.hash, [values.happened(row) for row in events])


def _begun_with(case_id: UUID, events: Sequence[TreatmentEvent]) -> ToothPlanVersion | None:
    """The plan that work began on: that of the first event of a device if it was approved, else the last approved one.

    What is recorded here before any work is a decision, and the next one may be on another plan.
    """
    approved = (
        ToothPlanVersion.objects.filter(case_id=case_id, reviews__decision=Decision.APPROVED)
        .distinct()
        .order_by("-number")
    )
    by_hash = {version.hash: version for version in approved}
    begun = next((by_hash[event.plan_hash] for event in events if _done(event) and event.plan_hash in by_hash), None)
    return begun or next(iter(by_hash.values()), None)


def _done(event: TreatmentEvent) -> bool:
    return event.kind not in FROM_HERE


def _sheets(version: ToothPlanVersion) -> Sheets:
    """The run sheets of a version by canal."""
    return {canal.canal: canal.run_sheet for canal in values.made(version).canals}
