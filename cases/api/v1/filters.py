"""What a list is asked for of."""

from __future__ import annotations

from typing import TypeVar, cast

from django.db.models import Model, QuerySet
from django_filters import ChoiceFilter, FilterSet, UUIDFilter
from django_filters.utils import translate_validation
from drf_spectacular.utils import OpenApiParameter
from rest_framework.exceptions import ValidationError
from rest_framework.request import Request

from planning.anatomy import all_teeth
from planning.techniques.technique import Setting

OF_PAGES = ("cursor", "limit")
Row = TypeVar("Row", bound=Model)


class CaseFilters(FilterSet):
    student = UUIDFilter(field_name="student_id")
    supervisor = UUIDFilter(field_name="supervisor_id")
    setting = ChoiceFilter(choices=[(setting, setting) for setting in Setting])
    tooth = ChoiceFilter(field_name="tooth__iso", choices=[(tooth.iso, tooth.iso) for tooth in all_teeth()])


CASE_FILTERS = [
    OpenApiParameter("student", {"type": "string", "format": "uuid"}, description="Whose cases."),
    OpenApiParameter("supervisor", {"type": "string", "format": "uuid"}, description="Whom they were given to."),
    OpenApiParameter("setting", {"type": "string", "enum": list(Setting)}, description="Where they are worked."),
    OpenApiParameter("tooth", str, description="ISO 3950 designation."),
]


def filtered(filters: type[FilterSet], rows: QuerySet[Row], request: Request) -> QuerySet[Row]:
    """Those of the rows that were asked for. Raises ValidationError."""
    asked = filters(request.query_params, queryset=rows)
    if not asked.is_valid():
        # An exception, whatever its stubs say.
        raise cast(ValidationError, translate_validation(asked.errors))
    matching: QuerySet[Row] = asked.qs
    return matching
