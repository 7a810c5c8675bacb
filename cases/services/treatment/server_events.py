"""Events that the program records itself, in the name of the person who caused them."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID

from django.db.models import QuerySet, Subquery
from django.utils import timezone

from cases.domain.events.payloads import EventPayload
from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, ToothPlanVersion, TreatmentEvent
from cases.models.prepared import Prepared
from cases.services.common import feed, idempotency
from planning.foundation.encoding import canonical_text

HERE = UUID(int=0)
"""The nil UUID (RFC 9562, 5.9): what comes from here comes from no device."""


@dataclass(frozen=True, slots=True)
class Last:
    """How far a case's events go; 0 and None where there is none."""

    position: int = 0
    id: UUID | None = None
    device_seq: int = 0
    """The highest number of the device that was asked about."""


def _last(case: UUID, device: UUID) -> QuerySet[TreatmentEvent, tuple[int, UUID, int | None]]:
    events = TreatmentEvent.objects.filter(case=case)
    seqs = events.filter(device=device).order_by("-device_seq").values("device_seq")
    return events.order_by("-position").values_list("position", "pk", Subquery(seqs[:1]))[:1]


_LAST = Prepared(_last)


def write(
    *, actor: Person, case: Case, version: ToothPlanVersion, payload: EventPayload, canal: str = "", node: str = ""
) -> TreatmentEvent:
    """The event at the end of the case's record; the caller holds the case."""
    before, text = last(case, HERE), canonical_text(payload)
    event: TreatmentEvent = TreatmentEvent.objects.create(
        id=uuid7(),
        sent_hash=idempotency.fingerprint(actor=actor, to=case.pk, what={"payload": text}),
        case=case,
        version=version,
        position=before.position + 1,
        actor=actor,
        device=HERE,
        device_seq=before.device_seq + 1,
        device_time=timezone.now(),
        seen_position=before.position,
        plan_hash=version.hash,
        canal=canal,
        node=node,
        kind=payload.kind,
        text=text,
    )
    feed.happened(case, [event])
    return event


def last(case: Case, device: UUID) -> Last:
    """How far the case's events go, and the device's among them."""
    row = _LAST.first(case.pk, device)
    return Last(row[0], row[1], row[2] or 0) if row else Last()
