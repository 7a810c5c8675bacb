"""The parts of the test run, in the order in which they most quickly tell that something is wrong."""

from __future__ import annotations

import atexit
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterable
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from difflib import unified_diff
from functools import cache, partial
from pathlib import Path

import browser
import fresh as fresh_copy
import postgres
from frontend.server import build, environment, node
from frontend.server.environment import BIN, ROOT

DESCRIPTION = ROOT / "tests" / "architecture" / "openapi.yaml"
# Each process takes a run of neighbours, which share what a file sets up; who has nothing left takes over from others.
EVERY_CORE = ("--numprocesses", "auto", "--dist", "worksteal")
# A browser and its server wait half of their time.
TWICE = ("--numprocesses", str(min(8, 2 * (os.cpu_count() or 1))), "--dist", "worksteal")
DOUBLE_TAPS = "tests/journeys/test_double_taps.py"
HOSTILE_IMAGES = "tests/faults/test_hostile_images.py"
DEVICES = ("tests/faults", f"--ignore={HOSTILE_IMAGES}")
# Where the gate takes a share.
WHOLE = (
    *("tests/planning", "tests/walkers", "tests/cases/test_folds_kept.py", "tests/cases/test_imaging_other_samples.py"),
    *("tests/api/test_key_matrix.py", "tests/api/test_fhir_searched.py", "tests/cases/test_record_agrees.py"),
)
API_TYPES = build.FRONTEND / "api-types"
# Read by the tests of images.
PHOTOGRAPHS = ROOT / "tests" / "photographs"
LIGHTHOUSE = ROOT / "tests" / "lighthouse"
FHIR = ROOT / "tests" / "fhir"
OPENAPI_LINT = ROOT / "tests" / "openapi_lint"
# What is only tested where the compiled kernel is installed.
COMPILED = (
    "tests/planning/test_compiled_rows.py",
    "tests/frontend/server/test_kernel.py",
    "tests/architecture/test_licences.py",
)


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
    """The description has no warning, is what two outside judges ask for, and is the one that was agreed to."""
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
            "python3 manage.py remake"
        )
    build.install_packages(OPENAPI_LINT)
    # It would tell its makers of each run, and look for newer ones.
    alone = {"REDOCLY_TELEMETRY": "off", "REDOCLY_SUPPRESS_UPDATE_NOTICE": "true"}
    _run("npm", "run", "--silent", "lint", settings=alone, folder=OPENAPI_LINT)


def sqlite() -> None:
    build.install_packages(PHOTOGRAPHS)
    _pytest(_sqlite(), EVERY_CORE)


def whole() -> None:
    """Tests that draw, or ask for many things, with everything; the gate takes a share of it."""
    _pytest({**_sqlite(), "DRAWS": "whole"}, [*EVERY_CORE, *WHOLE])


def fast() -> None:
    """The compiled kernel against numpy's, with everything they draw. Installs its extra, which stays (190 MB)."""
    environment.install("run", "fast")
    _pytest({"DRAWS": "whole"}, COMPILED)


def postgresql() -> None:
    build.install_packages(PHOTOGRAPHS)
    _pytest(_postgresql(), [*EVERY_CORE, "--with-database", "tests/cases", "tests/api"])


def any_request() -> None:
    """Requests drawn from the API's description, on the database that refuses more of what they hold."""
    _pytest(_postgresql(), (*EVERY_CORE, "tests/any_request"), judge=True)


def any_request_twice() -> None:
    """The same on both databases, side by side: all of them, each asked by everybody: some 150,000."""
    with ThreadPoolExecutor() as pool:
        fuzz = partial(_pytest, what=("tests/any_request",), judge=True, at_once=True)
        list(pool.map(fuzz, ({**of, "DRAWS": "whole"} for of in (_sqlite(), _postgresql()))))


def clients() -> None:
    """Clients that generators make of the description: type-checked, and driven through the whole flow."""
    _pytest(_sqlite(), ("tests/clients",))


def faults() -> None:
    """Many devices on a bad line and a server that is killed, on both databases."""
    build.install_packages(build.FRONTEND)
    _drive(*DEVICES, "--fault-devices=60")


def more_faults() -> None:
    """The same with more devices and more kills."""
    build.install_packages(build.FRONTEND)
    _drive(*DEVICES, "--fault-devices=400", "--fault-pulls=8")


def hostile_images() -> None:
    """340 images that mean harm to a real server, on both databases: minutes. `SEED=341` draws others."""
    _drive(HOSTILE_IMAGES)


def _drive(*what: str) -> None:
    """Tests that start a server of their own, on both databases side by side."""
    with tempfile.TemporaryDirectory() as folder, ThreadPoolExecutor() as pool:
        file = shutil.copy(_sqlite()["MIGRATED"], f"{folder}/driven.sqlite3")
        other = postgres.another(_postgresql()["DATABASE_URL"], "driven", of="migrated")
        drive = partial(_pytest, what=("--capture=no", *what), at_once=True)
        list(pool.map(drive, ({"DATABASE_URL": f"sqlite:///{file}"}, {"DATABASE_URL": other})))


def web() -> None:
    for folder in (build.FRONTEND, API_TYPES):
        build.install_packages(folder)
    for script in ("api-types:check", "lint", "types", "test"):
        _run("npm", "run", "--silent", script, folder=build.FRONTEND)
    build.build()


def journeys() -> None:
    """The way of a case through a real browser, on a phone's screen; each process has a server of its own.

    With DRAWS=whole what is asked at the chair is measured on every screen, with every size of text.
    """
    # One of them commits, which asks the app's checker of style.
    build.install_packages(build.FRONTEND)
    _browse([*TWICE, "tests/journeys"])


def double_taps() -> None:
    """500 double taps over a tooth alone, and what they came to. `SEED=223` draws others."""
    _browse(["--capture=no", DOUBLE_TAPS], DOUBLE_TAPS="500")


def lighthouse() -> None:
    """What an outside judge says of the sign-in, a plan and the chair, with DRAWS=whole of the lists too."""
    build.install_packages(LIGHTHOUSE)
    _browse(["--log-cli-level=INFO", "tests/lighthouse"])


def fhir() -> None:
    """What outside judges say of everything that is sent as FHIR."""
    build.install_packages(FHIR)
    _pytest({**_sqlite(), "PLAYWRIGHT_NODEJS_PATH": _node()}, ["tests/fhir"])


def _node() -> str:
    return shutil.which("node", path=node.search_path()) or ""


def _browse(what: Iterable[str], **more: str) -> None:
    build.build()
    # The driver's own Node lacks a library on a bare Debian; the project's does not.
    settings = {"CHROMIUM": browser.find(), "PLAYWRIGHT_NODEJS_PATH": _node(), "DEMONSTRATION": _demonstration()}
    _pytest({**settings, **more}, what, browser=True)


def fresh() -> None:
    """A fresh copy, started twice by its one command with empty caches: what is committed, not what lies about."""
    if faults := fresh_copy.check():
        raise PartFailed("\n".join(faults))


PARTS: dict[str, Callable[[], None]] = {
    part.__name__: part
    for part in (
        lint,
        types,
        contracts,
        checks,
        openapi,
        clients,
        web,
        sqlite,
        lighthouse,
        postgresql,
        any_request,
        fhir,
        journeys,
        faults,
    )
}
# Run by name alone.
FURTHER: dict[str, Callable[[], None]] = {
    part.__name__: part for part in (whole, fast, any_request_twice, more_faults, double_taps, hostile_images, fresh)
}


# Gone when the run ends.
_kept = ExitStack()
atexit.register(_kept.close)


@cache
def _sqlite() -> dict[str, str]:
    """Settings for tests that begin with copies of a database that was migrated once, for all parts of a run."""
    file = f"{_kept.enter_context(tempfile.TemporaryDirectory())}/migrated.sqlite3"
    _migrate(f"sqlite:///{file}")
    return {"DATABASE_URL": "sqlite://:memory:", "MIGRATED": file, "IMAGES_READ": _images_read()}


@cache
def _demonstration() -> str:
    """A database that the demonstration was loaded into."""
    migrated = _sqlite()["MIGRATED"]
    file = shutil.copy(migrated, Path(migrated).with_name("demonstration.sqlite3"))
    _run(sys.executable, "manage.py", "seed", settings={"DATABASE_URL": f"sqlite:///{file}"})
    return str(file)


@cache
def _postgresql() -> dict[str, str]:
    """The same of PostgreSQL."""
    url = _kept.enter_context(postgres.throw_away())
    _migrate(postgres.another(url, "migrated"))
    return {"DATABASE_URL": url, "MIGRATED": "migrated", "IMAGES_READ": _images_read()}


@cache
def _images_read() -> str:
    """What the reader of images answered in this run: of the same picture it is the same on both databases."""
    return _kept.enter_context(tempfile.TemporaryDirectory())


def _migrate(url: str) -> None:
    _run(sys.executable, "manage.py", "migrate", "--verbosity", "0", settings={"DATABASE_URL": url})


def _pytest(
    settings: dict[str, str],
    what: Iterable[str],
    *,
    judge: bool = False,
    browser: bool = False,
    at_once: bool = False,
) -> None:
    """Runs tests without the plugins they do not need; tells the slowest."""
    needless = [*([] if judge else ["schemathesis"]), *([] if browser else ["playwright"]), "faker", "anyio"]
    without = [f"-pno:{plugin}" for plugin in needless]
    command = (sys.executable, "-m", "pytest", "--quiet", "--durations=10", *without, *what)
    _run(*command, settings=settings, at_once=at_once)


def _python(module: str, *arguments: str) -> None:
    _run(sys.executable, "-m", module, *arguments)


def _tool(name: str) -> Path:
    """A program that came with the packages of the running environment."""
    beside = Path(sys.executable).parent / name
    return beside if beside.exists() else Path(shutil.which(name) or BIN / name)


def _run(*command: str, settings: dict[str, str] | None = None, folder: Path = ROOT, at_once: bool = False) -> None:
    """Runs a program; of two `at_once` each shows what it said when it has ended, one after the other."""
    env = {**os.environ, **(settings or {})}
    # Each process of the tests would read every source anew.
    env.pop("PYTHONDONTWRITEBYTECODE", None)
    if command[0] == "npm":
        env["PATH"] = node.search_path()
    line = " ".join(["$", Path(command[0]).name, *command[1:]])
    if not at_once:
        print(line, flush=True)
    into = subprocess.PIPE if at_once else None
    done = subprocess.run(
        command, cwd=folder, env=env, check=False, stdout=into, stderr=subprocess.STDOUT if at_once else None, text=True
    )
    if at_once:
        print(f"{line}\n{done.stdout}", flush=True)
    if done.returncode:
        raise PartFailed(f"{Path(command[0]).name} {' '.join(command[1:])}: failed, see above")
