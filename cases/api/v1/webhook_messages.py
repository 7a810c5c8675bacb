"""What webhooks are sent, and how the description tells it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from drf_spectacular.utils import OpenApiResponse, OpenApiWebhook, extend_schema
from rest_framework import serializers

from cases.api.fields import Value
from cases.api.v1.feed import ChangeShown
from cases.domain.feed import FeedKind
from cases.queries import feed


class ChangeSent(ChangeShown):
    """One change, as in the list of changes, and how to go on there."""

    bookmark = serializers.CharField(
        source="row.bookmark", help_text="Ask for changes with it as `after` to get what comes after this one."
    )


class ChangeMessage(serializers.Serializer[Any]):
    """A message about one change. It says what is to be read anew, and nothing of what is there."""

    type = Value(FeedKind, source="row.kind", help_text="What has changed.")
    timestamp = serializers.DateTimeField(source="row.at", help_text="When the change was written.")
    # The base class has a property of this name, for what a whole serializer shows.
    data = ChangeSent(source="*", help_text="The change, as in the list of changes.")  # type: ignore[assignment]


class WebhookRef(serializers.Serializer[Any]):
    """The id of a stored webhook."""

    webhook_id = serializers.UUIDField(help_text="Its id.")


class TestMessage(serializers.Serializer[Any]):
    """A message that somebody asked for, to see whether it comes."""

    type = Value(Literal["test"], help_text="It is of no change.")
    timestamp = serializers.DateTimeField(help_text="When it was sent.")
    data = WebhookRef(help_text="Which webhook it is of.")  # type: ignore[assignment]


def message_of(change: Any) -> Mapping[str, Any]:
    """The message about a change, with the state in which its resource is now."""
    message: Mapping[str, Any] = ChangeMessage().to_representation(feed.listed(change))
    return message


def _header(name: str, says: str) -> dict[str, Any]:
    return {"in": "header", "name": name, "schema": {"type": "string"}, "required": True, "description": says}


HEADERS = [
    _header("webhook-id", "Of the message; the same each time it is sent. Whoever has had it may leave it aside."),
    _header("webhook-timestamp", "When it was sent, in seconds since 1970. Refuse what is minutes old."),
    _header(
        "webhook-signature",
        "`v1,` and the HMAC-SHA256, in base64, of `<webhook-id>.<webhook-timestamp>.<body>` with the secret, which is "
        "the base64 after `whsec_`. Several, with a blank between them, while a secret is turned.",
    ),
]
_ANSWERS = {
    "2XX": OpenApiResponse(description="Taken."),
    "410": OpenApiResponse(description="Send nothing more: the webhook is given up."),
    "default": OpenApiResponse(description="Send it again."),
}
CHANGED = OpenApiWebhook(
    "changed",
    extend_schema(
        operation_id="changed",
        tags=["webhooks"],
        summary="Something has changed",
        description="Signed after Standard Webhooks, sent at least once, and of each case one after another. Answer "
        "2xx within 15 s, and do the work afterwards. Anything else is sent again: after 5 s, 30 s, 2 min, 10 min and "
        "30 min, then hourly for two days, or when `Retry-After` says, up to 6 h. Until it is taken, what comes later "
        "in the case waits, and other cases go on; after 429, 502, 503, 504 and no answer at all they wait too. After "
        "two days, or at once after 410, the webhook is given up: nothing is lost, and it goes on once it is set "
        "active. Redirects are not followed.",
        request=ChangeMessage,
        responses=_ANSWERS,
    ),
)
TEST = OpenApiWebhook(
    "test",
    extend_schema(
        operation_id="test",
        tags=["webhooks"],
        summary="Nothing has changed",
        description="Sent once, when somebody asks for it.",
        request=TestMessage,
        responses=_ANSWERS,
    ),
)


def described(result: dict[str, Any], generator: Any, **_: object) -> dict[str, Any]:
    """The generator's hook, the first: it leaves out the headers of messages, and schemas that stand in them alone."""
    result["components"]["schemas"] = generator.registry.build({})["schemas"]
    for webhook in result["webhooks"].values():
        webhook["post"] |= {"parameters": HEADERS, "security": [{"signature": []}]}
    return result
