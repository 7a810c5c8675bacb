"""Lists of few rows are read whole, and shown whole unless a page is asked for: as any other list is."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.http import HttpRequest
from rest_framework.exceptions import ErrorDetail
from rest_framework.response import Response
from rest_framework.utils.urls import remove_query_param, replace_query_param

LIMIT, CURSOR = "limit", "cursor"
MOST = 100
MOST_DIGITS = 6
NOT_OF_THIS_LIST = "Is not from this list: take it from `next` or `previous`, or leave it out for the first page."
PARAMETERS: list[dict[str, Any]] = [
    {"in": "query", "name": LIMIT, "schema": {"type": "integer", "minimum": 1, "maximum": MOST}}
    | {"description": "So many on a page; left out, all are on one."},
    {"in": "query", "name": CURSOR, "schema": {"type": "string", "minLength": 1, "maxLength": MOST_DIGITS}}
    | {"description": "Of the page, as `next` and `previous` have it."},
]


def names_of(view: Any, method: str) -> tuple[str, ...]:
    """The names by which a query asks for a page of what the view's method shows."""
    return (LIMIT, CURSOR) if getattr(view, "short_list", False) and method == "GET" else ()


def problems_of(query: Mapping[str, str]) -> dict[str, ErrorDetail]:
    """What is wrong with a page that is asked for."""
    wrong = {}
    if LIMIT in query and query[LIMIT] not in map(str, range(1, MOST + 1)):
        wrong[LIMIT] = ErrorDetail(f"Must be a whole number from 1 to {MOST}.", code="out-of-bounds")
    at = query.get(CURSOR, "1")
    if not (at.isascii() and at.isdecimal() and len(at) <= MOST_DIGITS and int(at) > 0):
        wrong[CURSOR] = ErrorDetail(NOT_OF_THIS_LIST, code="not-understood")
    return wrong


def in_pages(request: HttpRequest, response: Response) -> None:
    """Leaves of a list the page that is asked for. A cursor counts the rows before it: such lists change rarely."""
    rows = response.data["results"]
    first = int(request.GET.get(CURSOR, 0))
    limit = int(request.GET.get(LIMIT, len(rows) or 1))
    address = request.build_absolute_uri()
    response.data = {
        **response.data,
        "results": rows[first : first + limit],
        "next": replace_query_param(address, CURSOR, str(first + limit)) if first + limit < len(rows) else None,
        "previous": _before(address, first, limit),
    }


def _before(address: str, first: int, limit: int) -> str | None:
    if first == 0:
        return None
    if first <= limit:
        return remove_query_param(address, CURSOR)
    return replace_query_param(address, CURSOR, str(first - limit))
