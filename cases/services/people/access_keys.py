"""Keys by which programs sign in: made, shown once, used, revoked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any
from uuid import UUID

from django.db import transaction
from django.db.models import Q
from django.utils import timezone

from cases.domain.access import key_text
from cases.domain.access.key_text import MOST_DAYS, MOST_NAME
from cases.domain.access.permissions import May, refuse_unless
from cases.domain.access.roles import Role
from cases.domain.access.scopes import NEVER_A_SERVICES, Scope
from cases.domain.errors import Conflict, KeyRefused, NotHere, NotUsable
from cases.domain.uuid7 import uuid7
from cases.models import AccessKey, Person, Programme, Service
from cases.models.clients import Key
from cases.models.prepared import Prepared
from cases.services.common import audit
from cases.services.common.guard import actor_in
from cases.services.people import sign_in

MOST_KEYS = 20
# How closely the last use is kept: a program that asks often does not write with each request.
USE_KEPT_EVERY = timedelta(minutes=1)
_BY_ID = Prepared(lambda id_: AccessKey.objects.select_related("service", "person").filter(pk=id_))


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeKey:
    row: AccessKey
    text: str
    """Shown once; afterwards nobody can tell it."""


def make_own(*, actor: Person, password: str, name: str, scopes: Sequence[Scope], days: int) -> MadeKey:
    """A key for scripts of the actor's own, who is asked for the password once more.

    Raises PasswordWrong, TooManyTries, NotUsable, Conflict for somebody who has as many as there may be.
    """
    sign_in.confirm(person=actor, password=password)
    with transaction.atomic():
        Person.objects.select_for_update(no_key=True).get(pk=actor.pk)
        made = _made(actor, _name(name), scopes, days, person=actor)
        for membership in actor.memberships.all():
            _log(actor, "make", made.row, membership.programme_id)
    return made


def make_for_service(
    *, actor: Person, password: str, programme_id: UUID, name: str, scopes: Sequence[Scope], days: int
) -> MadeKey:
    """As `grant`, by a coordinator who is asked for the password once more. Also raises PasswordWrong, TooManyTries."""
    refuse_unless(May.KEEP_KEYS, actor_in(actor, programme_id))
    sign_in.confirm(person=actor, password=password)
    return grant(actor=actor, programme_id=programme_id, name=name, scopes=scopes, days=days)


@transaction.atomic
def grant(*, actor: Person, programme_id: UUID, name: str, scopes: Sequence[Scope], days: int) -> MadeKey:
    """A key for the programme's service of this name, which is added where it is new: the next key before one ends.

    Raises NotHere, NotAllowed, NotUsable, Conflict.
    """
    refuse_unless(May.KEEP_KEYS, actor_in(actor, programme_id))
    Programme.objects.select_for_update(no_key=True).get(pk=programme_id)
    refused = sorted(NEVER_A_SERVICES.intersection(scopes))
    if refused:
        reason = f"A service may never have {' or '.join(refused)}: that is a person's own word."
        raise NotUsable(reason=reason, at=("scopes",))
    service, _ = Service.objects.get_or_create(programme_id=programme_id, name=_name(name))
    made = _made(actor, service.name, scopes, days, service=service)
    _log(actor, "make", made.row, programme_id)
    return made


def _name(name: str) -> str:
    tidy = " ".join(name.split())
    if not 0 < len(tidy) <= MOST_NAME:
        raise NotUsable(reason=f"A key needs a name of at most {MOST_NAME} characters.", at=("name",))
    return tidy


def _made(actor: Person, name: str, scopes: Sequence[Scope], days: int, **whose: Any) -> MadeKey:
    if not scopes:
        raise NotUsable(reason="Choose what the key is for.", at=("scopes",))
    if not 1 <= days <= MOST_DAYS:
        raise NotUsable(reason=f"A key ends after 1 to {MOST_DAYS} days.", at=("days",))
    now = timezone.now()
    same_owner = (
        AccessKey.objects.filter(**whose) if "person" in whose else _of_programme(whose["service"].programme_id)
    )
    if same_owner.filter(revoked_at=None, ends_at__gt=now).count() >= MOST_KEYS:
        raise Conflict(reason=f"There are {MOST_KEYS} keys already. Revoke one that is not used any more.")
    id_, secret = uuid7(), key_text.new_secret()
    row = AccessKey.objects.create(
        id=id_,
        name=name,
        scopes=[scope.value for scope in Scope if scope in scopes],
        secret_hash=key_text.hash_of(secret),
        made_by=actor,
        ends_at=now + timedelta(days=days),
        **whose,
    )
    return MadeKey(row=row, text=key_text.text_of(id_, secret))


def _of_programme(programme_id: Any) -> Any:
    return AccessKey.objects.filter(service__programme_id=programme_id)


@transaction.atomic
def revoke_own(*, actor: Person, id: UUID) -> None:
    """The actor's key counts no more. Raises NotHere."""
    row = _revoke(AccessKey.objects.filter(person=actor), id)
    for membership in actor.memberships.all():
        _log(actor, "revoke", row, membership.programme_id)


@transaction.atomic
def revoke_all_own(*, person: Person) -> None:
    """None of the person's keys counts any more."""
    now = timezone.now()
    for id_ in AccessKey.objects.filter(person=person, revoked_at=None, ends_at__gt=now).values_list("pk", flat=True):
        revoke_own(actor=person, id=id_)


@transaction.atomic
def revoke_of_service(*, actor: Person, programme_id: UUID, id: UUID) -> None:
    """The service's key counts no more. Raises NotHere and NotAllowed."""
    refuse_unless(May.KEEP_KEYS, actor_in(actor, programme_id))
    _log(actor, "revoke", _revoke(_of_programme(programme_id), id), programme_id)


def _revoke(rows: Any, id_: UUID) -> AccessKey:
    row: AccessKey | None = rows.select_for_update(of=("self",), no_key=True).filter(pk=id_, revoked_at=None).first()
    if row is None:
        raise NotHere(what="key")
    row.revoked_at = timezone.now()
    row.save(update_fields=["revoked_at"])
    return row


def _log(actor: Person, verb: str, row: AccessKey, programme_id: Any) -> None:
    values = {"name": row.name, "scopes": row.scopes, "ends_at": row.ends_at}
    audit.changed(actor=actor, verb=verb, subject=row, programme_id=programme_id, after=values)


def admit(*, text: str) -> AccessKey:
    """The key with this text, its use noted. Raises KeyRefused for one that does not count, or does no more."""
    parts = key_text.parts_of(text)
    row = _BY_ID.first(parts[0]) if parts else None
    if not key_text.matches(parts[1] if parts else "", row.secret_hash if row else None) or row is None:
        raise KeyRefused(reason="There is no such key.")
    now = timezone.now()
    if row.revoked_at is not None:
        raise KeyRefused(reason="This key was revoked. Ask for another.")
    if row.ends_at <= now:
        raise KeyRefused(reason="This key has ended. Ask for another.")
    if row.person is not None and not row.person.is_active:
        raise KeyRefused(reason="Whoever made this key signs in no more.")
    if row.last_used_at is None or now - row.last_used_at >= USE_KEPT_EVERY:
        due = Q(last_used_at=None) | Q(last_used_at__lte=now - USE_KEPT_EVERY)
        AccessKey.objects.filter(due, pk=row.pk).update(last_used_at=now)
    return row


def whose_case(*, asker: Person | Service, key: Key | None, programme_id: UUID, named: UUID | None) -> Person:
    """Whose case is to be opened: the asker's own, or that of the student whom a service names. Raises NotUsable."""
    if isinstance(asker, Person):
        if named not in (None, asker.pk):
            raise NotUsable(reason="You open cases of your own. Leave the student out.", at=("student_id",))
        return asker
    students = Person.objects.filter(memberships__programme=programme_id, memberships__role=Role.STUDENT)
    row = students.filter(pk=named, is_active=True).first() if named else None
    if row is None:
        raise NotUsable(reason="Name the student of the programme whose case it is.", at=("student_id",))
    row.by_key = key
    return row
