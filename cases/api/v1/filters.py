"""What a list is asked for of."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any, TypeVar, cast

from django import forms
from django.db.models import Model, QuerySet
from django_filters import CharFilter, ChoiceFilter, Filter, FilterSet, UUIDFilter
from django_filters.fields import IsoDateTimeField
from drf_spectacular.utils import OpenApiParameter
from rest_framework.exceptions import ErrorDetail, ValidationError
from rest_framework.request import Request

from cases.api.base import NewestFirst, asker
from cases.api.fields import Id, Moment
from cases.domain.access.invited import InvitationState
from cases.domain.access.roles import Role
from cases.domain.plans.status import PlanStatusState
from cases.queries.charts import changed_since, of_group
from cases.queries.external_ids import by_external_id
from cases.queries.invitations import in_state
from cases.queries.plans import standing_at
from planning.anatomy import all_teeth
from planning.foundation.encoding import sentence_of
from planning.practice.levels import levels
from planning.techniques.technique import Setting

OF_PAGES = ("cursor", "limit")
CURSOR = OpenApiParameter("cursor", str, description="As in `next` or `previous`.")
PAGES = [
    CURSOR,
    OpenApiParameter(
        "limit",
        {"type": "integer", "minimum": 1, "maximum": NewestFirst.max_page_size, "default": NewestFirst.page_size},
        description="So many on a page.",
    ),
]
Row = TypeVar("Row", bound=Model)


class MomentField(IsoDateTimeField):
    """A moment in UTC: a database need not know every offset that can be written (RFC 3339, 5.6)."""

    def to_python(self, value: Any) -> datetime | None:
        moment: datetime | None = super().to_python(value)
        try:
            return moment.astimezone(UTC) if moment else None
        except OverflowError:  # before the first year, or after the last
            raise forms.ValidationError(self.default_error_messages["invalid"], code="invalid") from None


class MomentFilter(Filter):
    field_class = MomentField


class ExternalIdFilter(FilterSet):
    external_id = CharFilter(method="known_by")

    def known_by(self, rows: QuerySet[Row], _: str, value: str) -> QuerySet[Row]:
        return by_external_id(asker(cast(Request, self.request)), rows, value)

    def filter_queryset(self, queryset: QuerySet[Row]) -> QuerySet[Row]:
        # Of an empty value the library makes no condition, and whoever looks for one case would be shown all.
        is_empty = (self.data or {}).get("external_id") == ""
        matching: QuerySet[Row] = queryset.none() if is_empty else super().filter_queryset(queryset)
        return matching


class PeopleFilters(ExternalIdFilter):
    role = ChoiceFilter(choices=[(role, role) for role in Role])
    group = CharFilter()


class InvitationFilters(FilterSet):
    state = ChoiceFilter(choices=[(state, state) for state in InvitationState], method="that_stands")

    def that_stands(self, rows: Any, _: str, value: str) -> Any:
        return in_state(rows, InvitationState(value))


class CaseFilters(ExternalIdFilter):
    state = ChoiceFilter(choices=[(state, state) for state in PlanStatusState], method="whose_plan_stands")
    group = CharFilter(method="of_group")
    updated_since = MomentFilter(method="changed_since")
    student_id = UUIDFilter()
    supervisor_id = UUIDFilter()
    setting = ChoiceFilter(choices=[(setting, setting) for setting in Setting])
    tooth = ChoiceFilter(field_name="tooth__iso", choices=[(tooth.iso, tooth.iso) for tooth in all_teeth()])

    def whose_plan_stands(self, rows: Any, _: str, value: str) -> Any:
        return standing_at(rows, PlanStatusState(value))

    def of_group(self, rows: Any, _: str, value: str) -> Any:
        return of_group(rows, value)

    def changed_since(self, rows: Any, _: str, value: datetime) -> Any:
        return changed_since(rows, value)


class PracticeFilters(FilterSet):
    student_id = UUIDFilter()
    task_id = UUIDFilter()
    level = ChoiceFilter(choices=[(level.key, level.key) for level in levels()])


class ExportFilters(CaseFilters):
    case_id = UUIDFilter(field_name="pk")
    opened_from = MomentFilter(field_name="created_at", lookup_expr="gte")
    opened_until = MomentFilter(field_name="created_at", lookup_expr="lt")


EXTERNAL_ID = OpenApiParameter("external_id", str, description="For services: the key that yours knows it by.")
PEOPLE_FILTERS = [
    EXTERNAL_ID,
    OpenApiParameter("role", {"type": "string", "enum": list(Role)}, description="What they are in the programme."),
    OpenApiParameter("group", str, description="The group they are in, by its whole name."),
]
CASE_FILTERS = [
    EXTERNAL_ID,
    OpenApiParameter(
        "state", {"type": "string", "enum": list(PlanStatusState)}, description="Where the plan stands, as in `status`."
    ),
    OpenApiParameter("group", str, description="Those of students who are in the group now, by its whole name."),
    OpenApiParameter(
        "updated_since",
        {"type": "string", "format": "date-time"},
        description="Those of which something was changed, decided or done then or later. What is being written just "
        "now has its time already: ask with a minute of overlap.",
    ),
    OpenApiParameter("student_id", {"type": "string", "format": "uuid"}, description="Whose cases."),
    OpenApiParameter("supervisor_id", {"type": "string", "format": "uuid"}, description="Whom they were given to."),
    OpenApiParameter("setting", {"type": "string", "enum": list(Setting)}, description="Where they are worked."),
    OpenApiParameter("tooth", str, description="ISO 3950 designation."),
]
PRACTICE_FILTERS = [
    OpenApiParameter("student_id", {"type": "string", "format": "uuid"}, description="Whose exercises."),
    OpenApiParameter("task_id", {"type": "string", "format": "uuid"}, description="Of one task alone."),
    OpenApiParameter("level", {"type": "string", "enum": [level.key for level in levels()]}, description="Of a level."),
]

_A_MOMENT: dict[str, Any] = {"type": "string", "format": "date-time"}
EXPORT_FILTERS = [
    *CASE_FILTERS,
    OpenApiParameter("case_id", {"type": "string", "format": "uuid"}, description="One case alone."),
    OpenApiParameter("opened_from", _A_MOMENT, description="Cases opened then or later."),
    OpenApiParameter("opened_until", _A_MOMENT, description="Cases opened earlier than then."),
]


def filtered(filters: type[FilterSet], rows: QuerySet[Row], request: Request) -> QuerySet[Row]:
    """Those of the rows that were asked for. Raises ValidationError."""
    asked = filters(request.query_params, queryset=rows, request=request)
    # Of an empty value the library makes no condition, and whoever asks for a part would be shown all.
    nothing = {name for name, value in request.query_params.items() if value == ""}
    empty = {name for name in nothing & asked.filters.keys() if type(asked.filters[name]) is not CharFilter}
    if wrong := {*asked.errors, *empty}:
        raise ValidationError({name: [_fault(asked.filters[name])] for name in sorted(wrong)})
    matching: QuerySet[Row] = asked.qs
    return matching


def _fault(part: Filter) -> ErrorDetail:
    """What is wrong with what was asked for, in the words and codes of bodies."""
    match part:
        case ChoiceFilter():
            known = ", ".join(str(value) for value, _ in part.extra["choices"])
            return ErrorDetail(sentence_of("not-of-these", expected=known), code="not-of-these")
        case UUIDFilter():
            return ErrorDetail(Id.default_error_messages["not_an_id"], code="not-an-id")
        case MomentFilter():
            return ErrorDetail(Moment.default_error_messages["not_a_moment"], code="not-a-moment")
        case _:
            return ErrorDetail(sentence_of("control-characters"), code="control-characters")
