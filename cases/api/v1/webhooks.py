"""Webhooks: other systems are told of changes instead of asking for them."""

from __future__ import annotations

from typing import Any, Literal
from uuid import UUID

from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, NewestFirst, View, answer, asker, given, key_of, me, page_of
from cases.api.bearer import scopes_of
from cases.api.etags import seen_tag
from cases.api.fields import Each, Listing, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.feed import bookmark_of
from cases.api.v1.filters import OF_PAGES, PAGES
from cases.api.v1.shapes import PersonRef
from cases.domain.access.scopes import Scope
from cases.domain.errors import Conflict, NotAllowed, NotOfThisFeed, NotUsable
from cases.domain.feed import FeedKind
from cases.domain.webhooks import MOST_ADDRESS, DeliveryState, NoAnswer, WebhookState
from cases.queries import feed, seen
from cases.queries import webhooks as queries
from cases.queries.seen import service_of
from cases.services.common.feed import number
from cases.services.webhooks import keeping
from cases.services.webhooks.keeping import Keeper
from planning.api.refusals import refuses

TAGS = ["webhooks"]
IF_MATCH = OpenApiParameter(
    "If-Match", str, OpenApiParameter.HEADER, required=True, description="The ETag of the webhook as you saw it."
)
KINDS = "Of these it is told; empty: of all."
AFTER = "`next` of a page of changes, or a message's `bookmark`: from there on; `0`: from the start; `last`: from now."


class ServiceRef(serializers.Serializer[Any]):
    """A stored service."""

    id = serializers.UUIDField()
    name = serializers.CharField()


class WebhookShown(serializers.Serializer[Any]):
    """A stored webhook; never its secret."""

    id = serializers.UUIDField()
    service = ServiceRef(allow_null=True, help_text="Whose it is; null: the coordinator's.")
    address = serializers.CharField(help_text="Where messages are sent.")
    kinds = Value(tuple[FeedKind, ...], help_text=KINDS)
    state = Value(WebhookState)
    reached = serializers.IntegerField(help_text="Up to this position every change was sent, or waits to be.")
    waiting = serializers.IntegerField(help_text="Messages that wait.")
    failing_since = serializers.DateTimeField(
        allow_null=True, help_text="When the first of those was tried that was not taken; null: none."
    )
    given_up_at = serializers.DateTimeField(allow_null=True, help_text="Null: it was not.")
    made_by = PersonRef()
    created_at = serializers.DateTimeField()
    revision = serializers.IntegerField(help_text="The ETag begins with it: If-Match takes it alone.")


class WebhookList(Listing):
    results = WebhookShown(many=True)


class WebhookWithSecret(serializers.Serializer[Any]):
    """A stored webhook with its secret, which is shown this once."""

    webhook = WebhookShown(source="*", help_text="As it is shown from now on.")
    secret = serializers.CharField(help_text="By which messages are signed: `whsec_` and base64.")


class KindsField(Each):
    def __init__(self, **more: Any) -> None:
        super().__init__(child=Value(FeedKind), max_length=len(FeedKind), **more)


class WebhookGiven(Strict):
    address = Text(max_length=MOST_ADDRESS, help_text="Begins with `https://`.")
    kinds = KindsField(help_text=KINDS)
    after = Text(max_length=30, required=False, default="last", help_text=AFTER)


class WebhookChanges(Strict):
    address = Text(max_length=MOST_ADDRESS, required=False, help_text="Begins with `https://`.")
    kinds = KindsField(required=False, help_text=KINDS)
    state = Value(Literal["active", "paused"], required=False, help_text="Active again also where it was given up.")


class ReplayGiven(Strict):
    after = Text(max_length=30, help_text=AFTER)


class DeliveryShown(serializers.Serializer[Any]):
    """A stored message to a webhook, and what came of it last."""

    id = serializers.UUIDField()
    position = serializers.IntegerField(allow_null=True, help_text="Of the change; null: a test message.")
    kind = Value(FeedKind, allow_null=True, source="change.kind", default=None)
    case_id = serializers.UUIDField(allow_null=True)
    state = Value(DeliveryState)
    tries = serializers.IntegerField(help_text="How often it was sent.")
    due_at = serializers.DateTimeField(help_text="When it is sent next, while it waits.")
    first_tried_at = serializers.DateTimeField(allow_null=True, help_text="Null: not yet.")
    last_tried_at = serializers.DateTimeField(allow_null=True, help_text="Null: not yet.")
    status = serializers.IntegerField(allow_null=True, help_text="Of the last answer; null: there was none.")
    no_answer = Value(NoAnswer, allow_null=True, source="why_no_answer", help_text="Why there was none.")
    created_at = serializers.DateTimeField()


def _keeper(request: Request, programme_id: UUID) -> Keeper:
    """Raises NotHere, and NotAllowed for a key that does not see what it would be told of."""
    seen.programme(asker(request), programme_id)
    key = key_of(request)
    if key is not None and Scope.CASES_READ not in scopes_of(key):
        raise NotAllowed(reason="Whoever is told of changes sees them: the key needs cases:read too.")
    service = service_of(asker(request))
    if service is None or key is None:
        return Keeper(actor=me(request))
    # A service is nobody: whoever made its key answers for what it does.
    key.made_by.by_key = key
    return Keeper(actor=key.made_by, service=service)


def _shown(request: Request, programme_id: UUID, id_: UUID, **more: Any) -> Response:
    row = queries.webhook(asker(request), programme_id, id_)
    return answer(WebhookShown, row, state=row.revision, **more)


class WebhooksView(View):
    short_list = True
    keeps_answers = False

    @extend_schema(
        operation_id="webhooks_list",
        tags=TAGS,
        summary="Webhooks of the programme",
        description="A service sees its own; the coordinator sees all.",
        extensions=refuses(NotAllowed),
        responses=WebhookList,
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        return answer(WebhookList, {"results": queries.kept_by(asker(request), programme_id)})

    @extend_schema(
        operation_id="webhooks_create",
        tags=TAGS,
        summary="Have a system told of changes",
        description="By a service with a key that has `cases:read` too, or by the coordinator. It is told as long as a "
        "key of the service has both, or the coordinator is one; what it was not told meanwhile comes later. The "
        "server keeps the secret, as it signs with it, and shows it this once.",
        parameters=[LOCATION],
        request=WebhookGiven,
        extensions=refuses(NotAllowed, NotUsable, Conflict, NotOfThisFeed),
        responses={201: WebhookWithSecret},
        examples=[examples.WEBHOOK],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        keeper, read = _keeper(request, programme_id), given(WebhookGiven, request)
        reached = _reached(programme_id, read.pop("after"))
        row = keeping.add(keeper=keeper, programme_id=programme_id, reached=reached, **read)
        return _with_secret(request, programme_id, row.pk, created=True)


def _with_secret(request: Request, programme_id: UUID, id_: UUID, *, created: bool = False) -> Response:
    row = queries.webhook(asker(request), programme_id, id_)
    return answer(WebhookWithSecret, row, created=created, at=f"programmes/{programme_id}/webhooks/{row.pk}")


def _reached(programme_id: UUID, after: str) -> int:
    """Raises ValidationError and NotOfThisFeed."""
    bookmark = bookmark_of(after)
    number(programme_id)
    return feed.position(programme_id, bookmark)


class WebhookView(View):
    @extend_schema(
        operation_id="webhook_retrieve",
        tags=TAGS,
        summary="A webhook",
        extensions=refuses(NotAllowed),
        responses=WebhookShown,
    )
    def get(self, request: Request, programme_id: UUID, webhook_id: UUID) -> Response:
        return _shown(request, programme_id, webhook_id)

    @extend_schema(
        operation_id="webhook_update",
        tags=TAGS,
        summary="Change a webhook, pause it, or go on",
        description="What waits then goes to the new address. Other kinds count for changes that are not yet waiting.",
        parameters=[IF_MATCH],
        request=WebhookChanges,
        extensions=refuses(NotAllowed, NotUsable),
        responses=WebhookShown,
        examples=[examples.WEBHOOK_CHANGES],
    )
    def patch(self, request: Request, programme_id: UUID, webhook_id: UUID) -> Response:
        keeper, row = _keeper(request, programme_id), queries.webhook(asker(request), programme_id, webhook_id)
        changes = given(WebhookChanges, request, partial=True)
        keeping.change(keeper=keeper, webhook=row, seen_revision=seen_tag(request), changes=changes)
        return _shown(request, programme_id, webhook_id)

    @extend_schema(
        operation_id="webhook_destroy",
        tags=TAGS,
        summary="Remove a webhook",
        description="With the log of its deliveries.",
        extensions=refuses(NotAllowed),
        responses={204: None},
    )
    def delete(self, request: Request, programme_id: UUID, webhook_id: UUID) -> Response:
        keeper, row = _keeper(request, programme_id), queries.webhook(asker(request), programme_id, webhook_id)
        keeping.remove(keeper=keeper, webhook=row)
        return Response(status=status.HTTP_204_NO_CONTENT)


class SecretView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="webhook_secret_create",
        tags=TAGS,
        summary="Turn the secret",
        description="For a day messages carry a signature by the one before too.",
        request=None,
        extensions=refuses(NotAllowed),
        responses=WebhookWithSecret,
    )
    def post(self, request: Request, programme_id: UUID, webhook_id: UUID) -> Response:
        keeper, row = _keeper(request, programme_id), queries.webhook(asker(request), programme_id, webhook_id)
        keeping.turn_secret(keeper=keeper, webhook=row)
        return _with_secret(request, programme_id, row.pk)


class ReplayView(View):
    @extend_schema(
        operation_id="webhook_replay",
        tags=TAGS,
        summary="Tell it again, from a position on",
        description="What waits is left aside, and what comes after the position is sent, with the ids that it had "
        "before. A later position leaves out what lies between. The webhook is active then.",
        request=ReplayGiven,
        extensions=refuses(NotAllowed, NotOfThisFeed),
        responses=WebhookShown,
        examples=[examples.REPLAY],
    )
    def post(self, request: Request, programme_id: UUID, webhook_id: UUID) -> Response:
        keeper, row = _keeper(request, programme_id), queries.webhook(asker(request), programme_id, webhook_id)
        reached = _reached(programme_id, given(ReplayGiven, request)["after"])
        keeping.replay(keeper=keeper, webhook=row, reached=reached)
        return _shown(request, programme_id, webhook_id)


class DeliveriesView(View):
    query = {"GET": OF_PAGES}

    @extend_schema(
        operation_id="webhook_deliveries_list",
        tags=TAGS,
        summary="Messages to a webhook, the newest first",
        description="What waits, and for 30 days what was sent.",
        parameters=PAGES,
        extensions=refuses(NotAllowed),
        responses=page_of("DeliveryPage", DeliveryShown),
    )
    def get(self, request: Request, programme_id: UUID, webhook_id: UUID) -> Response:
        webhook = queries.webhook(asker(request), programme_id, webhook_id)
        pages = NewestFirst()
        rows = pages.paginate_queryset(queries.deliveries(webhook), request, self) or []
        return pages.get_paginated_response(DeliveryShown(rows, many=True).data)

    @extend_schema(
        operation_id="webhook_deliveries_create",
        tags=TAGS,
        summary="Send a test message",
        description="Once. Read it again to see what came of it.",
        parameters=[LOCATION],
        request=None,
        extensions=refuses(NotAllowed, Conflict),
        responses={201: DeliveryShown},
    )
    def post(self, request: Request, programme_id: UUID, webhook_id: UUID) -> Response:
        keeper, row = _keeper(request, programme_id), queries.webhook(asker(request), programme_id, webhook_id)
        delivery = keeping.send_test(keeper=keeper, webhook=row)
        at = f"programmes/{programme_id}/webhooks/{row.pk}/deliveries/{delivery.pk}"
        return answer(DeliveryShown, delivery, created=True, at=at)


class DeliveryView(View):
    @extend_schema(
        operation_id="webhook_delivery_retrieve",
        tags=TAGS,
        summary="A message to a webhook",
        extensions=refuses(NotAllowed),
        responses=DeliveryShown,
    )
    def get(self, request: Request, programme_id: UUID, webhook_id: UUID, delivery_id: UUID) -> Response:
        webhook = queries.webhook(asker(request), programme_id, webhook_id)
        return answer(DeliveryShown, seen.row_of(queries.deliveries(webhook), delivery_id, "delivery"))
