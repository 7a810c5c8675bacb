"""Rows stored by statements that are put into SQL once: Django writes them anew each time, which takes longer than the
database does, and `save` tries twice where the row is not there yet."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Any, Generic, TypeVar

from django.db import DEFAULT_DB_ALIAS, connections, models
from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.models.constants import OnConflict
from django.db.models.sql import InsertQuery

from cases.models.base import AppendOnly, RecordFixed

Row = TypeVar("Row", bound=models.Model)


class _Rows(Generic[Row]):
    """A table, and the statement that stores a row of it with all its columns."""

    def __init__(self, model: type[Row], **in_place: Any) -> None:
        self.model, self.fields = model, model._meta.concrete_fields
        self._in_place = in_place
        self._sql = lru_cache(self._put_into_sql)

    def _values(self, rows: Sequence[Row], connection: BaseDatabaseWrapper) -> list[tuple[Any, ...]]:
        return list(zip(*(_column(field, rows, connection) for field in self.fields), strict=True))

    def _put_into_sql(self, _vendor: str) -> str:
        query = InsertQuery(self.model, **self._in_place)
        query.insert_values(self.fields, [self.model()], raw=True)
        ((sql, _),) = query.get_compiler(DEFAULT_DB_ALIAS).as_sql()
        return str(sql)


class NewRows(_Rows[Row]):
    """A table to which rows are added whose keys are known before."""

    def add(self, rows: Sequence[Row]) -> None:
        """Stores the rows, all at one moment; they are what `bulk_create` would leave them."""
        connection = connections[DEFAULT_DB_ALIAS]
        with connection.cursor() as cursor:
            cursor.executemany(self._sql(connection.vendor), self._values(rows, connection))
        for row in rows:
            row._state.adding, row._state.db = False, DEFAULT_DB_ALIAS


class WholeRows(_Rows[Row]):
    """A table whose rows are made from other tables, and made anew when those change."""

    def __init__(self, model: type[Row]) -> None:
        if issubclass(model, AppendOnly):
            raise RecordFixed(f"{model.__name__} is only added to.")
        key = model._meta.pk
        others = [field for field in model._meta.concrete_fields if field is not key]
        super().__init__(model, on_conflict=OnConflict.UPDATE, update_fields=others, unique_fields=[key])

    def put(self, row: Row) -> None:
        """Stores the row, in place of one with the same key."""
        connection = connections[DEFAULT_DB_ALIAS]
        with connection.cursor() as cursor:
            cursor.execute(self._sql(connection.vendor), *self._values([row], connection))


def _column(field: models.Field[Any, Any], rows: Sequence[models.Model], connection: BaseDatabaseWrapper) -> list[Any]:
    """The column's values as the database takes them, each made ready once: rows of one batch share most of theirs."""
    if getattr(field, "auto_now_add", False):
        values = [field.pre_save(rows[0], True)] * len(rows)
        for row, value in zip(rows, values, strict=True):
            setattr(row, field.attname, value)
    else:
        values = [field.pre_save(row, True) for row in rows]
    ready = {value: field.get_db_prep_save(value, connection) for value in set(values)}
    return [ready[value] for value in values]
