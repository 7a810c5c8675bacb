"""Platforms as their programme's coordinator sees them."""

from __future__ import annotations

from uuid import UUID

from django.db.models import QuerySet

from cases.domain.access.permissions import May
from cases.models import LtiPlatform, Person
from cases.queries import seen


def platforms(person: Person, programme_id: UUID) -> QuerySet[LtiPlatform]:
    """Those of the programme. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.KEEP_PLATFORMS, person, programme_id)
    return LtiPlatform.objects.filter(programme=programme_id).order_by("name", "pk")
