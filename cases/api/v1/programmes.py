"""Programmes, and what they keep."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, asker, given, me
from cases.api.fields import Id, Listing, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.filters import (
    EXTERNAL_ID,
    ExternalIdFilter,
    filtered,
)
from cases.api.v1.shapes import KNOWN_BY, PersonRef
from cases.domain.access.roles import Role
from cases.domain.errors import NotAllowed, NotUsable, SentDifferently, TakenAlready
from cases.queries import programmes, seen
from cases.queries.programmes import InstrumentCount, TechniqueShown, TechniquesShown
from cases.services.people.programmes import add_kit, add_technique
from planning.api.refusals import refuses
from planning.api.values import serializer_of
from planning.contract.plan_input import Kit
from planning.foundation.encoding import encode
from planning.foundation.errors import (
    ChoiceNotPossible,
    InstrumentNotDescribed,
    OutOfBounds,
    PlanningError,
    TechniqueNotUsable,
)
from planning.techniques.files import MOST_CHARACTERS, read_technique
from planning.techniques.technique import Technique


class SupervisorShown(PersonRef):
    """A stored person who supervises."""

    signs_on_site = serializers.BooleanField(help_text="One-time codes of theirs count on a student's phone.")


class ProgrammeShown(serializers.Serializer[Any]):
    """A stored programme, and what the person who asks is in it."""

    id = serializers.UUIDField(source="row.id")
    name = serializers.CharField(source="row.name")
    invented = serializers.BooleanField(source="row.invented", help_text="Demonstration: no such school.")
    role = Value(Role, allow_null=True, help_text="What you are in it; null for a service.")
    supervisors = SupervisorShown(many=True)
    thresholds = serializers.DictField(
        child=serializers.FloatField(), help_text="Figures of the programme's own in place of published ones, by key."
    )


class KitShown(serializers.Serializer[Any]):
    """A stored kit: its value, and how often the person who asks has used what is in it."""

    id = serializers.UUIDField(source="row.id")
    external_id = serializers.CharField(source="row.external_id", allow_null=True, help_text=KNOWN_BY)
    kit = Value(Kit, source="value")
    yours = Value(
        tuple[InstrumentCount, ...], help_text="Uses of the set you work with: as stated, and canals entered since."
    )


class KitList(Listing):
    results = KitShown(many=True)


class KitGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    kit = Value(Kit)


class TechniqueGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    technique = Value(Technique, required=False)
    text = Text(
        max_length=MOST_CHARACTERS, required=False, trim_whitespace=False, help_text="TOML, in place of `technique`."
    )

    def validate(self, attrs: dict[str, Any]) -> dict[str, Any]:
        """Raises TechniqueFileRefused for a text that is no technique."""
        text = attrs.pop("text", None)
        if (text is None) == ("technique" not in attrs):
            raise serializers.ValidationError({"technique": ["Send it here or as `text`, one of the two."]})
        if text is not None:
            try:
                attrs["technique"] = read_technique(text, where="text")
            except PlanningError as refusal:
                raise refusal.below("text") from None
        return attrs


TAGS = ["programme"]


class ProgrammeView(View):
    shape = ProgrammeShown

    @extend_schema(
        operation_id="programme_retrieve", tags=TAGS, summary="A programme of yours", responses=ProgrammeShown
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        return answer(ProgrammeShown, programmes.shown(asker(request), seen.programme(asker(request), programme_id)))


class KitsView(View):
    short_list = True
    shape = KitShown
    query = {"GET": tuple(ExternalIdFilter.base_filters)}

    @extend_schema(
        operation_id="kits_list",
        tags=TAGS,
        summary="Kits of the programme",
        parameters=[EXTERNAL_ID],
        extensions=refuses(NotAllowed),
        responses=KitList,
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        kits = filtered(ExternalIdFilter, programmes.kits(asker(request), programme_id), request)
        return answer(KitList, {"results": [programmes.kit_shown(asker(request), row) for row in kits]})

    @extend_schema(
        operation_id="kits_create",
        tags=TAGS,
        summary="Add a kit",
        description="By the coordinator. Speed and torque are typed in from the maker's instructions. Plans copy the "
        "kit: nothing done here touches a plan that exists.",
        parameters=[LOCATION],
        request=KitGiven,
        extensions=refuses(
            NotAllowed, SentDifferently, TakenAlready, NotUsable, InstrumentNotDescribed, ChoiceNotPossible, OutOfBounds
        ),
        responses={200: KitShown, 201: KitShown},
        examples=[examples.KIT],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        row, created = add_kit(actor=me(request), programme_id=programme_id, **given(KitGiven, request))
        at = f"programmes/{programme_id}/kits/{row.pk}"
        return answer(KitShown, programmes.kit_shown(me(request), row), created=created, at=at)


class KitView(View):
    shape = KitShown

    @extend_schema(operation_id="kit_retrieve", tags=TAGS, summary="A kit", responses=KitShown)
    def get(self, request: Request, programme_id: UUID, kit_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        row = seen.row_of(programmes.kits(asker(request), programme_id), kit_id, "kit")
        return answer(KitShown, programmes.kit_shown(asker(request), row))


class TechniquesView(View):
    short_list = True

    @extend_schema(
        operation_id="programme_techniques_list",
        tags=TAGS,
        summary="Techniques to choose from",
        description="Those provided with the planner, and the programme's own.",
        responses=serializer_of(TechniquesShown),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        return Response(encode(programmes.techniques(programme_id)))

    @extend_schema(
        operation_id="programme_techniques_create",
        tags=TAGS,
        summary="Add a technique of the programme's own",
        description="By the coordinator. A technique is data: copy a provided one, give it a key of its own, change "
        "it. It may be sent as TOML too. `compute/technique-check` says what would be wrong and keeps nothing.",
        parameters=[LOCATION],
        request=TechniqueGiven,
        extensions=refuses(NotAllowed, SentDifferently, TakenAlready, NotUsable, TechniqueNotUsable, OutOfBounds),
        responses={200: serializer_of(TechniqueShown), 201: serializer_of(TechniqueShown)},
        examples=[examples.TECHNIQUE],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(me(request), programme_id)
        read = given(TechniqueGiven, request)
        _, created = add_technique(actor=me(request), programme_id=programme_id, **read)
        shown = TechniqueShown(provided=False, technique=read["technique"])
        at = f"programmes/{programme_id}/techniques/{shown.technique.key}"
        return answer(serializer_of(TechniqueShown), shown, created=created, at=at)


class TechniqueView(View):
    @extend_schema(
        operation_id="programme_technique_retrieve",
        tags=TAGS,
        summary="A technique to choose from",
        responses=serializer_of(TechniqueShown),
    )
    def get(self, request: Request, programme_id: UUID, key: str) -> Response:
        seen.programme(asker(request), programme_id)
        return answer(serializer_of(TechniqueShown), programmes.technique(programme_id, key))
