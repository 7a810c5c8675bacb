"""Striking a reading that was a mistake. It stays, with who, when and why; what rested on it is computed anew."""

from __future__ import annotations

from django.db import transaction
from django.utils import timezone

from cases.domain.access.permissions import May
from cases.domain.events.payloads import StruckPayload
from cases.domain.struck import StruckWhy
from cases.mapping import folds
from cases.models import Canal, Case, JunctionReading, LengthReading, Person
from cases.models.readings import STRUCK
from cases.services.common import audit
from cases.services.common.guard import guard
from cases.services.common.locking import locked, raise_revision
from cases.services.treatment import after_events, server_events

Row = LengthReading | JunctionReading


@transaction.atomic
def strike(*, actor: Person, reading: Row, why: StruckWhy) -> Row:
    """The reading, struck; the first who struck it stays. Work on its canal waits for a plan without it.

    Raises NotAllowed.
    """
    canal: Canal = reading.canal
    guard(May.CHART, actor, canal.tooth.case)
    case = locked(canal.tooth.case_id)
    reading.refresh_from_db(fields=STRUCK)
    if reading.struck_at is not None:
        return reading
    reading.struck_at, reading.struck_by, reading.struck_why = timezone.now(), actor, why.value
    reading.save(update_fields=STRUCK)
    audit.changed(actor=actor, verb="strike", subject=reading, case=case, after={"canal": canal.name, "why": why.value})
    raise_revision(case)
    _tell(actor, case, canal, reading, why)
    return reading


def _tell(actor: Person, case: Case, canal: Canal, reading: Row, why: StruckWhy) -> None:
    """Tells the chair of it, where a plan is in force."""
    course = folds.course_of(case.pk)
    if course is None:
        return
    of_length = isinstance(reading, LengthReading)
    payload = StruckPayload(what="length" if of_length else "junction", struck=str(reading.pk), why=why)
    version = case.versions.get(hash=course.plan)
    server_events.write(actor=actor, case=case, version=version, payload=payload, canal=canal.name)
    after_events.keep(case)
