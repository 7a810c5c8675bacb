"""Fingers on an image of twelve megapixels and on a small one: marks, moves, the magnifier, and what is asked.

What is drawn is known (`tests/radiographs.py`); how far a finger is off is the row's 1.5 pixels of the screen.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PIL import Image
from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import PHONE, TALL_PHONE, Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.marking import DRAWN, IMAGE, MB, a_second_later, add_image, charted, chip, pane, touch, zoom_of
from tests.radiographs import Radiograph

MARKS = "[data-drawn=mark]"
ACROSS_PX = 4000
TRIES = 20


def large(folder: Path) -> tuple[Path, Radiograph]:
    """The drawn radiograph as a camera might have taken it from a screen: twelve megapixels and more."""
    times = ACROSS_PX / DRAWN.grey.shape[1]
    rows, columns = (round(side * times) for side in DRAWN.grey.shape)
    path = folder / "photo.jpg"
    Image.fromarray(DRAWN.grey).resize((columns, rows)).save(path, quality=80)
    px = {"row_mm": DRAWN.row_mm / times, "column_mm": DRAWN.column_mm / times}
    return path, Radiograph(grey=DRAWN.grey, roots=DRAWN.roots, magnification=DRAWN.magnification, **px)


def small(folder: Path) -> tuple[Path, Radiograph]:
    return DRAWN.png(folder / "small.png"), DRAWN


def middle_of(page: Page, ring: int) -> tuple[float, float]:
    box = page.locator(MARKS).nth(ring).bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def drag(page: Page, at: tuple[float, float], by: tuple[float, float], *, let_go: bool = True) -> None:
    """As a finger does: Playwright's mouse gives the pointer events that a touch does."""
    page.mouse.move(*at)
    page.mouse.down()
    page.mouse.move(at[0] + by[0] / 2, at[1] + by[1] / 2)
    page.mouse.move(at[0] + by[0], at[1] + by[1])
    if let_go:
        page.mouse.up()


def move_image(page: Page, at: tuple[float, float], by: tuple[float, float]) -> None:
    """Again where the first movement came so late, on a slow machine, that the finger had rested: it moves nothing."""
    marks = page.locator(MARKS)
    before = marks.count(), middle_of(page, 0)
    for _ in range(TRIES):
        drag(page, at, by)
        if marks.count() != before[0]:  # a finger that has rested on the image sets a mark there
            page.get_by_role("button", name="Undo").tap()
            expect(marks).to_have_count(before[0])
        elif middle_of(page, 0) != before[1]:
            return


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize(("size", "image"), [(PHONE, large), (TALL_PHONE, small)], ids=["photo-360", "sensor-412"])
def test_touches_on_an_image(
    open_phone: Opens, demo: Mapping[str, Any], tmp_path: Path, size: Mapping[str, int], image: Any, scheme: Any
) -> None:
    page = open_phone(viewport=size, scheme=scheme)
    sign_in(page, person(demo, "student"))
    case = charted(page, f"Bench 25{size['width'] % 7}{len(scheme)}")
    page.goto(f"/cases/{case}")
    path, drawn = image(tmp_path)
    add_image(page, path)
    page.get_by_role("link", name="Mark and measure").tap(timeout=60_000)
    chip(page, "MB").tap()
    touch(page, drawn, MB.along(np.array([0.0, 4.0])), 1)
    asked_to_zoom(page, drawn)
    a_touch_beside_a_mark_sets_another(page)
    one_finger_moves_the_image(page)
    the_magnifier_shows_the_line(page)
    what_runs_back_is_asked_about(page)


def asked_to_zoom(page: Page, drawn: Radiograph) -> None:
    """Seen whole, a millimetre takes fewer than twelve pixels of the screen, taken to be 40 mm long."""
    expect(page.locator(MARKS)).to_have_count(2)
    expect(page.get_by_text(re.compile(r"a finger is off by 0\.\d mm"))).to_be_visible()
    before = zoom_of(page.locator(IMAGE))
    page.get_by_role("button", name="Zoom in there").tap()
    page.wait_for_function(
        "([of, least]) => Number(/scale\\(([\\d.]+)/.exec(document.querySelector(of).style.transform)[1]) > least",
        arg=[IMAGE, 1.5 * before],
    )
    # It asks until the mark was touched again: it lies as it was set.
    expect(page.get_by_text("a finger is off by")).to_be_visible()
    drag(page, middle_of(page, 1), (8, 8))
    expect(page.get_by_text("a finger is off by")).to_have_count(0)
    marks = page.locator(MARKS)
    expect(marks).to_have_count(2)


def a_touch_beside_a_mark_sets_another(page: Page) -> None:
    """Ten pixels from the last: nearer than any finger is thick."""
    x, y = middle_of(page, 1)
    a_second_later(page)
    page.touchscreen.tap(x + 2, y + 10)
    expect(page.locator(MARKS)).to_have_count(3)
    # A wet glove touches twice: one mark.
    a_second_later(page)
    page.touchscreen.tap(x + 2, y + 60)
    page.touchscreen.tap(x + 3, y + 61)
    expect(page.locator(MARKS)).to_have_count(4)
    page.get_by_role("button", name="Undo").tap()
    page.get_by_role("button", name="Undo").tap()
    expect(page.locator(MARKS)).to_have_count(2)


def one_finger_moves_the_image(page: Page) -> None:
    x, y = middle_of(page, 1)
    box = pane(page).bounding_box()
    assert box is not None
    left = x - box["x"] > box["width"] / 2
    move_image(page, (x + (-100 if left else 100), y), (30, -40))
    moved = middle_of(page, 1)
    assert moved[0] - x == pytest.approx(30, abs=2)
    assert moved[1] - y == pytest.approx(-40, abs=2)
    expect(page.locator(MARKS)).to_have_count(2)


def the_magnifier_shows_the_line(page: Page) -> None:
    drag(page, middle_of(page, 1), (12, 12), let_go=False)
    loupe = page.locator("[data-drawn=magnifier]")
    expect(loupe.locator("[data-drawn=line]")).to_be_attached()
    view = zoom_of(page.locator(IMAGE))
    # Told to six digits.
    assert zoom_of(loupe.locator("[data-drawn=magnified]")) <= max(view, min(4 * view, 4)) + 1e-5
    page.mouse.up()
    expect(loupe.locator("[data-drawn=line]")).to_have_count(0)


def what_runs_back_is_asked_about(page: Page) -> None:
    """A third mark above the second: nothing is kept before somebody has looked."""
    x, y = middle_of(page, 1)
    a_second_later(page)
    page.touchscreen.tap(x + 3, y - 25)
    expect(page.get_by_text("At mark 2 the line runs back")).to_be_visible()
    keep = page.get_by_role("button", name="Keep these marks")
    expect(keep).to_be_disabled()
    page.get_by_text("MB: I looked at the marks that are asked about").tap()
    expect(keep).to_be_enabled()
    page.get_by_role("button", name="Undo").tap()
    expect(page.get_by_text("the line runs back")).to_have_count(0)


def test_kept_marks_stay_on_the_board_and_the_supervisor_sees_them(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any], tmp_path: Path
) -> None:
    page, laptop = open_phone(), open_laptop()
    sign_in(page, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = charted(page, "Bench 259")
    page.goto(f"/cases/{case}")
    add_image(page, DRAWN.png(tmp_path / "drawn.png"))
    page.get_by_role("link", name="Mark and measure").tap()
    drawn = page.locator("[data-drawn=line]:not([data-active])")
    chip(page, "MB").tap()
    touch(page, DRAWN, MB.along(np.array([0.0, 4.0, 13.0, 18.0])), 1)
    page.get_by_role("button", name="Keep these marks").tap()
    expect(drawn).to_have_count(1)
    page.reload()
    expect(drawn).to_have_count(1, timeout=15_000)
    image = page.request.get(f"/api/v1/cases/{case}/images").json()["images"][0]["id"]
    kept: list[Any] = []

    def stored() -> bool:
        kept[:] = page.request.get(f"/api/v1/cases/{case}/images/{image}/markings").json()["markings"]
        return bool(kept)

    screen.until(page, stored)
    points = kept[0]
    assert all(0.1 < point["screen_px_per_px"] < 2 for point in points["marks"]["lines"][0]["points"])
    assert points["measured"]["touch_says"].startswith("How far a mark is off follows")
    laptop.goto(f"/cases/{case}/images/{image}")
    expect(laptop.locator("[data-drawn=line]")).to_have_count(1, timeout=15_000)
