"""Builds the phone front end where it is missing or older than its sources. Standard library only."""

from __future__ import annotations

import atexit
import hashlib
import os
import subprocess
import sys
from pathlib import Path

from frontend.server import environment, node

FRONTEND = environment.ROOT / "frontend"
DIST = FRONTEND / "dist"
WITHOUT_TESTS = " without tests"
INPUTS = ("src", "public", "index.html", "package.json", "package-lock.json", "vite.config.ts", "tsconfig.json")


def begin() -> None:
    """Begins to build in a process of its own, for which `build` waits. It outlives a start anew, not a failed one."""
    started = subprocess.Popen([sys.executable, "-m", "frontend.server.build"], cwd=environment.ROOT)
    atexit.register(started.terminate)


def build() -> None:
    """The built front end is in `dist` and made from the sources as they are; quick when it was."""
    stamp = environment.ROOT / ".data" / "frontend-built-from"
    with environment.alone(FRONTEND):
        sources = _digest(*(FRONTEND / name for name in INPUTS))
        if (DIST / "index.html").exists() and _read(stamp) == sources:
            return
        _install(FRONTEND, tests=False)
        print("Building the front end ...", file=sys.stderr, flush=True)  # noqa: T201
        npm("run", "build", "--silent")
        stamp.parent.mkdir(exist_ok=True)
        stamp.write_text(sources, encoding="utf-8")


def install_packages(folder: Path = FRONTEND, *, tests: bool = True) -> None:
    """A folder's `node_modules` as its lock file says, with those for tests where they are wanted or were there before;
    quick when it is so already."""
    with environment.alone(folder):
        _install(folder, tests=tests)


def _install(folder: Path, *, tests: bool) -> None:
    stamp = folder / "node_modules" / ".installed-from"
    lock = _digest(folder / "package-lock.json")
    without = lock + WITHOUT_TESTS
    installed = _read(stamp)
    if installed == lock or (not tests and installed == without):
        return
    tests = tests or (bool(installed) and not installed.endswith(WITHOUT_TESTS))
    print(f"Installing the packages of {folder.name}/package-lock.json, once ...", file=sys.stderr, flush=True)  # noqa: T201
    fewer = [] if tests else ["--omit=dev"]
    npm("ci", "--no-audit", "--no-fund", "--loglevel=error", *fewer, folder=folder)
    stamp.write_text(lock if tests else without, encoding="utf-8")


def npm(*arguments: str, folder: Path = FRONTEND) -> None:
    """Runs npm in a folder; leaves the program with its output when it fails."""
    path = node.search_path()
    done = subprocess.run(
        ["npm", *arguments],
        cwd=folder,
        env={**os.environ, "PATH": path},
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        sys.exit(f"{done.stdout}{done.stderr}\nnpm {' '.join(arguments)} failed in {folder.name}/; see above.")


def _read(stamp: Path) -> str:
    return stamp.read_text(encoding="utf-8") if stamp.exists() else ""


def _digest(*inputs: Path) -> str:
    digest = hashlib.sha256()
    for source in inputs:
        files = sorted(path for path in source.rglob("*") if path.is_file()) if source.is_dir() else [source]
        for file in files:
            digest.update(os.path.relpath(file, FRONTEND).encode() + b"\0" + file.read_bytes())
    return digest.hexdigest()


if __name__ == "__main__":
    build()
