"""What of an event cannot be checked when it comes in. The event is kept with the reason, and moves what it safely can.

A phone may tell a day later what happened. It did happen, even if somebody has left the programme since, or a figure's
bounds have changed.
"""

from __future__ import annotations

from collections.abc import Collection
from uuid import UUID

from django.db import transaction

from cases.domain.access.roles import Role
from cases.domain.events.kinds import NotChecked
from cases.domain.events.payloads import EventPayload, ReadingPayload, StepPayload
from cases.domain.events.registry import BY_SUPERVISOR
from cases.domain.events.visit_payloads import OnSitePayload, ReopenPayload
from cases.mapping.plans import plan_of
from cases.models import Canal, Case, Membership, Person, Review, ToothPlanVersion, TreatmentEvent
from cases.services.charting import canals, readings
from planning.foundation.bounds import within
from planning.foundation.errors import Refusal
from planning.foundation.quantities import mm


def what(payload: EventPayload, plan_hash: str, *, case: Case, plans: Collection[str]) -> NotChecked | None:
    """What cannot be checked of the event, before it changes anything; None where all can. The plan comes first: the
    rest is checked against it.
    """
    if plan_hash not in plans:
        return NotChecked.PLAN
    if _too_deep(payload):
        return NotChecked.DEPTH
    return _room(payload, case)


def _too_deep(payload: EventPayload) -> bool:
    within_tooth = within("depth")
    depths = (payload.depth_um, payload.stop_um) if isinstance(payload, StepPayload) else ()
    return any(depth is not None and not within_tooth.holds(mm(depth)) for depth in depths)


def _room(payload: EventPayload, case: Case) -> NotChecked | None:
    named = payload.supervisor_id if isinstance(payload, OnSitePayload | ReopenPayload) else ""
    if named == "" and not isinstance(payload, OnSitePayload):
        return None
    if not _is_id(named):
        return NotChecked.ROOM
    supervises = Membership.objects.filter(programme_id=case.programme_id, role=Role.SUPERVISOR, person_id=named)
    if supervises.exists():
        return None
    return NotChecked.ROOM_LEFT if _supervised(case, UUID(named)) else NotChecked.ROOM


def _supervised(case: Case, person: UUID) -> bool:
    """Whether the person has decided anything in the programme: then they were its supervisor at the time."""
    decided = Review.objects.filter(supervisor=person, version__programme=case.programme_id)
    at_chairs = TreatmentEvent.objects.filter(
        actor=person, case__programme=case.programme_id, kind__in=sorted(BY_SUPERVISOR)
    )
    return decided.exists() or at_chairs.exists()


def _is_id(text: str) -> bool:
    try:
        return str(UUID(text)) == text.lower()
    except ValueError:
        return False


def follow(
    payload: EventPayload, canal: str, *, actor: Person, case: Case, version: ToothPlanVersion
) -> NotChecked | None:
    """Changes the chart as an event asks: adds its reading, or moves a reference point. Says what was not possible."""
    if isinstance(payload, ReadingPayload):
        return None if _take_length(payload, canal, actor, case) else NotChecked.LENGTH
    if isinstance(payload, ReopenPayload):
        return None if _move_points(payload, actor, case, version) else NotChecked.POINT
    return None


def _take_length(payload: ReadingPayload, canal: str, actor: Person, case: Case) -> bool:
    """A length taken at the chair is a reading of its canal like any other."""
    row = Canal.objects.filter(tooth__case=case, name=canal).select_related("tooth__case", "root").first()
    if row is None:
        return False
    try:
        # A savepoint: a reading that is refused must not take with it the event that told of it.
        with transaction.atomic():
            readings.keep_length(actor=actor, canal=row, reading=payload.taken)
    except Refusal:
        return False
    return True


def _move_points(payload: ReopenPayload, actor: Person, case: Case, version: ToothPlanVersion) -> bool:
    """Charts the new reference point of every canal whose old one has gone: lengths taken before no longer count.

    False where one was not taken over. A new point with the name of the old one is not: the old lengths would go on
    counting.
    """
    gone = [check for check in payload.found if check.reference_point]
    before = {canal.canal: canal.reference_point for canal in plan_of(version).canals} if gone else {}
    all_moved = True
    for check in gone:
        row = Canal.objects.filter(tooth__case=case, name=check.canal).select_related("tooth__case").first()
        if row is None or check.reference_point == before.get(check.canal):
            all_moved = False
            continue
        try:
            # A savepoint, as above: the event is kept even where its new point is refused.
            with transaction.atomic():
                canals.change_canal(actor=actor, canal=row, changes={"reference_point": check.reference_point})
        except Refusal:
            all_moved = False
    return all_moved
