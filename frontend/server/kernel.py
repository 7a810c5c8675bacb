"""Which kernel estimates depths where the server computes: the compiled one where it is installed, else numpy's."""

from __future__ import annotations

import os
import subprocess
import sys

from frontend.server.env import Environment
from frontend.server.environment import ROOT
from planning.depth import kernel

COMPILE = "import sys; from planning.depth.kernel import take_compiled; sys.exit(not take_compiled())"
BY_NUMPY = "Depths are estimated by numpy."
COMPILED = "Depths are estimated by the compiled kernel."


def prepare() -> str:
    """Compiles what the server will load, before it listens. Returns the sentence that says which kernel runs."""
    if not Environment().compiled:
        return BY_NUMPY
    # In a process of its own: what compiles takes memory that the server does without, and may fail as it likes.
    done = subprocess.run([sys.executable, "-c", COMPILE], cwd=ROOT, capture_output=True, text=True, check=False)
    if not done.returncode:
        return COMPILED
    os.environ["DEPTH_KERNEL"] = "numpy"
    return f"{done.stderr}{BY_NUMPY} The compiled kernel did not load; what it said stands above."


def take() -> None:
    """Has this process compute by the kernel that was chosen."""
    if Environment().compiled:
        kernel.take_compiled()
