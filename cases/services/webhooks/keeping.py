"""Webhooks are kept by a service, each its own, and by the coordinator, who keeps all of the programme."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Any
from urllib.parse import urlsplit
from uuid import UUID

from django.conf import settings
from django.db import transaction
from django.utils import timezone

from cases.domain import webhooks as rules
from cases.domain.access.permissions import May, refuse_unless
from cases.domain.errors import ChangedSince, Conflict, NotHere
from cases.domain.feed import FeedKind
from cases.domain.webhooks import BOTH_SIGN_HOURS, MOST_WEBHOOKS, DeliveryState, WebhookState
from cases.models import Delivery, Person, Programme, Service, Webhook
from cases.services.common import audit
from cases.services.common.guard import actor_in
from cases.services.webhooks.line import refuse_inside


@dataclass(frozen=True, slots=True, kw_only=True)
class Keeper:
    """Who asks: a coordinator, or a service, for which whoever made its key answers."""

    actor: Person
    service: Service | None = None


@transaction.atomic
def add(*, keeper: Keeper, programme_id: UUID, address: str, kinds: Sequence[FeedKind], reached: int) -> Webhook:
    """A webhook that is told of what comes after the position, with its secret. Raises as `_refuse_unless_keeps` does,
    NotUsable, and Conflict where there are as many as there may be."""
    _refuse_unless_keeps(keeper, programme_id)
    _refuse_address(address)
    Programme.objects.select_for_update(no_key=True).get(pk=programme_id)
    if Webhook.objects.filter(programme=programme_id).count() >= MOST_WEBHOOKS:
        raise Conflict(reason=f"There are {MOST_WEBHOOKS} webhooks already. Remove one that is not used any more.")
    row = Webhook.objects.create(
        programme_id=programme_id,
        service=keeper.service,
        address=address,
        kinds=_kept(kinds),
        reached=reached,
        secret=rules.new_secret(),
        made_by=keeper.actor,
    )
    _log(keeper, "add", row, _shown(row))
    return row


def _refuse_unless_keeps(keeper: Keeper, programme_id: Any) -> None:
    """Raises NotHere for somebody of another programme, and NotAllowed for who is no coordinator."""
    if keeper.service is None:
        refuse_unless(May.KEEP_WEBHOOKS, actor_in(keeper.actor, programme_id))
    elif keeper.service.programme_id != programme_id:
        raise NotHere(what="programme")


def _refuse_address(address: str) -> None:
    rules.refuse_address(address, inside=settings.WEBHOOKS_INSIDE)
    refuse_inside(address)


def _kept(kinds: Sequence[FeedKind]) -> list[str]:
    return [kind.value for kind in FeedKind if kind in kinds]


@transaction.atomic
def change(*, keeper: Keeper, webhook: Webhook, seen_revision: str, changes: Mapping[str, Any]) -> Webhook:
    """The webhook with another address, other kinds, paused, or active again: then all that waits is due at once.

    Kinds count for what is laid out from now on. Raises as `_held` does, and NotUsable.
    """
    row = _held(keeper, webhook, seen_revision)
    if "address" in changes:
        _refuse_address(changes["address"])
        row.address = changes["address"]
    if "kinds" in changes:
        row.kinds = _kept(changes["kinds"])
    if "state" in changes:
        _set_state(row, WebhookState(changes["state"]))
    return _changed(keeper, row, "change", _shown(row))


def _set_state(row: Webhook, state: WebhookState) -> None:
    row.state, row.given_up_at = state, None
    if state is WebhookState.ACTIVE:
        _begin_at_once(row)
        row.deliveries.filter(state=DeliveryState.WAITING).update(tries=0, first_tried_at=None, due_at=timezone.now())


def _begin_at_once(row: Webhook) -> None:
    """However long it was to wait; not while a worker is at it."""
    if row.lease is None:
        row.free_at = timezone.now()


@transaction.atomic
def turn_secret(*, keeper: Keeper, webhook: Webhook) -> Webhook:
    """The webhook with a new secret; the one before signs beside it for a day. Raises as `_held` does."""
    row = _held(keeper, webhook)
    row.secret_before, row.secret = row.secret, rules.new_secret()
    row.secret_before_until = timezone.now() + timedelta(hours=BOTH_SIGN_HOURS)
    return _changed(keeper, row, "turn secret", {})


@transaction.atomic
def replay(*, keeper: Keeper, webhook: Webhook, reached: int) -> Webhook:
    """The webhook, told anew of all that comes after the position; what waited waits no more. It is active.

    Raises as `_held` does.
    """
    row = _held(keeper, webhook)
    row.deliveries.filter(state=DeliveryState.WAITING, change__isnull=False).update(state=DeliveryState.REPLACED)
    row.reached, row.state, row.given_up_at = reached, WebhookState.ACTIVE, None
    _begin_at_once(row)
    return _changed(keeper, row, "replay", {"reached": reached})


@transaction.atomic
def send_test(*, keeper: Keeper, webhook: Webhook) -> Delivery:
    """A message that says nothing, sent once. Raises as `_held` does, and Conflict for a webhook that is not active."""
    row = _held(keeper, webhook)
    if row.state != WebhookState.ACTIVE:
        raise Conflict(reason="Nothing is sent while the webhook is not active. Set it active first.")
    return Delivery.objects.create(webhook=row, due_at=timezone.now())


@transaction.atomic
def remove(*, keeper: Keeper, webhook: Webhook) -> None:
    """The webhook is gone, with the log of its deliveries. Raises as `_held` does."""
    row = _held(keeper, webhook)
    _log(keeper, "remove", row, _shown(row))
    row.delete()


def _held(keeper: Keeper, webhook: Webhook, seen_revision: str | None = None) -> Webhook:
    """The row, held until the transaction ends. Raises NotHere, NotAllowed, and ChangedSince for another revision."""
    _refuse_unless_keeps(keeper, webhook.programme_id)
    rows = Webhook.objects.select_for_update(no_key=True).filter(pk=webhook.pk)
    row = (rows.filter(service=keeper.service) if keeper.service else rows).first()
    if row is None:
        raise NotHere(what="webhook")
    if seen_revision not in (None, str(row.revision)):
        raise ChangedSince(what="The webhook")
    return row


def _changed(keeper: Keeper, row: Webhook, verb: str, values: Mapping[str, Any]) -> Webhook:
    # A worker that is at it sees by the revision that it has to begin anew.
    row.revision += 1
    row.save()
    _log(keeper, verb, row, values)
    return row


def _shown(row: Webhook) -> Mapping[str, Any]:
    """For the log: of the address only its host, as the rest may be a secret of the receiver's."""
    return {"host": urlsplit(row.address).hostname, "kinds": row.kinds, "state": row.state}


def _log(keeper: Keeper, verb: str, row: Webhook, values: Mapping[str, Any]) -> None:
    audit.changed(actor=keeper.actor, verb=verb, subject=row, programme_id=row.programme_id, after=values)
