"""What was done at the chair: reported by devices, and where the work stands after it."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from django.http import HttpResponse
from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, given, me, unchanged
from cases.api.fields import MOST_COUNT, Each, Id, Moment, Strict, Text, Value, Whole
from cases.api.v1 import examples
from cases.api.v1.shapes import PersonRef
from cases.domain.errors import NotAllowed, NotUsable, OtherPerson, SentDifferently, SequenceGap
from cases.domain.events.kinds import NotChecked
from cases.domain.events.payloads import EventPayload
from cases.domain.events.visit_payloads import Dam, FoundNotClear
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.progress.visit import Prerequisite
from cases.queries import seen
from cases.queries.course import CanalCourseShown, tag_of, treatment_of
from cases.services.treatment import treatment
from cases.services.treatment.treatment import ReceivedEvent
from planning.api.refusals import refuses
from planning.foundation.encoding import Mode
from planning.foundation.errors import OutOfBounds

TAGS = ["chair"]
HASH_DIGITS = 64  # SHA-256 in hexadecimal
MOST_EVENTS = 200  # in one batch: a whole visit


class EventGiven(Strict):
    id = Id(help_text="Made by the device (RFC 9562, version 7), so that sending again is harmless.")
    device_seq = Whole(min_value=1, max_value=MOST_COUNT, help_text="Counts the device's events of this case from 1.")
    seen_position = Whole(min_value=0, max_value=MOST_COUNT, help_text="The last position the device knew.")
    plan_hash = Text(max_length=HASH_DIGITS, help_text="Of the plan on the screen.")
    device_time = Moment(help_text="Shown, never used to order: the clock may be wrong.")
    canal = Text(max_length=12, required=False, allow_blank=True, help_text="Empty where it concerns the whole tooth.")
    node = Text(max_length=120, required=False, allow_blank=True, help_text="The step in the run sheet.")
    # What happened is kept whatever it measured: nobody can correct it once the chair is empty.
    payload = Value(EventPayload, mode=Mode.KEPT)


class BatchGiven(Strict):
    device_id = Id(help_text="Made once by the device and kept.")
    actor_id = Id(
        required=False, help_text="Who did it, as the device knows; nothing is stored where somebody else is signed in."
    )
    after_id = Id(
        required=False,
        help_text="The last event that the device has seen here: the answer then holds later ones alone.",
    )
    events = Each(child=EventGiven(), min_length=1, max_length=MOST_EVENTS)


class EventShown(serializers.Serializer[Any]):
    """A stored event, with its payload as it was kept."""

    id = serializers.UUIDField(source="row.id")
    position = serializers.IntegerField(source="row.position", help_text="The order, given here.")
    server_time = serializers.DateTimeField(source="row.server_time")
    device_id = serializers.UUIDField(source="row.device")
    device_seq = serializers.IntegerField(source="row.device_seq")
    device_time = serializers.DateTimeField(source="row.device_time")
    actor = PersonRef(source="row.actor")
    plan_hash = serializers.CharField(source="row.plan_hash")
    canal = serializers.CharField(source="row.canal")
    node = serializers.CharField(source="row.node")
    not_checked = serializers.CharField(
        source="row.not_checked",
        help_text="Why it could not be checked when it came in, or empty. It is kept all the same: "
        f"{', '.join(NotChecked)}.",
    )
    payload = Value(EventPayload, mode=Mode.KEPT)


class CourseShown(serializers.Serializer[Any]):
    """Where the work on the tooth stands: a choice from the fold, which holds run sheets and sets besides."""

    plan_hash = serializers.CharField(source="plan")
    halted_by = serializers.CharField(allow_null=True, help_text="The emergency that stopped the work.")
    saline_by = serializers.CharField(
        allow_null=True, help_text="The emergency since which every canal is irrigated with saline alone."
    )
    closed = serializers.BooleanField(source="visit.closed")
    on_site = serializers.CharField(
        source="visit.on_site", help_text="Id of the licensed clinician in the room, or empty."
    )
    dam = Value(Dam, source="visit.dam", allow_null=True, help_text="As last said in this visit.")
    check_due = serializers.BooleanField(
        source="visit.check_due", help_text="The visit was closed and waits for a supervisor's check."
    )
    missing = Value(tuple[Prerequisite, ...], help_text="What has to be there before any canal is worked.")
    taken_over = serializers.CharField(
        source="taken_over.by", help_text="Id of the supervisor who works the case beside its student, or empty."
    )
    turned_to = serializers.CharField(help_text="The canal in hand, or empty.")
    out_of_course = Value(
        dict[str, OutOfCourse],
        help_text="Of the events of the answer those that are kept and move nothing, by id, each with the reason.",
    )
    undone = Value(tuple[str, ...], help_text="Events that an undo took out.")


class TreatmentShown(serializers.Serializer[Any]):
    """Stored events, and where the work stands after them."""

    position = serializers.IntegerField(help_text="Of the last event; 0 where there is none.")
    course = CourseShown(allow_null=True, help_text="Null before a plan was approved.")
    canals = Value(tuple[CanalCourseShown, ...])
    after_id = serializers.UUIDField(
        source="after",
        allow_null=True,
        help_text="The event that those of the answer came after, as asked for; null: they are all.",
    )
    events = EventShown(many=True)


class EventsView(View):
    @extend_schema(
        operation_id="events_list",
        tags=TAGS,
        summary="What was done, and where the work stands",
        description="The state is always the fold of the events. ETag: changes with every event.",
        responses=TreatmentShown,
    )
    def get(self, request: Request, case_id: UUID) -> HttpResponse:
        case = seen.case(me(request), case_id)
        return unchanged(request, tag_of(case.pk)) or treatment_answer(case.pk)

    @extend_schema(
        operation_id="events_create",
        tags=TAGS,
        summary="Report what was done",
        description="A batch of one device, in its order; sending it again is harmless. After a gap nothing is stored "
        "and the answer names the number expected (409). A clinical fact is never refused for coming at the wrong "
        "moment, nor for what cannot be checked any more: it is kept and set aside or marked, with the reason. An "
        "emergency that nothing else may hold up comes from a device of its own, named by the event's own id. What is "
        "done is told by who works the case, its student or a supervisor who took over; from anybody else it is "
        "refused (403).",
        request=BatchGiven,
        extensions=refuses(
            NotAllowed, OtherPerson, SequenceGap, SentDifferently, NotUsable, FoundNotClear, OutOfBounds
        ),
        responses=TreatmentShown,
        examples=[examples.EVENTS],
    )
    def post(self, request: Request, case_id: UUID) -> Response:
        read = given(BatchGiven, request)
        # First: for somebody else the case may not even be there, and that is no reason to give up what was done.
        if read.get("actor_id", me(request).pk) != me(request).pk:
            raise OtherPerson(at=("actor_id",))
        case = seen.case(me(request), case_id)
        batch = [ReceivedEvent(**event) for event in read["events"]]
        treatment.record(actor=me(request), case=case, device=read["device_id"], batch=batch)
        return treatment_answer(case.pk, after=read.get("after_id"))


def treatment_answer(case_id: UUID, *, after: UUID | None = None) -> Response:
    """What was done, after an event where one is named, and where the work stands now."""
    # First the tag: an event that comes in between makes the next question answered in full.
    etag = tag_of(case_id)
    return answer(TreatmentShown, treatment_of(case_id, after=after), etag=etag)
