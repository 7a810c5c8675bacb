"""A supervisor's sign-off on the student's phone: with a one-time code, and only while the server can be reached."""

from __future__ import annotations

from dataclasses import dataclass, replace
from uuid import UUID

from django.db import transaction

from cases.domain.access.roles import Role
from cases.domain.errors import CaseError, HoldPointAnswered, NotUsable
from cases.domain.events.payloads import SignOffPayload
from cases.domain.progress.canal_progress import CanalState
from cases.domain.uuid7 import uuid7
from cases.mapping import courses, folds
from cases.models import Case, Membership, Person, TreatmentEvent
from cases.services.common import audit, parts
from cases.services.common.locking import locked
from cases.services.people import one_time_codes
from cases.services.treatment import after_events, server_events
from cases.services.treatment.treatment import refuse_unreasoned


@dataclass(frozen=True, slots=True, kw_only=True)
class OnSiteSignOff:
    """What a supervisor types in on the student's phone, and what the screen shows while they do."""

    supervisor_id: UUID
    code: str
    plan_hash: str
    node: str
    payload: SignOffPayload
    canal: str = ""
    """Empty for a sign-off of the visit."""
    also: tuple[str, ...] = ()
    """Other canals that wait at the same step: the sign-off holds for them too."""


def sign_off(*, actor: Person, case: Case, entry: OnSiteSignOff) -> TreatmentEvent:
    """Records the sign-off in the supervisor's name, an event for each canal, all with one code. Returns the first.

    Raises NotAllowed, NotUsable, CodeRefused, TooManyTries; HoldPointAnswered where a canal does not wait at this step
    of this plan, or the visit not for this sign-off.
    """
    came = _sign_off(actor, case, entry)
    if isinstance(came, CaseError):
        raise came
    return came


@transaction.atomic
def _sign_off(actor: Person, case: Case, entry: OnSiteSignOff) -> TreatmentEvent | CaseError:
    parts.refuse_unless_works_now(actor, case, "An on-site sign-off is taken on the phone")
    refuse_unreasoned(entry.payload)
    supervisor = _supervisor(case, entry.supervisor_id)
    case = locked(case.pk)
    version = case.versions.filter(hash=entry.plan_hash).first()
    if version is None:
        raise NotUsable(reason="This case never had that plan.", at=("plan_hash",))
    canals = tuple(dict.fromkeys((entry.canal, *entry.also)))
    # Before the code is looked at: only a sign-off that counts uses a code up.
    _refuse_elsewhere(case, entry, canals)
    # The wrong try has to stay in the database: the refusal is raised only after the transaction has ended well.
    if refusal := one_time_codes.use(supervisor=supervisor, code=entry.code, by=actor, case=case):
        return refusal
    payload = replace(entry.payload, together=str(uuid7())) if len(canals) > 1 else entry.payload
    events = [
        server_events.write(actor=supervisor, case=case, version=version, payload=payload, canal=canal, node=entry.node)
        for canal in canals
    ]
    audit.changed(actor=actor, verb="take-sign-off", subject=events[0], case=case, after={"supervisor": supervisor})
    after_events.keep(case)
    return events[0]


def _supervisor(case: Case, id_: UUID) -> Person:
    """The person with this id. Raises NotUsable for somebody who does not supervise in the programme."""
    members = Membership.objects.filter(programme=case.programme_id, role=Role.SUPERVISOR, person__is_active=True)
    membership = members.filter(person=id_).select_related("person").first()
    if membership is None:
        raise NotUsable(reason="That is no supervisor of the programme.", at=("supervisor_id",))
    return membership.person


def _refuse_elsewhere(case: Case, entry: OnSiteSignOff, canals: tuple[str, ...]) -> None:
    """Raises HoldPointAnswered unless each canal waits at just this step of this plan, or the visit for this answer."""
    course = folds.course_of(case.pk)
    if course and canals == ("",) and entry.node in course.visit.sign_offs_due:
        return
    for name in canals:
        canal = course.canals.get(name) if course and course.plan == entry.plan_hash else None
        if canal is not None and canal.state is CanalState.HOLD_POINT and canal.walk.at == entry.node:
            continue
        events = case.events.filter(canal=name).select_related("actor").order_by("position")
        of_canal = [(event.actor, courses.payload_of(event)) for event in events]
        answers = [f"{who}: {payload.exit}." for who, payload in of_canal if isinstance(payload, SignOffPayload)]
        raise HoldPointAnswered(canal=name or "The visit", last=answers[-1] if answers else "")
