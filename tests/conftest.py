"""What every test starts from."""

from __future__ import annotations

import gc
import os
import sqlite3
from contextlib import closing
from typing import Any

import pytest
from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.backends.signals import connection_created
from hypothesis import HealthCheck, settings
from whitenoise.middleware import WhiteNoiseMiddleware

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")

from django.conf import settings as django_settings

# Times of a shared machine prove nothing about a property; the gate draws the same examples on every run.
settings.register_profile("here", deadline=None)
settings.register_profile(
    "gate", deadline=None, derandomize=True, database=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("gate" if os.environ.get("CI") else "here")

# Looking for garbage after every 700 new objects takes a sixth of the time.
gc.set_threshold(50_000, 20, 20)

# The real hashers are slow on purpose, and no test is about them.
django_settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
# Images of tests stay in memory.
django_settings.STORAGES["images"] = {"BACKEND": "django.core.files.storage.InMemoryStorage"}

# Every client of a test builds the middleware anew. What the installed packages bring to be served is looked up once.
look_up = WhiteNoiseMiddleware.add_files_from_finders
looked_up: dict[str, Any] = {}


def look_up_once(served: WhiteNoiseMiddleware) -> None:
    if not looked_up:
        own, served.files = served.files, {}
        look_up(served)
        looked_up.update(served.files)
        served.files = own
    served.files.update(looked_up)


WhiteNoiseMiddleware.add_files_from_finders = look_up_once

# A database that was migrated from nothing: each process of the tests begins with a copy. Without one it migrates.
MIGRATED = os.environ.get("MIGRATED", "")
DATABASE = django_settings.DATABASES["default"]


def fill(connection: BaseDatabaseWrapper, **_: Any) -> None:
    """Copies it into SQLite's database in memory, once that is there."""
    if "mode=memory" in str(connection.settings_dict["NAME"]):
        connection_created.disconnect(fill)
        with closing(sqlite3.connect(MIGRATED)) as made:
            made.backup(connection.connection)


if MIGRATED and "postgresql" in DATABASE["ENGINE"]:
    DATABASE.setdefault("TEST", {})["TEMPLATE"] = MIGRATED
elif MIGRATED:
    connection_created.connect(fill)


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--with-database", action="store_true", help="only tests for which the database matters")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leaves out, if so asked, what comes out alike on every database: what may reach none, or says so."""
    if config.getoption("--with-database"):
        kept = [item for item in items if asks_the_database(item)]
        config.hook.pytest_deselected(items=[item for item in items if item not in set(kept)])
        items[:] = kept


def pytest_collection_finish() -> None:
    """What was collected stays to the end: no search for garbage goes through it."""
    gc.freeze()


def asks_the_database(item: pytest.Item) -> bool:
    fixtures: list[str] = getattr(item, "fixturenames", [])
    if item.get_closest_marker("one_database"):
        return False
    return item.get_closest_marker("django_db") is not None or not {"db", "transactional_db"}.isdisjoint(fixtures)
