"""A database of its own for a benchmark: a file of SQLite, or where DATABASE_URL says."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager

import django


@contextmanager
def scratch() -> Iterator[None]:
    """Django set up over an empty database with all tables, gone afterwards."""
    with tempfile.TemporaryDirectory() as folder:
        os.environ.setdefault("DATABASE_URL", f"sqlite:///{folder}/scratch.sqlite3")
        os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")
        django.setup()
        from django.conf import settings
        from django.core.management import call_command
        from django.db import connection
        from django.test.utils import setup_test_environment

        setup_test_environment()
        settings.ROOT_URLCONF = "tests.bench.empty_view"
        call_command("migrate", verbosity=0)
        try:
            yield
        finally:
            call_command("flush", interactive=False, verbosity=0)
            connection.close()
