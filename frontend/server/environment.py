"""Makes the project's own environment from the lock files and starts the program again inside it.

Standard library only, and readable by an old Python: it runs before anything is installed, and must be able to say so.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import subprocess
import sys
from importlib import metadata
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
VENV = ROOT / ".venv"
BIN = VENV / "bin"
# The set for tests holds the sets for running: with images in a folder, and in a bucket.
HOLDS = {"run": ("run",), "s3": ("run", "s3"), "dev": ("run", "s3", "dev"), "node": ("node",)}


def ensure(wanted: str) -> None:
    """Returns inside an environment that holds the `wanted` set (run, s3 or dev); else makes it and starts again there.

    Leaves the program with a sentence when Python is too old or the environment cannot be made.
    """
    if sys.version_info < (3, 11):  # noqa: UP036 - this file is what tells an older Python
        here = ".".join(str(part) for part in sys.version_info[:2])
        sys.exit(f"Fourth Canal needs Python 3.11 or newer; this is Python {here} ({sys.executable}).")
    inside = Path(sys.prefix).resolve() == VENV.resolve()
    if not inside and _holds_versions(lock_file(wanted)):
        return  # somebody else's environment, made from the same lock: an image, a packager
    install(wanted)
    if not inside:
        os.execv(BIN / "python", [str(BIN / "python"), *sys.argv])  # noqa: S606 - our own interpreter, no shell


def install(wanted: str) -> None:
    """Brings a set of packages into the project's environment; does nothing when it is there unchanged."""
    if _is_installed(wanted):
        return
    if not (BIN / "python").exists():
        _make_venv()
    print(f"Installing what Fourth Canal needs ({wanted}), once ...", file=sys.stderr, flush=True)  # noqa: T201
    # Compiled when it is imported: compiling all of it is a third of the time, and much is never imported.
    options = ["--disable-pip-version-check", "--no-input", "--no-compile", "--quiet"]
    pip = [str(BIN / "python"), "-m", "pip", "install", *options]
    done = subprocess.run(
        [*pip, "--require-hashes", "-r", str(lock_file(wanted))], capture_output=True, text=True, check=False
    )
    if done.returncode:
        sys.exit(f"{done.stderr.strip()}\nThe packages of {lock_file(wanted).name} could not be installed; see above.")
    # Written last, so that an installation cut short is done again.
    for each in HOLDS[wanted]:
        _stamp(each).write_text(_digest(each), encoding="utf-8")


def lock_file(wanted: str) -> Path:
    """The lock file of a set of packages."""
    return ROOT / ".lock" / f"{wanted}.txt"


def _is_installed(wanted: str) -> bool:
    stamp = _stamp(wanted)
    return stamp.exists() and stamp.read_text(encoding="utf-8") == _digest(wanted)


def _stamp(wanted: str) -> Path:
    return VENV / f".installed-{wanted}"


def _digest(wanted: str) -> str:
    return hashlib.sha256(lock_file(wanted).read_bytes()).hexdigest()


def _holds_versions(lock: Path) -> bool:
    """True if the running interpreter has every package of the lock in its exact version."""
    # Lines with a condition (another system) are left to whoever made that environment.
    pinned = re.findall(r"^([A-Za-z0-9._-]+)(?:\[[^\]]*\])?==(\S+) \\$", lock.read_text(encoding="utf-8"), re.MULTILINE)
    try:
        return all(metadata.version(name) == version for name, version in pinned)
    except metadata.PackageNotFoundError:
        return False


def _make_venv() -> None:
    done = subprocess.run([sys.executable, "-m", "venv", str(VENV)], capture_output=True, text=True, check=False)
    if done.returncode:
        shutil.rmtree(VENV, ignore_errors=True)
        sys.exit(
            f"{(done.stdout + done.stderr).strip()}\n"
            "Python could not make a virtual environment. On Debian and Ubuntu: apt-get install python3-venv"
        )
