"""Starts the server as a process of its own and tells when it answers."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
from contextlib import suppress
from dataclasses import dataclass

from frontend.server.environment import ROOT

# The server loads in about a second; beyond this something is wrong.
LONGEST_START_S = 30.0
LONGEST_STOP_S = 5.0


class CannotServe(Exception):
    """The server cannot be reached where it was asked for; the sentence says why."""


@dataclass(frozen=True, slots=True)
class Address:
    """Where the server listens."""

    host: str
    port: int

    @property
    def url(self) -> str:
        """What to type into a browser on this machine."""
        return f"http://{'127.0.0.1' if self.host == '0.0.0.0' else self.host}:{self.port}"  # noqa: S104

    def refuse_taken(self) -> None:
        """Raises CannotServe when somebody else listens there or nobody may."""
        with socket.socket() as probe:
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                probe.bind((self.host, self.port))
            except OSError as refused:
                raise CannotServe(
                    f"Port {self.port} on {self.host} is not free ({refused.strerror}). "
                    f"Choose another, for example PORT={self.port + 1}."
                ) from refused

    def answers(self) -> bool:
        """True if something accepts a connection there."""
        with suppress(OSError), socket.create_connection((self.host, self.port), timeout=1):
            return True
        return False


def start(address: Address, settings: dict[str, str]) -> subprocess.Popen[bytes]:
    """The running server, once it answers. `settings` are added to its environment. Raises CannotServe."""
    # Every view is synchronous. Served as such, an empty request took 3 ms under eight clients; by way of ASGI, 19 ms.
    command = [sys.executable, "-m", "granian", "--interface", "wsgi", "frontend.server.wsgi:application"]
    command += ["--host", address.host, "--port", str(address.port), "--no-ws", "--log-level", "warning"]
    command += ["--workers", os.environ.get("WORKERS", "1"), "--blocking-threads", "4"]
    # A group of its own: Ctrl-C reaches the starter alone, which then ends the server in order.
    server = subprocess.Popen(command, cwd=ROOT, env={**os.environ, **settings}, start_new_session=True)
    try:
        give_up_at = time.monotonic() + LONGEST_START_S
        while time.monotonic() < give_up_at and server.poll() is None:
            if address.answers():
                return server
            time.sleep(0.05)
    except BaseException:
        stop(server)
        raise
    stop(server)
    raise CannotServe(f"The server did not come up on {address.url}; what it said stands above.")


def stop(server: subprocess.Popen[bytes]) -> None:
    """Ends the server; nothing of it is left running."""
    server.terminate()
    try:
        server.wait(LONGEST_STOP_S)
    except subprocess.TimeoutExpired:
        server.kill()
        server.wait()
