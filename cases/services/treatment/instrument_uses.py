"""Keeps what instruments were used for, so that the next plan knows without reading what was done elsewhere."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from uuid import UUID

from django.db.models import QuerySet

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import InspectedPayload, StepPayload
from cases.domain.progress.undone import undone
from cases.domain.progress.uses import Use, uses
from cases.mapping import courses
from cases.mapping.courses import course_event
from cases.mapping.folds import CaseFolded
from cases.models import Case, InstrumentUse, ToothPlanVersion, TreatmentEvent
from planning.run_sheet.graph import Step

COUNTS = frozenset({EventKind.STEP, EventKind.INSPECTED})
"""Kinds that tell of a use."""


def keep(case: Case, work: CaseFolded, versions: Sequence[ToothPlanVersion] | None) -> frozenset[str]:
    """Stores the new uses, or all of the case's after a fold from the start. The caller holds the case's lock.

    Returns the ids of the events that tell of a use.
    """
    # Nothing new could be a use, so that what is stored holds.
    if not work.whole and not any(row.kind in COUNTS for row in work.new):
        return work.folded.used
    by_hash = {row.hash: row for row in (versions if versions is not None else _versions(case))}
    undone = frozenset(work.folded.course.undone)
    now = uses(work.folded.events, undone, lambda event: _instrument(event, by_hash))
    if work.whole:
        _keep_anew(case, now, work.new, by_hash)
    else:
        _add(case, [use for use in now if use.event not in work.folded.used], work.new, by_hash)
    return frozenset(use.event for use in now)


def keep_before_a_plan(case: Case) -> None:
    """Stores the uses of a case that has a plan, but none in force yet. The caller holds the case's lock."""
    rows = list(case.events.order_by("position"))
    events = [course_event(row) for row in rows]
    by_hash = {row.hash: row for row in _versions(case)}
    now = uses(events, undone(events), lambda event: _instrument(event, by_hash))
    _keep_anew(case, now, rows, by_hash)


def _versions(case: Case) -> QuerySet[ToothPlanVersion]:
    return case.versions.all()


def _keep_anew(
    case: Case, now: Sequence[Use], rows: Sequence[TreatmentEvent], by_hash: Mapping[str, ToothPlanVersion]
) -> None:
    """Stores just these uses of the case; rows that are right already stay as they are."""
    wanted = {UUID(use.event) for use in now}
    there = set(case.instrument_uses.values_list("pk", flat=True))
    if gone := there - wanted:
        case.instrument_uses.filter(pk__in=gone).delete()
    _add(case, [use for use in now if UUID(use.event) not in there], rows, by_hash)


def _add(
    case: Case, new: Sequence[Use], rows: Sequence[TreatmentEvent], by_hash: Mapping[str, ToothPlanVersion]
) -> None:
    by_id = {str(row.pk): row for row in rows}
    if new:
        InstrumentUse.objects.bulk_create(_row(case, use, by_id[use.event], by_hash) for use in new)


def _instrument(event: CourseEvent, by_hash: Mapping[str, ToothPlanVersion]) -> str | None:
    """Key of the instrument that a step or an inspection is about."""
    if event.plan not in by_hash:
        return None  # the plan is not here, so nobody knows its instruments
    worked = courses.plan_facts(by_hash[event.plan].pk)
    if isinstance(event.payload, InspectedPayload):
        called = event.payload.instrument
        return next((key for key, name in worked.names.items() if called in (key, name)), None)
    sheet = worked.sheets.get(event.canal) if isinstance(event.payload, StepPayload) else None
    node = sheet.nodes.get(event.node) if sheet else None
    return node.instrument if isinstance(node, Step) else None


def _row(case: Case, use: Use, event: TreatmentEvent, by_hash: Mapping[str, ToothPlanVersion]) -> InstrumentUse:
    return InstrumentUse(
        event=event,
        case=case,
        kit_id=by_hash[event.plan_hash].kit_id,
        student_id=case.student_id,
        instrument=use.instrument,
        discarded=use.discarded,
        at=event.server_time,
    )
