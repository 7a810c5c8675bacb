"""What waits for a supervisor."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from django.http import HttpResponse
from django.utils import timezone
from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework import serializers
from rest_framework.exceptions import ValidationError
from rest_framework.request import Request
from rest_framework.utils.urls import replace_query_param

from cases.api.base import View, answer, asked_number, asker, unchanged
from cases.api.fields import FieldsOf, Listing, Value
from cases.api.short_lists import NOT_OF_THIS_LIST
from cases.api.v1 import example_answers
from cases.api.v1.filters import CURSOR, OF_PAGES
from cases.api.v1.shapes import CanalPlanListed, PersonRef
from cases.domain.errors import NotAllowed
from cases.domain.progress.summary import CaseSummary
from cases.queries import places, worklist
from cases.queries.places import Order
from cases.queries.worklist import (
    MOST_RUNNING,
    MOST_WAITING,
    THAT_GOES_ON,
    THAT_WAITS,
    WAITING,
    Asks,
    RunningPage,
    WaitingPage,
)
from planning.api.refusals import refuses
from planning.contract.difficulty import Level
from planning.contract.plan_value import ToothNames
from planning.techniques.technique import Setting


class WaitingShown(serializers.Serializer[Any]):
    """A stored version that waits; how long it has waited follows from the time of asking."""

    version_id = serializers.UUIDField(source="row.id")
    number = serializers.IntegerField(source="row.number")
    hash = serializers.CharField(source="row.hash")
    case_id = serializers.UUIDField(source="row.case_id")
    patient_alias = serializers.CharField(source="row.case.patient.alias")
    tooth = Value(ToothNames, source="names")
    setting = Value(Setting, source="row.case.setting")
    student = PersonRef(source="row.case.student")
    supervisor = PersonRef(source="row.case.supervisor", allow_null=True)
    asks = Value(Asks)
    stops = serializers.IntegerField(source="row.stops", help_text="Cautions that withhold steps.")
    cautions = serializers.IntegerField(source="row.cautions")
    difficulty = Value(Level, allow_null=True, help_text="Null for a training block: none is counted.")
    canals = CanalPlanListed(source="row.canal_plans.all", many=True)
    submitted_at = serializers.DateTimeField(source="row.submitted_at")
    waiting_s = serializers.IntegerField(help_text="Seconds it has waited.")
    stale = serializers.BooleanField(help_text="The case has changed since: it cannot be approved as it is.")


class ForwardPage(Listing):
    next = serializers.URLField(  # type: ignore[assignment]
        allow_null=True, help_text="Address of the next page; null: this is the last."
    )
    previous = serializers.SerializerMethodField(help_text="Null: these pages are read forwards alone.")


class WorkList(ForwardPage):
    results = WaitingShown(many=True)


class RunningShown(FieldsOf):
    value_type, shown_at = CaseSummary, "case_summary"
    case_id = serializers.UUIDField(source="row.case_id")
    patient_alias = serializers.CharField(source="row.case.patient.alias")
    tooth = Value(ToothNames, source="names")
    setting = Value(Setting, source="row.case.setting")
    student = PersonRef(source="row.case.student")
    halted = serializers.BooleanField(source="row.halted", help_text="An emergency stopped the work.")
    position = serializers.IntegerField(source="row.position", help_text="Of the last event.")
    on_site = PersonRef(
        source="row.on_site", allow_null=True, help_text="The licensed clinician in the room, in the clinic."
    )
    taken_over = PersonRef(
        source="row.taken_over", allow_null=True, help_text="The supervisor who took over and works it now."
    )
    step_s = serializers.IntegerField(allow_null=True, help_text="Seconds it has been in hand.")
    waiting_s = serializers.IntegerField(allow_null=True, help_text="Seconds since a supervisor's sign-off is due.")
    changed_at = serializers.DateTimeField(source="row.changed_at")


class RunningList(ForwardPage):
    results = RunningShown(many=True)


def page_parameters(most: int) -> list[OpenApiParameter]:
    limit = {"type": "integer", "minimum": 1, "maximum": most, "default": most}
    return [CURSOR, OpenApiParameter("limit", limit, description="So many on a page.")]


class RunningView(View):
    query = {"GET": OF_PAGES}

    @extend_schema(
        operation_id="running_work",
        tags=["chair"],
        summary="Work that goes on: halted first, then what waits longest, then what went on last",
        description="ETag: changes with all that is shown, times told in whole minutes.",
        parameters=page_parameters(MOST_RUNNING),
        extensions=refuses(NotAllowed),
        responses=RunningList,
    )
    def get(self, request: Request, programme_id: UUID) -> HttpResponse:
        asked = _asked(request, worklist.MOST_RUNNING, THAT_WAITS, THAT_GOES_ON)
        page = worklist.running(asker(request), programme_id, timezone.now(), **asked)
        return unchanged(request, page.tag) or _shown(request, RunningList, page)


class WorklistView(View):
    query = {"GET": OF_PAGES}

    @extend_schema(
        operation_id="worklist",
        tags=["plan"],
        summary="Plans that wait, the riskiest and then the oldest first",
        description="ETag: changes with all that is shown, times told in whole minutes.",
        parameters=page_parameters(MOST_WAITING),
        extensions=refuses(NotAllowed),
        responses=WorkList,
        examples=[example_answers.WORKLIST],
    )
    def get(self, request: Request, programme_id: UUID) -> HttpResponse:
        asked = _asked(request, worklist.MOST_WAITING, WAITING)
        page = worklist.waiting(asker(request), programme_id, timezone.now(), **asked)
        # First the tag: a plan that comes in between makes the next question answered in full.
        return unchanged(request, page.tag) or _shown(request, WorkList, page)


def _asked(request: Request, most: int, *orders: Order) -> dict[str, Any]:
    """How many are asked for, and after which place. Raises ValidationError."""
    text = request.query_params.get("cursor")
    after = None if text is None else places.read(text, *orders)
    if text is not None and after is None:
        raise ValidationError({"cursor": [NOT_OF_THIS_LIST]}, code="not-understood")
    return {"limit": asked_number(request, "limit", most, range(1, most + 1)), "after": after}


def _shown(request: Request, list_: type[ForwardPage], page: WaitingPage | RunningPage) -> HttpResponse:
    address = page.next and replace_query_param(request.build_absolute_uri(), "cursor", page.next)
    return answer(list_, {"results": page.results, "next": address}, etag=page.tag)
