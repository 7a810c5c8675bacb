"""Every screen of the app in its main states, as a picture each and side by side on one page.

`python -m tests.gallery FOLDER` (after it, parts of screens' names: those alone).
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path

from playwright.sync_api import Browser, Page, ViewportSize, expect, sync_playwright

from tests.gallery.cases import Cases, opened
from tests.gallery.screens import SCREENS, Screen
from tests.gallery.side_by_side import page_of
from tests.journeys.conftest import LAPTOP, PHONE, Scheme
from tests.journeys.hands import person, sign_in
from tests.journeys.running import FLAGS, chromium, running
from tests.journeys.screen import until

SIZES: tuple[ViewportSize, ...] = (PHONE, LAPTOP)
SCHEMES: tuple[Scheme, ...] = ("light", "dark")
PATIENCE_MS = 30_000
# A button that was drawn just now looks as if it took no touch yet.
READY = "() => document.fonts.ready.then(() => !document.querySelector('[aria-disabled=true]'))"


def shown(browser: Browser, url: str, size: ViewportSize, scheme: Scheme) -> Page:
    """A device of its own."""
    is_phone = size == PHONE
    context = browser.new_context(
        base_url=url,
        viewport=size,
        color_scheme=scheme,
        reduced_motion="reduce",
        locale="en-GB",
        has_touch=is_phone,
        is_mobile=is_phone,
    )
    context.set_default_timeout(PATIENCE_MS)
    return context.new_page()


def taken(browser: Browser, demo: dict[str, str], cases: Cases, screen: Screen, file: Path) -> list[str]:
    """The screen in every size and scheme; the names of the pictures."""
    names = []
    for size in SIZES:
        for scheme in SCHEMES:
            page = shown(browser, demo["url"], size, scheme)
            if screen.role:
                sign_in(page, person(demo, screen.role))
            screen.show(page, cases)
            until(page, lambda: bool(page.evaluate(READY)))  # noqa: B023
            name = f"{file.name}-{size['width']}-{scheme}.png"
            page.screenshot(path=file.with_name(name))
            names.append(name)
            page.context.close()
    return names


def main(folder: Path, only: Sequence[str]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    expect.set_options(timeout=PATIENCE_MS)
    screens = [screen for screen in SCREENS if not only or any(part in screen.name for part in only)]
    with (
        tempfile.TemporaryDirectory() as own,
        running(Path(own)) as demo,
        sync_playwright() as driver,
        driver.chromium.launch(executable_path=chromium(), args=FLAGS) as browser,
    ):
        student, supervisor = (shown(browser, demo["url"], PHONE, "light") for _ in range(2))
        sign_in(student, person(demo, "student"))
        sign_in(supervisor, person(demo, "supervisor"))
        cases = opened(demo, student, supervisor, Path(own))
        rows = {}
        for number, screen in enumerate(screens, 1):
            print(screen.name, flush=True)  # noqa: T201
            file = folder / f"{number:02}-{screen.name.replace(' ', '-')}"
            rows[screen.name] = taken(browser, demo, cases, screen, file)
    page = folder / "index.html"
    page.write_text(page_of(rows), encoding="utf-8")
    print(page)  # noqa: T201


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
