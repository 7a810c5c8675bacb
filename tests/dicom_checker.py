"""An outside judge of DICOM files: dciodvfy of the Debian package dicom3tools."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest


def judged(path: Path) -> tuple[str, list[str]]:
    """What kind of image it takes the file for, and the errors it finds. In the gate the judge must be there."""
    if shutil.which("dciodvfy") is None:
        if os.environ.get("CI"):
            pytest.fail("dciodvfy is missing: apt-get install dicom3tools")
        pytest.skip("dciodvfy is not installed: apt-get install dicom3tools")
    done = subprocess.run(["dciodvfy", str(path)], capture_output=True, text=True, check=False)
    lines = [line for line in done.stderr.splitlines() if not line.startswith("Warning")]
    kinds, errors = [line for line in lines if " " not in line], [line for line in lines if line.startswith("Error")]
    assert len(kinds) == 1, done.stderr
    return kinds[0], errors
