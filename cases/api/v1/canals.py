"""Canals, roots and what is measured in them."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, given, me
from cases.api.etags import maybe_seen_revision, tag
from cases.api.fields import FieldsOf, Id, Listing, Strict, Text, Value
from cases.api.v1 import example_answers, examples
from cases.api.v1.cases import IF_MATCH_OPTIONAL
from cases.api.v1.cases import shown as case_shown
from cases.api.v1.shapes import CanalShown, CaseShown, JunctionShown, ReadingShown
from cases.domain.errors import CanalInUse, NotAllowed, NotUsable, SentDifferently, TakenAlready
from cases.domain.struck import StruckWhy
from cases.queries import charts, seen
from cases.services.charting import canals, readings
from cases.services.corrections import struck
from planning.api.refusals import refuses
from planning.contract.canal_facts import CanalFacts
from planning.contract.plan_input import Junction, Pattern
from planning.foundation.errors import CanalsDoNotFit, LengthOutOfBounds, OutOfBounds, ReadingNotUsable
from planning.lengths.readings import Reading

TAGS = ["canal"]


class CanalChanges(FieldsOf, Strict):
    value_type = CanalFacts
    name = Text(max_length=12, required=False)
    reference_point = Text(max_length=40, required=False, allow_blank=True)


class CanalGiven(CanalChanges):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    name = Text(max_length=12)
    # The base class has a property of this name, for serializers inside others; this one is a whole body.
    root = Text(max_length=12)  # type: ignore[assignment]
    reference_point = Text(max_length=40)


class RootGiven(Strict):
    pattern = Value(Pattern)
    main_canal = Text(max_length=12, required=False, allow_null=True, default=None)


class ReadingGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    reading = Value(Reading)


class JunctionGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    junction = Value(Junction)


class StrikeGiven(Strict):
    why = Value(StruckWhy)


class CanalList(Listing):
    results = CanalShown(many=True)


class ReadingList(Listing):
    results = ReadingShown(many=True)


class CanalsView(View):
    short_list = True
    shape = CanalShown

    @extend_schema(operation_id="canals_list", tags=TAGS, summary="Canals of a case", responses=CanalList)
    def get(self, request: Request, case_id: UUID) -> Response:
        chart = charts.shown(seen.case(me(request), case_id).pk)
        return answer(CanalList, {"results": chart.canals}, state=chart.row.revision)

    @extend_schema(
        operation_id="canals_create",
        tags=TAGS,
        summary="Add a canal",
        description="The canal that gets missed. Its root is made where the tooth has none of that name.",
        parameters=[IF_MATCH_OPTIONAL, LOCATION],
        request=CanalGiven,
        extensions=refuses(NotAllowed, SentDifferently, TakenAlready, NotUsable, CanalsDoNotFit, OutOfBounds),
        responses={200: CanalShown, 201: CanalShown},
        examples=[examples.CANAL],
    )
    def post(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        facts = given(CanalGiven, request)
        named = {key: facts.pop(key) for key in ("id", "name", "root") if key in facts}
        row, created = canals.add_canal(
            actor=me(request), case=case, facts=facts, seen_revision=maybe_seen_revision(request), **named
        )
        return _shown(case.pk, row.pk, created=created, at=f"canals/{row.pk}")


class CanalView(View):
    shape = CanalShown

    @extend_schema(operation_id="canal_retrieve", tags=TAGS, summary="A canal", responses=CanalShown)
    def get(self, request: Request, canal_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        return _shown(canal.tooth.case_id, canal.pk)

    @extend_schema(
        operation_id="canal_update",
        tags=TAGS,
        summary="Change what is charted of a canal",
        description="That a canal was searched and not found is recorded by a supervisor.",
        parameters=[IF_MATCH_OPTIONAL],
        request=CanalChanges,
        extensions=refuses(NotAllowed, TakenAlready, NotUsable, CanalsDoNotFit, OutOfBounds),
        responses=CanalShown,
        examples=[examples.CANAL_CHANGES, example_answers.CANAL],
    )
    def patch(self, request: Request, canal_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        changes = given(CanalChanges, request, partial=True)
        canals.change_canal(actor=me(request), canal=canal, changes=changes, seen_revision=maybe_seen_revision(request))
        return _shown(canal.tooth.case_id, canal.pk)

    @extend_schema(
        operation_id="canal_destroy",
        tags=TAGS,
        summary="Take out a canal in which nothing was measured",
        parameters=[IF_MATCH_OPTIONAL],
        extensions=refuses(NotAllowed, CanalInUse),
        responses={204: None},
    )
    def delete(self, request: Request, canal_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        canals.remove_canal(actor=me(request), canal=canal, seen_revision=maybe_seen_revision(request))
        return Response(status=status.HTTP_204_NO_CONTENT)


class RootView(View):
    @extend_schema(
        operation_id="root_update",
        tags=TAGS,
        summary="Say how the canals of a root run",
        description="Where two join, a person chooses which one goes to the common terminus.",
        parameters=[IF_MATCH_OPTIONAL],
        request=RootGiven,
        extensions=refuses(NotAllowed, NotUsable),
        responses=CaseShown,
        examples=[examples.ROOT, example_answers.CASE],
    )
    def put(self, request: Request, case_id: UUID, name: str) -> Response:
        case = seen.case(me(request), case_id)
        read = given(RootGiven, request)
        canals.set_root(actor=me(request), case=case, name=name, seen_revision=maybe_seen_revision(request), **read)
        return case_shown(request, case.pk)


class ReadingsView(View):
    short_list = True

    @extend_schema(operation_id="readings_list", tags=TAGS, summary="Readings of a canal", responses=ReadingList)
    def get(self, request: Request, canal_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        return answer(ReadingList, {"results": charts.canal_shown(canal.tooth.case_id, canal.pk).readings})

    @extend_schema(
        operation_id="readings_create",
        tags=TAGS,
        summary="Take a length",
        description="Readings are kept for good: a later one is added. The answer says what they come to.",
        parameters=[LOCATION],
        request=ReadingGiven,
        extensions=refuses(NotAllowed, SentDifferently, NotUsable, LengthOutOfBounds, ReadingNotUsable, OutOfBounds),
        responses={200: CanalShown, 201: CanalShown},
        examples=[examples.READING, example_answers.CANAL],
    )
    def post(self, request: Request, canal_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        row, created = readings.take_length(actor=me(request), canal=canal, **given(ReadingGiven, request))
        return _shown(canal.tooth.case_id, canal.pk, created=created, at=f"readings/{row.pk}")


class JunctionsView(View):
    @extend_schema(
        operation_id="junctions_create",
        tags=TAGS,
        summary="Record where a canal joins another",
        description="Kept for good; the last one counts. The canal's length of that moment is kept with it, so that a "
        "later correction does not move the junction.",
        parameters=[LOCATION],
        request=JunctionGiven,
        extensions=refuses(NotAllowed, SentDifferently, NotUsable, OutOfBounds),
        responses={200: CanalShown, 201: CanalShown},
        examples=[examples.JUNCTION, example_answers.CANAL_THAT_JOINS],
    )
    def post(self, request: Request, canal_id: UUID) -> Response:
        canal = seen.canal(me(request), canal_id)
        row, created = readings.record_junction(actor=me(request), canal=canal, **given(JunctionGiven, request))
        return _shown(canal.tooth.case_id, canal.pk, created=created, at=f"junctions/{row.pk}")


class ReadingView(View):
    @extend_schema(operation_id="reading_retrieve", tags=TAGS, summary="A reading", responses=ReadingShown)
    def get(self, request: Request, reading_id: UUID) -> Response:
        return answer(ReadingShown, seen.length_reading(me(request), reading_id))


class JunctionView(View):
    @extend_schema(operation_id="junction_retrieve", tags=TAGS, summary="A junction", responses=JunctionShown)
    def get(self, request: Request, reading_id: UUID) -> Response:
        return answer(JunctionShown, seen.junction_reading(me(request), reading_id))


def _strike(request: Request, reading: Any) -> Response:
    struck.strike(actor=me(request), reading=reading, **given(StrikeGiven, request))
    return _shown(reading.canal.tooth.case_id, reading.canal_id)


_STRIKE = "It stays, with who struck it, when and why, and counts for nothing. Work on its canal waits for a new plan."


class ReadingStrikeView(View):
    @extend_schema(
        operation_id="reading_strike",
        tags=TAGS,
        summary="Strike a length that was a mistake",
        description=_STRIKE,
        request=StrikeGiven,
        extensions=refuses(NotAllowed),
        responses=CanalShown,
        examples=[examples.STRIKE, example_answers.CANAL],
    )
    def post(self, request: Request, reading_id: UUID) -> Response:
        return _strike(request, seen.length_reading(me(request), reading_id))


class JunctionStrikeView(View):
    @extend_schema(
        operation_id="junction_strike",
        tags=TAGS,
        summary="Strike a junction that was a mistake",
        description=_STRIKE,
        request=StrikeGiven,
        extensions=refuses(NotAllowed),
        responses=CanalShown,
        examples=[examples.STRIKE, example_answers.CANAL],
    )
    def post(self, request: Request, reading_id: UUID) -> Response:
        return _strike(request, seen.junction_reading(me(request), reading_id))


def _shown(case_id: UUID, canal_id: UUID, *, created: bool = False, at: str = "") -> Response:
    """The canal as it is now; ETag: the revision of its case."""
    case = charts.shown(case_id)
    canal = next(each for each in case.canals if each.row.pk == canal_id)
    shown = answer(CanalShown, canal, created=created, at=at)
    shown["ETag"] = tag(case.row.revision)
    return shown
