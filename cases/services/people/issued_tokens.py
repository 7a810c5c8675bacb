"""Codes and tokens that were issued to clients, as the library stores them."""

from __future__ import annotations

from django.db.models import Q
from oauth2_provider.models import AccessToken, Grant, RefreshToken, clear_expired

from cases.models import Client, Person


def remove(*, client: Client, person: Person | None = None) -> None:
    """None of the client's counts any more; where a person is named, none of those that act for them."""
    whose = Q(application=client) & (Q(user=person) if person else Q())
    for issued in (Grant, RefreshToken, AccessToken):
        issued.objects.filter(whose).delete()


def tidy() -> int:
    """Removes those that have ended, and returns how many there were."""
    before = _count()
    clear_expired()
    return before - _count()


def _count() -> int:
    return sum(issued.objects.count() for issued in (Grant, RefreshToken, AccessToken))
