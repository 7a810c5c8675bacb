"""Starts the server as a process of its own and tells when it answers."""

from __future__ import annotations

import http.client
import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from http import HTTPStatus
from pathlib import Path

from frontend.server.environment import ROOT

LIVE = "/livez"

# The server loads in about two seconds; beyond this something is wrong.
LONGEST_START_S = 60.0
LONGEST_STOP_S = 5.0
MOST_OPEN = 4096
HEADERS_MS = 10_000
STDERR = 2


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
        """True if a server there says that it is alive."""
        line = http.client.HTTPConnection(self.host, self.port, timeout=1)
        try:
            line.request("GET", LIVE)
            return line.getresponse().status == HTTPStatus.OK
        except (OSError, http.client.HTTPException):
            return False
        finally:
            line.close()


def asked() -> Address:
    """Where HOST and PORT say to listen. Raises CannotServe."""
    port = os.environ.get("PORT", "8000")
    if not port.isdecimal() or not 0 < int(port) < 65536:
        raise CannotServe(f"PORT is {port!r}; it must be a whole number from 1 to 65535.")
    return Address(os.environ.get("HOST", "127.0.0.1"), int(port))


def command(address: Address) -> list[str]:
    """What starts the server."""
    served = [sys.executable, "-m", "granian", "--interface", "asgi", "frontend.server.asgi:application"]
    served += ["--host", address.host, "--port", str(address.port), "--no-ws", "--log-level", "warning"]
    # What is open at a time is bounded by what comes in, not by the server beneath: a slow sender holds no worker.
    served += ["--backpressure", str(MOST_OPEN), "--http1-header-read-timeout", str(HEADERS_MS)]
    return [*served, "--workers", os.environ.get("WORKERS", "1")]


def start(address: Address, settings: dict[str, str], served: Sequence[str | Path] = ()) -> subprocess.Popen[bytes]:
    """The running server, once it answers. `settings` are added to its environment, `served` starts another server.

    Raises CannotServe.
    """
    # A group of its own: Ctrl-C reaches the starter alone, which then ends the server in order. What a server says goes
    # where errors go, and what the starter says stays apart.
    server = subprocess.Popen(
        served or command(address), cwd=ROOT, env={**os.environ, **settings}, stdout=STDERR, start_new_session=True
    )
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


def wait(servers: Sequence[subprocess.Popen[bytes]]) -> None:
    """Returns when one of them has ended."""
    while all(server.poll() is None for server in servers):
        time.sleep(0.2)


def stop(server: subprocess.Popen[bytes]) -> None:
    """Ends the server; nothing of it is left running."""
    server.terminate()
    with suppress(subprocess.TimeoutExpired):
        server.wait(LONGEST_STOP_S)
    # It leads a group of its own, in which a process may still be loading what nobody will ask it for.
    with suppress(ProcessLookupError):
        os.killpg(server.pid, signal.SIGKILL)
    server.wait()
