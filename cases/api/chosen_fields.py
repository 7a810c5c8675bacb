"""Answers with only those of their fields that were asked for: what is heavy in one is shown on request alone."""

from __future__ import annotations

from collections.abc import Collection
from functools import cache
from typing import Any

from rest_framework.exceptions import ErrorDetail, ValidationError
from rest_framework.request import Request
from rest_framework.serializers import Serializer

from planning.foundation.encoding import sentence_of

FIELDS, EXPAND = "fields", "expand"
MEANING = {
    FIELDS: "Only these fields, with a comma between two; of a list, in each of its rows.",
    EXPAND: "These fields too, with a comma between two: they are heavy and left out unless named here or in `fields`.",
}
Shape = type[Serializer[Any]]


@cache
def names_of(shape: Shape) -> tuple[str, ...]:
    return tuple(shape().fields)


def heavy_of(shape: Shape) -> tuple[str, ...]:
    """The fields that are shown on request alone, as the shape's `heavy` names them."""
    return getattr(shape, "heavy", ())


def choosing(view: Any, method: str) -> tuple[str, ...]:
    """The names by which the query of a view's method chooses."""
    shape = shape_of(view, method)
    fields = (FIELDS,) if shape and method == "GET" else ()
    return (*fields, EXPAND) if shape and heavy_of(shape) else fields


def shape_of(view: Any, method: str) -> Shape | None:
    """What the view's method shows, where its query may choose from that."""
    shape: Shape | None = getattr(view, {"GET": "shape", "POST": "shape_after"}.get(method, ""), None)
    return shape


def chosen_fields(request: Request, view: Any, method: str) -> Collection[str] | None:
    """The fields to show; None where that is all. Raises ValidationError for a name that is not there."""
    shape = shape_of(view, method)
    if shape is None:
        return None
    heavy = heavy_of(shape)
    if FIELDS not in request.query_params and not heavy:
        return None
    fields, expand = _named(request, FIELDS, names_of(shape)), _named(request, EXPAND, heavy)
    usual = [name for name in names_of(shape) if name not in heavy]
    return {*(fields or usual), *(expand or ())}


def _named(request: Request, name: str, known: Collection[str]) -> list[str] | None:
    if name not in request.query_params:
        return None
    # Generated clients write a list in either way: with commas, or its name again for each.
    names = ",".join(request.query_params.getlist(name)).split(",")
    if not set(names) <= set(known):
        says = sentence_of("not-of-these", expected=", ".join(known))
        raise ValidationError({name: [ErrorDetail(says, code="not-of-these")]})
    return names


def with_fields(data: Any, names: Collection[str]) -> Any:
    """What is shown, or each row of its `results`, with these fields alone."""
    if "results" in data:
        return {**data, "results": [with_fields(row, names) for row in data["results"]]}
    return {name: value for name, value in data.items() if name in names}


def parameters(view: Any, method: str) -> list[dict[str, Any]]:
    """For the API's description."""
    shape = shape_of(view, method)
    known = {FIELDS: names_of(shape), EXPAND: heavy_of(shape)} if shape else {}
    return [
        {
            "in": "query",
            "name": name,
            "schema": {"type": "array", "items": {"type": "string", "enum": list(known[name])}, "minItems": 1},
            "style": "form",
            "explode": False,
            "description": MEANING[name],
        }
        for name in choosing(view, method)
    ]
