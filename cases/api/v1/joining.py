"""Joining a programme by a link. The link's secret comes in bodies alone, never in an address."""

from __future__ import annotations

from typing import Any

from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.permissions import AllowAny
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, given, me
from cases.api.fields import Strict, Text, Value
from cases.api.token import check_token
from cases.api.v1 import examples
from cases.api.v1.sessions import ProgrammeRef, SessionShown, new_session, session_of
from cases.domain.access.roles import Role
from cases.domain.errors import Conflict, InvitationRefused, NotUsable, TooManyTries
from cases.services.people import joining
from planning.api.refusals import refuses

TAGS = ["people"]
SECRET = "What stands after the # of the link."  # noqa: S105 - says what it is


class LinkGiven(Strict):
    invitation = Text(max_length=80, help_text=SECRET)


class NewAccountGiven(LinkGiven):
    username = Text(max_length=60, required=False, default="", allow_blank=True, help_text="Where none was given.")
    name = Text(max_length=80, required=False, default="", allow_blank=True, help_text="Where none was given.")
    password = Text(max_length=200, trim_whitespace=False, help_text="Twelve letters at least.")


class InvitationSeen(serializers.Serializer[Any]):
    """A stored invitation, as whoever has its link sees it."""

    programme = ProgrammeRef()
    role = Value(Role)
    group = serializers.CharField()
    name = serializers.CharField(help_text="As others will see it; empty: to be chosen.")
    username = serializers.CharField(help_text="To sign in with; empty: to be chosen.")
    ends_at = serializers.DateTimeField()
    has_account = serializers.SerializerMethodField(
        help_text="The user name that was given has an account: sign in with it first, then join."
    )

    def get_has_account(self, invitation: Any) -> bool:
        return joining.has_account(invitation)


class LinkView(View):
    keeps_answers = False
    permission_classes = (AllowAny,)

    @extend_schema(
        operation_id="join_look",
        tags=TAGS,
        summary="What a link leads to",
        description="For whoever has the link. Changes nothing. 410 for a link that does not count, 429 after too many "
        "that are none.",
        request=LinkGiven,
        extensions=refuses(InvitationRefused, TooManyTries),
        responses={200: InvitationSeen},
        examples=[examples.LINK],
    )
    def post(self, request: Request) -> Response:
        return answer(InvitationSeen, _looked_up(request, given(LinkGiven, request)))


class NewAccountView(View):
    keeps_answers = False
    permission_classes = (AllowAny,)

    @extend_schema(
        operation_id="join_new_account",
        tags=TAGS,
        summary="Join with a new account",
        description="Uses the link up: makes the account, and signs it in. What the invitation gives of the names "
        "counts. Whoever has an account signs in and joins with that.",
        request=NewAccountGiven,
        extensions=refuses(InvitationRefused, NotUsable, Conflict, TooManyTries),
        responses={200: SessionShown},
        examples=[examples.NEW_ACCOUNT, examples.SESSION],
    )
    def post(self, request: Request) -> Response:
        # As at sign-in: a stranger's page must not make anybody join.
        check_token(request)
        read = given(NewAccountGiven, request)
        invitation = _looked_up(request, read)
        return new_session(joining.join_anew(request=request._request, invitation=invitation, **read))


class JoinView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="join",
        tags=TAGS,
        summary="Join a programme with the account that is signed in",
        description="Uses the link up. 409 for who belongs to the programme already.",
        request=LinkGiven,
        extensions=refuses(InvitationRefused, NotUsable, Conflict, TooManyTries),
        responses={200: SessionShown},
        examples=[examples.LINK, examples.SESSION],
    )
    def post(self, request: Request) -> Response:
        joining.join_as(actor=me(request), invitation=_looked_up(request, given(LinkGiven, request)))
        return session_of(me(request))


def _looked_up(request: Request, read: dict[str, Any]) -> Any:
    address = request.META.get("REMOTE_ADDR", "")
    return joining.look_up(text=read.pop("invitation"), address=address)
