"""The front door: one image read by a process of its own."""

from __future__ import annotations

import json
import logging
import signal
import subprocess
import sys
from dataclasses import asdict
from pathlib import Path
from typing import Any

from cases.domain.images import BurntInText, DataSetUids, ImageKind, Spacing
from cases.imaging.faults import FELL_OVER, TOO_LONG
from cases.imaging.kinds import kind_of
from cases.imaging.turns import a_turn
from cases.imaging.value import Clean, Limits, ReaderBusy, Unreadable
from planning.foundation.encoding import decode

logger = logging.getLogger(__name__)
ROOT = Path(__file__).resolve().parents[2]
# Nothing of this process's environment: the reader needs no key and no database. One thread and one heap, for the
# bound on memory.
ENVIRONMENT = {"OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1", "MALLOC_ARENA_MAX": "1", "LC_ALL": "C.UTF-8"}


def read(data: bytes, limits: Limits, uids: DataSetUids) -> Clean:
    """The image as it may be kept; a DICOM data set under the UIDs.

    Raises Unreadable, also where the reader was ended by its bounds or fell over; ReaderBusy where it found no time;
    RuntimeError where it cannot run at all, which is nothing the sender can mend.
    """
    kind_of(data)  # no process is started for what is no image
    done = _run(data, [json.dumps(asdict(each)) for each in (limits, uids)], limits.clock_seconds)
    if done.returncode == -signal.SIGXCPU:
        raise Unreadable(TOO_LONG)
    if done.returncode == -signal.SIGKILL:
        raise ReaderBusy  # nothing here kills: the machine had no memory left
    ready, _, answer = done.stdout.partition(b"\n")
    if done.returncode > 0 and not ready:
        raise RuntimeError(f"The reader of images cannot run here: {done.stderr.decode(errors='replace')[-2000:]}")
    if done.returncode:
        raise Unreadable(FELL_OVER)
    if not json.loads(ready)["closed_off"]:
        logger.warning("images are read within bounds, but this system does not close the reader off from its calls")
    head, _, rest = answer.partition(b"\n")
    about: dict[str, Any] = json.loads(head)
    if "refused" in about:
        raise Unreadable(about["refused"])
    files: dict[str, Any] = {}
    for name, length in about["files"]:
        files[name], rest = rest[:length], rest[length:]
    return _clean(about["clean"], files)


def _run(data: bytes, arguments: list[str], seconds: int) -> subprocess.CompletedProcess[bytes]:
    command = [sys.executable, "-B", "-E", "-s", "-m", "cases.imaging.child", *arguments]
    with a_turn() as place:
        try:
            return subprocess.run(  # noqa: S603 - our own module, nothing of the sender's in the command
                command,
                input=data,
                capture_output=True,
                cwd=ROOT,
                env=ENVIRONMENT,
                # It holds its place until it ends, also where this process ended before it.
                pass_fds=[place],
                timeout=seconds,
                check=False,
            )
        except subprocess.TimeoutExpired:
            # Not by its computing, which is bounded lower: the machine gave it no time.
            raise ReaderBusy from None


def _clean(about: dict[str, Any], files: dict[str, Any]) -> Clean:
    spacing = about.pop("spacing")
    return Clean(
        kind=ImageKind(about.pop("kind")),
        burnt_in_text=BurntInText(about.pop("burnt_in_text")),
        spacing=None if spacing is None else decode(Spacing, spacing),
        **about,
        **files,
    )
