"""Several at once, each with a connection of its own."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Barrier
from typing import Any

import pytest
from django.db import connection

from cases.domain.errors import CaseError


@pytest.fixture
def database_of_many(transactional_db: None, tmp_path: Path) -> Iterator[None]:
    """A database that connections share as they do in service.

    SQLite's in-memory database for tests has one lock and no waiting, so a copy of it in a file takes its place.
    """
    if connection.vendor != "sqlite":
        yield
        return
    file = tmp_path / "at-once.sqlite3"
    with connection.cursor() as cursor:
        cursor.execute("VACUUM INTO %s", [str(file)])
    kept, name = connection.connection, connection.settings_dict["NAME"]
    connection.connection, connection.settings_dict["NAME"] = None, str(file)
    yield
    connection.close()
    connection.connection, connection.settings_dict["NAME"] = kept, name


def at_once(*acts: Callable[[], Any]) -> list[Any]:
    """What each act came to, a refusal included; all start together."""
    barrier = Barrier(len(acts))

    def run(act: Callable[[], Any]) -> Any:
        barrier.wait(10)
        try:
            return act()
        except CaseError as refusal:
            return refusal
        finally:
            connection.close()

    with ThreadPoolExecutor(len(acts)) as pool:
        return list(pool.map(run, acts))
