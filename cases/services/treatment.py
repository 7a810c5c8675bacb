"""Recording what was done. Devices send in batches, late, twice; nothing is stored out of its device's sequence."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID

from django.db import transaction

from cases.domain.errors import NotAllowed, NotUsable, SequenceGap
from cases.domain.events import BY_SUPERVISOR, NEVER_UNDONE, EventKind
from cases.domain.roles import Role
from cases.domain.who_may import Actor, May
from cases.models import Case, Person, ToothPlanVersion, TreatmentEvent
from cases.services import sent
from cases.services.doer import guard
from cases.services.locking import locked
from planning.encoding import canonical_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One event as the device tells it."""

    id: UUID
    device_seq: int
    seen_position: int
    plan_hash: str
    kind: EventKind
    device_time: datetime
    body: Mapping[str, Any]
    canal: str = ""
    node: str = ""
    form: int = 1


def record(*, actor: Person, case: Case, device: UUID, batch: Sequence[Told]) -> list[TreatmentEvent]:
    """The events of the batch in their places, those stored before as they were.

    A clinical fact is never refused for coming out of course: refused are strangers, a sign-off by somebody who may
    not, an undo of what is never undone, a plan the case never had; then nothing of the batch is stored. Raises
    NotAllowed, NotUsable, SentDifferently; SequenceGap where an event of the device is missing: what came before the
    gap is stored, nothing from there on.
    """
    stored, gap = _record(actor, case, device, batch)
    if gap is not None:
        raise gap
    return stored


@transaction.atomic
def _record(
    actor: Person, case: Case, device: UUID, batch: Sequence[Told]
) -> tuple[list[TreatmentEvent], SequenceGap | None]:
    who = guard(May.TREAT, actor, case)
    case = locked(case.pk)
    versions = {version.hash: version for version in case.versions.defer("input_text", "output_text")}
    last = case.events.order_by("-position").first()
    position = last.position if last else 0
    of_device = case.events.filter(device=device).order_by("-device_seq").first()
    seq = of_device.device_seq if of_device else 0
    stored: list[TreatmentEvent] = []
    for number, told in enumerate(batch):
        sent_hash = _fingerprint(actor, case, device, told)
        if before := sent.known(TreatmentEvent, told.id, sent_hash):
            stored.append(before)
            continue
        _refuse(told, number, who, actor, case, versions)
        if told.device_seq != seq + 1:
            return stored, SequenceGap(expected=seq + 1, given=told.device_seq, at=(number, "device_seq"))
        position, seq = position + 1, seq + 1
        stored.append(_store(actor, case, device, told, position, versions[told.plan_hash], sent_hash))
    return stored, None


def _fingerprint(actor: Person, case: Case, device: UUID, told: Told) -> str:
    what = {
        "device": str(device),
        "device_seq": told.device_seq,
        "plan_hash": told.plan_hash,
        "kind": told.kind,
        "canal": told.canal,
        "node": told.node,
        "form": told.form,
        "device_time": told.device_time.isoformat(),
        "body": dict(told.body),
    }
    return sent.fingerprint(actor=actor, to=case.pk, what=what)


def _refuse(
    told: Told, number: int, who: Actor, actor: Person, case: Case, versions: Mapping[str, ToothPlanVersion]
) -> None:
    if told.plan_hash not in versions:
        raise NotUsable(reason="This case never had that plan.", at=(number, "plan_hash"))
    if told.kind in BY_SUPERVISOR and who.role is not Role.SUPERVISOR:
        raise NotAllowed(reason="A supervisor signs off and lets the work go on.", at=(number, "kind"))
    if told.kind is EventKind.UNDO:
        _refuse_undo(told, number, actor, case)


def _refuse_undo(told: Told, number: int, actor: Person, case: Case) -> None:
    """An undo names the actor's own last event on that canal."""
    at = (number, "body", "undoes")
    undone = {row.text for row in case.events.filter(kind=EventKind.UNDO)}
    own = case.events.filter(actor=actor, canal=told.canal).exclude(kind=EventKind.UNDO).order_by("-position")
    last = next((row for row in own if canonical_text({"undoes": str(row.pk)}) not in undone), None)
    if last is None or str(last.pk) != told.body.get("undoes"):
        raise NotUsable(reason="Only your own last entry on a canal can be undone.", at=at)
    if EventKind(last.kind) in NEVER_UNDONE:
        raise NotUsable(reason=f"A {last.kind.replace('_', ' ')} is answered, never undone.", at=at)


def _store(
    actor: Person,
    case: Case,
    device: UUID,
    told: Told,
    position: int,
    version: ToothPlanVersion,
    sent_hash: str,
) -> TreatmentEvent:
    return TreatmentEvent.objects.create(
        id=told.id,
        sent_hash=sent_hash,
        case=case,
        version=version,
        position=position,
        actor=actor,
        device=device,
        device_seq=told.device_seq,
        device_time=told.device_time,
        # A device cannot have seen what had not happened: a wrong number must not stop a clinical fact.
        seen_position=min(told.seen_position, position - 1),
        plan_hash=told.plan_hash,
        canal=told.canal,
        node=told.node,
        kind=told.kind,
        form=told.form,
        text=canonical_text(dict(told.body)),
    )
