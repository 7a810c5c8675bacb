"""Journeys: the built app in a real browser against a server of its own, with the demonstration's people and cases."""

from __future__ import annotations

import json
import os
import shutil
import socket
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, Literal

import pytest
import requests
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, ViewportSize, expect

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
PHONE: ViewportSize = {"width": 360, "height": 740}
TALL_PHONE = {"width": 412, "height": 915}
LAPTOP = {"width": 1280, "height": 800}
# On a machine that does other things as well; what has to be quicker says so itself.
expect.set_options(timeout=10_000)
Scheme = Literal["light", "dark"]
# A database that the demonstration was loaded into once; without one each process loads its own.
DEMONSTRATION = os.environ.get("DEMONSTRATION", "")
# What takes longest, so that at the end no process is left alone; but before many cases have pushed the demonstration's
# own off the first page of a list, what looks for those.
FIRST = (
    *("double_taps", "daily", "nothing_lost", "pictures", "bad_lines", "starting", "long_way", "card", "visits"),
    *("what_is_asked", "four_canals", "emergency"),
)
PROCESSES = int(os.environ.get("PYTEST_XDIST_WORKER_COUNT", "1"))
Opens = Callable[..., Page]
Reopens = Callable[[], BrowserContext]


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Dealt out: each process is given one stretch of the list, and begins at its beginning."""
    ranks = {f"test_{name}": rank for rank, name in enumerate(FIRST)}
    items.sort(key=lambda item: ranks.get(item.path.stem, len(ranks)))
    items[:] = [item for start in range(PROCESSES) for item in items[start::PROCESSES]]


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args: dict[str, Any]) -> dict[str, Any]:
    found = os.environ.get("CHROMIUM") or next((path for name in NAMES if (path := shutil.which(name))), None)
    if not found:
        pytest.fail("The browser journeys need Chromium: apt-get install chromium-headless-shell (or set CHROMIUM).")
    return {**browser_type_launch_args, "executable_path": found, "args": FLAGS, "headless": True}


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[str, Any]]:
    """The demonstration, running: {"url", "database" (a file), "sign_ins": [{name, username, password, role}]}."""
    folder = tmp_path_factory.mktemp("journeys")
    database = folder / "demo.sqlite3"
    if DEMONSTRATION:
        shutil.copy(DEMONSTRATION, database)
    own = {"DATABASE_URL": f"sqlite:///{database}", "IMAGE_FOLDER": str(folder / "images")}
    env = {**os.environ, **own, "PORT": str(free_port()), "HOST": "127.0.0.1"}
    command = [sys.executable, "manage.py", "demo", "--json"]
    with subprocess.Popen(command, cwd=ROOT, env=env, stdout=subprocess.PIPE, text=True) as started:
        assert started.stdout is not None
        line = started.stdout.readline()
        if not line:
            pytest.fail("The demonstration did not start; what it said stands above.")
        try:
            told = {**json.loads(line), "database": str(database)}
            _sign_in_once(told)
            yield told
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


@pytest.fixture(scope="session")
def base_url(demo: dict[str, Any]) -> str:
    return str(demo["url"])


@pytest.fixture
def open_phone(browser: Browser, base_url: str) -> Iterator[Opens]:
    """Opens a phone with cookies and a store of its own: `open_phone(scheme="dark", viewport=TALL_PHONE)`."""
    yield from _opener(browser, base_url, viewport=PHONE, has_touch=True, is_mobile=True, device_scale_factor=2)


@pytest.fixture
def open_laptop(browser: Browser, base_url: str) -> Iterator[Opens]:
    """Opens a laptop of its own: `open_laptop(scheme="dark")` gives its page."""
    yield from _opener(browser, base_url, viewport=LAPTOP)


@pytest.fixture
def reopen(
    playwright: Playwright, browser_type_launch_args: dict[str, Any], base_url: str, tmp_path: Path
) -> Iterator[Reopens]:
    """Opens the browser of one phone, each time on the same profile."""
    opened: list[BrowserContext] = []

    def opens() -> BrowserContext:
        context = playwright.chromium.launch_persistent_context(
            tmp_path / "profile",
            **browser_type_launch_args,
            base_url=base_url,
            viewport=PHONE,
            has_touch=True,
            is_mobile=True,
            reduced_motion="reduce",
            locale="en-GB",
        )
        context.set_default_timeout(10_000)
        opened.append(context)
        return context

    yield opens
    for context in opened:
        context.close()


@pytest.fixture
def phone(open_phone: Opens) -> Page:
    return open_phone()


@pytest.fixture
def laptop(open_laptop: Opens) -> Page:
    return open_laptop()


def _opener(browser: Browser, base_url: str, **device: Any) -> Iterator[Opens]:
    opened: list[BrowserContext] = []
    wrong: list[str] = []

    def opens(scheme: Scheme = "light", **differences: Any) -> Page:
        given = {**device, **differences}
        context = browser.new_context(
            base_url=base_url, color_scheme=scheme, reduced_motion="reduce", locale="en-GB", **given
        )
        context.set_default_timeout(10_000)
        opened.append(context)
        page = unhurried(context.new_page())
        page.on("pageerror", lambda error: wrong.append(str(error)))
        return page

    yield opens
    for context in opened:
        context.close()
    # An exception that nobody caught is a fault, whatever the screen showed.
    assert not wrong


# A sheet that was closed gives its place in the history back, which takes the browser a moment.
NOTHING_GIVEN_BACK = "() => !history.state?.sheet || document.querySelector('dialog[open]') !== null"


def unhurried(page: Page) -> Page:
    """What is asked of the browser itself no app can hold up; nobody asks it within milliseconds of closing a sheet."""

    def after_sheets(does: Callable[..., Any]) -> Callable[..., Any]:
        def done(*given: Any, **named: Any) -> Any:
            page.wait_for_function(NOTHING_GIVEN_BACK)
            return does(*given, **named)

        return done

    for name in ("goto", "reload", "go_back"):
        setattr(page, name, after_sheets(getattr(page, name)))
    return page


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])
