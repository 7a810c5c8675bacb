"""The migrations, from nothing, make the tables that the models describe. Judge: the tables Django makes of them."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from django.apps import apps
from django.db import connection, connections
from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.backends.utils import CursorWrapper
from django.db.migrations import CreateModel
from django.db.migrations.loader import MigrationLoader

pytestmark = pytest.mark.django_db

PLACE = "made_of_the_models"
# As the server words them itself: columns, then keys, checks and what is single, then indexes with their conditions.
OF_POSTGRESQL = (
    """SELECT attname, format_type(atttypid, atttypmod), attnotnull, attidentity, pg_get_expr(adbin, adrelid)
       FROM pg_attribute LEFT JOIN pg_attrdef ON adrelid = attrelid AND adnum = attnum
       WHERE attrelid = %s::regclass AND attnum > 0 AND NOT attisdropped""",
    "SELECT pg_get_constraintdef(oid) FROM pg_constraint WHERE conrelid = %s::regclass",
    "SELECT pg_get_indexdef(indexrelid) FROM pg_index WHERE indrelid = %s::regclass",
)
# The statements that make a table and its indexes; an index of a constraint has none.
OF_SQLITE = "SELECT sql FROM sqlite_master WHERE tbl_name = %s AND sql IS NOT NULL"


def tables(of: BaseDatabaseWrapper) -> dict[str, list[str]]:
    """What each table is made of, in the words of its database."""
    names = [model._meta.db_table for model in apps.get_app_config("cases").get_models(include_auto_created=True)]
    with of.cursor() as cursor:
        columns_of = _postgresql if of.vendor == "postgresql" else _sqlite
        return {name: sorted(columns_of(cursor, name)) for name in names}


def _postgresql(cursor: CursorWrapper, table: str) -> Iterator[str]:
    for question in OF_POSTGRESQL:
        cursor.execute(question, [table])
        for row in cursor.fetchall():
            yield repr(row).replace(" ON public.", " ON ").replace(f" ON {PLACE}.", " ON ")


def _sqlite(cursor: CursorWrapper, table: str) -> Iterator[str]:
    """A table that was altered has its columns in another order: each is compared on its own."""
    cursor.execute(OF_SQLITE, [table])
    for (statement,) in cursor.fetchall():
        if statement.startswith("CREATE TABLE"):
            yield from parts(statement[statement.index("(") + 1 : statement.rindex(")")])
        else:
            yield statement


def parts(text: str) -> Iterator[str]:
    """What stands between the commas outside of brackets and quotes."""
    depth, quote, begun = 0, "", 0
    for place, sign in enumerate(text):
        if quote:
            quote = "" if sign == quote else quote
        elif sign in "'\"":
            quote = sign
        elif sign == "," and depth == 0:
            yield text[begun:place].strip()
            begun = place + 1
        else:
            depth += {"(": 1, ")": -1}.get(sign, 0)
    yield text[begun:].strip()


@contextmanager
def made_of_the_models() -> Iterator[BaseDatabaseWrapper]:
    """An empty place of the same kind, with a table for each model."""
    other = connection.copy(PLACE)
    if other.vendor == "sqlite":
        other.settings_dict = {**other.settings_dict, "NAME": ":memory:"}
    connections[other.alias] = other
    other.connect()
    try:
        with other.cursor() as cursor:
            if other.vendor == "postgresql":
                cursor.execute(f"CREATE SCHEMA {PLACE}")
                cursor.execute(f"SET search_path TO {PLACE}")
        with other.schema_editor() as editor:
            for model in apps.get_models():
                if model._meta.managed:
                    editor.create_model(model)
        yield other
    finally:
        with other.cursor() as cursor:
            if other.vendor == "postgresql":
                cursor.execute(f"DROP SCHEMA {PLACE} CASCADE")
        other.connection.close()
        del connections[other.alias]


def test_the_migrations_make_what_the_models_describe() -> None:
    with made_of_the_models() as other:
        migrated, described = tables(connection), tables(other)
    assert all(described.values())
    # What only one of them has, told on its own.
    assert {name: differing for name, made in described.items() if (differing := {*made} ^ {*migrated[name]})} == {}
    assert migrated == described


def test_tables_are_made_whole() -> None:
    """After each further step Django makes all models anew. `makemigrations` writes constraints beside the tables: they
    belong into the `options` of `CreateModel`, fields into its `fields`, but for what two tables say of each other."""
    operations = MigrationLoader(None).disk_migrations["cases", "0001_initial"].operations
    apart = [each for each in operations if not isinstance(each, CreateModel)]
    assert len(apart) <= 2, [each.describe() for each in apart]
