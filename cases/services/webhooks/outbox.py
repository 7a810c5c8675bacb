"""What waits to be sent: laid out from the feed, taken up under a lease, and noted.

A webhook is worked by one worker at a time, so that its messages go out one after another; several workers work several
webhooks. Whoever is killed at it keeps the lease for a minute, then another goes on, with the message that was on its
way once more.
"""

from __future__ import annotations

import logging
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from http import HTTPStatus
from uuid import UUID, uuid4

from django.db import transaction
from django.db.models import Exists, OuterRef
from django.utils import timezone

from cases.domain.access.roles import Role
from cases.domain.access.scopes import Scope
from cases.domain.webhooks import MOST_RETRY_AFTER_S, TRIED_FOR_S, DeliveryState, WebhookState, wait_s
from cases.models import AccessKey, Change, Client, Delivery, Membership, Webhook
from cases.services.common import audit
from cases.services.common.feed import number
from cases.services.webhooks.line import Reply

logger = logging.getLogger(__name__)

LEASE = timedelta(seconds=60)
AT_A_TIME = 20
MOST_WAITING = 1000
"""More are not laid out: the feed keeps them."""
MOST_HOLD = timedelta(seconds=60)
# Of the receiver as a whole, not of one message: while it is so, no other case is tried either.
AWAY = (
    HTTPStatus.TOO_MANY_REQUESTS,
    HTTPStatus.BAD_GATEWAY,
    HTTPStatus.SERVICE_UNAVAILABLE,
    HTTPStatus.GATEWAY_TIMEOUT,
)
NEEDED = {Scope.WEBHOOKS.value, Scope.CASES_READ.value}


@dataclass(frozen=True, slots=True)
class Batch:
    """A webhook that is held, and what is due of it, in order."""

    webhook: Webhook
    deliveries: Sequence[Delivery]


def number_feeds() -> None:
    """Gives positions to what is committed, in every programme with an active webhook."""
    active = Webhook.objects.filter(state=WebhookState.ACTIVE)
    for programme_id in active.values_list("programme", flat=True).distinct():
        number(programme_id)


def due() -> list[UUID]:
    """Active webhooks that nobody is at and for which there may be something to do, the longest free first."""
    now = timezone.now()
    waiting = Delivery.objects.filter(webhook=OuterRef("pk"), state=DeliveryState.WAITING, due_at__lte=now)
    ahead = Change.objects.filter(programme=OuterRef("programme"), position__gt=OuterRef("reached"))
    free = Webhook.objects.filter(Exists(waiting) | Exists(ahead), state=WebhookState.ACTIVE, free_at__lte=now)
    return list(free.order_by("free_at").values_list("pk", flat=True))


@transaction.atomic
def take_up(*, webhook_id: UUID) -> Batch | None:
    """The next messages that are due, under a lease; None where there are none, or somebody else has the webhook."""
    now = timezone.now()
    free = Webhook.objects.filter(pk=webhook_id, state=WebhookState.ACTIVE, free_at__lte=now)
    # On SQLite the whole transaction holds the one lock there is.
    webhook = free.select_for_update(skip_locked=True, no_key=True).first()
    if webhook is None or not _may_be_told(webhook, now):
        return None
    _lay_out(webhook, now)
    rows = webhook.deliveries.filter(state=DeliveryState.WAITING, due_at__lte=now)
    deliveries = list(rows.select_related("change").order_by("position", "pk")[:AT_A_TIME])
    if deliveries:
        webhook.lease, webhook.free_at = uuid4(), now + LEASE
    webhook.save(update_fields=["reached", "lease", "free_at"])
    return Batch(webhook, deliveries) if deliveries else None


def _may_be_told(webhook: Webhook, now: datetime) -> bool:
    """Whether its service has a key or a client that sees all this, or its coordinator is one still. Until then it
    waits."""
    if webhook.service_id is None:
        coordinators = Membership.objects.filter(programme=webhook.programme_id, role=Role.COORDINATOR)
        return coordinators.filter(person=webhook.made_by_id, person__is_active=True).exists()
    keys = AccessKey.objects.filter(service=webhook.service_id, revoked_at=None, ends_at__gt=now)
    clients = Client.objects.filter(
        service=webhook.service_id, revoked_at=None, authorization_grant_type=Client.GRANT_CLIENT_CREDENTIALS
    )
    opened = (*keys.values_list("scopes", flat=True), *clients.values_list("scopes", flat=True))
    return any(NEEDED.issubset(scopes) for scopes in opened)


def _lay_out(webhook: Webhook, now: datetime) -> None:
    """A delivery for each change of its kinds, up to where the feed goes now. What is of a case of which one waits for
    its time comes after that one."""
    waiting = webhook.deliveries.filter(state=DeliveryState.WAITING, change__isnull=False)
    room = MOST_WAITING - waiting.count()
    ahead = Change.objects.filter(programme=webhook.programme_id, position__gt=webhook.reached).order_by("position")
    changes = list(ahead[: max(0, room)])
    if not changes:
        return
    later = dict(waiting.filter(due_at__gt=now).values_list("case", "due_at"))
    Delivery.objects.bulk_create(
        Delivery(
            webhook=webhook,
            change=change,
            position=change.position,
            case_id=change.case_id,
            due_at=later.get(change.case_id, now),
        )
        for change in changes
        if not webhook.kinds or change.kind in webhook.kinds
    )
    webhook.reached = changes[-1].position or webhook.reached


@transaction.atomic
def note(*, batch: Batch, delivery: Delivery, reply: Reply) -> bool:
    """Writes down what came of it; True where the batch may go on, and the lease is longer then.

    Nothing is written where the lease was lost, or the message waits no more: whoever has it now sends it again.
    """
    held = Webhook.objects.filter(pk=batch.webhook.pk, lease=batch.webhook.lease)
    webhook = held.select_for_update(no_key=True).first()
    if webhook is None:
        return False
    now = timezone.now()
    webhook.free_at = now + LEASE
    row = webhook.deliveries.filter(pk=delivery.pk, state=DeliveryState.WAITING).first()
    if row is not None:
        _note(webhook, row, reply, now)
    webhook.save(update_fields=["state", "given_up_at", "lease", "free_at"])
    return webhook.lease is not None and webhook.revision == batch.webhook.revision


def _note(webhook: Webhook, row: Delivery, reply: Reply, now: datetime) -> None:
    row.tries += 1
    row.first_tried_at, row.last_tried_at = row.first_tried_at or now, now
    row.status, row.no_answer = reply.status, reply.no_answer or ""
    if reply.taken:
        row.state = DeliveryState.DELIVERED
    elif row.change_id is None:
        row.state = DeliveryState.FAILED
    else:
        _put_off(webhook, row, reply, now)
    row.save()


def _put_off(webhook: Webhook, row: Delivery, reply: Reply, now: datetime) -> None:
    """The case waits; the receiver as a whole where it is away; all stops where it is gone."""
    pause = timedelta(seconds=max(wait_s(row.tries), min(reply.retry_after_s, MOST_RETRY_AFTER_S)))
    until = (row.first_tried_at or now) + timedelta(seconds=TRIED_FOR_S)
    row.due_at = now + pause
    of_case = webhook.deliveries.filter(case=row.case_id, state=DeliveryState.WAITING, change__isnull=False)
    of_case.update(due_at=row.due_at)
    if reply.status == HTTPStatus.GONE or row.due_at > until:
        _give_up(webhook, row, now)
    elif reply.status is None or reply.status in AWAY:
        hold = pause if reply.retry_after_s else min(pause, MOST_HOLD)
        webhook.lease, webhook.free_at = None, now + hold


def _give_up(webhook: Webhook, row: Delivery, now: datetime) -> None:
    webhook.state, webhook.given_up_at, webhook.lease, webhook.free_at = WebhookState.GIVEN_UP, now, None, now
    values = {"position": row.position, "tries": row.tries, "status": row.status, "no_answer": row.no_answer}
    # It is nobody's deed: the log names who set the webhook up.
    audit.changed(
        actor=webhook.made_by, verb="give up", subject=webhook, programme_id=webhook.programme_id, after=values
    )
    logger.warning("Webhook %s was given up: %s", webhook.pk, values)


def give_back(*, batch: Batch) -> None:
    """Others may take it up at once."""
    held = Webhook.objects.filter(pk=batch.webhook.pk, lease=batch.webhook.lease)
    held.update(lease=None, free_at=timezone.now())


def tidy(*, older_than: timedelta) -> int:
    """Removes what the log has kept for long enough; how many."""
    old = Delivery.objects.exclude(state=DeliveryState.WAITING).filter(created_at__lt=timezone.now() - older_than)
    return old.delete()[0]
