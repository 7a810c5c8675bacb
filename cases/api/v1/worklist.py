"""What waits for a supervisor."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from django.http import HttpResponse
from django.utils import timezone
from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, me, unchanged
from cases.api.etags import IF_NONE_MATCH
from cases.api.fields import Value
from cases.api.v1 import example_answers
from cases.api.v1.shapes import CanalPlanListed, PersonRef
from cases.domain.progress.course import CanalState
from cases.domain.progress.visit import Prerequisite
from cases.queries import worklist
from cases.queries.worklist import Asks
from planning.contract.difficulty import Level
from planning.contract.plan_value import ToothNames
from planning.run_sheet.graph import Action
from planning.techniques.technique import Setting


class WaitingShown(serializers.Serializer[Any]):
    version = serializers.UUIDField(source="row.id")
    number = serializers.IntegerField(source="row.number")
    hash = serializers.CharField(source="row.hash")
    case = serializers.UUIDField(source="row.case_id")
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


class WorkList(serializers.Serializer[Any]):
    results = WaitingShown(many=True)
    more = serializers.BooleanField(help_text="There is more than is listed here.")


class OutOfBandShown(serializers.Serializer[Any]):
    depth_um = serializers.IntegerField()
    low_um = serializers.IntegerField()
    high_um = serializers.IntegerField()
    as_if_straight = serializers.BooleanField(
        default=False, help_text="The canal is bent, and the estimate knows nothing of it."
    )


class RunningCanal(serializers.Serializer[Any]):
    canal = serializers.CharField()
    state = Value(CanalState)
    hold_point = serializers.CharField(help_text="What it waits for, or empty.")
    asked = serializers.BooleanField(default=False, help_text="The student asked for a supervisor's word.")
    note = serializers.CharField(default="", help_text="What is asked, in the student's words.")
    coming = serializers.BooleanField(default=False, help_text="A supervisor comes to the chair.")
    out_of_band = OutOfBandShown(
        allow_null=True, help_text="The canal's last depth, where it is shorter or deeper than expected."
    )


class StepInHandShown(serializers.Serializer[Any]):
    canal = serializers.CharField()
    node = serializers.CharField()
    phase = serializers.CharField()
    action = Value(Action)
    instrument = serializers.CharField(help_text="Written size, or empty.")


class EmergencyShown(serializers.Serializer[Any]):
    what = serializers.CharField(help_text="As last said; empty where it was not so.")
    at = serializers.DateTimeField(help_text="When the server had it.")
    told_by = serializers.CharField(help_text="Name.")
    corrected_by = serializers.CharField(
        help_text="Name of who said what it was instead, or that it was not so; empty where nobody did."
    )
    coming = serializers.CharField(help_text="Name of the supervisor who goes there, or empty.")


class RunningShown(serializers.Serializer[Any]):
    case = serializers.UUIDField(source="row.case_id")
    patient_alias = serializers.CharField(source="row.case.patient.alias")
    tooth = Value(ToothNames, source="names")
    setting = Value(Setting, source="row.case.setting")
    student = PersonRef(source="row.case.student")
    halted = serializers.BooleanField(source="row.halted", help_text="An emergency stopped the work.")
    emergencies = EmergencyShown(
        many=True, source="glance.emergencies", default=(), help_text="Those that halt the tooth, the first one first."
    )
    plan_hash = serializers.CharField(source="glance.plan", default="", help_text="Of the plan that is worked.")
    position = serializers.IntegerField(source="row.position", help_text="Of the last event.")
    on_site = PersonRef(
        source="row.on_site", allow_null=True, help_text="The licensed clinician in the room, in the clinic."
    )
    taken_over = PersonRef(
        source="row.taken_over", allow_null=True, help_text="The supervisor who took over and works it now."
    )
    check_due = serializers.BooleanField(
        source="glance.check_due", default=False, help_text="The visit was closed and waits for a supervisor's check."
    )
    missing = Value(
        tuple[Prerequisite, ...],
        source="glance.missing",
        default=(),
        help_text="What has to be there before any canal is worked.",
    )
    canals = RunningCanal(many=True, source="glance.canals")
    now = StepInHandShown(source="glance.now", allow_null=True, help_text="The step in the student's hand.")
    step_s = serializers.IntegerField(allow_null=True, help_text="Seconds it has been in hand.")
    waiting_s = serializers.IntegerField(allow_null=True, help_text="Seconds since a supervisor's word is due.")
    changed_at = serializers.DateTimeField(source="row.changed_at")


class RunningList(serializers.Serializer[Any]):
    results = RunningShown(many=True)
    more = serializers.BooleanField(help_text="There is more than is listed here.")


class RunningView(View):
    @extend_schema(
        operation_id="running_work",
        tags=["chair"],
        summary="Work that goes on: halted first, then what waits longest, then what went on last",
        description="ETag: changes with all that is shown, times told in whole minutes.",
        parameters=[IF_NONE_MATCH],
        responses={200: RunningList, 304: None},
    )
    def get(self, request: Request, programme_id: UUID) -> HttpResponse:
        page = worklist.running(me(request), programme_id, timezone.now())
        return unchanged(request, page.tag) or answer(RunningList, page, etag=page.tag)


class WorklistView(View):
    @extend_schema(
        operation_id="worklist",
        tags=["plan"],
        summary="Plans that wait, the riskiest and then the oldest first",
        responses=WorkList,
        examples=[example_answers.WORKLIST],
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        return answer(WorkList, worklist.waiting(me(request), programme_id, timezone.now()))
