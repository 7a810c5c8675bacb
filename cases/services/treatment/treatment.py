"""Recording what was done. Devices send in batches, late, twice; nothing is stored out of its device's sequence."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from uuid import UUID

from django.db import transaction

from cases.domain.access.who_tells import refuse_unless_tells
from cases.domain.errors import NotAllowed, NotUsable, SequenceGap
from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import EventPayload, SignOffPayload
from cases.domain.events.registry import Part
from cases.models import Case, Person, ToothPlanVersion, TreatmentEvent
from cases.models.prepared import Prepared
from cases.models.whole_rows import NewRows
from cases.services.common import feed, idempotency, parts
from cases.services.common.locking import locked
from cases.services.treatment import after_events, not_checked, server_events
from planning.foundation.encoding import canonical_text, kept_text
from planning.foundation.errors import Pointer

_VERSIONS = Prepared(lambda case: ToothPlanVersion.objects.filter(case=case).only("number", "hash", "kit"))
_EVENTS = NewRows(TreatmentEvent)
_KNOWN = Prepared(lambda *ids: TreatmentEvent.objects.filter(pk__in=ids))


@dataclass(frozen=True, slots=True, kw_only=True)
class ReceivedEvent:
    """One event as the device reports it."""

    id: UUID
    device_seq: int
    seen_position: int
    plan_hash: str
    device_time: datetime
    payload: EventPayload
    canal: str = ""
    """Empty where it concerns the whole tooth."""
    node: str = ""
    schema_version: int = 1

    @property
    def kind(self) -> EventKind:
        return EventKind(self.payload.kind)


def record(*, actor: Person, case: Case, device: UUID, batch: Sequence[ReceivedEvent]) -> list[TreatmentEvent]:
    """Stores the events of a batch and returns them in their order; one that was stored before is returned as it was.

    A clinical fact is never refused for coming at the wrong moment, nor for what cannot be checked any more: it is
    kept and marked. Strangers are refused, and what the teller's part in the case may not tell (`who_tells`), and any
    event of a case that never had a plan; then nothing of the batch is stored. Raises NotAllowed, NotUsable,
    SentDifferently; SequenceGap where an event of the device is missing: what came before the gap is stored, nothing
    from there on.
    """
    stored, gap = _record(actor, case, device, batch)
    if gap is not None:
        raise gap
    return stored


@transaction.atomic
def _record(
    actor: Person, case: Case, device: UUID, batch: Sequence[ReceivedEvent]
) -> tuple[list[TreatmentEvent], SequenceGap | None]:
    # The program's own events have this id, and no device may get into their sequence.
    if device == server_events.HERE:
        raise NotUsable(reason="A device makes its own identifier: this one names no device.", at=("device_id",))
    case = locked(case.pk)
    part = parts.part_of(actor, case)
    versions = {version.hash: version for version in _VERSIONS(case.pk)}
    last = server_events.last(case, device)
    position, seq = last.position, last.device_seq
    known = {row.pk: row for row in _KNOWN(*(event.id for event in batch))}
    stored: list[TreatmentEvent] = []
    new: list[TreatmentEvent] = []
    gap = None
    for number, event in enumerate(batch):
        what = {"device": str(device), "event": kept_text(event)}
        sent_hash = idempotency.fingerprint(actor=actor, to=case.pk, what=what)
        # Sent before, and the answer got lost: it is answered as it was then, whatever its number.
        if before := idempotency.same(known.get(event.id), sent_hash):
            stored.append(before)
            continue
        # Before the teller's part is looked at: the missing event may be the one that gave it to them.
        if event.device_seq != seq + 1:
            gap = SequenceGap(expected=seq + 1, given=event.device_seq, at=("events", number, "device_seq"))
            break
        _refuse(event, number, part, versions)
        # Who takes over works the case from the very next event of the same batch.
        part = parts.after(event.kind, part)
        position, seq = position + 1, seq + 1
        # Known from now on, so that an event that stands twice in one batch is stored once.
        row = known[event.id] = _row(actor, case, device, event, position, versions, sent_hash)
        new.append(row)
        stored.append(row)
    if new:
        _EVENTS.add(new)
        feed.happened(case, new)
        after_events.keep(case, new=new, after=last.id, versions=list(versions.values()))
    return stored, gap


def _refuse(event: ReceivedEvent, number: int, part: Part, versions: Mapping[str, ToothPlanVersion]) -> None:
    at = ("events", number)
    if not versions:
        raise NotUsable(reason="This case never had a plan.", at=(*at, "plan_hash"))
    refuse_unless_tells(event.kind, part, at=(*at, "payload", "kind"))
    if isinstance(event.payload, SignOffPayload):
        _refuse_sign_off(event.payload, (*at, "payload"))


def _refuse_sign_off(sign_off: SignOffPayload, at: Pointer) -> None:
    if sign_off.on_site:
        raise NotAllowed(reason="An on-site sign-off is given with a supervisor's code.", at=(*at, "on_site"))
    refuse_unreasoned(sign_off, at)


def refuse_unreasoned(sign_off: SignOffPayload, at: Pointer = ()) -> None:
    """Raises NotUsable where a sign-off lacks the reason that it needs."""
    if sign_off.despite_missing and sign_off.exit != "approved":
        raise NotUsable(
            reason="Only what is approved can be let pass in spite of something.", at=(*at, "despite_missing")
        )
    if (sign_off.despite_missing or sign_off.exit == "returned") and not sign_off.reason.strip():
        raise NotUsable(
            reason="Give the reason: the student works by it, and it stays in the record.", at=(*at, "reason")
        )


def _row(
    actor: Person,
    case: Case,
    device: UUID,
    event: ReceivedEvent,
    position: int,
    versions: Mapping[str, ToothPlanVersion],
    sent_hash: str,
) -> TreatmentEvent:
    # A row has to name a version: where the plan of the event is not here, the newest stands in its place.
    version = versions.get(event.plan_hash) or max(versions.values(), key=lambda each: each.number)
    unsure = not_checked.what(event.payload, event.plan_hash, case=case, plans=versions)
    not_followed = not_checked.follow(event.payload, event.canal, actor=actor, case=case, version=version)
    row = TreatmentEvent(
        id=event.id,
        sent_hash=sent_hash,
        case_id=case.pk,
        version_id=version.pk,
        position=position,
        actor_id=actor.pk,
        device=device,
        device_seq=event.device_seq,
        device_time=event.device_time,
        # A device cannot have seen what had not happened: a wrong number must not stop a clinical fact.
        seen_position=max(0, min(event.seen_position, position - 1)),
        plan_hash=event.plan_hash,
        canal=event.canal,
        node=event.node,
        kind=event.kind,
        schema_version=event.schema_version,
        not_checked=unsure or not_followed or "",
        text=canonical_text(event.payload),
    )
    row.payload = event.payload
    return row
