"""Platforms as their programme's coordinator sees them."""

from __future__ import annotations

from uuid import UUID

from django.db.models import Count, IntegerField, OuterRef, QuerySet, Subquery, Value
from django.db.models.functions import Coalesce

from cases.domain.access.permissions import May
from cases.models import LtiPlatform, LtiWork, Person
from cases.queries import seen


def platforms(person: Person, programme_id: UUID) -> QuerySet[LtiPlatform]:
    """Those of the programme, with what they were not told of grades. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.KEEP_PLATFORMS, person, programme_id)
    untold = LtiWork.objects.untold().filter(person__platform=OuterRef("pk"))
    numbers = untold.values("person__platform").annotate(number=Count("pk")).values("number")
    refusals = untold.exclude(refusal="").order_by("-sent_at").values("refusal")[:1]
    rows = LtiPlatform.objects.filter(programme=programme_id).order_by("name", "pk")
    return rows.annotate(
        grades_waiting=Coalesce(Subquery(numbers, output_field=IntegerField()), 0),
        last_refusal=Coalesce(Subquery(refusals), Value("")),
    )
