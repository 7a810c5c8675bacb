"""Cases: opened by students, charted, planned."""

from __future__ import annotations

from uuid import UUID

from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, NewestFirst, View, answer, asker, given, key_of, me, page_of
from cases.api.etags import seen_revision
from cases.api.fields import Each, FieldsOf, Id, Strict, Text, Value
from cases.api.v1 import example_answers, examples
from cases.api.v1.filters import CASE_FILTERS, OF_PAGES, PAGES, CaseFilters, filtered
from cases.api.v1.shapes import CaseListed, CaseShown
from cases.domain.errors import AliasLooksLikeAName, AliasRefused, NotAllowed, NotUsable, SentDifferently, SettingFixed
from cases.queries import charts, seen
from cases.services.charting import cases
from cases.services.people import access_keys
from planning.anatomy import ToothName
from planning.anatomy.notation import NotationMissing
from planning.api.refusals import refuses
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.counts import at_most
from planning.foundation.errors import FactorNotKnown, OutOfBounds, UnknownTooth
from planning.techniques.technique import Setting

TAGS = ["case"]
IF_MATCH = OpenApiParameter(
    "If-Match", str, OpenApiParameter.HEADER, required=True, description="The ETag of the case as you saw it."
)
IF_MATCH_OPTIONAL = OpenApiParameter(
    "If-Match", str, OpenApiParameter.HEADER, description="The ETag of the case as you saw it; refused if it changed."
)


IS_NO_NAME = "Somebody looked: what was refused as `alias-looks-like-a-name` is none."


class CaseGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    patient_alias = Text(max_length=40, help_text="An alias. A real identity has no place here.")
    alias_is_no_name = Value(bool, required=False, help_text=IS_NO_NAME)
    tooth = Value(ToothName)
    setting = Value(Setting)
    supervisor_id = Id(required=False, allow_null=True, help_text="Who supervises; null: nobody yet.")
    student_id = Id(required=False, help_text="Whose case it is: for a service, which must say; else it is your own.")
    canals = Each(
        child=Text(max_length=12),
        required=False,
        allow_null=True,
        max_length=at_most("canals").most,
        help_text="Names on offer for the tooth; the usual ones where left out.",
    )


class CaseChanges(FieldsOf, Strict):
    value_type = ToothFacts
    setting = Value(Setting, required=False)
    supervisor_id = Id(required=False, allow_null=True, help_text="Who supervises; null: nobody yet.")
    patient_alias = Text(max_length=40, required=False, help_text="In place of a mistyped one, which goes everywhere.")
    alias_is_no_name = Value(bool, required=False, help_text=IS_NO_NAME)


class CasesView(View):
    shape = CaseListed
    query = {"GET": (*CaseFilters.base_filters, *OF_PAGES)}

    @extend_schema(
        operation_id="cases_list",
        tags=TAGS,
        summary="Cases of the programme, newest first",
        description="Students see their own; supervisors and coordinators all of the programme. Of several filters all "
        "hold. 400 for a filter that is not known.",
        parameters=[*CASE_FILTERS, *PAGES],
        extensions=refuses(NotAllowed),
        responses=page_of("CasePage", CaseListed),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        pages = NewestFirst()
        asked = filtered(CaseFilters, charts.of_programme(asker(request), programme_id), request)
        rows = pages.paginate_queryset(asked, request, self) or []
        return pages.get_paginated_response(CaseListed([charts.listed(row) for row in rows], many=True).data)

    @extend_schema(
        operation_id="cases_create",
        tags=TAGS,
        summary="Open a case",
        description="The tooth opens with its usual canals. Every tooth can be charted; whether it can be planned here "
        "is said when it is planned. A service names the student whose case it is; the record says who entered it.",
        parameters=[LOCATION],
        request=CaseGiven,
        extensions=refuses(
            NotAllowed, SentDifferently, NotUsable, AliasRefused, AliasLooksLikeAName, UnknownTooth, NotationMissing
        ),
        responses={200: CaseShown, 201: CaseShown},
        examples=[examples.CASE, example_answers.CASE],
    )
    def post(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        read = given(CaseGiven, request)
        named = read.pop("student_id", None)
        student = access_keys.whose_case(
            asker=asker(request), key=key_of(request), programme_id=programme_id, named=named
        )
        row, created = cases.open_case(actor=student, programme_id=programme_id, **read)
        return shown(request, row.pk, created=created)


class CaseView(View):
    shape = CaseShown

    @extend_schema(
        operation_id="case_retrieve",
        tags=TAGS,
        summary="A case",
        description="With its canals, what each length rests on, and where the plan stands. ETag: its revision, and "
        "what else is shown.",
        responses=CaseShown,
        examples=[example_answers.CASE],
    )
    def get(self, request: Request, case_id: UUID) -> Response:
        return shown(request, seen.case(me(request), case_id).pk)

    @extend_schema(
        operation_id="case_update",
        tags=TAGS,
        summary="Change the facts of a case",
        description="Every change a plan could rest on raises the revision; plans made before are stale then. Another "
        "alias is none: the old text goes everywhere, also from the patient's other cases. `factors` replaces all that "
        "was recorded.",
        parameters=[IF_MATCH],
        request=CaseChanges,
        extensions=refuses(
            NotAllowed, SettingFixed, NotUsable, AliasRefused, AliasLooksLikeAName, FactorNotKnown, OutOfBounds
        ),
        responses=CaseShown,
        examples=[examples.CASE_CHANGES, example_answers.CASE],
    )
    def patch(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        changes = given(CaseChanges, request, partial=True)
        row = cases.change_case(actor=me(request), case=case, seen_revision=seen_revision(request), changes=changes)
        return shown(request, row.pk)


def shown(request: Request, case_id: UUID, *, created: bool = False) -> Response:
    """The case as it is now, to whoever asks."""
    chart = charts.shown(case_id, asker(request))
    return answer(CaseShown, chart, state=chart.row.revision, created=created, at=f"cases/{case_id}")
