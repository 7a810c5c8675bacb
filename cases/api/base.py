"""What the views share."""

from __future__ import annotations

import gzip
from collections.abc import Collection, Mapping, Sequence
from datetime import UTC, datetime
from functools import partial
from typing import Any, ClassVar

from django.http import HttpResponse
from django.utils.cache import get_conditional_response
from drf_spectacular.utils import OpenApiParameter, inline_serializer
from rest_framework import serializers, status
from rest_framework.exceptions import NotAuthenticated, NotFound, ValidationError
from rest_framework.pagination import Cursor, CursorPagination
from rest_framework.parsers import BaseParser
from rest_framework.request import Request
from rest_framework.response import Response
from rest_framework.serializers import BaseSerializer
from rest_framework.views import APIView

from cases.api import once
from cases.api.chosen_fields import Shape, chosen_fields, with_fields
from cases.api.etags import tag, tag_of_state
from cases.api.needs import PREFIX
from cases.api.schema import OperationSchema
from cases.api.short_lists import NOT_OF_THIS_LIST
from cases.domain.errors import ChangedSince
from cases.models import AccessKey, ClientToken, Person, Service
from cases.models.clients import Key
from cases.queries.seen import Asker, service_of
from planning.api.parsing import BoundedJSONParser

READS = ("GET", "HEAD")
LARGEST_NUMBER = 2**63 - 1  # of a row
LOCATION = OpenApiParameter(
    "Location", str, OpenApiParameter.HEADER, response=[201], description="Where what was made lies."
)


# A view for people who are signed in. No docstring: the generator would give it to operations that have none.
class View(APIView):
    schema = OperationSchema()
    # By method, the names that its query may have: `cases.api.reading` refuses others.
    query: ClassVar[Mapping[str, Collection[str]]] = {}
    parser_classes: Sequence[type[BaseParser]] = (BoundedJSONParser,)
    # Whether a POST takes an `Idempotency-Key`. Not where nothing is made, nor where a secret is answered, as it would
    # be kept.
    keeps_answers: ClassVar[bool] = True
    # What a GET shows, or each row of its `results`, where a query may choose from its fields.
    shape: ClassVar[Shape | None] = None
    # What a POST answers with, where that has heavy fields.
    shape_after: ClassVar[Shape | None] = None
    chosen: Collection[str] | None = None
    # A GET answers a list of few rows: `cases.api.short_lists` makes pages of it for whoever asks.
    short_list: ClassVar[bool] = False

    def initial(self, request: Request, *args: Any, **kwargs: Any) -> None:
        super().initial(request, *args, **kwargs)
        self.chosen = chosen_fields(request, self, "GET" if request.method in READS else str(request.method))
        if request.method == "POST" and self.keeps_answers and once.HEADER in request.headers:
            # After this the framework asks the view for the handler of the method.
            name = request.method.lower()
            handler = getattr(self, name, self.http_method_not_allowed)
            setattr(self, name, once.keyed(self, handler, (service_of(asker(request)) or me(request)).pk))

    def finalize_response(self, request: Request, response: Any, *args: Any, **kwargs: Any) -> Any:
        # An answer that was kept under an `Idempotency-Key` has been through here before.
        if self.chosen is not None and isinstance(response, Response) and status.is_success(response.status_code):
            response.data = with_fields(response.data, self.chosen)
        return super().finalize_response(request, response, *args, **kwargs)


def asker(request: Request) -> Asker:
    """Who asks: a person, or a service where no single case is asked for. Raises NotAuthenticated for nobody."""
    user: object = request.user
    return user if isinstance(user, Service) else me(request)


def key_of(request: Request) -> Key | None:
    """The key or token that the request came with; None for one by hand."""
    key: object = request.auth
    return key if isinstance(key, AccessKey | ClientToken) else None


def me(request: Request) -> Person:
    """Who asks, or whom a service acts for. Raises NotAuthenticated where that is nobody."""
    if not isinstance(request.user, Person):
        raise NotAuthenticated
    return request.user


def given(serializer: type[BaseSerializer[Any]], request: Request, *, partial: bool = False) -> dict[str, Any]:
    """What was sent, by the names of the serializer's fields. Raises ValidationError."""
    read = serializer(data=request.data, partial=partial)
    read.is_valid(raise_exception=True)
    return dict(read.validated_data)


def answer(
    serializer: type[BaseSerializer[Any]],
    value: Any,
    *,
    etag: object = None,
    state: object = None,
    created: bool = False,
    at: str = "",
) -> Response:
    """The value as an answer: 201 where it was made by this request, else 200. The tag is the one of all that is shown,
    or else made of it; `state` is what a change is compared with (`etags.seen_tag`). `at` is where what was made
    lies, below the API."""
    code = status.HTTP_201_CREATED if created else status.HTTP_200_OK
    headers = {} if etag is None else {"ETag": tag(etag)}
    if created and at:
        headers["Location"] = f"{PREFIX}{at}"
    response = Response(serializer(value).data, status=code, headers=headers)
    if state is not None:
        response.add_post_render_callback(partial(_tag_with, state))
    return response


def _tag_with(state: object, response: HttpResponse) -> None:
    response["ETag"] = tag_of_state(state, response.content)


def unchanged(request: Request, etag: object) -> HttpResponse | None:
    """Django's own answer, 304, where If-None-Match names what would be sent; else None.

    Raises ChangedSince where If-Match names another state.
    """
    not_modified = get_conditional_response(request._request, etag=tag(etag))
    if not_modified is None:
        return None
    if not_modified.status_code == status.HTTP_412_PRECONDITION_FAILED:
        raise ChangedSince(what="This")
    # A 304 carries the tag that the whole answer would have carried (RFC 9110, 15.4.5).
    not_modified["ETag"] = tag(etag)
    return not_modified


def asked_number(request: Request, name: str, usual: int, within: range) -> int:
    """The whole number that the query names so. Raises ValidationError for what is none, or lies outside."""
    asked = request.query_params.get(name)
    if asked is None:
        return usual
    if asked not in map(str, within):
        says = f"Must be a whole number from {within[0]} to {within[-1]}."
        raise ValidationError({name: [says]}, code="out-of-bounds")
    return int(asked)


def as_it_lies(request: Request, packed: bytes) -> HttpResponse:
    """JSON that was compressed before, in gzip for whoever takes that."""
    if "gzip" not in request.headers.get("Accept-Encoding", ""):
        return HttpResponse(gzip.decompress(packed), content_type="application/json")
    return HttpResponse(
        packed, content_type="application/json", headers={"Content-Encoding": "gzip", "Vary": "Accept-Encoding"}
    )


def _in_utc(text: str) -> str:
    """The moment as every database knows it. Raises ValueError or OverflowError for what is no time, has no zone, or is
    none in UTC."""
    moment = datetime.fromisoformat(text)
    if moment.tzinfo is None:
        raise ValueError
    return moment.astimezone(UTC).isoformat()


def page_of(name: str, row: type[BaseSerializer[Any]]) -> BaseSerializer[Any]:
    """How a page of a list is described that `NewestFirst` makes."""
    ends = {each: serializers.URLField(allow_null=True) for each in ("next", "previous")}
    page: BaseSerializer[Any] = inline_serializer(name, {**ends, "results": row(many=True)})
    return page


class NewestFirst(CursorPagination):
    """Pages that stay whole while new rows come in."""

    page_size = 30
    max_page_size = 100
    page_size_query_param = "limit"
    ordering: tuple[str, ...] = ("-created_at", "-id")

    def get_page_size(self, request: Request) -> int:
        """Raises ValidationError for what is no number of rows."""
        return asked_number(request, self.page_size_query_param, self.page_size, range(1, self.max_page_size + 1))

    def position_of(self, text: str) -> Any:
        """The first column of a row, from its text. Raises ValueError or OverflowError for what is none."""
        return _in_utc(text)

    def decode_cursor(self, request: Request) -> Any:
        """Raises ValidationError for what no page of this list has named."""
        try:
            cursor = super().decode_cursor(request)
            if cursor == Cursor(offset=0, reverse=False, position=None):
                raise ValueError  # what could not be read: the first page has no cursor
            if cursor and cursor.position is not None:
                cursor = cursor._replace(position=self.position_of(str(cursor.position)))
        except (NotFound, ValueError, OverflowError):
            raise ValidationError({self.cursor_query_param: [NOT_OF_THIS_LIST]}, code="not-understood") from None
        return cursor


class ByNumber(NewestFirst):
    """Pages of rows that the database numbers, in the order in which they were made."""

    ordering = ("id",)

    def position_of(self, text: str) -> Any:
        number = int(text)
        if not 0 < number <= LARGEST_NUMBER:
            raise ValueError(text)
        return number
