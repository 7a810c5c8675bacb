"""What an exported table is: rows of cases, in the order of their keys, and the columns that are made of each."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID

from django.db.models import QuerySet

from cases.domain.column import Column, ColumnType
from cases.mapping.charts import millimetres
from cases.models import Case
from cases.queries.seen import Asker
from planning.foundation.encoding import json_schema

KEY = "id"
"""The first column of every table: its rows are in this order, and a page goes on after one of it."""
_TYPES = {
    "string": ColumnType.TEXT,
    "integer": ColumnType.WHOLE,
    "number": ColumnType.NUMBER,
    "boolean": ColumnType.YES_NO,
}
_UM, _MM = "_um", "_mm"


@dataclass(frozen=True, slots=True)
class Line:
    """A row, and the value that it carries as JSON data."""

    row: Any
    value: Mapping[str, Any]


def _row_alone(_: UUID) -> Callable[[Any], Line]:
    return lambda row: Line(row, {})


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    name: str
    meaning: str
    columns: tuple[Column, ...]
    rows: Callable[[QuerySet[Case]], QuerySet[Any]] = QuerySet.none
    """Those of the cases, with what the columns need."""
    of_programme: Callable[[Asker, UUID], Iterable[Any]] | None = None
    """Those of the programme as the asker sees them, where they are of no case. Raises NotAllowed."""
    key: str = "pk"
    """The field that the first column shows."""
    line: Callable[[UUID], Callable[[Any], Any]] = _row_alone
    """For a programme: what the columns are made of, from each row."""


def of_row(name: str, type_: ColumnType, meaning: str = "", at: str = "") -> Column:
    """A column of a row, or of a row that it leads to: `at` names the way, and the name where it is left out."""
    return of_line(name, type_, meaning, f"row.{at or name}")


def of_line(name: str, type_: ColumnType, meaning: str = "", at: str = "") -> Column:
    """A column of what a table makes of its row."""
    way = (at or name).split(".")

    def value(line: Any) -> Any:
        for step in way:
            line = getattr(line, step)
            if line is None:
                return None
        return plain(line)

    return Column(name, type_, meaning, value)


def of_value(type_: Any, without: tuple[str, ...] = ()) -> Iterator[Column]:
    """A column for each field of a value, or of any value of a union; what is kept in micrometres in millimetres."""
    schema = json_schema(type_)
    parts = [schema["$defs"][each["$ref"].rpartition("/")[2]] for each in schema.get("oneOf", [schema])]
    fields: dict[str, list[Any]] = {}
    for part in parts:
        for name, described in part["properties"].items():
            fields.setdefault(name, []).append(described)
    for name, described in fields.items():
        if name not in without:
            types = {_type(each, schema["$defs"]) for each in described}
            type_of_all = types.pop() if len(types) == 1 else ColumnType.JSON
            meaning = next((each["description"] for each in described if "description" in each), "")
            yield _of_field(name, type_of_all, meaning or described[0].get("title", ""))


def _of_field(name: str, type_: ColumnType, meaning: str) -> Column:
    def value(line: Any) -> Any:
        return plain(line.value.get(name))

    if name.endswith(_UM):
        in_mm = name.removesuffix(_UM) + _MM
        return Column(in_mm, ColumnType.NUMBER, meaning, lambda line: millimetres(value(line)))
    return Column(name, type_, meaning, value)


def _type(described: Any, named: Mapping[str, Any]) -> ColumnType:
    """The type of what may also be nothing."""
    if "anyOf" in described:
        (described,) = [each for each in described["anyOf"] if each.get("type") != "null"]
    if "$ref" in described:
        described = named[described["$ref"].rpartition("/")[2]]
    return _TYPES.get(described.get("type", ""), ColumnType.JSON)


def plain(value: Any) -> Any:
    """The value as JSON has it, a time in the API's own writing; an empty text is nothing."""
    match value:
        case "":
            return None
        case UUID():
            return str(value)
        case datetime():
            return value.isoformat().replace("+00:00", "Z")
        case _:
            return value
