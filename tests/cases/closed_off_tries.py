"""What the tests do in a process that was closed off. Run as a module: `tries <folder> <port> <machine>` says which
tries failed and how; `reads open|closed <folder>...` what becomes of each file."""

from __future__ import annotations

import hashlib
import json
import os
import socket
import sys
import warnings
from collections.abc import Callable
from pathlib import Path

from cases.domain.images import DataSetUids
from cases.imaging import closed_off, dicom, pictures
from cases.imaging.faults import sentence_for
from cases.imaging.kinds import kind_of
from cases.imaging.value import Limits

UIDS = DataSetUids(study="2.25.1", series="2.25.2", instance="2.25.3")
LIMITS = Limits(
    most_px=50_000_000,
    longest_side_px=12_000,
    computing_seconds=60,
    clock_seconds=60,
    memory_bytes=1_000_000_000,
)


def tries(folder: str, port: str, machine: str) -> None:
    acts: dict[str, Callable[[], object]] = {
        "read": lambda: os.open("/etc/hostname", os.O_RDONLY),
        "write": lambda: os.open(f"{folder}/new", os.O_WRONLY | os.O_CREAT),
        "list": lambda: os.listdir(folder),
        "remove": lambda: os.unlink(f"{folder}/there"),
        "rename": lambda: os.rename(f"{folder}/there", f"{folder}/away"),
        "connect": lambda: socket.create_connection(("127.0.0.1", int(port)), 2),
        "send": lambda: socket.socket(socket.AF_INET, socket.SOCK_DGRAM).sendto(b"x", ("127.0.0.1", int(port))),
        "start": lambda: os.execv(sys.executable, ["python", "-c", ""]),  # noqa: S606 - it must fail
        "fork": fork,
        "signal": lambda: os.kill(os.getppid(), 0),
        "memory": lambda: bytearray(LIMITS.memory_bytes),
    }
    closed_off.bound(LIMITS)
    outcomes: dict[str, object] = {"closed off": closed_off.close(machine or closed_off.MACHINE)}
    for name, act in acts.items():
        if name in ("read", "write", "list", "connect", "send", "memory") or not machine:
            try:
                act()
            except (OSError, MemoryError) as error:
                outcomes[name] = type(error).__name__
    say(json.dumps(outcomes))


def say(line: str) -> None:
    sys.stdout.write(line + "\n")


def fork() -> None:
    if os.fork() == 0:
        os._exit(0)


def reads(how: str, *folders: str) -> None:
    warnings.simplefilter("ignore")
    files = [path.read_bytes() for folder in folders for path in sorted(Path(folder).glob("*.*")) if path.is_file()]
    if how == "closed":
        closed_off.bound(LIMITS)
        closed_off.close()
    for data in files:
        try:
            kind = kind_of(data)
            clean = dicom.clean(data, LIMITS, UIDS) if kind == "dicom" else pictures.clean(data, kind, LIMITS)
            say(f"{kind} {hashlib.sha256(clean.view + clean.thumbnail).hexdigest()}")
        except Exception as error:
            say(sentence_for(error))


if __name__ == "__main__":
    if sys.argv[1] == "tries":
        tries(*sys.argv[2:])
    else:
        reads(*sys.argv[2:])
