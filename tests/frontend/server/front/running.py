"""A real server, as the demonstration starts it."""

from __future__ import annotations

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from subprocess import Popen

from frontend.server import serve
from frontend.server.serve import Address


def settings(records: Path) -> dict[str, str]:
    """What a server on this database is told."""
    own = {"DATABASE_URL": f"sqlite:///{records}", "LOG_LEVEL": "ERROR", "SECRET_KEY": "k" * 50}
    return own | {"IMAGE_FOLDER": str(records.parent / "images")}


@contextmanager
def running(records: Path) -> Iterator[tuple[Address, Popen[bytes]]]:
    """One on a free port, ended at last."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        address = Address("127.0.0.1", int(probe.getsockname()[1]))
    server = serve.start(address, settings(records))
    try:
        yield address, server
    finally:
        serve.stop(server)
