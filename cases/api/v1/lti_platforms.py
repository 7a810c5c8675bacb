"""Platforms of courses (LTI 1.3), as the coordinator keeps them."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, given, me
from cases.api.fields import Each, Listing, Strict, Text, Value
from cases.api.v1 import examples
from cases.domain.errors import NotAllowed, NotUsable, PasswordWrong, TakenAlready, TooManyTries
from cases.domain.lti import MOST_ADDRESS, MOST_DEPLOYMENTS, MOST_ID, MOST_NAME
from cases.queries import lti, seen
from cases.services.lti import platforms
from cases.services.lti.platforms import Registered
from planning.api.refusals import refuses

TAGS = ["programme"]


class PlatformGiven(Strict):
    name = Text(max_length=MOST_NAME, help_text="What it is called here.")
    issuer = Text(max_length=MOST_ID)
    client_id = Text(max_length=MOST_ID)
    deployment_ids = Each(child=Text(max_length=MOST_ID), min_length=1, max_length=MOST_DEPLOYMENTS)
    login_address = Text(max_length=MOST_ADDRESS)
    token_address = Text(max_length=MOST_ADDRESS)
    key_set_address = Text(max_length=MOST_ADDRESS)
    token_audience = Text(max_length=MOST_ADDRESS, required=False, allow_blank=True)
    teachers_supervise = Value(bool, required=False)
    active = Value(bool, required=False)
    password = Text(max_length=200, trim_whitespace=False, help_text="Of the person who is signed in.")


class PlatformShown(serializers.Serializer[Any]):
    """A stored platform, and what it has to be told of this server."""

    id = serializers.UUIDField()
    name = serializers.CharField()
    issuer = serializers.CharField()
    client_id = serializers.CharField()
    deployment_ids = serializers.ListField(child=serializers.CharField())
    login_address = serializers.CharField()
    token_address = serializers.CharField()
    key_set_address = serializers.CharField()
    token_audience = serializers.CharField()
    teachers_supervise = serializers.BooleanField()
    active = serializers.BooleanField()
    grades_waiting = serializers.IntegerField(help_text="Grades that the platform was not told yet, or never took.")
    last_refusal = serializers.CharField(help_text="Why it did not take the last one of them; empty: none was tried.")
    created_at = serializers.DateTimeField()


class PlatformList(Listing):
    results = PlatformShown(many=True)


class PlatformsView(View):
    short_list = True
    keeps_answers = False

    @extend_schema(
        operation_id="lti_platforms_list",
        tags=TAGS,
        summary="Platforms whose courses lead here (LTI 1.3)",
        description="For the coordinator.",
        extensions=refuses(NotAllowed),
        responses=PlatformList,
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        return answer(PlatformList, {"results": lti.platforms(me(request), programme_id)})

    @extend_schema(
        operation_id="lti_platforms_create",
        tags=TAGS,
        summary="Register a platform",
        description="By the coordinator, who is asked for the password once more: whoever runs the platform can sign "
        "people in. Left out, it is active and its teachers do not sign in. There, this tool's addresses are "
        "`/lti/login`, `/lti/launch` and `/lti/keys` of this server.",
        parameters=[LOCATION],
        request=PlatformGiven,
        extensions=refuses(NotAllowed, NotUsable, PasswordWrong, TakenAlready, TooManyTries),
        responses={201: PlatformShown},
        examples=[examples.PLATFORM],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        password, registered = _read(request)
        row = platforms.register(actor=me(request), password=password, programme_id=programme_id, registered=registered)
        shown = _row(request, programme_id, row.pk)
        return answer(PlatformShown, shown, created=True, at=f"programmes/{programme_id}/lti-platforms/{row.pk}")


class PlatformView(View):
    @extend_schema(
        operation_id="lti_platform_retrieve",
        tags=TAGS,
        summary="A platform",
        description="For the coordinator.",
        extensions=refuses(NotAllowed),
        responses=PlatformShown,
    )
    def get(self, request: Request, programme_id: UUID, platform_id: UUID) -> Response:
        return answer(PlatformShown, _row(request, programme_id, platform_id))

    @extend_schema(
        operation_id="lti_platform_update",
        tags=TAGS,
        summary="Change a platform, or switch it off",
        description="All of it anew, by the coordinator, who is asked for the password once more. Who came from it "
        "stays who they are. Grades that it did not take are sent once more, those given up too.",
        request=PlatformGiven,
        extensions=refuses(NotAllowed, NotUsable, PasswordWrong, TakenAlready, TooManyTries),
        responses=PlatformShown,
        examples=[examples.PLATFORM],
    )
    def put(self, request: Request, programme_id: UUID, platform_id: UUID) -> Response:
        row = _row(request, programme_id, platform_id)
        password, registered = _read(request)
        platforms.change(actor=me(request), password=password, platform=row, registered=registered)
        return answer(PlatformShown, _row(request, programme_id, platform_id))


def _row(request: Request, programme_id: UUID, platform_id: UUID) -> Any:
    return seen.row_of(lti.platforms(me(request), programme_id), platform_id, "platform")


def _read(request: Request) -> tuple[str, Registered]:
    read = given(PlatformGiven, request)
    return read.pop("password"), Registered(**read)
