"""Which kernel estimates depths where the server computes: the compiled one where it is installed, else numpy's."""

from __future__ import annotations

import os
import stat
import subprocess
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

from frontend.server.env import Environment
from frontend.server.environment import ROOT
from planning.depth import kernel

KEPT_IN = "NUMBA_CACHE_DIR"
COMPILE = "import sys; from planning.depth.kernel import take_compiled; sys.exit(not take_compiled())"
BY_NUMPY = "Depths are estimated by numpy."
COMPILED = "Depths are estimated by the compiled kernel."


def prepare() -> str:
    """Compiles what the server will load, before it listens. Returns the sentence that says which kernel runs."""
    if not Environment().compiled:
        return BY_NUMPY
    if not os.environ.get(KEPT_IN) and not any(_writable(folder) for folder in _usual()):
        with suppress(OSError):
            os.environ[KEPT_IN] = str(_private())
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


def _usual() -> tuple[Path, ...]:
    """Where numba keeps what it compiled, if nobody says otherwise: beside the code, or with the user."""
    of_user = Path(os.environ.get("XDG_CACHE_HOME") or "~/.cache").expanduser()
    return Path(kernel.__file__).parent / "__pycache__", of_user / "numba"


def _writable(folder: Path) -> bool:
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            return True
    except OSError:
        return False


def _private() -> Path:
    """The folder for temporary files that this user alone can look into, so that no code of others is loaded from it.
    It is the same at each start; a new one where somebody else was first to take its name. Raises OSError.
    """
    folder = Path(tempfile.gettempdir(), f"depth-kernel-{os.getuid()}")
    with suppress(FileExistsError):
        folder.mkdir(mode=stat.S_IRWXU)
    there = folder.lstat()
    own = stat.S_ISDIR(there.st_mode) and there.st_uid == os.getuid()
    if own and stat.S_IMODE(there.st_mode) == stat.S_IRWXU:
        return folder
    return Path(tempfile.mkdtemp(prefix=f"{folder.name}-"))
