"""Keys by which another system knows cases, people and kits: it looks them up, and sends cases, by its own."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, asker, given, key_of, me
from cases.api.etags import maybe_seen_revision
from cases.api.fields import FieldsOf, Id, Strict, Text, Value
from cases.api.v1 import cases, example_answers, examples
from cases.api.v1.shapes import CaseShown
from cases.domain.errors import (
    AliasLooksLikeAName,
    AliasRefused,
    NotAllowed,
    NotUsable,
    SettingFixed,
)
from cases.domain.external_id import MOST_CHARACTERS, PATTERN
from cases.domain.program_errors import ExternalIdRefused, ExternalIdTaken
from cases.queries import seen
from cases.queries.external_ids import case_of, own_service
from cases.services.charting import known_cases
from cases.services.common import external_ids
from planning.anatomy import ToothName
from planning.anatomy.notation import NotationMissing
from planning.api.refusals import refuses
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.errors import FactorNotKnown, OutOfBounds, UnknownTooth
from planning.techniques.technique import Setting

NO_PERSON = "The key of a row in the other system. Names, dates of birth and numbers of people have no place in it."
PUT: dict[str, Any] = {
    "tags": ["external ids"],
    "description": "By a service, for itself: other services have other keys, and see neither this one nor each "
    "other's. One key is of one thing of its kind. Sent again it changes nothing; another takes its place.",
    "examples": [examples.EXTERNAL_ID],
}
DELETE: dict[str, Any] = {
    "tags": ["external ids"],
    "description": "The thing itself stays. 204 also where there was none.",
    "extensions": refuses(NotAllowed),
    "responses": {204: None},
}


class ExternalIdGiven(Strict):
    external_id = Text(max_length=MOST_CHARACTERS, help_text=NO_PERSON)


class ExternalIdShown(serializers.Serializer[Any]):
    """A stored key, for the service whose it is."""

    external_id = serializers.RegexField(rf"\A{PATTERN}\Z")


PUT |= {
    "extensions": refuses(NotAllowed, ExternalIdTaken, ExternalIdRefused),
    "request": ExternalIdGiven,
    "responses": {200: ExternalIdShown, 201: ExternalIdShown},
}


class KnownCaseGiven(FieldsOf, Strict):
    value_type = ToothFacts
    student_id = Id(help_text="Whose case it is; it stays theirs.")
    patient_alias = Text(max_length=40, help_text="An alias. A real identity has no place here.")
    alias_is_no_name = Value(bool, required=False, help_text=cases.IS_NO_NAME)
    tooth = Value(ToothName, help_text="It stays this one.")
    setting = Value(Setting)
    supervisor_id = Id(required=False, allow_null=True, help_text="Who supervises; null: nobody yet.")


class CaseByExternalIdView(View):
    shape = CaseShown

    @extend_schema(
        operation_id="case_by_external_id_retrieve",
        tags=["external ids"],
        summary="The case that your service knows by this key",
        extensions=refuses(NotAllowed),
        responses=CaseShown,
        examples=[example_answers.CASE],
    )
    def get(self, request: Request, programme_id: UUID, external_id: str) -> Response:
        seen.programme(asker(request), programme_id)
        return cases.shown(request, case_of(own_service(asker(request)), external_id).pk)

    @extend_schema(
        operation_id="case_by_external_id_update",
        tags=["external ids"],
        summary="Open a case, or change it, by the key that your service knows it by",
        description="Opens the case for the student, with the tooth's usual canals, where your service knows none by "
        "the key; else changes what is different. What is not sent stays as it is. The same sent again changes "
        f"nothing. {NO_PERSON}",
        parameters=[cases.IF_MATCH_OPTIONAL, LOCATION],
        request=KnownCaseGiven,
        extensions=refuses(
            NotAllowed,
            ExternalIdTaken,
            ExternalIdRefused,
            SettingFixed,
            NotUsable,
            AliasRefused,
            AliasLooksLikeAName,
            UnknownTooth,
            NotationMissing,
            FactorNotKnown,
            OutOfBounds,
        ),
        responses={200: CaseShown, 201: CaseShown},
        examples=[examples.KNOWN_CASE, example_answers.CASE],
    )
    def put(self, request: Request, programme_id: UUID, external_id: str) -> Response:
        seen.programme(asker(request), programme_id)
        service = own_service(asker(request))
        read = given(KnownCaseGiven, request)
        row, created = known_cases.put(
            service=service,
            key=key_of(request),
            external_id=external_id,
            student_id=read.pop("student_id"),
            tooth=read.pop("tooth"),
            patient_alias=read.pop("patient_alias"),
            alias_is_no_name=read.pop("alias_is_no_name", False),
            setting=read.pop("setting"),
            seen_revision=maybe_seen_revision(request),
            facts=read,
        )
        return cases.shown(request, row.pk, created=created)


class CaseExternalIdView(View):
    @extend_schema(operation_id="case_external_id_update", summary="Say by which key your service knows a case", **PUT)
    def put(self, request: Request, case_id: UUID) -> Response:
        return _noted(request, seen.case(me(request), case_id))

    @extend_schema(operation_id="case_external_id_destroy", summary="Know a case by no key any more", **DELETE)
    def delete(self, request: Request, case_id: UUID) -> Response:
        return _forgotten(request, seen.case(me(request), case_id))


class PersonExternalIdView(View):
    @extend_schema(
        operation_id="person_external_id_update", summary="Say by which key your service knows a person", **PUT
    )
    def put(self, request: Request, programme_id: UUID, person_id: UUID) -> Response:
        return _noted(request, seen.person(asker(request), programme_id, person_id))

    @extend_schema(operation_id="person_external_id_destroy", summary="Know a person by no key any more", **DELETE)
    def delete(self, request: Request, programme_id: UUID, person_id: UUID) -> Response:
        return _forgotten(request, seen.person(asker(request), programme_id, person_id))


class KitExternalIdView(View):
    @extend_schema(operation_id="kit_external_id_update", summary="Say by which key your service knows a kit", **PUT)
    def put(self, request: Request, programme_id: UUID, kit_id: UUID) -> Response:
        return _noted(request, seen.kit(asker(request), programme_id, kit_id))

    @extend_schema(operation_id="kit_external_id_destroy", summary="Know a kit by no key any more", **DELETE)
    def delete(self, request: Request, programme_id: UUID, kit_id: UUID) -> Response:
        return _forgotten(request, seen.kit(asker(request), programme_id, kit_id))


def _noted(request: Request, subject: external_ids.Subject) -> Response:
    service = own_service(asker(request))
    value = given(ExternalIdGiven, request)["external_id"]
    created = external_ids.note(service=service, subject=subject, value=value)
    return answer(ExternalIdShown, {"external_id": value}, created=created)


def _forgotten(request: Request, subject: external_ids.Subject) -> Response:
    external_ids.forget(service=own_service(asker(request)), subject=subject)
    return Response(status=status.HTTP_204_NO_CONTENT)
