"""Links by which people join: made, shown once, made anew, withdrawn."""

from __future__ import annotations

import secrets
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access import key_text
from cases.domain.access.invited import MOST_AT_ONCE, MOST_DAYS, Invited, faults_of, same_username
from cases.domain.access.permissions import May, refuse_unless
from cases.domain.errors import Conflict, NotHere, NotUsable
from cases.models import Invitation, Person, Programme
from cases.services.common import audit
from cases.services.common.guard import actor_in

SECRET_BYTES = 24  # 192 random bits, which nobody guesses: one round of SHA-256 keeps them
KEPT_AFTER = timedelta(days=30)
"""Names of those who did not come are kept for so long after the end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeInvitation:
    row: Invitation
    text: str
    """What the link carries. Given once; afterwards nobody can tell it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Invitations:
    """What came of inviting."""

    made: list[MadeInvitation]
    left_out: list[Invited]
    """Who belongs to the programme already, or has a link that still counts."""


@transaction.atomic
def invite(*, actor: Person, programme_id: UUID, people: Sequence[Invited], days: int) -> Invitations:
    """A link for each who is not in the programme and has none. Raises NotHere, NotAllowed, NotUsable."""
    _hold(actor, programme_id)
    _refuse_unusable(people, days)
    known = Invitation.objects.usernames(programme_id)
    left_out = [person for person in people if person.username and same_username(person.username) in known]
    made = [
        make(by=actor, programme_id=programme_id, person=person, days=days)
        for person in people
        if person not in left_out
    ]
    for each in made:
        _log(actor, "invite", each.row)
    return Invitations(made=made, left_out=left_out)


def make(*, by: Person | None, programme_id: UUID, person: Invited, days: int) -> MadeInvitation:
    """A link, by a coordinator or by whoever runs the server. Whoever calls has asked whether there may be one."""
    text = secrets.token_urlsafe(SECRET_BYTES)
    row = Invitation.objects.create(
        programme_id=programme_id,
        role=person.role.value,
        group=person.group,
        name=person.name,
        username=person.username,
        secret_hash=key_text.hash_of(text),
        made_by=by,
        ends_at=timezone.now() + timedelta(days=days),
    )
    return MadeInvitation(row=row, text=text)


@transaction.atomic
def renew(*, actor: Person, programme_id: UUID, id: UUID, days: int) -> MadeInvitation:
    """Another link for an invitation that nobody used; the one before counts no more. Raises NotHere, NotAllowed,
    NotUsable, Conflict for who has come meanwhile."""
    _hold(actor, programme_id)
    _refuse_unusable([], days)
    row = _held(programme_id, id)
    text = secrets.token_urlsafe(SECRET_BYTES)
    row.secret_hash, row.made_by = key_text.hash_of(text), actor
    row.withdrawn_at, row.ends_at = None, timezone.now() + timedelta(days=days)
    row.save(update_fields=["secret_hash", "made_by", "withdrawn_at", "ends_at"])
    _log(actor, "renew", row)
    return MadeInvitation(row=row, text=text)


@transaction.atomic
def withdraw(*, actor: Person, programme_id: UUID, id: UUID) -> None:
    """The link counts no more. Harmless where it does not already. Raises NotHere, NotAllowed, Conflict for who has
    come."""
    _hold(actor, programme_id)
    _withdraw(actor, _held(programme_id, id))


@transaction.atomic
def withdraw_all_of(*, actor: Person, programme_id: UUID, made_by: Person) -> None:
    """No link counts any more that this person made: they could have kept one for themselves."""
    for row in Invitation.objects.still_open(programme_id).filter(made_by=made_by).select_for_update(no_key=True):
        _withdraw(actor, row)


def _withdraw(actor: Person, row: Invitation) -> None:
    if row.withdrawn_at is None:
        row.withdrawn_at = timezone.now()
        row.save(update_fields=["withdrawn_at"])
        _log(actor, "withdraw", row)


def tidy() -> int:
    """Removes, with the names in them, those that nobody used and that ended a while ago; returns how many."""
    gone = Invitation.objects.filter(used_at=None, ends_at__lt=timezone.now() - KEPT_AFTER)
    return gone.delete()[0]


def _hold(actor: Person, programme_id: UUID) -> None:
    """Guards, and holds the programme until the transaction ends: nobody is invited twice at once."""
    refuse_unless(May.KEEP_PEOPLE, actor_in(actor, programme_id))
    Programme.objects.select_for_update(no_key=True).get(pk=programme_id)


def _held(programme_id: UUID, id_: UUID) -> Invitation:
    row = Invitation.objects.select_for_update(no_key=True).filter(programme=programme_id, pk=id_).first()
    if row is None:
        raise NotHere(what="invitation")
    if row.used_at is not None:
        raise Conflict(reason="They have joined by it. Change what they are in the list of people.")
    return row


def _refuse_unusable(people: Sequence[Invited], days: int) -> None:
    if not 1 <= days <= MOST_DAYS:
        raise NotUsable(reason=f"A link ends after 1 to {MOST_DAYS} days.", at=("days",))
    if len(people) > MOST_AT_ONCE:
        raise NotUsable(reason=f"At most {MOST_AT_ONCE} people at once: send them in parts.", at=("people",))
    seen: set[str] = set()
    for number, person in enumerate(people):
        for part, says in faults_of(name=person.name, username=person.username, group=person.group):
            raise NotUsable(reason=says, at=("people", number, part))
        username = same_username(person.username)
        if username and username in seen:
            reason = "This user name stands there twice. Give each person one of their own."
            raise NotUsable(reason=reason, at=("people", number, "username"))
        seen.add(username)


def _log(actor: Person, verb: str, row: Invitation) -> None:
    values = {"role": row.role, "group": row.group, "ends_at": row.ends_at}
    audit.changed(actor=actor, verb=verb, subject=row, programme_id=row.programme_id, after=values)
