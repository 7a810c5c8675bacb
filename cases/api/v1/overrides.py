"""What supervisors let pass."""

from __future__ import annotations

from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, given, me
from cases.api.fields import Id, Listing, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.shapes import OverrideShown
from cases.domain.errors import NotAllowed, NotUsable, SentDifferently, TakenAlready
from cases.queries import charts, seen
from cases.services.planning import overrides
from planning.api.refusals import refuses
from planning.contract.plan_input import HandSize
from planning.foundation.errors import OutOfBounds, OverrideNotPossible

TAGS = ["override"]


class OverrideGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    code = Text(max_length=60, help_text="Code of a caution of the version that stands.")
    canal = Text(max_length=12, required=False, allow_null=True, default=None, help_text="Null: of the whole tooth.")
    reason = Text(help_text="Why the work may go on; shown with the caution.")
    final_size = Value(
        HandSize, required=False, allow_null=True, default=None, help_text="With `wide-canal` alone: the size chosen."
    )


class OverrideList(Listing):
    results = OverrideShown(many=True)


class OverridesView(View):
    short_list = True
    shape = OverrideShown

    @extend_schema(
        operation_id="overrides_list",
        tags=TAGS,
        summary="What supervisors let pass in a case",
        description="Those taken back too.",
        responses=OverrideList,
    )
    def get(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        return answer(OverrideList, {"results": charts.overrides(case.pk)})

    @extend_schema(
        operation_id="overrides_create",
        tags=TAGS,
        summary="Let the work go on in spite of a caution",
        description="By a supervisor, with a reason, of a caution that the version that stands carries and that says "
        "`may_override`. The case's revision rises: the plan is made again, the withheld steps open, the caution stays "
        "and shows the reason. A wide canal is let pass by choosing its final size. 422 where nobody may let it pass, "
        "and where the canal cannot be planned with the size chosen.",
        parameters=[LOCATION],
        request=OverrideGiven,
        extensions=refuses(NotAllowed, SentDifferently, TakenAlready, NotUsable, OverrideNotPossible, OutOfBounds),
        responses={200: OverrideShown, 201: OverrideShown},
        examples=[examples.OVERRIDE],
    )
    def post(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        row, created = overrides.add(actor=me(request), case=case, **given(OverrideGiven, request))
        return answer(OverrideShown, row, created=created, at=f"overrides/{row.pk}")


class OverrideView(View):
    shape = OverrideShown

    @extend_schema(operation_id="override_retrieve", tags=TAGS, summary="An override", responses=OverrideShown)
    def get(self, request: Request, override_id: UUID) -> Response:
        return answer(OverrideShown, seen.override(me(request), override_id))


class WithdrawView(View):
    @extend_schema(
        operation_id="override_withdraw",
        tags=TAGS,
        summary="Take it back",
        description="By a supervisor. It stays in the record; the next version withholds again.",
        request=None,
        extensions=refuses(NotAllowed),
        responses=OverrideShown,
    )
    def post(self, request: Request, override_id: UUID) -> Response:
        override = seen.override(me(request), override_id)
        return answer(OverrideShown, overrides.withdraw(actor=me(request), override=override))
