"""Tables of a programme, page by page, in the order of their keys.

A page is read in small parts: however many cases there are, no more than a few parts of a page are held as rows.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any
from uuid import UUID

from django.db.models import QuerySet

from cases.domain.column import ColumnType
from cases.domain.errors import NotHere
from cases.models import Case
from cases.queries import seen
from cases.queries.export import chart_tables, plan_tables, programme_tables
from cases.queries.export.table import Table
from cases.queries.external_ids import known
from cases.queries.seen import Asker

AT_ONCE = 200
"""Rows are read so many at a time."""
Key = UUID | int | str
"""What the first column of a table shows."""
MOST_KEY_DIGITS = 18  # of a whole number that every database keeps

TABLES: Mapping[str, Table] = {
    table.name: table
    for table in (
        programme_tables.PEOPLE,
        programme_tables.KITS,
        programme_tables.TECHNIQUES,
        programme_tables.FIGURES,
        chart_tables.CASES,
        chart_tables.CANALS,
        chart_tables.READINGS,
        chart_tables.JUNCTIONS,
        chart_tables.IMAGES,
        chart_tables.MARKINGS,
        chart_tables.BENDS,
        plan_tables.VERSIONS,
        plan_tables.CANAL_PLANS,
        plan_tables.REVIEWS,
        plan_tables.REMARKS,
        plan_tables.REVOCATIONS,
        plan_tables.OVERRIDES,
        plan_tables.EVENTS,
    )
}


def table(name: str) -> Table:
    """Raises NotHere."""
    if name not in TABLES:
        raise NotHere(what="table")
    return TABLES[name]


def cases_of(asker: Asker, programme_id: UUID) -> QuerySet[Case]:
    """The cases of the programme that the asker can see."""
    return seen.cases(asker).filter(programme_id=programme_id)


def key_of(table: Table, text: str) -> Key | None:
    """A key as the first column writes it; None for what is none."""
    if table.columns[0].type is ColumnType.TEXT:
        return text
    if table.columns[0].type is ColumnType.WHOLE:
        is_whole = text.isascii() and text.isdecimal() and len(text) <= MOST_KEY_DIGITS
        return int(text) if is_whole else None
    try:
        return UUID(text)
    except ValueError:
        return None


class Page:
    """Cells of a table's rows after a key, read as they are asked for; once all are, `last` says where to go on."""

    def __init__(
        self,
        table: Table,
        asker: Asker,
        programme_id: UUID,
        cases: QuerySet[Case],
        *,
        after: Key | None,
        limit: int,
    ) -> None:
        """Raises NotAllowed where the asker may not see people."""
        self._table, self._limit = table, limit
        self._line = table.line(programme_id)
        rows: Any = table.of_programme(asker, programme_id) if table.of_programme else table.rows(cases)
        if table is chart_tables.CASES:
            rows = known(asker, rows)
        # One more than is shown tells that there are more.
        self._rows = self._after(rows, after)[: limit + 1]
        self.last: str | None = None
        """The key of the last row where there are more; else None."""

    def _after(self, rows: Any, after: Key | None) -> Any:
        """In the order of their keys, by the database where it has them."""
        if isinstance(rows, QuerySet):
            left = rows if after is None else rows.filter(**{f"{self._table.key}__gt": after})
            return left.order_by(self._table.key)
        keyed = {self._table.columns[0].value(self._line(row)): row for row in rows}
        return [keyed[key] for key in sorted(keyed) if after is None or key > after]

    def __iter__(self) -> Iterator[list[Any]]:
        key: Any = None
        for number, row in enumerate(self._rows.iterator(AT_ONCE) if isinstance(self._rows, QuerySet) else self._rows):
            if number == self._limit:
                self.last = key
                return
            line = self._line(row)
            cells = [column.value(line) for column in self._table.columns]
            key = str(cells[0])
            yield cells
