"""What people are in a programme: begun, changed, ended. What ends opens nothing from that moment on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from uuid import UUID

from django.db import transaction

from cases.domain.access.invited import faults_of
from cases.domain.access.permissions import May, refuse_unless
from cases.domain.access.roles import Role
from cases.domain.errors import Conflict, NotHere, NotUsable
from cases.models import Case, Consent, FormerMembership, Membership, Person, Programme, PushSubscription
from cases.services.common import audit
from cases.services.common.guard import actor_in
from cases.services.people import access_keys, consents, invitations


def begin(*, person: Person, programme_id: UUID, role: Role, group: str) -> Membership:
    """The person as a member from now on. Raises Conflict where a student would come to decide on cases of their own.

    Whoever calls has asked whether they may be one.
    """
    _refuse_own_cases(person.pk, programme_id, role)
    row = Membership.objects.create(person=person, programme_id=programme_id, role=role.value, group=group)
    _log(person, "join", row, after=_shown(row))
    return row


@transaction.atomic
def change(*, actor: Person, programme_id: UUID, person_id: UUID, changes: Mapping[str, Any]) -> Membership:
    """Another role, group, or day until which a student may treat patients; null of that: they may not.

    Raises NotHere, NotAllowed, NotUsable, Conflict for the only coordinator and for a student who has cases.
    """
    row = _held(actor, programme_id, person_id)
    before = _shown(row)
    for field, value in changes.items():
        setattr(row, field, value)
    role = Role(row.role)
    for _, says in faults_of(name="", username="", group=row.group):
        raise NotUsable(reason=says, at=("group",))
    if role != before["role"]:
        _refuse_own_cases(person_id, programme_id, role)
        _refuse_last_coordinator(row, Role(before["role"]))
    if role is not Role.STUDENT:
        if changes.get("treats_patients_until"):
            raise NotUsable(reason="Students alone are let treat patients by a day.", at=("treats_patients_until",))
        row.treats_patients_until = None
    if before == (after := _shown(row)):
        return row
    row.save(update_fields=[*after])
    if before["role"] == Role.COORDINATOR != role:
        invitations.withdraw_all_of(actor=actor, programme_id=programme_id, made_by=row.person)
    _log(actor, "change", row, before=before, after=after)
    return row


@transaction.atomic
def end(*, actor: Person, programme_id: UUID, person_id: UUID) -> None:
    """The person belongs to the programme no more. Their cases stay, and records name them as before.

    What asks for a membership finds none from now on: sessions, keys, notifications and webhooks. What others hold in
    their name goes: clients' tokens, links they made, and with the last programme their keys.
    Raises NotHere, NotAllowed, Conflict for the only coordinator.
    """
    row = _held(actor, programme_id, person_id)
    _refuse_last_coordinator(row, Role(row.role))
    person = row.person
    invitations.withdraw_all_of(actor=actor, programme_id=programme_id, made_by=person)
    for id_ in Consent.objects.filter(person=person, client__service__programme=programme_id).values_list("pk"):
        consents.end(actor=person, id=id_[0])
    if not Membership.objects.filter(person=person).exclude(pk=row.pk).exists():
        access_keys.revoke_all_own(person=person)
        PushSubscription.objects.filter(person=person).delete()
    FormerMembership.objects.create(
        person=person,
        programme_id=programme_id,
        role=row.role,
        group=row.group,
        joined_at=row.joined_at,
        ended_by=actor,
    )
    _log(actor, "end", row, before=_shown(row))
    row.delete()


def _held(actor: Person, programme_id: UUID, person_id: UUID) -> Membership:
    """The membership, and with it the programme until the transaction ends: of two coordinators who end each other at
    the same moment, one stays."""
    refuse_unless(May.KEEP_PEOPLE, actor_in(actor, programme_id))
    Programme.objects.select_for_update(no_key=True).get(pk=programme_id)
    # Once more, as the actor may have been ended while they waited.
    refuse_unless(May.KEEP_PEOPLE, actor_in(actor, programme_id))
    rows = Membership.objects.select_for_update(of=("self",), no_key=True).select_related("person")
    row = rows.filter(programme=programme_id, person=person_id).first()
    if row is None:
        raise NotHere(what="person")
    return row


def _refuse_last_coordinator(row: Membership, was: Role) -> None:
    if was is not Role.COORDINATOR:
        return
    others = Membership.objects.filter(programme=row.programme_id, role=Role.COORDINATOR, person__is_active=True)
    if not others.exclude(pk=row.pk).exists():
        raise Conflict(reason="A programme has one coordinator at least. Invite another one first.")


def _refuse_own_cases(person_id: UUID, programme_id: UUID, role: Role) -> None:
    if role is not Role.STUDENT and Case.objects.filter(student=person_id, programme=programme_id).exists():
        raise Conflict(
            reason="They have cases of their own here, as a student, and would decide on them. "
            "Invite them under another user name."
        )


def _shown(row: Membership) -> dict[str, Any]:
    return {"role": row.role, "group": row.group, "treats_patients_until": row.treats_patients_until}


def _log(actor: Person, verb: str, row: Membership, **values: Any) -> None:
    audit.changed(actor=actor, verb=verb, subject=row, programme_id=row.programme_id, **values)
