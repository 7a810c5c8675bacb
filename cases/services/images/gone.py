"""Deleted rows leave the database's own files too, as far as the database lets them.

SQLite writes zeros over what is deleted (`secure_delete`, among its settings); what was written before still stands in
its log beside the file until that is worked off, which is done here. PostgreSQL keeps deleted rows in the table's file
until it is written anew, which `tidy` does, and in its log until that is used again: nothing here hastens that.
"""

from __future__ import annotations

import logging

from django.db import DEFAULT_DB_ALIAS, DatabaseError, connections, models, transaction
from django.db.backends.base.base import BaseDatabaseWrapper

logger = logging.getLogger(__name__)
# Whoever reads or writes meanwhile ends soon. Else the next one who deletes works it off.
WAIT_MS = 1000
LOCK_WAIT = "5s"


def from_the_file(using: str = DEFAULT_DB_ALIAS) -> None:
    """After the commit: of SQLite's log nothing is left."""
    connection = connections[using]

    def log_too() -> None:
        work_off_the_log(connection)

    if connection.vendor == "sqlite":
        transaction.on_commit(log_too, using=using, robust=True)


def work_off_the_log(connection: BaseDatabaseWrapper) -> None:
    with connection.cursor() as cursor:
        usual_ms = int(cursor.execute("PRAGMA busy_timeout").fetchone()[0])
        cursor.execute(f"PRAGMA busy_timeout={WAIT_MS}")
        try:
            cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
        finally:
            cursor.execute(f"PRAGMA busy_timeout={usual_ms}")


def from_the_table(model: type[models.Model], using: str = DEFAULT_DB_ALIAS) -> None:
    """Writes PostgreSQL's file of a table anew, with what is in it and nothing else. Not within a transaction.

    What was deleted since the oldest running transaction of the server began, in whatever database, goes the next time.
    """
    connection = connections[using]
    if connection.vendor != "postgresql" or connection.in_atomic_block:
        return
    with connection.cursor() as cursor:
        try:
            cursor.execute("SELECT set_config('lock_timeout', %s, false)", [LOCK_WAIT])
            cursor.execute(f"VACUUM (FULL) {connection.ops.quote_name(model._meta.db_table)}")
        except DatabaseError:
            # Somebody sends an image, or the role may not: the next time.
            logger.warning("the table of image parts could not be written anew", exc_info=True)
        finally:
            cursor.execute("SET lock_timeout TO DEFAULT")
