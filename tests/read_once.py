"""Records' tests read the same image in a process of its own once, and have its answer again after that.

That reading gives the same each time, and whatever hinders it, is tested with the reader (`tests/cases/test_imaging*`).
"""

from __future__ import annotations

import os
import subprocess
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory
from uuid import uuid4

from cases.domain.images import ImageKind
from cases.imaging import reading
from cases.imaging.kinds import kind_of

_own = TemporaryDirectory()
# The parts of a gate's run share what they read.
FOLDER = Path(os.environ.get("IMAGES_READ") or _own.name)
run = reading._run


def run_once(data: bytes, arguments: list[str], seconds: int) -> subprocess.CompletedProcess[bytes]:
    """What the reader answers to the same bytes within the same limits, where it came to an end."""
    limits, uids = arguments
    # No other kind is kept under UIDs.
    named = uids if kind_of(data) is ImageKind.DICOM else ""
    kept = FOLDER / sha256(f"{limits}{named}".encode() + data).hexdigest()
    if kept.exists():
        return subprocess.CompletedProcess([], 0, kept.read_bytes(), b"")
    done = run(data, arguments, seconds)
    if done.returncode == 0:
        whole = FOLDER / str(uuid4())
        whole.write_bytes(done.stdout)
        whole.replace(kept)
    return done
