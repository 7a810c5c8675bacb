"""Rows as lines of NDJSON and of CSV: each row a line that can be read by itself."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from cases.domain.column import Column, ColumnType

TEXTS = (ColumnType.TEXT, ColumnType.ID, ColumnType.MOMENT)
GUARD = "'"
GUARDED = ("=", "+", "-", "@", "\t", "\r", GUARD)
"""A table program takes a cell that begins so for a formula. The guard is guarded too, so that it can be taken off."""
LINE_END = "\r\n"  # RFC 4180, 2.1


def ndjson_lines(columns: Sequence[Column], rows: Iterable[Sequence[Any]]) -> Iterator[bytes]:
    """Each row as an object by the columns' names."""
    names = [column.name for column in columns]
    for row in rows:
        yield f"{_json(dict(zip(names, row, strict=True)))}\n".encode()


def csv_lines(columns: Sequence[Column], rows: Iterable[Sequence[Any]], *, head: bool) -> Iterator[bytes]:
    """Each row by RFC 4180, after a line of names where `head` asks for one.

    Nothing is an empty cell; numbers, yes, no and JSON are as in JSON; a text that a table program would take for a
    formula has an apostrophe before it.
    """
    line = io.StringIO()
    writer = csv.writer(line, lineterminator=LINE_END)
    is_text = [column.type in TEXTS for column in columns]

    def written(cells: Iterable[str]) -> bytes:
        line.seek(0)
        line.truncate()
        writer.writerow(cells)
        return line.getvalue().encode()

    if head:
        yield written(column.name for column in columns)
    for row in rows:
        yield written(map(_cell, row, is_text))


def _cell(value: Any, is_text: bool) -> str:
    if value is None:
        return ""
    if not is_text:
        return _json(value)
    return f"{GUARD}{value}" if value.startswith(GUARDED) else str(value)


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
