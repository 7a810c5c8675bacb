"""Ending a server that was started as a process of its own."""

from __future__ import annotations

import subprocess
import time
from contextlib import suppress
from pathlib import Path

from frontend.server import serve

PATIENCE_S = 60


def test_what_an_ended_server_has_begun_to_load_does_not_go_on() -> None:
    """It would take the machine's time from whatever comes next."""
    server = subprocess.Popen(["/bin/sh", "-c", "sleep 600 & wait"], start_new_session=True)
    _until(server.pid, has=2)
    serve.stop(server)
    _until(server.pid, has=0)


def _until(group: int, *, has: int) -> None:
    give_up_at = time.monotonic() + PATIENCE_S
    while _running(group) != has:
        assert time.monotonic() < give_up_at
        time.sleep(0.01)


def _running(group: int) -> int:
    """How many processes of a group have not ended: proc_pid_stat(5)."""
    states = []
    for process in Path("/proc").glob("[0-9]*/stat"):
        with suppress(OSError):
            state, _, its_group = process.read_text(encoding="utf-8").rpartition(")")[2].split()[:3]
            states += [state] if int(its_group) == group else []
    return sum(state not in "ZX" for state in states)
