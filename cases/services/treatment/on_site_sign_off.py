"""A supervisor's sign-off on the student's phone: with a one-time code, and only while the server can be reached."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from uuid import UUID

from django.db import transaction

from cases.domain.access.roles import Role
from cases.domain.errors import CaseError, HoldPointAnswered, NotUsable
from cases.domain.events.payloads import SignOffExit, SignOffPayload
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
class CanalSignOff:
    """What is said of one canal at the hold point where it waits."""

    canal: str
    node: str
    """The hold point in the run sheet."""
    exit: SignOffExit
    despite_missing: bool = False
    """Approved although what is asked for is not there."""
    reason: str = ""
    """Why, of what is returned or let pass in spite."""

    @property
    def payload(self) -> SignOffPayload:
        return SignOffPayload(exit=self.exit, despite_missing=self.despite_missing, reason=self.reason, on_site=True)


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
    also: tuple[CanalSignOff, ...] = ()
    """Other canals that wait, each at a hold point of its own and with an answer of its own."""

    @property
    def every(self) -> Mapping[str, tuple[str, SignOffPayload]]:
        """By canal, the one in hand first: its hold point, and what is said."""
        others = {each.canal: (each.node, each.payload) for each in self.also}
        return {self.canal: (self.node, self.payload)} | {of: said for of, said in others.items() if of != self.canal}


def sign_off(*, actor: Person, case: Case, entry: OnSiteSignOff) -> TreatmentEvent:
    """Records the sign-off in the supervisor's name, an event for each canal, all with one code. Returns the first.

    Raises NotAllowed, NotUsable, CodeRefused, TooManyTries; HoldPointAnswered where a canal does not wait at its step
    of this plan, or the visit not for this sign-off.
    """
    came = _sign_off(actor, case, entry)
    if isinstance(came, CaseError):
        raise came
    return came


@transaction.atomic
def _sign_off(actor: Person, case: Case, entry: OnSiteSignOff) -> TreatmentEvent | CaseError:
    parts.refuse_unless_works_now(actor, case, "An on-site sign-off is taken on the phone")
    for _, said in entry.every.values():
        refuse_unreasoned(said)
    supervisor = _supervisor(case, entry.supervisor_id)
    case = locked(case.pk)
    version = case.versions.filter(hash=entry.plan_hash).first()
    if version is None:
        raise NotUsable(reason="This case never had that plan.", at=("plan_hash",))
    # Before the code is looked at: only a sign-off that counts uses a code up.
    _refuse_elsewhere(case, entry)
    # The wrong try has to stay in the database: the refusal is raised only after the transaction has ended well.
    if refusal := one_time_codes.use(supervisor=supervisor, code=entry.code, by=actor, case=case):
        return refusal
    together = str(uuid7()) if len(entry.every) > 1 else ""
    of_case = {"actor": supervisor, "case": case, "version": version}
    events = [
        server_events.write(**of_case, payload=replace(said, together=together), canal=canal, node=node)
        for canal, (node, said) in entry.every.items()
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


def _refuse_elsewhere(case: Case, entry: OnSiteSignOff) -> None:
    """Raises HoldPointAnswered unless each canal waits at just its step of this plan, or the visit for this answer."""
    course = folds.course_of(case.pk)
    if course and tuple(entry.every) == ("",) and entry.node in course.visit.sign_offs_due:
        return
    for name, (node, _) in entry.every.items():
        canal = course.canals.get(name) if course and course.plan == entry.plan_hash else None
        if canal is not None and canal.state is CanalState.HOLD_POINT and canal.walk.at == node:
            continue
        events = case.events.filter(canal=name).select_related("actor").order_by("position")
        of_canal = [(event.actor, courses.payload_of(event)) for event in events]
        answers = [f"{who}: {payload.exit}." for who, payload in of_canal if isinstance(payload, SignOffPayload)]
        raise HoldPointAnswered(canal=name or "The visit", last=answers[-1] if answers else "")
