"""The migrations, from nothing, make the tables that the models describe. Judge: the tables Django makes of them."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from django.apps import apps
from django.db import connection, connections
from django.db.backends.base.base import BaseDatabaseWrapper

pytestmark = pytest.mark.django_db

Found = dict[str, Any]


def tables(of: BaseDatabaseWrapper) -> dict[str, tuple[Found, list[str]]]:
    """Columns by name, and what is held: keys, what is single, checks, indexes. Made-up names of constraints apart."""
    found = {}
    with of.cursor() as cursor:
        for model in apps.get_app_config("cases").get_models(include_auto_created=True):
            table = model._meta.db_table
            columns = {
                column.name: (column.type_code, column.null_ok, column.display_size, column.default)
                for column in of.introspection.get_table_description(cursor, table)
            }
            held = of.introspection.get_constraints(cursor, table).values()
            found[table] = (columns, sorted(repr(sorted(one.items())) for one in held))
    return found


@contextmanager
def made_of_the_models() -> Iterator[BaseDatabaseWrapper]:
    """An empty place of the same kind, with a table for each model."""
    other = connection.copy("made_of_the_models")
    if other.vendor == "sqlite":
        other.settings_dict = {**other.settings_dict, "NAME": ":memory:"}
    connections[other.alias] = other
    other.connect()
    try:
        with other.cursor() as cursor:
            if other.vendor == "postgresql":
                cursor.execute("CREATE SCHEMA made_of_the_models")
                cursor.execute("SET search_path TO made_of_the_models")
        with other.schema_editor() as editor:
            for model in apps.get_models():
                if model._meta.managed:
                    editor.create_model(model)
        yield other
    finally:
        with other.cursor() as cursor:
            if other.vendor == "postgresql":
                cursor.execute("DROP SCHEMA made_of_the_models CASCADE")
        other.connection.close()
        del connections[other.alias]


def test_the_migrations_make_what_the_models_describe() -> None:
    with made_of_the_models() as other:
        migrated, described = tables(connection), tables(other)
    assert {name for name, made in migrated.items() if made != described[name]} == set()
