"""All that is kept of a programme's cases, as tables, page by page."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any, ClassVar
from urllib.parse import urlencode
from uuid import UUID

from django.http import HttpResponse
from drf_spectacular.types import OpenApiTypes
from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework import serializers
from rest_framework.exceptions import ErrorDetail, ValidationError
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer, asked_number, asker
from cases.api.fields import Value
from cases.api.needs import PREFIX
from cases.api.v1.filters import EXPORT_FILTERS, ExportFilters, filtered
from cases.domain.column import ColumnType
from cases.domain.errors import NotAllowed
from cases.exports.lines import csv_lines, ndjson_lines
from cases.queries import feed, seen
from cases.queries.export import pages
from cases.queries.export.pages import TABLES, Key, Page
from cases.queries.export.table import KEY, Table
from cases.services.common.feed import number
from planning.api.refusals import refuses
from planning.foundation.encoding import sentence_of

TAGS = ["programme"]
MOST_ROWS = 10_000
PAGE_OF_ROWS = [
    OpenApiParameter(
        "table", {"type": "string", "enum": list(TABLES)}, OpenApiParameter.PATH, description="As in the contents."
    ),
    *EXPORT_FILTERS,
    OpenApiParameter(
        "after", str, description=f"`{KEY}` of the last row you have whole; left out: from the first row on."
    ),
    OpenApiParameter(
        "limit",
        {"type": "integer", "minimum": 1, "maximum": MOST_ROWS, "default": MOST_ROWS},
        description="Rows on a page.",
    ),
    OpenApiParameter(
        "Link", str, OpenApiParameter.HEADER, response=[200], description='`rel="next"`: where there are more rows.'
    ),
]


class ColumnShown(serializers.Serializer[Any]):
    """A column of an exported table."""

    name = serializers.CharField(help_text="Of the column, its unit as the last part.")
    type = Value(ColumnType, help_text="In CSV a `json` column holds JSON text.")
    unit = serializers.CharField(allow_null=True, help_text="Null for what has none, such as a count.")
    meaning = serializers.CharField(help_text="Empty where the name says it all.")


class TableShown(serializers.Serializer[Any]):
    """An exported table: what a row is, its columns, and where its rows are."""

    name = serializers.CharField(help_text="As in its addresses.")
    meaning = serializers.CharField(help_text="What one row of it is.")
    columns = ColumnShown(many=True, help_text="In the order of the cells.")
    ndjson = serializers.CharField(help_text="Address of its first rows, each a line of JSON.")
    csv = serializers.CharField(help_text="Address of the same rows as CSV (RFC 4180).")


class ExportShown(serializers.Serializer[Any]):
    """What can be exported of a programme, and where its changes stand."""

    changes_after = serializers.CharField(
        help_text="Where the programme's changes stand: the tables hold all up to here, and what came in since may be "
        "in them. Asked again at the end, the same: they hold at just this point. Else ask for the changes `after` it."
    )
    tables = TableShown(many=True, help_text="All that there are.")


class ExportView(View):
    @extend_schema(
        operation_id="programme_export",
        tags=TAGS,
        summary="The tables that can be exported",
        description="Each with its columns, their units and what they mean. Ask for this first and keep "
        "`changes_after`; read each table from its first row, then from `next` in the `Link` header until there is "
        f"none. The rows are in the order of `{KEY}`, the first column: a download that broke off goes on `after` the "
        "last whole line. All pages put together are one file. People stand in it by their ids alone.",
        responses=ExportShown,
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        number(programme_id)
        end = feed.page(asker(request), programme_id, after=None, limit=1).next
        at = f"{PREFIX}programmes/{programme_id}/export"
        tables = [
            {
                "name": table.name,
                "meaning": table.meaning,
                "columns": table.columns,
                "ndjson": f"{at}/{table.name}.ndjson",
                "csv": f"{at}/{table.name}.csv",
            }
            for table in TABLES.values()
        ]
        return answer(ExportShown, {"changes_after": end, "tables": tables})


# Rows of one table. No docstring, as of any view.
class RowsView(View):
    query: ClassVar[dict[str, tuple[str, ...]]] = {"GET": (*ExportFilters.base_filters, "after", "limit")}
    ending: ClassVar[str]
    media_type: ClassVar[str]

    def lines(self, table: Table, page: Iterable[list[Any]], *, is_first: bool) -> Iterator[bytes]:
        raise NotImplementedError

    def rows(self, request: Request, programme_id: UUID, table_name: str) -> HttpResponse:
        limit = asked_number(request, "limit", MOST_ROWS, range(1, MOST_ROWS + 1))
        seen.programme(asker(request), programme_id)
        table = pages.table(table_name)
        after = _after(request, table)
        cases = _cases(request, programme_id, table)
        page = Page(table, asker(request), programme_id, cases, after=after, limit=limit)
        body = b"".join(self.lines(table, page, is_first=after is None))
        headers = {"Content-Disposition": f'attachment; filename="{table.name}.{self.ending}"'}
        if page.last is not None:
            asked = request.query_params.dict() | {"after": page.last}
            headers["Link"] = f'<{request.path}?{urlencode(asked)}>; rel="next"'
        return HttpResponse(body, content_type=self.media_type, headers=headers)


class NdjsonView(RowsView):
    ending, media_type = "ndjson", "application/x-ndjson"

    def lines(self, table: Table, page: Iterable[list[Any]], *, is_first: bool) -> Iterator[bytes]:
        return ndjson_lines(table.columns, page)

    @extend_schema(
        operation_id="programme_export_ndjson",
        tags=TAGS,
        summary="Rows of a table, each a line of JSON",
        description="What is empty is null. Of several filters all hold: the rows are those of the cases that fit. "
        "What is of the programme itself, such as people and kits, takes none.",
        parameters=PAGE_OF_ROWS,
        extensions=refuses(NotAllowed),
        responses={(200, "application/x-ndjson"): OpenApiTypes.STR},
    )
    def get(self, request: Request, programme_id: UUID, table: str) -> HttpResponse:
        return self.rows(request, programme_id, table)


class CsvView(RowsView):
    ending, media_type = "csv", "text/csv; charset=utf-8"

    def lines(self, table: Table, page: Iterable[list[Any]], *, is_first: bool) -> Iterator[bytes]:
        return csv_lines(table.columns, page, head=is_first)

    @extend_schema(
        operation_id="programme_export_csv",
        tags=TAGS,
        summary="Rows of a table as CSV",
        description="RFC 4180 in UTF-8, the same values as the lines of JSON. The names stand above the first row of "
        "all. What is empty is an empty cell; a text that a table program would take for a formula has an apostrophe "
        "before it, and so has one that begins with an apostrophe.",
        parameters=PAGE_OF_ROWS,
        extensions=refuses(NotAllowed),
        responses={(200, "text/csv"): OpenApiTypes.STR},
    )
    def get(self, request: Request, programme_id: UUID, table: str) -> HttpResponse:
        return self.rows(request, programme_id, table)


def _after(request: Request, table: Table) -> Key | None:
    """The key to go on after. Raises ValidationError for what is no key of the table."""
    text = request.query_params.get("after")
    if text is None:
        return None
    key = pages.key_of(table, text)
    if key is None:
        says = f"Is no `{KEY}` of this table: take it from the last row, or leave it out to begin at the first."
        raise ValidationError({"after": [says]}, code="not-understood")
    return key


def _cases(request: Request, programme_id: UUID, table: Table) -> Any:
    """The cases that were asked for. Raises ValidationError, also for a filter where the rows are of no case."""
    asked = [name for name in ExportFilters.base_filters if name in request.query_params]
    if table.of_programme and asked:
        unknown = ErrorDetail(sentence_of("unknown-key"), code="unknown-key")
        raise ValidationError({name: [unknown] for name in asked})
    return filtered(ExportFilters, pages.cases_of(asker(request), programme_id), request)
