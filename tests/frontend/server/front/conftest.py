"""The real server, as the demonstration starts it, on a database of its own."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from frontend.server import serve
from frontend.server.environment import ROOT
from frontend.server.serve import Address


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The server's database."""
    return tmp_path_factory.mktemp("served") / "served.sqlite3"


@pytest.fixture(scope="module")
def served(records: Path) -> Iterator[Address]:
    own = {"DATABASE_URL": f"sqlite:///{records}", "LOG_LEVEL": "ERROR", "SECRET_KEY": "k" * 50}
    own["IMAGE_FOLDER"] = str(records.parent / "images")
    migrate = [sys.executable, "manage.py", "migrate", "--verbosity", "0"]
    subprocess.run(migrate, cwd=ROOT, env={**os.environ, **own}, check=True)
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        address = Address("127.0.0.1", int(probe.getsockname()[1]))
    server = serve.start(address, own)
    yield address
    serve.stop(server)
