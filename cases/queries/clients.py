"""Clients of OAuth 2 as their coordinator sees them, and consents as the person does who gave them."""

from __future__ import annotations

from uuid import UUID

from django.db.models import Exists, OuterRef, QuerySet
from oauth2_provider.models import RefreshToken

from cases.domain.access.permissions import May
from cases.models import Client, Consent, Person
from cases.queries import seen


def of_programme(person: Person, programme_id: UUID) -> QuerySet[Client]:
    """Those that were not revoked. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.KEEP_KEYS, person, programme_id)
    rows: QuerySet[Client] = Client.objects.filter(service__programme=programme_id, revoked_at=None)
    return rows.select_related("made_by").order_by("name", "-created", "-pk")


def consents(person: Person) -> QuerySet[Consent]:
    """Of clients that act for the person: those that hold something by which they go on."""
    holds = RefreshToken.objects.filter(application=OuterRef("client"), user=person, revoked=None)
    rows: QuerySet[Consent] = Consent.objects.filter(Exists(holds), person=person)
    return rows.select_related("client__service__programme").order_by("client__name", "-given_at")
