"""What changed, for systems that keep a copy."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from uuid import UUID

from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework import serializers
from rest_framework.exceptions import ValidationError
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, asked_number, asker
from cases.api.fields import Listing, Value
from cases.api.needs import PREFIX
from cases.api.reading import NOTHING_NEW
from cases.domain.errors import NotOfThisFeed
from cases.domain.events.kinds import EventKind
from cases.domain.feed import READ_ANEW, Bookmark, FeedKind, Resource
from cases.queries import feed, seen
from cases.services.common.feed import number
from planning.api.refusals import refuses

USUAL_CHANGES, MOST_CHANGES = 100, 1000
MOST_WAIT_S = 30
LAST = "last"
_CASE, _PROGRAMME = "cases/{case}", "programmes/{programme}"
ADDRESSES: Mapping[Resource, str] = {
    Resource.CASE: _CASE,
    Resource.CANAL: "canals/{subject}",
    Resource.BENDS: "canals/{subject}/bends-in-space",
    Resource.IMAGE: f"{_CASE}/images/{{subject}}",
    Resource.MARKINGS: f"{_CASE}/images/{{subject}}/markings",
    Resource.VERSION: "plan-versions/{subject}",
    Resource.OVERRIDES: f"{_CASE}/overrides",
    Resource.EVENTS: f"{_CASE}/events",
    Resource.PEOPLE: f"{_PROGRAMME}/people",
    Resource.KITS: f"{_PROGRAMME}/kits",
    Resource.TECHNIQUES: f"{_PROGRAMME}/techniques",
    Resource.FIGURES: f"{_PROGRAMME}/figures",
    Resource.WIDTHS: f"{_PROGRAMME}/widths",
}


class ChangeShown(serializers.Serializer[Any]):
    """One change. It says what is to be read anew, and nothing of what is there."""

    position = serializers.IntegerField(source="row.position", help_text="Counts the programme's changes from 1.")
    kind = Value(FeedKind, source="row.kind")
    event = Value(EventKind, allow_null=True, help_text="What happened at the chair; null for all but an event.")
    case_id = serializers.UUIDField(source="row.case_id", allow_null=True, help_text="Null for what is of no case.")
    subject_id = serializers.UUIDField(
        source="row.subject_id", help_text="Id of the case, canal, image, version, event or person, by its kind."
    )
    actor_id = serializers.UUIDField(source="row.actor_id", help_text="Id of who did it.")
    at = serializers.DateTimeField(source="row.at", help_text="When it was written. The order is the position's.")
    address = serializers.SerializerMethodField(help_text="What shows the change: read it anew. 404: it is gone.")
    state = serializers.CharField(
        allow_null=True,
        help_text="What stands before the hyphen in the present ETag at that address: a case's revision, a version's "
        "hash. Null where the ETag has no such part. The rest changes with all that is shown: only the address knows "
        "it, and answers 304 where you name the one you have.",
    )

    def get_address(self, listed: Any) -> str:
        row = listed.row
        address = ADDRESSES[READ_ANEW[FeedKind(row.kind)]]
        return PREFIX + address.format(case=row.case_id, programme=row.programme_id, subject=row.subject_id)


class ChangePage(Listing):
    results = ChangeShown(many=True)
    # A bookmark, and always there: there may be more at any time.
    next = serializers.CharField(help_text="Where to go on: ask with it as `after`.")  # type: ignore[assignment]
    more = serializers.BooleanField(help_text="There are more: ask again at once.")


class FeedView(View):
    query = {"GET": ("after", "limit", "wait_s")}

    @extend_schema(
        operation_id="programme_changes",
        tags=["programme"],
        summary="What changed, in order",
        description="For a system that keeps a copy. Every change of the programme has a position; there is none "
        "without one, none is left out, and what is committed later has a later one. They stay for good, through a "
        "restored backup and a move to another database. Students see the changes of their own cases, and positions "
        "between belong to others. To begin, ask with `after=last`, keep `next`, copy what there is; then ask with "
        "`next` and read each `address` anew, once however often it is named; images and people need their own scopes. "
        "Handling a change twice has to be harmless: keep `next` once a page is worked off. 409 `not-of-this-feed`: "
        "the database lost what you had read, begin anew.",
        parameters=[
            OpenApiParameter(
                "after",
                str,
                description="`next` of the page before; left out or 0: the start; `last`: from now on.",
            ),
            OpenApiParameter(
                "limit",
                {"type": "integer", "minimum": 1, "maximum": MOST_CHANGES, "default": USUAL_CHANGES},
                description="Changes on a page.",
            ),
            OpenApiParameter(
                "wait_s",
                {"type": "integer", "minimum": 0, "maximum": MOST_WAIT_S, "default": 0},
                description="Where there is none, the answer waits so many seconds for one. 503 with `Retry-After` "
                "where too many wait already.",
            ),
        ],
        responses=ChangePage,
        extensions=refuses(NotOfThisFeed),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        limit = asked_number(request, "limit", USUAL_CHANGES, range(1, MOST_CHANGES + 1))
        asked_number(request, "wait_s", 0, range(MOST_WAIT_S + 1))  # the waiting is done before Django
        after = bookmark_of(request.query_params.get("after", "0"))
        seen.programme(asker(request), programme_id)
        number(programme_id)
        page = feed.page(asker(request), programme_id, after=after, limit=limit)
        response = answer(ChangePage, page)
        if after is not None and not page.results:
            response[NOTHING_NEW] = "1"
        return response


def bookmark_of(text: str) -> Bookmark | None:
    """Where to go on; None for the end. Raises ValidationError for what no page has named."""
    if text == LAST:
        return None
    bookmark = Bookmark.read(text)
    if bookmark is None:
        says = "Is not from these changes: take it from `next`, or leave it out to begin at the start."
        raise ValidationError({"after": [says]}, code="not-understood")
    return bookmark
