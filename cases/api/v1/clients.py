"""Clients of OAuth 2: of a programme, and those that act for a person."""

from __future__ import annotations

from typing import Annotated, Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, given, me
from cases.api.fields import Listing, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.keys import KeyProgramme
from cases.api.v1.shapes import PersonRef
from cases.domain.access.client_kinds import ActsFor, ClientType
from cases.domain.access.key_text import MOST_NAME
from cases.domain.access.scopes import Scope
from cases.domain.errors import Conflict, NotAllowed, NotUsable, PasswordWrong, TooManyTries
from cases.queries import clients as queries
from cases.queries import seen
from cases.services.people import clients, consents
from cases.services.people.clients import NewClient
from planning.api.refusals import refuses
from planning.foundation.counts import at_most

TAGS = ["OAuth 2"]
ADDRESSES = "Where a person is sent back to, matched to the letter: https, or http to 127.0.0.1 or [::1] with any port "
ADDRESSES += "(RFC 8252). Empty for a client that acts for itself."


class ClientShown(serializers.Serializer[Any]):
    """A stored client; never its secret."""

    id = serializers.UUIDField(help_text="Its `client_id`.")
    name = serializers.CharField(help_text="Of the service whose client it is.")
    acts_for = Value(ActsFor)
    client_type = Value(ClientType)
    scopes = Value(tuple[Scope, ...], help_text="It may ask for these.")
    redirect_uris = serializers.ListField(child=serializers.CharField(), source="addresses", help_text=ADDRESSES)
    made_by = PersonRef()
    made_at = serializers.DateTimeField(source="created")


class ClientList(Listing):
    results = ClientShown(many=True)


class ClientWithSecret(serializers.Serializer[Any]):
    """A client that was just stored, with its secret, which is shown this once."""

    client = ClientShown(source="row")
    client_secret = serializers.CharField(source="secret", allow_null=True, help_text="Null for a public client.")


class ClientGiven(Strict):
    name = Text(max_length=MOST_NAME, help_text="Of the service; people who are asked to allow it read this.")
    acts_for = Value(ActsFor)
    client_type = Value(ClientType)
    scopes = Value(Annotated[tuple[Scope, ...], at_most("kinds")])
    redirect_uris = Value(Annotated[tuple[str, ...], at_most("kinds")], required=False, help_text=ADDRESSES)
    password = Text(max_length=200, trim_whitespace=False, help_text="Of the person who is signed in.")


class ConsentClient(serializers.Serializer[Any]):
    """A stored client, as much of it as the person needs for whom it acts."""

    id = serializers.UUIDField()
    name = serializers.CharField()
    programme = KeyProgramme(source="service.programme")


class ConsentShown(serializers.Serializer[Any]):
    """The stored consent of the person who asks."""

    id = serializers.UUIDField()
    client = ConsentClient()
    scopes = Value(tuple[Scope, ...])
    given_at = serializers.DateTimeField(help_text="First.")


class ConsentList(Listing):
    results = ConsentShown(many=True)


class ClientsView(View):
    short_list = True
    keeps_answers = False

    @extend_schema(
        operation_id="clients_list",
        tags=TAGS,
        summary="Clients of the programme",
        description="For the coordinator.",
        extensions=refuses(NotAllowed),
        responses=ClientList,
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        return answer(ClientList, {"results": queries.of_programme(me(request), programme_id)})

    @extend_schema(
        operation_id="clients_create",
        tags=TAGS,
        summary="Register a client",
        description="By the coordinator, who is asked for the password once more. One that acts for itself is the "
        "programme's service, as with a key. One that acts for people asks each of them at `/oauth/authorize`, with "
        "PKCE (S256), and has of its scopes what the person's role leaves open, in this programme alone.",
        parameters=[LOCATION],
        request=ClientGiven,
        extensions=refuses(NotAllowed, Conflict, NotUsable, PasswordWrong, TooManyTries),
        responses={201: ClientWithSecret},
        examples=[examples.CLIENT],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        read = given(ClientGiven, request)
        password = read.pop("password")
        made = clients.make(actor=me(request), password=password, programme_id=programme_id, new=NewClient(**read))
        return answer(ClientWithSecret, made, created=True, at=f"programmes/{programme_id}/clients/{made.row.pk}")


class OneClientView(View):
    @extend_schema(
        operation_id="client_retrieve",
        tags=TAGS,
        summary="A client",
        description="For the coordinator.",
        extensions=refuses(NotAllowed),
        responses=ClientShown,
    )
    def get(self, request: Request, programme_id: UUID, client_id: UUID) -> Response:
        return answer(ClientShown, seen.row_of(queries.of_programme(me(request), programme_id), client_id, "client"))

    @extend_schema(
        operation_id="client_destroy",
        tags=TAGS,
        summary="Revoke a client",
        description="With all its tokens.",
        extensions=refuses(NotAllowed),
        responses={204: None},
    )
    def delete(self, request: Request, programme_id: UUID, client_id: UUID) -> Response:
        clients.revoke(actor=me(request), programme_id=programme_id, id=client_id)
        return Response(status=status.HTTP_204_NO_CONTENT)


class ConsentsView(View):
    short_list = True

    @extend_schema(operation_id="consents_list", tags=TAGS, summary="Clients that act for you", responses=ConsentList)
    def get(self, request: Request) -> Response:
        return answer(ConsentList, {"results": queries.consents(me(request))})


class OneConsentView(View):
    @extend_schema(
        operation_id="consent_destroy",
        tags=TAGS,
        summary="Let a client act for you no more",
        description="At once: its tokens count no more.",
        responses={204: None},
    )
    def delete(self, request: Request, consent_id: UUID) -> Response:
        consents.end(actor=me(request), id=consent_id)
        return Response(status=status.HTTP_204_NO_CONTENT)
