"""Makes the project's own environments from the lock files and starts the program again inside the one that serves.

Standard library only, and readable by an old Python: it runs before anything is installed, and must be able to say so.
"""

from __future__ import annotations

import fcntl
import hashlib
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from importlib import metadata, util
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
VENV = ROOT / ".venv"
BIN = VENV / "bin"
# What installs and builds lies apart: the environment that serves has none of it.
TOOLS = ROOT / ".tools"
OF_TOOLS = ("installer", "node")
# What may be installed beside the program: images in a bucket, HEIC, typefaces of East Asia, the compiled kernel.
EXTRAS = ("s3", "heic", "cjk", "fast", "client")
# The set for tests holds everything else that runs, but for the compiled kernel, which is large (190 MB).
HOLDS = {"dev": ("run", "s3", "heic", "cjk", "client", "dev")}
LACKING = "There is nothing here to install packages with. On Debian and Ubuntu: apt-get install python3-venv"


def ensure(*wanted: str, meanwhile: Callable[[], object] = lambda: None) -> None:
    """Returns inside an environment that holds the `wanted` sets; else makes it and starts again there.

    `meanwhile` is called before anything is installed. Leaves the program with a sentence when Python is too old or the
    environment cannot be made.
    """
    if sys.version_info < (3, 11):  # noqa: UP036 - this file is what tells an older Python
        here = ".".join(str(part) for part in sys.version_info[:2])
        sys.exit(f"Fourth Canal needs Python 3.11 or newer; this is Python {here} ({sys.executable}).")
    inside = Path(sys.prefix).resolve() == VENV.resolve()
    if not inside and all(_holds_versions(lock_file(each)) for each in wanted):
        return  # somebody else's environment, made from the same lock: an image, a packager
    if not _are_installed(wanted):
        meanwhile()
    install(*wanted)
    if not inside:
        os.execv(BIN / "python", [str(BIN / "python"), *sys.argv])  # noqa: S606 - our own interpreter, no shell


def extras() -> list[str]:
    """The extras asked for: by EXTRAS, and by a bucket for images. Leaves with a sentence for an unknown one."""
    asked = os.environ.get("EXTRAS", "").replace(",", " ").split()
    if unknown := [name for name in asked if name not in EXTRAS]:
        sys.exit(f"EXTRAS names {', '.join(unknown)}; the extras are: {', '.join(EXTRAS)}.")
    return [name for name in EXTRAS if name in asked or (name == "s3" and os.environ.get("IMAGE_BUCKET"))]


def install(*wanted: str) -> None:
    """Brings sets of packages, all of one environment, where they belong; nothing where they are there unchanged."""
    folder = _folder(wanted[0])
    if _are_installed(wanted):
        return
    with alone(folder):
        # Somebody else may have done it meanwhile.
        if _are_installed(wanted):
            return
        _make(folder)
        print(f"Installing what Fourth Canal needs ({', '.join(wanted)}), once ...", file=sys.stderr, flush=True)  # noqa: T201
        _install(folder, wanted)
        # Written last, so that an installation cut short is done again.
        for name in wanted:
            for each in HOLDS.get(name, (name,)):
                _stamp(each).write_text(_digest(each), encoding="utf-8")


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Nobody else of this program is at work on the folder meanwhile."""
    folder.mkdir(exist_ok=True)
    held = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(held, fcntl.LOCK_EX)
        yield
    finally:
        os.close(held)


def lock_file(wanted: str) -> Path:
    """The lock file of a set of packages."""
    return ROOT / ".lock" / f"{wanted}.txt"


def _install(folder: Path, wanted: tuple[str, ...]) -> None:
    files = [part for name in wanted for part in ("-r", str(lock_file(name)))]
    fault = LACKING
    for installer in _installers(folder / "bin" / "python", by_pip=wanted == ("installer",)):
        command = [*installer, "--quiet", "--require-hashes", *files]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        if not done.returncode:
            return
        fault = done.stderr.strip()
    sys.exit(f"{fault}\nThe packages of {', '.join(wanted)} could not be installed; see above.")


def _installers(python: Path, *, by_pip: bool) -> Iterator[list[str]]:
    """Ways to install, the fast one first; pip knows settings of this machine that the other does not."""
    if not by_pip and (fast := _fast()):
        yield [fast, "pip", "install", "--python", str(python)]
    if pip := _pip():
        # Compiled when it is imported: compiling all of it is a third of the time, and much is never imported.
        quiet = ["--disable-pip-version-check", "--no-input", "--no-compile"]
        # A tool that would have to be built is done without.
        made = ["--only-binary", ":all:"] if by_pip else []
        yield [*pip, "--python", str(python), "install", *quiet, *made]


def _fast() -> str | None:
    """The fast installer: this machine's, else brought by pip."""
    if here := shutil.which("uv"):
        return here
    try:
        install("installer")
    except SystemExit:
        return None
    return str(TOOLS / "bin" / "uv")


def _pip() -> list[str] | None:
    """The pip of the running Python, else one beside the tools; None where neither is to be had."""
    if util.find_spec("pip"):
        return [sys.executable, "-m", "pip"]
    _make(TOOLS)
    python = str(TOOLS / "bin" / "python")
    done = subprocess.run([python, "-m", "ensurepip"], capture_output=True, check=False)
    return None if done.returncode else [python, "-m", "pip"]


def _folder(wanted: str) -> Path:
    return TOOLS if wanted in OF_TOOLS else VENV


def _are_installed(wanted: tuple[str, ...]) -> bool:
    return all(_stamp(name).exists() and _stamp(name).read_text(encoding="utf-8") == _digest(name) for name in wanted)


def _stamp(wanted: str) -> Path:
    return _folder(wanted) / f".installed-{wanted}"


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


def _make(folder: Path) -> None:
    """An environment without pip, where there is none: what serves needs no installer."""
    if (folder / "bin" / "python").exists():
        return
    command = [sys.executable, "-m", "venv", "--without-pip", str(folder)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        shutil.rmtree(folder, ignore_errors=True)
        sys.exit(
            f"{(done.stdout + done.stderr).strip()}\n"
            "Python could not make a virtual environment. On Debian and Ubuntu: apt-get install python3-venv"
        )


if __name__ == "__main__":
    install(*sys.argv[1:])
    print(_folder(sys.argv[1]) / "bin")  # noqa: T201
