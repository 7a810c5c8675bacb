"""A copy of the database as whoever runs a server takes one, and bringing it back. The server stands still then."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import psycopg
from django.db import connection
from psycopg import sql


class Backup:
    """The database as it is now."""

    def __init__(self, folder: Path) -> None:
        self.file = folder / "copy.sqlite3"
        self.name = str(connection.settings_dict["NAME"])
        connection.close()
        if connection.vendor == "sqlite":
            _copy(Path(self.name), self.file)
        else:
            _anew(f"{self.name}_copy", self.name)

    def bring_back(self) -> None:
        connection.close()
        if connection.vendor == "sqlite":
            _copy(self.file, Path(self.name))
        else:
            _anew(self.name, f"{self.name}_copy")


def _copy(from_: Path, to: Path) -> None:
    """https://www.sqlite.org/backup.html: every page, whatever the journal holds."""
    source, target = sqlite3.connect(from_), sqlite3.connect(to)
    try:
        source.backup(target)
    finally:
        source.close()
        target.close()


def _anew(name: str, like: str) -> None:
    parameters = connection.get_connection_params()
    place = {key: parameters[key] for key in ("host", "port", "user", "password") if parameters.get(key)}
    with psycopg.connect(dbname="template1", autocommit=True, **place) as other:
        other.execute(sql.SQL("DROP DATABASE IF EXISTS {} WITH (FORCE)").format(sql.Identifier(name)))
        other.execute(sql.SQL("CREATE DATABASE {} TEMPLATE {}").format(sql.Identifier(name), sql.Identifier(like)))
