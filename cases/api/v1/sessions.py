"""Signing in and out."""

from __future__ import annotations

from http import HTTPStatus
from typing import Any

from django.conf import settings
from django.middleware.csrf import get_token
from drf_spectacular.utils import OpenApiResponse, extend_schema
from rest_framework import serializers, status
from rest_framework.permissions import AllowAny
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api import problems
from cases.api.base import View, answer, given, me
from cases.api.fields import Strict, Text, Value
from cases.api.needs import PREFIX
from cases.api.token import check_token
from cases.api.v1 import examples
from cases.domain.access.roles import Role
from cases.domain.errors import SignInRefused, TooManyTries
from cases.queries import programmes
from cases.services.people import sign_in
from planning.api.refusals import refuses

TREATS = "Of a student: the last day on which they may treat patients; null: they may not."


class ProgrammeRef(serializers.Serializer[Any]):
    """A stored programme, as much of it as choosing one needs."""

    id = serializers.UUIDField()
    name = serializers.CharField()
    invented = serializers.BooleanField(help_text="Demonstration: no such school, people or cases.")


class MembershipShown(serializers.Serializer[Any]):
    """A stored membership of the person who asks."""

    programme = ProgrammeRef()
    role = Value(Role)
    group = serializers.CharField()
    treats_patients_until = serializers.DateField(allow_null=True, help_text=TREATS)


class SessionPerson(serializers.Serializer[Any]):
    """The stored person who is signed in; nobody else is shown the user name."""

    id = serializers.UUIDField()
    username = serializers.CharField()
    name = serializers.CharField(source="__str__")


class SessionShown(serializers.Serializer[Any]):
    """Who is signed in, and every programme that they belong to: rows of several tables."""

    person = SessionPerson()
    memberships = MembershipShown(many=True)


class SignIn(Strict):
    username = Text(max_length=60)
    password = Text(max_length=200, trim_whitespace=False)


class SessionView(View):
    keeps_answers = False
    permission_classes = (AllowAny,)

    @extend_schema(
        operation_id="session_retrieve",
        tags=["session"],
        summary="Who is signed in",
        description="Also sets the `csrftoken` cookie, whose value every change sends as X-CSRFToken; "
        "without it a change is answered 403 `token-missing`. That nobody is signed in is no error: 204, with the "
        "`WWW-Authenticate` of a 401, as anything between may answer with nothing.",
        responses={200: SessionShown, 204: OpenApiResponse(description="Nobody is signed in.")},
        examples=[examples.SESSION],
    )
    def get(self, request: Request) -> Response:
        get_token(request._request)
        if not request.user.is_authenticated:
            return Response(status=status.HTTP_204_NO_CONTENT, headers=problems.HEADERS[HTTPStatus.UNAUTHORIZED])
        return session_of(me(request))

    @extend_schema(
        operation_id="session_create",
        tags=["session"],
        summary="Sign in",
        description="401 for a wrong name or password, 429 after too many wrong tries.",
        request=SignIn,
        extensions=refuses(SignInRefused, TooManyTries),
        responses=SessionShown,
        examples=[examples.SIGN_IN, examples.SESSION],
    )
    def post(self, request: Request) -> Response:
        # The framework checks the token only for those signed in; here a stranger's page must not sign anybody in.
        check_token(request)
        return new_session(sign_in.sign_in(request=request._request, **given(SignIn, request)))

    @extend_schema(
        operation_id="session_destroy",
        tags=["session"],
        summary="Sign out",
        description="Harmless where nobody is signed in.",
        responses={204: None},
    )
    def delete(self, request: Request) -> Response:
        sign_in.sign_out(request=request._request)
        return Response(status=status.HTTP_204_NO_CONTENT)


def new_session(person: Any) -> Response:
    """The session that has just begun, with the note for this browser that the person signed in here."""
    shown = session_of(person)
    shown.set_cookie(
        sign_in.WAS_HERE,
        sign_in.was_here(person),
        max_age=sign_in.WAS_HERE_FOR,
        path=f"{PREFIX}session",
        secure=settings.SESSION_COOKIE_SECURE,
        httponly=True,
        samesite="Strict",
    )
    return shown


def session_of(person: Any) -> Response:
    return answer(SessionShown, {"person": person, "memberships": programmes.memberships(person)})
