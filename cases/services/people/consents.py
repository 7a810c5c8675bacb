"""What a person lets a client do for them: given, looked at with every request, ended."""

from __future__ import annotations

from collections.abc import Collection
from datetime import datetime
from uuid import UUID

from django.db import transaction

from cases.domain.access.scopes import OF_ROLE, Scope
from cases.domain.errors import KeyRefused, NotHere
from cases.models import Client, Consent, Membership, Person
from cases.services.common import audit
from cases.services.people import issued_tokens


def may_be_given(*, person: Person, client: Client, asked: Collection[str]) -> tuple[Scope, ...]:
    """Those of the scopes which the person's role in the client's programme leaves open; more is never given.

    Raises NotHere where they are nothing there.
    """
    role = Membership.objects.role_of(person, client.service.programme_id)
    if role is None:
        raise NotHere(what="client")
    return tuple(scope for scope in OF_ROLE[role] if scope in asked and scope in client.scopes)


@transaction.atomic
def give(*, person: Person, client: Client, scopes: Collection[Scope]) -> Consent:
    """The person lets the client act for them, from here on by these scopes too. Raises NotHere."""
    Person.objects.select_for_update(no_key=True).get(pk=person.pk)
    open_to = may_be_given(person=person, client=client, asked=scopes)
    row = Consent.objects.filter(client=client, person=person).first() or Consent(
        client=client, person=person, scopes=[]
    )
    row.scopes = [scope.value for scope in Scope if scope in open_to or scope in row.scopes]
    row.save()
    _log(person, "give", row)
    return row


@transaction.atomic
def end(*, actor: Person, id: UUID) -> None:
    """The client acts for the actor no more, at once. Raises NotHere."""
    rows = Consent.objects.select_for_update(of=("self",), no_key=True).select_related("client__service")
    row = rows.filter(pk=id, person=actor).first()
    if row is None:
        raise NotHere(what="consent")
    _log(actor, "end", row)
    _remove(row)


@transaction.atomic
def end_all(*, person: Person) -> None:
    """No client acts for the person any more."""
    for id_ in Consent.objects.filter(person=person).values_list("pk", flat=True):
        end(actor=person, id=id_)


def _remove(row: Consent) -> None:
    issued_tokens.remove(client=row.client, person=row.person)
    row.delete()


def _log(actor: Person, verb: str, row: Consent) -> None:
    values = {"client": row.client.name, "scopes": row.scopes}
    audit.changed(actor=actor, verb=verb, subject=row, programme_id=row.client.service.programme_id, after=values)


def scopes_now(*, client: Client, person: Person, issued_at: datetime, scopes: Collection[str]) -> tuple[Scope, ...]:
    """Those of the scopes by which the client may act for the person at this moment; `issued_at` is when what it brings
    was issued.

    Raises KeyRefused where the person signs in no more, left the programme, or ended it, as a new password does.
    """
    row = Consent.objects.filter(client=client, person=person).first()
    if row is None or issued_at < row.given_at:
        raise KeyRefused(reason="The person does not let this client act for them any more. Ask them again.")
    if not person.is_active:
        raise KeyRefused(reason="The person for whom this client acts signs in no more.")
    try:
        return may_be_given(person=person, client=client, asked=scopes)
    except NotHere:
        raise KeyRefused(reason="The person for whom this client acts has left the programme.") from None
