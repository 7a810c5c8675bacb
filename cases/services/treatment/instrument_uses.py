"""Keeps what instruments were used for, so that the next plan knows without reading what was done elsewhere."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from uuid import UUID

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import InspectedPayload, StepPayload
from cases.domain.progress.uses import Use, uses
from cases.mapping import courses
from cases.mapping.courses import course_event
from cases.models import Case, InstrumentUse, ToothPlanVersion, TreatmentEvent
from planning.run_sheet.graph import Do

COUNTS = frozenset({EventKind.STEP, EventKind.INSPECTED, EventKind.UNDO})
"""Kinds after which the uses may be others."""


def keep(case: Case) -> None:
    """Makes the uses of the case anew from its events; the caller holds the case. What is right already stays."""
    events = {str(row.pk): row for row in case.events.filter(kind__in=COUNTS).order_by("position")}
    by_hash = {row.hash: row for row in case.versions.defer(*courses.TEXTS)}
    now = uses(_all(case), lambda event: _instrument(event, by_hash))
    wanted = {UUID(use.event): _row(case, use, events[use.event], by_hash) for use in now}
    there = set(case.instrument_uses.values_list("pk", flat=True))
    if gone := there - set(wanted):
        case.instrument_uses.filter(pk__in=gone).delete()
    InstrumentUse.objects.bulk_create(row for event, row in wanted.items() if event not in there)


def _all(case: Case) -> Sequence[CourseEvent]:
    # All kinds: what an undo takes back is one's own last entry, whatever it was.
    return [course_event(row) for row in case.events.order_by("position")]


def _instrument(event: CourseEvent, by_hash: Mapping[str, ToothPlanVersion]) -> str | None:
    """Key of the instrument that a step or an inspection is about."""
    if event.plan not in by_hash:
        return None  # of a plan that is not here nobody knows the instruments
    worked = courses.plan_facts(by_hash[event.plan].pk)
    if isinstance(event.payload, InspectedPayload):
        called = event.payload.instrument
        return next((key for key, name in worked.names.items() if called in (key, name)), None)
    sheet = worked.sheets.get(event.canal) if isinstance(event.payload, StepPayload) else None
    node = sheet.nodes.get(event.node) if sheet else None
    return node.instrument if isinstance(node, Do) else None


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
