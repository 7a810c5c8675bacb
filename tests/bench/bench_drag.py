"""How long frames take while a mark is dragged over an image of twelve megapixels, processor slowed down four times.

    python -m tests.bench.bench_drag

Starts a demonstration of its own; the app has been built. Chromium's own trace is read: the time from one drawn frame
to the next, and the longest task of the page's main thread, against the same page left alone.
"""

from __future__ import annotations

import json
import statistics
import tempfile
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
from PIL import Image
from playwright.sync_api import Page, sync_playwright

from tests.bench.rows import Row, alone
from tests.journeys.hands import nobody_named, send, sign_in
from tests.journeys.marking import IMAGE, pane
from tests.journeys.running import FLAGS, chromium, running

WIDTH, HEIGHT, SLOWER, MOVES = 4000, 3000, 4, 120
SLOW_MS = 100
CATEGORIES = ["devtools.timeline", "devtools.timeline.frame", "disabled-by-default-devtools.timeline", "toplevel"]


def photo(folder: Path) -> Path:
    """Twelve megapixels that a camera might have taken: soft shapes and noise."""
    y, x = np.mgrid[0:HEIGHT, 0:WIDTH]
    grey = 120 + 60 * np.sin(x / 300) * np.cos(y / 260) + np.random.default_rng(1).normal(0, 8, (HEIGHT, WIDTH))
    path = folder / "photo.jpg"
    Image.fromarray(np.clip(grey, 0, 255).astype(np.uint8)).save(path, quality=88)
    return path


def marking(page: Page, path: Path) -> None:
    """A case with the photo on its marking screen, two marks set."""
    programme = page.request.get("/api/v1/session").json()["memberships"][0]["programme"]["id"]
    tooth = {"notation": "iso_3950", "designation": "37"}
    body = {"patient_alias": "Bench drag", "setting": "extracted", "tooth": tooth}
    case = send(page, "POST", f"programmes/{programme}/cases", body)["id"]
    page.goto(f"/cases/{case}")
    page.get_by_text("Add an image").click()
    page.get_by_label("Choose an image").set_input_files(path)
    nobody_named(page)
    page.get_by_role("link", name="Mark and measure").click(timeout=60_000)
    page.locator(IMAGE).wait_for()
    box = pane(page).bounding_box()
    assert box is not None
    for down in (0.3, 0.6):
        page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] * down)


def traced(page: Page, work: Callable[[], object]) -> tuple[list[float], float]:
    """Milliseconds between drawn frames, and the longest task of a main thread, while `work` goes on."""
    browser = page.context.browser
    assert browser is not None
    browser.start_tracing(page=page, categories=CATEGORIES)
    work()
    events: list[dict[str, Any]] = json.loads(browser.stop_tracing())["traceEvents"]
    # A commit is a frame handed over for drawing.
    drawn = sorted(event["ts"] for event in events if event["name"] == "Commit")
    tasks = [event.get("dur", 0) / 1000 for event in events if event["name"] == "RunTask"]
    return [(after - before) / 1000 for before, after in pairwise(drawn)], max(tasks, default=0.0)


def drag(page: Page) -> None:
    box = pane(page).bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] * 0.6
    page.mouse.move(x, y)
    page.mouse.down()
    for step in range(MOVES):
        page.mouse.move(x + 60 * np.sin(step / 9), y - 40 * np.sin(step / 13))
    page.mouse.up()


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory() as folder, running(Path(folder)) as demo, sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=chromium(), args=FLAGS)
        page = browser.new_context(
            base_url=demo["url"], viewport={"width": 360, "height": 740}, device_scale_factor=2
        ).new_page()
        sign_in(page, next(person for person in demo["sign_ins"] if person["role"] == "student"))
        marking(page, photo(Path(folder)))
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        _, idle_task_ms = traced(page, lambda: page.wait_for_timeout(1500))
        gaps_ms, task_ms = traced(page, lambda: drag(page))
        yield Row(what="from frame to frame, median", now=statistics.median(gaps_ms), against="ms")
        yield Row(what="from frame to frame, longest", now=max(gaps_ms), against="ms", goal=SLOW_MS)
        yield Row(
            what=f"of {len(gaps_ms)} frames slower than {SLOW_MS} ms", now=_late(gaps_ms), against="frames", goal=0
        )
        yield Row(what="longest task", now=task_ms / max(idle_task_ms, 0.1), against="the page left alone")
        browser.close()


def _late(gaps_ms: list[float]) -> int:
    return sum(gap_ms > SLOW_MS for gap_ms in gaps_ms)


if __name__ == "__main__":
    alone("drag", rows())
