"""A fresh copy of the program, started by its one command as on a machine that has nothing of it.

Prints what each step of a start takes, and tells what is in the environment that serves beyond what it serves with.
"""

from __future__ import annotations

import json
import os
import re
import signal
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Thread

from frontend.server import environment

PORT = "8719"
BUILDS = ("biome", "tsc", "vitest")
WITHOUT_EXTRAS = """
from importlib.util import find_spec
from cases.imaging.kinds import NO_HEIC, kind_of
from cases.imaging.value import Unreadable
assert not find_spec("pip") and not find_spec("setuptools") and not find_spec("pytest")
try:
    kind_of(b"\\0\\0\\0\\x18ftypheic")
except Unreadable as refusal:
    assert str(refusal) == NO_HEIC
else:
    raise AssertionError("HEIC was taken")
"""


def check() -> list[str]:
    """What is wrong with it, a sentence each; prints when each step of the two starts began, and what they took."""
    with tempfile.TemporaryDirectory() as folder:
        program, home = Path(folder) / "program", Path(folder) / "home"
        home.mkdir()
        subprocess.run(["git", "clone", "--quiet", str(environment.ROOT), str(program)], check=True)
        for start in ("first", "second"):
            with _demonstration(program, home) as seconds:
                print(f"{start} start: {seconds:.1f} s to the first page", flush=True)
        return [*_needless(program), *_refusals(program)]


@contextmanager
def _demonstration(program: Path, home: Path) -> Iterator[float]:
    """Running, and how many seconds its first page took. No cache of this machine is used."""
    began = time.monotonic()
    python = Path(sys.base_prefix) / "bin" / "python3"
    apart = {"HOME": str(home), "XDG_CACHE_HOME": str(home), "PIP_NO_CACHE_DIR": "1", "npm_config_cache": str(home)}
    kept = {
        name: value for name, value in os.environ.items() if not name.startswith("PYTHON") and name != "DATABASE_URL"
    }
    server = subprocess.Popen(
        [python, "manage.py", "demo", "--json"],
        cwd=program,
        env={**kept, **apart, "PORT": PORT},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    # It says what it begins with as it goes; with the seconds before them these lines are what each step takes.
    reader = Thread(target=_tell, args=(server.stderr, began), daemon=True)
    reader.start()
    try:
        line = server.stdout.readline() if server.stdout else ""
        with urllib.request.urlopen(json.loads(line)["url"]) as page:  # noqa: S310 - the address that it printed
            page.read()
        yield time.monotonic() - began
    finally:
        server.send_signal(signal.SIGINT)
        server.wait()
        reader.join()


def _tell(lines: Iterable[str] | None, began: float) -> None:
    for line in lines or ():
        print(f"{time.monotonic() - began:6.1f} s  {line}", end="", flush=True)


def _needless(program: Path) -> Iterator[str]:
    """Packages and programs beyond what the lock names."""
    listed = "from importlib.metadata import distributions; print(*(each.name for each in distributions()))"
    python = program / ".venv" / "bin" / "python"
    names = subprocess.run([python, "-c", listed], capture_output=True, text=True, check=True).stdout.split()
    lock = (program / ".lock" / "run.txt").read_text(encoding="utf-8")
    pinned = set(re.findall(r"^([a-z0-9.-]+)(?:\[[^\]]*\])?==", lock, re.MULTILINE))
    yield from (
        f"{name} is in the environment that serves"
        for name in names
        if re.sub(r"[-_.]+", "-", name).lower() not in pinned
    )
    tools = program / "frontend" / "node_modules" / ".bin"
    yield from (f"{name} was installed to build the app" for name in BUILDS if (tools / name).exists())


def _refusals(program: Path) -> Iterator[str]:
    """What that environment does without the extras."""
    done = subprocess.run(
        [program / ".venv" / "bin" / "python", "-c", WITHOUT_EXTRAS],
        cwd=program,
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        yield done.stderr
