"""Events that the program records itself, in the name of the person who caused them."""

from __future__ import annotations

from uuid import UUID

from django.utils import timezone

from cases.domain.events.payloads import EventPayload
from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, ToothPlanVersion, TreatmentEvent
from cases.models.prepared import Prepared
from cases.services.common import idempotency
from planning.foundation.encoding import canonical_text

HERE = UUID(int=0)
"""The nil UUID (RFC 9562, 5.9): what comes from here comes from no device."""

_LAST: Prepared[tuple[int, UUID]] = Prepared(
    lambda case: TreatmentEvent.objects.filter(case=case).order_by("-position").values_list("position", "pk")[:1]
)
_LAST_SEQ: Prepared[tuple[int]] = Prepared(
    lambda case, device: (
        TreatmentEvent.objects.filter(case=case, device=device).order_by("-device_seq").values_list("device_seq")[:1]
    )
)


def write(
    *, actor: Person, case: Case, version: ToothPlanVersion, payload: EventPayload, canal: str = "", node: str = ""
) -> TreatmentEvent:
    """The event at the end of the case's record; the caller holds the case."""
    position, _ = last(case)
    return TreatmentEvent.objects.create(
        id=uuid7(),
        sent_hash=idempotency.fingerprint(actor=actor, to=case.pk, what={"payload": payload}),
        case=case,
        version=version,
        position=position + 1,
        actor=actor,
        device=HERE,
        device_seq=last_seq(case, HERE) + 1,
        device_time=timezone.now(),
        seen_position=position,
        plan_hash=version.hash,
        canal=canal,
        node=node,
        kind=payload.kind,
        text=canonical_text(payload),
    )


def last(case: Case) -> tuple[int, UUID | None]:
    """Position and id of the case's last event; 0 and None where there is none."""
    return _LAST.first(case.pk) or (0, None)


def last_seq(case: Case, device: UUID) -> int:
    """The highest number of the device among the case's events; 0 where there is none."""
    row = _LAST_SEQ.first(case.pk, device)
    return row[0] if row else 0
