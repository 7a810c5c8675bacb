"""Bends in space: two marked images of one canal combined."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, given, me
from cases.api.fields import Bounded, Id, Listing, Strict, Value
from cases.api.v1 import examples
from cases.api.v1.shapes import PersonRef
from cases.domain.errors import NotAllowed, NotUsable, SentDifferently
from cases.queries import seen
from cases.queries.bends_in_space import bend_shown, bends_of_canal
from cases.services.charting import bends_in_space
from cases.services.charting.bends_in_space import Combined
from planning.api.refusals import refuses
from planning.foundation.errors import ViewsDoNotFit
from planning.radiograph.values import Between

TAGS = ["images"]


class BendInSpaceGiven(Strict):
    first_id = Id(help_text="A marking in which the canal's bend is marked.")
    second_id = Id(help_text="Another one, on another image.")
    apart_deg = Bounded("tube_turn", help_text="How far the tube turned about the tooth's long axis between the two.")
    other_side = Value(bool, help_text="In the second view it bends to the other side than in the first.")


class BendInSpaceShown(serializers.Serializer[Any]):
    """A stored bend in space; `outdated` follows from what was marked since."""

    id = serializers.UUIDField(source="row.pk")
    number = serializers.IntegerField(source="row.number")
    made_by = PersonRef(source="row.made_by")
    at = serializers.DateTimeField(source="row.at")
    first_id = serializers.UUIDField(source="row.first_id")
    first_image_id = serializers.UUIDField(source="row.first.image_id")
    second_id = serializers.UUIDField(source="row.second_id")
    second_image_id = serializers.UUIDField(source="row.second.image_id")
    apart_deg = serializers.FloatField(source="row.apart_deg")
    other_side = serializers.BooleanField(source="row.other_side")
    in_space = Value(Between, help_text="Schneider's angle in space.")
    outdated = serializers.BooleanField(
        help_text="The canal was marked anew on one of the two images since, or one of them counts no more."
    )


class BendsInSpaceShown(Listing):
    results = BendInSpaceShown(many=True)


class BendsInSpaceView(View):
    short_list = True

    @extend_schema(
        operation_id="bends_in_space_list",
        tags=TAGS,
        summary="Bends in space of a canal",
        description="Every one, the last one counts.",
        responses=BendsInSpaceShown,
    )
    def get(self, request: Request, canal_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        return answer(BendsInSpaceShown, {"results": bends_of_canal(canal)})


class BendInSpaceView(View):
    @extend_schema(
        operation_id="bend_in_space_retrieve", tags=TAGS, summary="A bend in space", responses=BendInSpaceShown
    )
    def get(self, request: Request, canal_id: UUID, bend_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        return answer(BendInSpaceShown, bend_shown(seen.row_of(canal.bends_in_space.all(), bend_id, "bend")))

    @extend_schema(
        operation_id="bend_in_space_update",
        tags=TAGS,
        summary="Combine two views of a canal",
        description="From the marks on two images the bend in space is computed, kept and charted. Kept for good: "
        "who sees it otherwise combines anew, and both stay. From then on a single image does not chart this canal's "
        "bend any more.",
        request=BendInSpaceGiven,
        extensions=refuses(NotAllowed, SentDifferently, NotUsable, ViewsDoNotFit),
        responses={200: BendInSpaceShown, 201: BendInSpaceShown},
        examples=[examples.BEND_IN_SPACE],
    )
    def put(self, request: Request, canal_id: UUID, bend_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        pair = Combined(id=bend_id, **given(BendInSpaceGiven, request))
        row, created = bends_in_space.combine(actor=me(request), canal=canal, pair=pair)
        return answer(BendInSpaceShown, bend_shown(row), created=created)
