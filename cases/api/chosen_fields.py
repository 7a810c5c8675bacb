"""Answers with only those of their fields that were asked for."""

from __future__ import annotations

from collections.abc import Collection
from functools import cache
from typing import Any

from rest_framework.exceptions import ErrorDetail, ValidationError
from rest_framework.request import Request
from rest_framework.serializers import Serializer

from planning.foundation.encoding import sentence_of

FIELDS = "fields"
Shape = type[Serializer[Any]]


@cache
def names_of(shape: Shape) -> tuple[str, ...]:
    return tuple(shape().fields)


def chosen_fields(request: Request, shape: Shape) -> Collection[str] | None:
    """The fields that the query names; None where it names none. Raises ValidationError for one that is not there."""
    asked = request.query_params.get(FIELDS)
    if asked is None:
        return None
    names, known = asked.split(","), names_of(shape)
    if not set(names) <= set(known):
        says = sentence_of("not-of-these", expected=", ".join(known))
        raise ValidationError({FIELDS: [ErrorDetail(says, code="not-of-these")]})
    return names


def with_fields(data: Any, names: Collection[str]) -> Any:
    """What is shown, or each row of its `results`, with these fields alone."""
    if "results" in data:
        return {**data, "results": [with_fields(row, names) for row in data["results"]]}
    return {name: value for name, value in data.items() if name in names}


def parameter(shape: Shape) -> dict[str, Any]:
    """For the API's description."""
    return {
        "in": "query",
        "name": FIELDS,
        "schema": {"type": "array", "items": {"type": "string", "enum": list(names_of(shape))}, "minItems": 1},
        "style": "form",
        "explode": False,
        "description": "Only these fields, with a comma between two; of a list, in each of its rows.",
    }
