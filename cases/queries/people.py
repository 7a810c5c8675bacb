"""Who belongs to a programme, and belonged to it."""

from __future__ import annotations

from uuid import UUID

from django.db.models import QuerySet

from cases.domain.access.permissions import May
from cases.domain.errors import NotHere
from cases.models import FormerMembership, Membership
from cases.queries import seen
from cases.queries.external_ids import known
from cases.queries.seen import Asker


def people(asker: Asker, programme_id: UUID) -> QuerySet[Membership]:
    """Everybody who belongs to the programme and may sign in. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.SEE_PEOPLE, asker, programme_id)
    rows = Membership.objects.filter(programme=programme_id, person__is_active=True).select_related("person")
    return known(asker, rows.order_by("role", "group", "person__display_name", "pk"))


def member(asker: Asker, programme_id: UUID, person_id: UUID) -> Membership:
    """One of these. Raises NotHere and NotAllowed."""
    row = people(asker, programme_id).filter(person=person_id).first()
    if row is None:
        raise NotHere(what="person")
    return row


def former_people(asker: Asker, programme_id: UUID) -> QuerySet[FormerMembership]:
    """Everybody who belonged to the programme, once for each time. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.KEEP_PEOPLE, asker, programme_id)
    rows: QuerySet[FormerMembership] = FormerMembership.objects.filter(programme=programme_id)
    return rows.select_related("person", "ended_by")
