"""Rows stored by one statement that is put into SQL once: `save` writes it anew each time, and tries twice where the
row is not there yet."""

from __future__ import annotations

from functools import lru_cache
from typing import Generic, TypeVar

from django.db import DEFAULT_DB_ALIAS, connection, models
from django.db.models.constants import OnConflict
from django.db.models.sql import InsertQuery

from cases.models.base import AppendOnly, RecordFixed

Row = TypeVar("Row", bound=models.Model)


class WholeRows(Generic[Row]):
    """A table whose rows are made from other tables, and made anew when those change."""

    def __init__(self, model: type[Row]) -> None:
        if issubclass(model, AppendOnly):
            raise RecordFixed(f"{model.__name__} is only added to.")
        self.model, self.fields = model, model._meta.concrete_fields
        self._written = lru_cache(self._put_into_sql)

    def put(self, row: Row) -> None:
        """Stores the row, in place of one with the same key."""
        values = [field.get_db_prep_save(field.pre_save(row, True), connection) for field in self.fields]
        with connection.cursor() as cursor:
            cursor.execute(self._written(connection.vendor), values)

    def _put_into_sql(self, _vendor: str) -> str:
        key = self.model._meta.pk
        query = InsertQuery(
            self.model,
            on_conflict=OnConflict.UPDATE,
            update_fields=[field for field in self.fields if field is not key],
            unique_fields=[key],
        )
        query.insert_values(self.fields, [self.model()], raw=True)
        ((sql, _),) = query.get_compiler(DEFAULT_DB_ALIAS).as_sql()
        return str(sql)
