"""Clients of OAuth 2: made by a coordinator, their secret shown once, revoked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access import key_text
from cases.domain.access.client_kinds import ActsFor, ClientType
from cases.domain.access.key_text import MOST_NAME
from cases.domain.access.permissions import May, refuse_unless
from cases.domain.access.redirects import MOST_ADDRESSES, refuse_unless_safe
from cases.domain.access.scopes import NEVER_A_SERVICES, Scope
from cases.domain.errors import Conflict, NotHere, NotUsable
from cases.domain.uuid7 import uuid7
from cases.models import Client, Person, Programme, Service
from cases.services.common import audit
from cases.services.common.guard import actor_in
from cases.services.people import issued_tokens, sign_in

MOST_CLIENTS = 20
_GRANTS = {
    ActsFor.ITSELF: Client.GRANT_CLIENT_CREDENTIALS,
    ActsFor.PEOPLE: Client.GRANT_AUTHORIZATION_CODE,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class NewClient:
    """What a coordinator asks for."""

    name: str
    acts_for: ActsFor
    client_type: ClientType
    scopes: Sequence[Scope]
    redirect_uris: Sequence[str] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MadeClient:
    row: Client
    secret: str | None
    """Shown once; afterwards nobody can tell it. None for a public client."""


def make(*, actor: Person, password: str, programme_id: UUID, new: NewClient) -> MadeClient:
    """As `grant`, by a coordinator who is asked for the password once more. Also raises PasswordWrong, TooManyTries."""
    refuse_unless(May.KEEP_KEYS, actor_in(actor, programme_id))
    sign_in.confirm(person=actor, password=password)
    return grant(actor=actor, programme_id=programme_id, new=new)


@transaction.atomic
def grant(*, actor: Person, programme_id: UUID, new: NewClient) -> MadeClient:
    """A client of the programme's service of this name, which is added where it is new.

    Raises NotHere, NotAllowed, NotUsable, Conflict.
    """
    refuse_unless(May.KEEP_KEYS, actor_in(actor, programme_id))
    Programme.objects.select_for_update(no_key=True).get(pk=programme_id)
    name = " ".join(new.name.split())
    _refuse_unless_whole(new, name)
    if Client.objects.filter(service__programme=programme_id, revoked_at=None).count() >= MOST_CLIENTS:
        raise Conflict(reason=f"There are {MOST_CLIENTS} clients already. Revoke one that is not used any more.")
    service, _ = Service.objects.get_or_create(programme_id=programme_id, name=name)
    id_ = uuid7()
    secret = key_text.new_secret() if new.client_type is ClientType.CONFIDENTIAL else None
    row = Client.objects.create(
        id=id_,
        client_id=str(id_),
        # Hashed here: the library's own hash is a slow one, for what people make up.
        hash_client_secret=False,
        client_secret=key_text.hash_of(secret) if secret else "",
        service=service,
        name=name,
        scopes=[scope.value for scope in Scope if scope in new.scopes],
        client_type=new.client_type.value,
        authorization_grant_type=_GRANTS[new.acts_for],
        redirect_uris=" ".join(new.redirect_uris),
        made_by=actor,
    )
    _log(actor, "make", row)
    return MadeClient(row=row, secret=secret)


def _refuse_unless_whole(new: NewClient, name: str) -> None:
    if not 0 < len(name) <= MOST_NAME:
        raise NotUsable(reason=f"A client needs a name of at most {MOST_NAME} characters.", at=("name",))
    if not new.scopes:
        raise NotUsable(reason="Choose what the client is for.", at=("scopes",))
    if new.acts_for is ActsFor.ITSELF:
        _refuse_unless_a_service(new)
    elif not 0 < len(new.redirect_uris) <= MOST_ADDRESSES:
        reason = f"A client that acts for people needs 1 to {MOST_ADDRESSES} addresses to send them back to."
        raise NotUsable(reason=reason, at=("redirect_uris",))
    refuse_unless_safe(new.redirect_uris)


def _refuse_unless_a_service(new: NewClient) -> None:
    refused = sorted(NEVER_A_SERVICES.intersection(new.scopes))
    if refused:
        reason = f"A service may never have {' or '.join(refused)}: that is a person's own word."
        raise NotUsable(reason=reason, at=("scopes",))
    if new.client_type is ClientType.PUBLIC:
        raise NotUsable(reason="A client that acts for itself must be able to keep a secret.", at=("client_type",))
    if new.redirect_uris:
        raise NotUsable(reason="A client that acts for itself sends nobody anywhere.", at=("redirect_uris",))


@transaction.atomic
def revoke(*, actor: Person, programme_id: UUID, id: UUID) -> None:
    """The client and all its tokens count no more. Raises NotHere and NotAllowed."""
    refuse_unless(May.KEEP_KEYS, actor_in(actor, programme_id))
    rows = Client.objects.select_for_update(of=("self",), no_key=True)
    row = rows.filter(service__programme=programme_id, pk=id, revoked_at=None).first()
    if row is None:
        raise NotHere(what="client")
    row.revoked_at = timezone.now()
    row.save(update_fields=["revoked_at"])
    row.consents.all().delete()
    issued_tokens.remove(client=row)
    _log(actor, "revoke", row)


def _log(actor: Person, verb: str, row: Client) -> None:
    values = {"name": row.name, "scopes": row.scopes, "acts_for": row.acts_for.value, "to": row.redirect_uris}
    audit.changed(actor=actor, verb=verb, subject=row, programme_id=row.service.programme_id, after=values)
