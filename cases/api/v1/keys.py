"""Access keys: of a person's scripts, and of a programme's services."""

from __future__ import annotations

from typing import Annotated, Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, asker, given, key_of, me
from cases.api.bearer import scopes_of
from cases.api.fields import Listing, Strict, Text, Value, Whole
from cases.api.v1 import examples
from cases.api.v1.shapes import PersonRef
from cases.domain.access.key_text import MOST_DAYS, MOST_NAME
from cases.domain.access.scopes import Scope
from cases.domain.errors import Conflict, NotAllowed, NotHere, NotUsable, PasswordWrong, TooManyTries
from cases.queries import access_keys as queries
from cases.queries import seen
from cases.services.people import access_keys
from planning.api.refusals import refuses
from planning.foundation.counts import at_most

TAGS = ["keys"]


class KeyShown(serializers.Serializer[Any]):
    """A stored key; never its secret."""

    id = serializers.UUIDField(help_text="The text of the key holds it.")
    name = serializers.CharField(help_text="Of the service, or as its owner named it.")
    scopes = Value(tuple[Scope, ...])
    made_by = PersonRef()
    made_at = serializers.DateTimeField()
    ends_at = serializers.DateTimeField()
    last_used_at = serializers.DateTimeField(allow_null=True, help_text="To the minute; null: never.")


class KeyList(Listing):
    results = KeyShown(many=True)


class KeyWithText(serializers.Serializer[Any]):
    """A key that was just stored, with its text, which is shown this once."""

    key = KeyShown(source="row")
    text = serializers.CharField(help_text="Sent as `Authorization: Bearer <text>`. Kept nowhere here.")


class KeyGiven(Strict):
    name = Text(max_length=MOST_NAME, help_text="What it is for; of a service's key the service's name.")
    scopes = Value(Annotated[tuple[Scope, ...], at_most("kinds")])
    days = Whole(min_value=1, max_value=MOST_DAYS, help_text="It ends after so many.")
    password = Text(max_length=200, trim_whitespace=False, help_text="Of the person who is signed in.")


class KeyProgramme(serializers.Serializer[Any]):
    """A stored programme, as much of it as finding the rest needs."""

    id = serializers.UUIDField()
    name = serializers.CharField()


class OwnKeyShown(serializers.Serializer[Any]):
    """The stored key or token that the request came with, whom it acts for, and where: rows of several tables."""

    name = serializers.CharField()
    scopes = Value(tuple[Scope, ...])
    ends_at = serializers.DateTimeField()
    person = PersonRef(allow_null=True, help_text="Whose script it is, or for whom a client acts; null for a service.")
    programmes = KeyProgramme(many=True)


class KeyView(View):
    @extend_schema(
        operation_id="key_retrieve",
        tags=TAGS,
        summary="The key or token that this request came with",
        description="404 where it came with none.",
        extensions=refuses(NotHere),
        responses=OwnKeyShown,
    )
    def get(self, request: Request) -> Response:
        key = key_of(request)
        if key is None:
            raise NotHere(what="key")
        shown = {
            "name": key.name,
            "scopes": scopes_of(key),
            "ends_at": key.ends_at,
            "person": key.person,
            "programmes": seen.programmes(asker(request)).order_by("name"),
        }
        return answer(OwnKeyShown, shown)


class KeysView(View):
    short_list = True
    keeps_answers = False

    @extend_schema(operation_id="keys_list", tags=TAGS, summary="Keys of your scripts", responses=KeyList)
    def get(self, request: Request) -> Response:
        return answer(KeyList, {"results": queries.own(me(request))})

    @extend_schema(
        operation_id="keys_create",
        tags=TAGS,
        summary="Make a key for a script of yours",
        description="It may what you may, and of that what its scopes open. Asks for your password once more; a new "
        "password ends it.",
        parameters=[LOCATION],
        request=KeyGiven,
        extensions=refuses(Conflict, NotUsable, PasswordWrong, TooManyTries),
        responses={201: KeyWithText},
        examples=[examples.KEY],
    )
    def post(self, request: Request) -> Response:
        made = access_keys.make_own(actor=me(request), **given(KeyGiven, request))
        return answer(KeyWithText, made, created=True, at=f"keys/{made.row.pk}")


class OneKeyView(View):
    @extend_schema(operation_id="key_of_yours_retrieve", tags=TAGS, summary="A key of yours", responses=KeyShown)
    def get(self, request: Request, key_id: UUID) -> Response:
        return answer(KeyShown, seen.row_of(queries.own(me(request)), key_id, "key"))

    @extend_schema(operation_id="key_destroy", tags=TAGS, summary="Revoke a key of yours", responses={204: None})
    def delete(self, request: Request, key_id: UUID) -> Response:
        access_keys.revoke_own(actor=me(request), id=key_id)
        return Response(status=status.HTTP_204_NO_CONTENT)


class ServiceKeysView(View):
    short_list = True
    keeps_answers = False

    @extend_schema(
        operation_id="service_keys_list",
        tags=TAGS,
        summary="Keys of the programme's services",
        description="For the coordinator.",
        extensions=refuses(NotAllowed),
        responses=KeyList,
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        return answer(KeyList, {"results": queries.of_services(me(request), programme_id)})

    @extend_schema(
        operation_id="service_keys_create",
        tags=TAGS,
        summary="Make a key for a service",
        description="By the coordinator, who is asked for the password once more. A service sees the programme; what "
        "it enters, it enters for a named student, and the record says so. It never has `reviews:write` or "
        "`events:write`. A second key of the same name is the same service's: change over, then revoke the first.",
        parameters=[LOCATION],
        request=KeyGiven,
        extensions=refuses(NotAllowed, Conflict, NotUsable, PasswordWrong, TooManyTries),
        responses={201: KeyWithText},
        examples=[examples.SERVICE_KEY],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        read = given(KeyGiven, request)
        made = access_keys.make_for_service(actor=me(request), programme_id=programme_id, **read)
        at = f"programmes/{programme_id}/service-keys/{made.row.pk}"
        return answer(KeyWithText, made, created=True, at=at)


class OneServiceKeyView(View):
    @extend_schema(
        operation_id="service_key_retrieve",
        tags=TAGS,
        summary="A service's key",
        description="For the coordinator.",
        extensions=refuses(NotAllowed),
        responses=KeyShown,
    )
    def get(self, request: Request, programme_id: UUID, key_id: UUID) -> Response:
        return answer(KeyShown, seen.row_of(queries.of_services(me(request), programme_id), key_id, "key"))

    @extend_schema(
        operation_id="service_key_destroy",
        tags=TAGS,
        summary="Revoke a service's key",
        extensions=refuses(NotAllowed),
        responses={204: None},
    )
    def delete(self, request: Request, programme_id: UUID, key_id: UUID) -> Response:
        access_keys.revoke_of_service(actor=me(request), programme_id=programme_id, id=key_id)
        return Response(status=status.HTTP_204_NO_CONTENT)
