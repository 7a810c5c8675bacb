"""Notifications of a supervisor's browsers (Web Push, RFC 8030)."""

from __future__ import annotations

from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, given, me
from cases.api.fields import Strict, Text
from cases.api.v1 import examples
from cases.domain.errors import NotAllowed, NotUsable
from cases.services.people import push
from planning.api.refusals import refuses

TAGS = ["notifications"]
MOST_ENDPOINT = 1000


class PushKeyShown(serializers.Serializer[Any]):
    """The public half of a stored key, by itself in an object."""

    key = serializers.CharField(help_text="A point on P-256, base64url without padding: the browser's server key.")


class EndpointGiven(Strict):
    endpoint = Text(max_length=MOST_ENDPOINT, help_text="HTTPS, at a public name.")


class PushSubscriptionGiven(EndpointGiven):
    p256dh = Text(max_length=88, help_text="The browser's public key, base64url.")
    auth = Text(max_length=24, help_text="The browser's secret for this subscription, base64url.")


class PushKeyView(View):
    @extend_schema(
        operation_id="push_key_retrieve",
        tags=TAGS,
        summary="The key by which push services know this server",
        description="RFC 8292. It stays the same; the private half never leaves the server.",
        responses=PushKeyShown,
    )
    def get(self, request: Request) -> Response:
        me(request)
        return answer(PushKeyShown, {"key": push.public_key()})


class PushSubscriptionView(View):
    query = {"DELETE": ("endpoint",)}

    @extend_schema(
        operation_id="push_subscription_update",
        tags=TAGS,
        summary="Notify this browser",
        description="For supervisors, of the programmes where they supervise: of an emergency, of a sign-off that is "
        "asked for, and of a canal that comes to a hold point. A browser has one owner: who says so last. A message is "
        "JSON with `case_id`, `alias`, `tooth`, `canal`, `what` (`emergency`, `asked`, `hold_point`) and `hold_point`, "
        "sealed by RFC 8291.",
        request=PushSubscriptionGiven,
        examples=[examples.PUSH_SUBSCRIPTION],
        extensions=refuses(NotAllowed, NotUsable),
        responses={204: None},
    )
    def put(self, request: Request) -> Response:
        push.subscribe(actor=me(request), **given(PushSubscriptionGiven, request))
        return Response(status=status.HTTP_204_NO_CONTENT)

    @extend_schema(
        operation_id="push_subscription_destroy",
        tags=TAGS,
        summary="Notify this browser no more",
        description="Harmless where it was not notified.",
        parameters=[EndpointGiven],
        responses={204: None},
    )
    def delete(self, request: Request) -> Response:
        read = EndpointGiven(data=request.query_params)
        read.is_valid(raise_exception=True)
        push.unsubscribe(actor=me(request), endpoint=read.validated_data["endpoint"])
        return Response(status=status.HTTP_204_NO_CONTENT)
