"""Webhooks as whoever keeps them sees them, and the log of their deliveries."""

from __future__ import annotations

from uuid import UUID

from django.db.models import Count, Min, Q, QuerySet

from cases.domain.access.permissions import May
from cases.domain.webhooks import DeliveryState
from cases.models import Delivery, Webhook
from cases.queries import seen
from cases.queries.seen import Asker, service_of


def kept_by(asker: Asker, programme_id: UUID) -> QuerySet[Webhook]:
    """A service's own; for the coordinator all of the programme, the oldest first. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.KEEP_WEBHOOKS, asker, programme_id)
    rows = Webhook.objects.filter(programme=programme_id)
    if service := service_of(asker):
        rows = rows.filter(service=service)
    waiting = Q(deliveries__state=DeliveryState.WAITING)
    counted = rows.annotate(
        waiting=Count("deliveries", filter=waiting),
        failing_since=Min("deliveries__first_tried_at", filter=waiting),
    )
    return counted.select_related("service", "made_by").order_by("created_at", "pk")


def webhook(asker: Asker, programme_id: UUID, id_: UUID) -> Webhook:
    """Raises NotHere and NotAllowed."""
    return seen.row_of(kept_by(asker, programme_id), id_, "webhook")


def deliveries(row: Webhook) -> QuerySet[Delivery]:
    return Delivery.objects.filter(webhook=row).select_related("change", "webhook")
