"""The real server on a database of its own."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from frontend.server.environment import ROOT
from frontend.server.serve import Address
from tests.conftest import MIGRATED
from tests.frontend.server.front.running import running, settings


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The server's database."""
    return tmp_path_factory.mktemp("served") / "served.sqlite3"


@pytest.fixture(scope="module")
def served(records: Path) -> Iterator[Address]:
    if MIGRATED:
        shutil.copy(MIGRATED, records)
    else:
        migrate = [sys.executable, "manage.py", "migrate", "--verbosity", "0"]
        subprocess.run(migrate, cwd=ROOT, env={**os.environ, **settings(records)}, check=True)
    with running(records) as (address, _):
        yield address
