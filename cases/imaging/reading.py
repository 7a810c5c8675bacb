"""The front door: one image read by a process of its own."""

from __future__ import annotations

import json
import signal
import subprocess
import sys
from dataclasses import asdict
from pathlib import Path
from typing import Any

from cases.domain.images import BurntInText, ImageKind, Spacing
from cases.imaging.child import DAMAGED
from cases.imaging.kinds import kind_of
from cases.imaging.value import Clean, Limits, Unreadable
from planning.encoding import decode

ROOT = Path(__file__).resolve().parents[2]
# Nothing of this process's environment: the reader needs no key and no database. One thread, for the bound on memory.
ENVIRONMENT = {"OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1", "LC_ALL": "C.UTF-8"}
BUSY = 3
TOO_LONG = "The image took too long to read. Send it in another form, or smaller."


def read(data: bytes, limits: Limits) -> Clean:
    """The image as it may be kept. Raises Unreadable, also where the reader was ended by its bounds or fell over;
    RuntimeError where it cannot run at all, which is nothing the sender can mend.
    """
    kind_of(data)  # no process is started for what is no image
    command = [sys.executable, "-B", "-E", "-s", "-m", "cases.imaging.child", json.dumps(asdict(limits))]
    try:
        done = subprocess.run(  # noqa: S603 - our own module, nothing of the sender's in the command
            command,
            input=data,
            capture_output=True,
            cwd=ROOT,
            env=ENVIRONMENT,
            # Of the clock: a busy machine gives the reader only part of its time.
            timeout=BUSY * limits.seconds,
            check=False,
        )
    except subprocess.TimeoutExpired:
        raise Unreadable(TOO_LONG) from None
    if done.returncode < 0:  # ended by a signal: by its bounds, or fallen over
        raise Unreadable(TOO_LONG if -done.returncode == signal.SIGXCPU else DAMAGED)
    if done.returncode:
        raise RuntimeError(f"The reader of images cannot run here: {done.stderr.decode(errors='replace')[-2000:]}")
    head, _, rest = done.stdout.partition(b"\n")
    told: dict[str, Any] = json.loads(head)
    if "refused" in told:
        raise Unreadable(told["refused"])
    files: dict[str, Any] = {}
    for name, length in told["files"]:
        files[name], rest = rest[:length], rest[length:]
    return _clean(told["clean"], files)


def _clean(told: dict[str, Any], files: dict[str, Any]) -> Clean:
    spacing = told.pop("spacing")
    return Clean(
        kind=ImageKind(told.pop("kind")),
        burnt_in_text=BurntInText(told.pop("burnt_in_text")),
        spacing=None if spacing is None else decode(Spacing, spacing),
        **told,
        **files,
    )
