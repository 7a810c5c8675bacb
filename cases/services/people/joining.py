"""Joining a programme by a link: with a new account, or with the one that somebody has."""

from __future__ import annotations

from uuid import UUID

from django.contrib.auth.hashers import make_password
from django.contrib.auth.password_validation import validate_password
from django.core.exceptions import ValidationError
from django.db import IntegrityError, transaction
from django.http import HttpRequest
from django.utils import timezone

from cases.domain.access import key_text
from cases.domain.access.invited import InvitationState, faults_of
from cases.domain.access.roles import Role
from cases.domain.errors import Conflict, InvitationRefused, NotUsable
from cases.models import Invitation, Membership, Person
from cases.services.common import audit
from cases.services.people import memberships, sign_in, tries
from cases.services.people.tries import MOST_FROM_ONE_ADDRESS, Counted
from planning.foundation.encoding import digest

_INSTEAD = {
    InvitationState.USED: "This link was used. If that was you, sign in; if not, tell the coordinator.",
    InvitationState.WITHDRAWN: "This link was withdrawn. Ask the coordinator for another.",
    InvitationState.ENDED: "This link has ended. Ask the coordinator for another.",
}


def look_up(*, text: str, address: str) -> Invitation:
    """The invitation that the link carries, if it counts; `address` is where the asker sits.

    Raises InvitationRefused, and TooManyTries for who guesses.
    """
    counted: tuple[Counted, ...] = ((digest(f"join {address}"), MOST_FROM_ONE_ADDRESS),)
    tries.refuse_after_many(counted)
    # By its hash: how long the look-up takes tells nothing of a secret.
    rows = Invitation.objects.select_related("programme")
    row = rows.filter(secret_hash=key_text.hash_of(text)).first()
    if row is None:
        tries.count_wrong(counted)
        raise InvitationRefused(reason="There is no such link. Open it exactly as it was sent to you.")
    _refuse_over(row)
    return row


def has_account(invitation: Invitation) -> bool:
    """Whether the user name that was given has an account: whoever joins by it signs in first."""
    return bool(invitation.username) and _taken(invitation.username)


def join_anew(*, request: HttpRequest, invitation: Invitation, username: str, name: str, password: str) -> Person:
    """Somebody new, a member of the programme and signed in. What the invitation gives of their names counts, and what
    was sent for it does not.

    Raises InvitationRefused, NotUsable for a name or a password that cannot be.
    """
    username, name = invitation.username or username, invitation.name or " ".join(name.split())
    _refuse_names(username, name)
    person = Person(username=Person.normalize_username(username), display_name=name)
    try:
        validate_password(password, person)
    except ValidationError as error:
        raise NotUsable(reason=" ".join(error.messages), at=("password",)) from None
    # Before the lock: hashing is slow by design.
    person.password = make_password(password)
    try:
        _with_account(invitation.pk, person)
    except IntegrityError:
        # Somebody else took it at this moment.
        _refuse_taken(username)
        raise
    sign_in.begin(request=request, person=person)
    return person


@transaction.atomic
def _with_account(id_: UUID, person: Person) -> None:
    row = _held(id_)
    _refuse_taken(person.username)
    person.save(force_insert=True)
    _use(row, person)


@transaction.atomic
def join_as(*, actor: Person, invitation: Invitation) -> Membership:
    """The actor as a member of this programme too.

    Raises InvitationRefused, Conflict for a member, NotUsable where the invitation is for somebody else's user name.
    """
    row = _held(invitation.pk)
    if has_account(row) and row.username.casefold() != actor.username.casefold():
        raise NotUsable(
            reason=f"This link is for {row.username}. Sign out, and sign in as {row.username}.", at=("invitation",)
        )
    role = Membership.objects.role_of(actor, row.programme_id)
    if role is not None:
        raise Conflict(reason=f"You belong to {row.programme} already, as a {role}.")
    return _use(row, actor)


def _held(id_: UUID) -> Invitation:
    row = Invitation.objects.select_for_update(of=("self",), no_key=True).select_related("programme").get(pk=id_)
    _refuse_over(row)
    return row


def _use(row: Invitation, person: Person) -> Membership:
    membership = memberships.begin(person=person, programme_id=row.programme_id, role=Role(row.role), group=row.group)
    row.used_at, row.used_by = timezone.now(), person
    row.name = row.username = ""
    row.save(update_fields=["used_at", "used_by", "name", "username"])
    audit.changed(actor=person, verb="use", subject=row, programme_id=row.programme_id, after={"person": person})
    return membership


def _refuse_over(row: Invitation) -> None:
    if row.state is not InvitationState.OPEN:
        raise InvitationRefused(reason=_INSTEAD[row.state])


def _refuse_names(username: str, name: str) -> None:
    for part, text, says in (
        ("username", username, "Choose a name to sign in with."),
        ("name", name, "Say how others shall see your name."),
    ):
        if not text:
            raise NotUsable(reason=says, at=(part,))
    for part, says in faults_of(name=name, username=username, group=""):
        raise NotUsable(reason=says, at=(part,))


def _refuse_taken(username: str) -> None:
    if _taken(username):
        reason = "This user name has an account. Sign in with it, or choose another name if it is not yours."
        raise NotUsable(reason=reason, at=("username",))


def _taken(username: str) -> bool:
    return Person.objects.filter(username__iexact=Person.normalize_username(username)).exists()
