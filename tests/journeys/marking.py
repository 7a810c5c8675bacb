"""Fingers on an image: they touch where something is drawn, a pixel off, and read what the screen makes of it.

Radiographs are drawn with known lengths and bends (`tests/radiographs.py`).
"""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
from playwright.sync_api import Locator, Page, expect

from tests.journeys.hands import nobody_named, type_mm
from tests.journeys.records import send
from tests.radiographs import Places, Radiograph, Root, drawn

WITHIN_MM, WITHIN_DEG = 0.3, 3
# An image and what is drawn on it have no role: they say by `data-drawn` what they are.
IMAGE = "[data-drawn=image]"

MB = Root(canal="MB", begins=(6, 4), straight_mm=13, radius_mm=9, bend_deg=40, instrument_mm=18)
D = Root(canal="D", begins=(14, 4), straight_mm=16, radius_mm=20, bend_deg=-14)
DRAWN = drawn(MB, D)


def charted(student: Page, alias: str) -> str:
    """A lower second molar, its canals found and their reference points chosen, nothing measured."""
    tooth = {"notation": "iso_3950", "designation": "37"}
    body = {"patient_alias": alias, "setting": "extracted", "tooth": tooth}
    opened = send(student, "POST", f"programmes/{programme(student)}/cases", body)
    for canal in opened["canals"]:
        point = canal["reference_point"] or "DB cusp"
        send(student, "PATCH", f"canals/{canal['id']}", {"finding": "found", "reference_point": point})
    return str(opened["id"])


def programme(page: Page) -> str:
    return str(page.request.get("/api/v1/session").json()["memberships"][0]["programme"]["id"])


def pane(page: Page) -> Locator:
    """What takes the touches and keys."""
    return page.get_by_role("application", name="Image", exact=True)


def a_second_later(page: Page) -> None:
    """By the page's clock, which stands still from then on: the touch that comes next is another one, and two that come
    at once are those of a wet glove, on however slow a machine."""
    page.clock.set_fixed_time(page.evaluate("Date.now() / 1000 + 1"))


def add_image(page: Page, path: Path) -> None:
    page.get_by_text("Add an image").click()
    page.get_by_label("Choose an image").set_input_files(path)
    if path.suffix != ".dcm":
        nobody_named(page)


def touch(page: Page, image: Radiograph, places_mm: Places, seed: int) -> None:
    """Touches the image at the places, a pixel of the image off."""
    off = np.random.default_rng(seed).normal(0, 1, places_mm.shape)
    for x, y in image.on_image(places_mm) + off:
        pane(page).scroll_into_view_if_needed()
        at = page.wait_for_function(
            """([selector, x, y]) => {
              const img = document.querySelector(selector)
              // While the phone's own copy gives way to the server's, the image has no size of its own.
              if (!img?.naturalWidth) return false
              const { left, top, width, height } = img.getBoundingClientRect()
              return [left + (x * width) / img.naturalWidth, top + (y * height) / img.naturalHeight]
            }""",
            arg=[IMAGE, float(x), float(y)],
        ).json_value()
        page.touchscreen.tap(*at)


def chip(page: Page, name: str) -> Locator:
    chips = page.get_by_role("navigation", name="What can be marked").get_by_role("button")
    return chips.filter(has_text=re.compile(f"^{name}"))


def mark_instrument(page: Page, image: Radiograph, root: Root, length_mm: float) -> None:
    """The instrument that stands in the canal is the scale: along it, as far as it goes in."""
    chip(page, "Scale").tap()
    touch(page, image, root.along(np.linspace(0, length_mm, 5)), 5)
    type_mm(page, "From its stop to its tip", f"{length_mm:g}")


def mark_canal(page: Page, image: Radiograph, root: Root, seed: int) -> None:
    """The reference point, the orifice, where it bends, and on to the end."""
    chip(page, root.canal).tap()
    along = [0, 4, root.straight_mm, *np.linspace(root.straight_mm, root.length_mm, 4)[1:]]
    touch(page, image, root.along(np.array(along[:3])), seed)
    touch(page, image, root.along(np.array(along[3:])), seed + 1)


def say_where_it_bends(page: Page) -> None:
    """The third of the six marks of a canal."""
    before = page.get_by_role("button", name="Pick the mark before")
    for number in (5, 4, 3):
        before.tap()
        expect(page.get_by_text(f"Mark {number} of 6")).to_be_visible()
    page.get_by_role("button", name="where it bends").tap()


def said(page: Page, name: str) -> tuple[float, float]:
    """Length and bend as the chip tells them."""
    numbers = re.search(r"([\d.]+) · (\d+)°", chip(page, name).inner_text())
    assert numbers, chip(page, name).inner_text()
    return float(numbers[1]), float(numbers[2])


def measure(page: Page, image: Radiograph, root: Root) -> None:
    """Marked by touch, it comes out as it was drawn."""
    mark_canal(page, image, root, 6)
    say_where_it_bends(page)
    length, bend = said(page, root.canal)
    assert length == pytest.approx(root.length_mm, abs=WITHIN_MM)
    assert bend == pytest.approx(abs(root.bend_deg) / 2, abs=WITHIN_DEG)


def interval(page: Page, row: str) -> tuple[float, float]:
    ends = page.locator("[data-row]").filter(has_text=row).get_by_role("definition").last.inner_text()
    least, most = (float(end) for end in re.findall(r"[\d.]+", ends))
    return least, most


def zoom_of(image: Locator) -> float:
    scale = re.search(r"scale\(([\d.]+)\)", image.get_attribute("style") or "")
    assert scale
    return float(scale[1])
