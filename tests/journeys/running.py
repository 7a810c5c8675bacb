"""The built app with a server and a database of its own, and the browser that it is shown in."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import requests
from playwright.sync_api import Page

from tests.bucket import free_port

ROOT = Path(__file__).resolve().parents[2]
NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
# No sandbox: tests run as root in a container. The rest keeps the browser off the network.
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
# A database that the demonstration was loaded into once; without one each process loads its own.
DEMONSTRATION = os.environ.get("DEMONSTRATION", "")


def chromium() -> str:
    program = os.environ.get("CHROMIUM") or next((path for name in NAMES if (path := shutil.which(name))), None)
    assert program, "Chromium is needed: apt-get install chromium-headless-shell (or set CHROMIUM)."
    return program


def own(database: Path) -> dict[str, str]:
    """What a command of the server's is told, so that it works with this demonstration."""
    return {
        "DATABASE_URL": f"sqlite:///{database}",
        "DJANGO_SETTINGS_MODULE": "tests.journeys.settings",
        "IMAGE_FOLDER": str(database.parent / "images"),
    }


@contextmanager
def running(folder: Path) -> Iterator[dict[str, Any]]:
    """The demonstration: {"url", "database" (a file), "sign_ins": [{name, username, password, role}]}."""
    database = folder / "demo.sqlite3"
    if DEMONSTRATION:
        shutil.copy(DEMONSTRATION, database)
    env = {**os.environ, **own(database), "PORT": str(free_port()), "HOST": "127.0.0.1"}
    command = [sys.executable, "manage.py", "demo", "--json"]
    with subprocess.Popen(command, cwd=ROOT, env=env, stdout=subprocess.PIPE, text=True) as started:
        assert started.stdout is not None
        line = started.stdout.readline()
        assert line, "The demonstration did not start; what it said stands above."
        try:
            demo = {**json.loads(line), "database": str(database)}
            _sign_in_once(demo)
            yield demo
        finally:
            started.terminate()
            started.wait(20)


def _sign_in_once(demo: dict[str, Any]) -> None:
    """The first to sign in waits for the process in which passwords are hashed to load; no journey is about that."""
    with requests.Session() as nobody:
        address = f"{demo['url']}/api/v1/session"
        nobody.get(address, timeout=60)
        who = {name: demo["sign_ins"][0][name] for name in ("username", "password")}
        token = {"X-CSRFToken": nobody.cookies["csrftoken"], "Referer": demo["url"]}
        assert nobody.post(address, json=who, headers=token, timeout=60).ok


# A sheet that was closed gives its place in the history back, which takes the browser a moment.
NOTHING_GIVEN_BACK = "() => !history.state?.sheet || document.querySelector('dialog[open]') !== null"


def unhurried(page: Page) -> Page:
    """What is asked of the browser itself no app can hold up; nobody asks it within milliseconds of closing a sheet."""

    def after_sheets(does: Callable[..., Any]) -> Callable[..., Any]:
        def done(*arguments: Any, **named: Any) -> Any:
            page.wait_for_function(NOTHING_GIVEN_BACK)
            return does(*arguments, **named)

        return done

    for name in ("goto", "reload", "go_back"):
        setattr(page, name, after_sheets(getattr(page, name)))
    return page
