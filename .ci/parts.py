"""The parts of the test run, in the order in which they most quickly tell that something is wrong."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable
from difflib import unified_diff
from pathlib import Path

import browser
import postgres
from frontend.server import build, node
from frontend.server.environment import BIN, ROOT

DESCRIPTION = ROOT / "tests" / "architecture" / "openapi.yaml"
EVERY_CORE = ("--numprocesses", "auto")
# What touches no database is run once: pytest-django lets none of the others reach one.
WITH_DATABASE = (
    *("tests/cases", "tests/api", "tests/frontend"),
    "--ignore-glob=tests/cases/test_imaging*",
    "--ignore=tests/cases/test_webp_size.py",
)
API_TYPES = build.FRONTEND / "api-types"
# Read by the tests of images.
PHOTOGRAPHS = ROOT / "tests" / "photographs"


class PartFailed(Exception):
    """What was run has failed; its output stands above."""


def lint() -> None:
    _python("ruff", "check", ".")
    _python("ruff", "format", "--check", ".")


def types() -> None:
    _python("mypy")


def contracts() -> None:
    _run(str(_tool("lint-imports")), "--no-cache")


def checks() -> None:
    _run(sys.executable, "manage.py", "check", "--fail-level", "WARNING")
    _run(sys.executable, "manage.py", "makemigrations", "--check", "--dry-run")


def openapi() -> None:
    """The description has no warning, is valid for an outside judge, and is the one that was agreed to."""
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder) / "openapi.yaml"
        _run(sys.executable, "manage.py", "spectacular", "--validate", "--fail-on-warn", "--file", str(made))
        _python("openapi_spec_validator", str(made))
        now = made.read_text(encoding="utf-8").splitlines()
    agreed = DESCRIPTION.read_text(encoding="utf-8").splitlines() if DESCRIPTION.exists() else []
    if now != agreed:
        difference = "\n".join(list(unified_diff(agreed, now, "agreed", "now", lineterm=""))[:80])
        raise PartFailed(
            f"{difference}\nThe API's description has changed. What was published is only added to. To agree to it:\n"
            f"python3 manage.py spectacular --file {DESCRIPTION.relative_to(ROOT)}"
        )


def sqlite() -> None:
    build.install_packages(PHOTOGRAPHS)
    _pytest({"DATABASE_URL": "sqlite://:memory:"}, *EVERY_CORE)


def postgresql() -> None:
    build.install_packages(PHOTOGRAPHS)
    with postgres.throw_away() as url:
        _pytest({"DATABASE_URL": url}, *EVERY_CORE, *WITH_DATABASE)


def faults() -> None:
    """Many devices on a bad line and a server that is killed, on both databases."""
    build.install_packages(build.FRONTEND)
    with tempfile.TemporaryDirectory() as folder:
        _pytest({"DATABASE_URL": f"sqlite:///{folder}/faults.sqlite3"}, "--capture=no", "tests/faults")
    with postgres.throw_away() as url:
        _pytest({"DATABASE_URL": url}, "--capture=no", "tests/faults")


def web() -> None:
    for folder in (build.FRONTEND, API_TYPES):
        build.install_packages(folder)
    for script in ("api-types:check", "lint", "types", "test"):
        _run("npm", "run", "--silent", script, folder=build.FRONTEND)
    build.build()


def journeys() -> None:
    """The way of a case through a real browser, on a phone's screen."""
    build.build()
    # The driver's own Node lacks a library on a bare Debian; the project's does not.
    own_node = shutil.which("node", path=node.search_path()) or ""
    _pytest({"CHROMIUM": browser.find(), "PLAYWRIGHT_NODEJS_PATH": own_node}, "tests/journeys")


PARTS: dict[str, Callable[[], None]] = {
    part.__name__: part for part in (lint, types, contracts, checks, openapi, sqlite, web, postgresql, faults, journeys)
}


def _pytest(settings: dict[str, str], *what: str) -> None:
    _run(sys.executable, "-m", "pytest", "--quiet", *what, settings=settings)


def _python(module: str, *arguments: str) -> None:
    _run(sys.executable, "-m", module, *arguments)


def _tool(name: str) -> Path:
    """A program that came with the packages of the running environment."""
    beside = Path(sys.executable).parent / name
    return beside if beside.exists() else Path(shutil.which(name) or BIN / name)


def _run(*command: str, settings: dict[str, str] | None = None, folder: Path = ROOT) -> None:
    env = {**os.environ, **(settings or {})}
    if command[0] == "npm":
        env["PATH"] = node.search_path()
    print("$", " ".join(Path(command[0]).name if part is command[0] else part for part in command), flush=True)
    if subprocess.run(command, cwd=folder, env=env, check=False).returncode:
        raise PartFailed(f"{Path(command[0]).name} {' '.join(command[1:])}: failed, see above")
