"""Access keys for the tests, made as people make them."""

from __future__ import annotations

from collections.abc import Sequence

from rest_framework.test import APIClient

from cases.domain.access.scopes import FOR_SERVICES, Scope
from cases.models import Person
from cases.services.people import access_keys
from cases.services.people.access_keys import MadeKey
from tests.factories import PASSWORD

NAME = "Image archive"


def own_key(person: Person, scopes: Sequence[Scope] = tuple(Scope), *, days: int = 30) -> MadeKey:
    return access_keys.make_own(actor=person, password=PASSWORD, name="A script", scopes=scopes, days=days)


def service_key(coordinator: Person, scopes: Sequence[Scope] = FOR_SERVICES, *, name: str = NAME) -> MadeKey:
    """Of the programme that the coordinator keeps."""
    programme_id = coordinator.memberships.get().programme_id
    return access_keys.grant(actor=coordinator, programme_id=programme_id, name=name, scopes=scopes, days=30)


def program(text: str) -> APIClient:
    """A client as another program is one: a key, no cookie, and no token of a page."""
    client = APIClient(enforce_csrf_checks=True)
    client.credentials(HTTP_AUTHORIZATION=f"Bearer {text}")
    return client
