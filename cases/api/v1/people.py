"""Who belongs to a programme, and belonged to it."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import ByNumber, View, answer, asker, given, me, page_of
from cases.api.fields import Day, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.filters import OF_PAGES, PAGES, PEOPLE_FILTERS, PeopleFilters, filtered
from cases.api.v1.sessions import TREATS
from cases.api.v1.shapes import KNOWN_BY, PersonRef
from cases.domain.access.roles import Role
from cases.domain.errors import Conflict, NotAllowed, NotUsable
from cases.queries import people as queries
from cases.queries import seen
from cases.services.people import memberships
from planning.api.refusals import refuses

TAGS = ["people"]


class MemberShown(serializers.Serializer[Any]):
    """A stored membership of the programme, with its person."""

    person = PersonRef()
    role = Value(Role)
    group = serializers.CharField()
    joined_at = serializers.DateTimeField()
    treats_patients_until = serializers.DateField(allow_null=True, help_text=TREATS)
    external_id = serializers.CharField(allow_null=True, help_text=KNOWN_BY)


class MemberChanges(Strict):
    role = Value(Role, required=False)
    group = Text(max_length=60, required=False, allow_blank=True)
    treats_patients_until = Day(required=False, allow_null=True, help_text=TREATS)


class FormerMemberShown(serializers.Serializer[Any]):
    """A stored membership that ended, with its person."""

    person = PersonRef()
    role = Value(Role)
    group = serializers.CharField()
    joined_at = serializers.DateTimeField()
    ended_at = serializers.DateTimeField()
    ended_by = PersonRef()


class PeopleView(View):
    shape = MemberShown
    query = {"GET": (*PeopleFilters.base_filters, *OF_PAGES)}

    @extend_schema(
        operation_id="programme_people_list",
        tags=TAGS,
        summary="Who belongs to the programme",
        description="For supervisors and coordinators, and services that enter cases for a student.",
        parameters=[*PEOPLE_FILTERS, *PAGES],
        extensions=refuses(NotAllowed),
        responses=page_of("PeoplePage", MemberShown),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        people = filtered(PeopleFilters, queries.people(asker(request), programme_id), request)
        pages = ByNumber()
        rows = pages.paginate_queryset(people, request, self) or []
        return pages.get_paginated_response(MemberShown(rows, many=True).data)


class MemberView(View):
    shape = MemberShown

    @extend_schema(
        operation_id="programme_person_retrieve",
        tags=TAGS,
        summary="Somebody who belongs to the programme",
        description="For supervisors and coordinators, and services that enter cases for a student.",
        extensions=refuses(NotAllowed),
        responses=MemberShown,
    )
    def get(self, request: Request, programme_id: UUID, person_id: UUID) -> Response:
        return answer(MemberShown, queries.member(asker(request), programme_id, person_id))

    @extend_schema(
        operation_id="programme_person_partial_update",
        tags=TAGS,
        summary="Change what somebody is in the programme",
        description="By the coordinator: role, group, and until which day a student may treat patients. Their rights "
        "are others from the next request on. The only coordinator stays one, and who has cases as a student stays a "
        "student (409).",
        request=MemberChanges,
        extensions=refuses(NotAllowed, NotUsable, Conflict),
        responses=MemberShown,
        examples=[examples.MEMBER_CHANGES],
    )
    def patch(self, request: Request, programme_id: UUID, person_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        changes = given(MemberChanges, request, partial=True)
        memberships.change(actor=me(request), programme_id=programme_id, person_id=person_id, changes=changes)
        return answer(MemberShown, queries.member(me(request), programme_id, person_id))

    @extend_schema(
        operation_id="programme_person_destroy",
        tags=TAGS,
        summary="End what somebody is in the programme",
        description="By the coordinator. From the next request on they see nothing of it, are told nothing, and keys, "
        "clients and webhooks in their name reach nothing here. Their cases stay, and records name them as before. "
        "The only coordinator cannot go (409).",
        extensions=refuses(NotAllowed, Conflict),
        responses={204: None},
    )
    def delete(self, request: Request, programme_id: UUID, person_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        memberships.end(actor=me(request), programme_id=programme_id, person_id=person_id)
        return Response(status=status.HTTP_204_NO_CONTENT)


class FormerPeopleView(View):
    query = {"GET": OF_PAGES}

    @extend_schema(
        operation_id="programme_former_people_list",
        tags=TAGS,
        summary="Who belonged to the programme",
        description="For the coordinator, in the order in which they went.",
        parameters=PAGES,
        extensions=refuses(NotAllowed),
        responses=page_of("FormerPeoplePage", FormerMemberShown),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        pages = ByNumber()
        rows = pages.paginate_queryset(queries.former_people(me(request), programme_id), request, self) or []
        return pages.get_paginated_response(FormerMemberShown(rows, many=True).data)
