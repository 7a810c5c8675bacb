"""Markings: marks on an image, what they measure, and what was taken from them."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, given, me
from cases.api.fields import Each, Id, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.shapes import PersonRef
from cases.domain.errors import NoSuchCanal, NotAllowed, NotUsable, SentDifferently
from cases.domain.image_errors import ImageRemoved
from cases.queries import seen
from cases.queries.markings import marking_shown, markings_of_image
from cases.services.charting import markings
from cases.services.charting.markings import Marked
from planning.api.refusals import refuses
from planning.foundation.counts import at_most
from planning.foundation.errors import (
    ChoiceNotPossible,
    LengthOutOfBounds,
    OutOfBounds,
    PointsDoNotFit,
    ReadingNotUsable,
    ScaleNotUsable,
    TooMuchWork,
)
from planning.radiograph import ImageMarks, Measured
from planning.radiograph.values import Scale

TAGS = ["images"]


class MarkingGiven(Strict):
    marks = Value(ImageMarks, help_text="Without `facts`: what the file says of its scale is the image's own.")
    take = Each(
        child=Text(max_length=12),
        required=False,
        default=list,
        max_length=at_most("canals").most,
        help_text="Canals whose length becomes a reading, and whose bend is charted.",
    )
    corrects_id = Id(required=False, allow_null=True, default=None, help_text="The marking that this one puts right.")
    note = Text(required=False, allow_blank=True, default="")


class MarkingShown(serializers.Serializer[Any]):
    """A stored marking: the marks, what they measure, who set them when."""

    id = serializers.UUIDField(source="row.pk")
    number = serializers.IntegerField(source="row.number")
    made_by = PersonRef(source="row.made_by")
    at = serializers.DateTimeField(source="row.at")
    corrects_id = serializers.UUIDField(source="row.corrects_id", allow_null=True)
    note = serializers.CharField(source="row.note")
    marks = Value(ImageMarks)
    measured = Value(Measured)
    readings = serializers.ListField(child=serializers.CharField(), help_text="Canals whose length was taken from it.")


class MarkingsShown(serializers.Serializer[Any]):
    """The stored markings of an image, and the scale of its file."""

    scale = Value(Scale, help_text="What the file alone gives.")
    markings = MarkingShown(many=True)


class MarkingsView(View):
    @extend_schema(
        operation_id="markings_list",
        tags=TAGS,
        summary="What was marked on an image",
        description="Every marking, those that were corrected as well.",
        responses=MarkingsShown,
    )
    def get(self, request: Request, case_id: UUID, image_id: UUID) -> Response:
        return answer(MarkingsShown, markings_of_image(seen.image(me(request), case_id, image_id)))


class MarkingView(View):
    @extend_schema(operation_id="marking_retrieve", tags=TAGS, summary="A marking", responses=MarkingShown)
    def get(self, request: Request, case_id: UUID, image_id: UUID, marking_id: UUID) -> Response:
        image = seen.image(me(request), case_id, image_id)
        return answer(MarkingShown, marking_shown(seen.row_of(image.markings.all(), marking_id, "marking")))

    @extend_schema(
        operation_id="marking_update",
        tags=TAGS,
        summary="Mark an image",
        description="Marks are measured and kept for good; who marks again or corrects another adds a marking. A "
        "length that is taken becomes a reading of its canal like any other, and its bend is charted.",
        request=MarkingGiven,
        extensions=refuses(
            NotAllowed,
            SentDifferently,
            ImageRemoved,
            NotUsable,
            NoSuchCanal,
            ScaleNotUsable,
            PointsDoNotFit,
            LengthOutOfBounds,
            ReadingNotUsable,
            OutOfBounds,
            ChoiceNotPossible,
            TooMuchWork,
        ),
        responses={200: MarkingShown, 201: MarkingShown},
        examples=[examples.MARKING],
    )
    def put(self, request: Request, case_id: UUID, image_id: UUID, marking_id: UUID) -> Response:
        image = seen.image(me(request), case_id, image_id)
        marked = Marked(id=marking_id, **given(MarkingGiven, request))
        row, created = markings.mark(actor=me(request), image=image, marked=marked)
        return answer(MarkingShown, marking_shown(row), created=created)
