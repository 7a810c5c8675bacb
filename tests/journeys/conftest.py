"""Journeys: the built app in a real browser against a server of its own, with the demonstration's people and cases."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, Literal

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, ViewportSize, expect

from tests.journeys.running import FLAGS, chromium, running, unhurried

PHONE: ViewportSize = {"width": 360, "height": 740}
SHORT_PHONE: ViewportSize = {"width": 320, "height": 568}
TALL_PHONE: ViewportSize = {"width": 412, "height": 915}
LAPTOP: ViewportSize = {"width": 1280, "height": 800}
# On a machine that does other things as well; what has to be quicker says so itself.
expect.set_options(timeout=10_000)
Scheme = Literal["light", "dark"]
# What takes longest, so that at the end no process is left alone; but before many cases have pushed the demonstration's
# own off the first page of a list, what looks for those.
FIRST = (
    *(
        "double_taps",
        "course",
        "daily",
        "nothing_lost",
        "pictures",
        "bad_lines",
        "starting",
        "long_way",
        "card",
        "visits",
    ),
    *("every_screen", "to_the_end", "what_is_asked", "four_canals", "emergency"),
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
    return {**browser_type_launch_args, "executable_path": chromium(), "args": FLAGS, "headless": True}


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[str, Any]]:
    """The demonstration, running; `running` says what is told of it."""
    with running(tmp_path_factory.mktemp("journeys")) as demonstration:
        yield demonstration


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
        options = {**device, **differences}
        context = browser.new_context(
            base_url=base_url, color_scheme=scheme, reduced_motion="reduce", locale="en-GB", **options
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
