"""Inviting people to a programme, by links that they join with."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import NewestFirst, View, answer, given, me, page_of
from cases.api.fields import Each, Strict, Text, Value, Whole
from cases.api.v1 import examples
from cases.api.v1.filters import OF_PAGES, PAGES, InvitationFilters, filtered
from cases.api.v1.shapes import PersonRef
from cases.domain.access.invited import MOST_AT_ONCE, MOST_DAYS, USUAL_DAYS, InvitationState, Invited
from cases.domain.access.people_list import MOST_CHARACTERS
from cases.domain.access.roles import Role
from cases.domain.errors import Conflict, NotAllowed, NotUsable
from cases.queries import invitations as queries
from cases.queries import seen
from cases.queries.invitations import ListedLine
from cases.services.people import invitations
from cases.services.people.invitations import MadeInvitation
from planning.api.refusals import refuses

TAGS = ["people"]
JOIN = "/join"
ENDS = f"The link ends after so many; {USUAL_DAYS} if nothing is said."


class InvitationShown(serializers.Serializer[Any]):
    """A stored invitation; never its link. Once it was used its names are those of the person."""

    id = serializers.UUIDField()
    name = serializers.CharField(help_text="As others will see it; empty: the person chooses.")
    username = serializers.CharField(help_text="To sign in with; empty: the person chooses, or has joined.")
    role = Value(Role)
    group = serializers.CharField()
    state = Value(InvitationState)
    made_at = serializers.DateTimeField()
    made_by = PersonRef(allow_null=True, help_text="Null: whoever runs the server.")
    ends_at = serializers.DateTimeField()
    used_by = PersonRef(allow_null=True, help_text="Who joined by it.")
    used_at = serializers.DateTimeField(allow_null=True)


class InvitationWithLink(serializers.Serializer[Any]):
    """An invitation that was just stored, with its link, which is shown this once."""

    invitation = InvitationShown(source="row")
    link = serializers.SerializerMethodField(
        help_text="Hand it to this one person. What stands after the # reaches no log: it is never part of a request's "
        "address. Kept nowhere here."
    )

    def get_link(self, made: MadeInvitation) -> str:
        request: Request = self.context["request"]
        return str(request.build_absolute_uri(f"{JOIN}#{made.text}"))


class InvitationsWithLinks(serializers.Serializer[Any]):
    """What came of inviting: rows that were just stored, and who needed none."""

    made = InvitationWithLink(many=True, help_text="Invitations that were just made.")
    left_out = Value(
        tuple[Invited, ...], help_text="Who belongs to the programme already, or has a link that still counts."
    )


class InvitedGiven(Strict):
    """Somebody to be invited, read by hand: each text has a limit. What is left out of the names they choose."""

    name = Text(max_length=80, required=False, allow_blank=True, help_text="As others will see it.")
    username = Text(max_length=60, required=False, allow_blank=True, help_text="To sign in with.")
    role = Value(Role)
    group = Text(max_length=60, required=False, allow_blank=True)

    def validate(self, attrs: dict[str, Any]) -> Any:
        return Invited(**attrs)


class InvitationsGiven(Strict):
    people = Each(child=InvitedGiven(), min_length=1, max_length=MOST_AT_ONCE, help_text="Each once.")
    days = Whole(min_value=1, max_value=MOST_DAYS, default=USUAL_DAYS, help_text=ENDS)


class RenewalGiven(Strict):
    days = Whole(min_value=1, max_value=MOST_DAYS, default=USUAL_DAYS, help_text=ENDS)


class PeopleListGiven(Strict):
    text = Text(
        max_length=MOST_CHARACTERS,
        trim_whitespace=False,
        help_text="CSV (RFC 4180), or with semicolons or tabs. The first line names the columns: name, user name, "
        "role, group.",
    )


class PeopleListShown(serializers.Serializer[Any]):
    """What would come of a list; nothing of it is stored."""

    lines = Value(tuple[ListedLine, ...], help_text="Its lines, in order; empty ones are left out.")


class ByWhenMade(NewestFirst):
    ordering = ("-made_at", "-id")


class InvitationsView(View):
    keeps_answers = False
    query = {"GET": (*InvitationFilters.base_filters, *OF_PAGES)}

    @extend_schema(
        operation_id="invitations_list",
        tags=TAGS,
        summary="Who was invited",
        description="For the coordinator, the newest first. Links are not shown again.",
        parameters=[
            OpenApiParameter(
                "state", {"type": "string", "enum": list(InvitationState)}, description="How they stand now."
            ),
            *PAGES,
        ],
        extensions=refuses(NotAllowed),
        responses=page_of("InvitationPage", InvitationShown),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        rows = filtered(InvitationFilters, queries.listed(me(request), programme_id), request)
        pages = ByWhenMade()
        page = pages.paginate_queryset(rows, request, self) or []
        return pages.get_paginated_response(InvitationShown(page, many=True).data)

    @extend_schema(
        operation_id="invitations_create",
        tags=TAGS,
        summary="Invite people",
        description="By the coordinator. Each gets a link of their own, by which they choose a password and join. "
        "Who belongs to the programme already or has a link that counts is left out, by the user name: the same sent "
        "again invites nobody twice. All are invited, or on a refusal nobody.",
        request=InvitationsGiven,
        extensions=refuses(NotAllowed, NotUsable),
        responses={200: InvitationsWithLinks},
        examples=[examples.INVITATIONS],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        result = invitations.invite(actor=me(request), programme_id=programme_id, **given(InvitationsGiven, request))
        return Response(InvitationsWithLinks(result, context={"request": request}).data)


class InvitationView(View):
    @extend_schema(
        operation_id="invitation_retrieve",
        tags=TAGS,
        summary="An invitation",
        description="For the coordinator. Its link is not shown again.",
        extensions=refuses(NotAllowed),
        responses=InvitationShown,
    )
    def get(self, request: Request, programme_id: UUID, invitation_id: UUID) -> Response:
        rows = queries.listed(me(request), programme_id)
        return answer(InvitationShown, seen.row_of(rows, invitation_id, "invitation"))

    @extend_schema(
        operation_id="invitation_destroy",
        tags=TAGS,
        summary="Withdraw an invitation",
        description="By the coordinator. Its link counts no more. Nobody who has joined is put out by it (409).",
        extensions=refuses(NotAllowed, Conflict),
        responses={204: None},
    )
    def delete(self, request: Request, programme_id: UUID, invitation_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        invitations.withdraw(actor=me(request), programme_id=programme_id, id=invitation_id)
        return Response(status=status.HTTP_204_NO_CONTENT)


class InvitationLinkView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="invitation_renew",
        tags=TAGS,
        summary="Make another link for an invitation",
        description="By the coordinator, for a link that was lost, withdrawn or has ended. The one before counts no "
        "more.",
        request=RenewalGiven,
        extensions=refuses(NotAllowed, NotUsable, Conflict),
        responses={200: InvitationWithLink},
        examples=[examples.RENEWAL],
    )
    def post(self, request: Request, programme_id: UUID, invitation_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        read = given(RenewalGiven, request)
        made = invitations.renew(actor=me(request), programme_id=programme_id, id=invitation_id, **read)
        return Response(InvitationWithLink(made, context={"request": request}).data)


class PeopleListView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="people_list_check",
        tags=TAGS,
        summary="Look at a list of people before they are invited",
        description="For the coordinator. Says of each line who would be invited, and what is wrong, by line and "
        "column. Nothing is changed: invite the `person` of each line that is `new`.",
        request=PeopleListGiven,
        extensions=refuses(NotAllowed, NotUsable),
        responses={200: PeopleListShown},
        examples=[examples.PEOPLE_LIST],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        lines = queries.checked(me(request), programme_id, given(PeopleListGiven, request)["text"])
        return answer(PeopleListShown, {"lines": tuple(lines)})
