"""A canal is worked at the chair, picture by picture; with FOURTH_CANAL_PICTURES=1 the README's moving one is kept."""

from __future__ import annotations

import os
import re
from collections.abc import Mapping
from io import BytesIO
from typing import Any

from PIL import Image
from playwright.sync_api import Page, expect

from tests.journeys import records, screen
from tests.journeys.conftest import Opens
from tests.journeys.test_card import to_the_first_engine_instrument
from tests.journeys.test_chair import at_the_chair
from tests.journeys.test_pictures import PICTURES

LONG_MS, SHORT_MS = 1_100, 130
MOST_BYTES = 600_000
STEPS = 5
HOPED_FOR = re.compile("^(Stopped at|At length|Irrigated|Passes freely)")
FIRST_TOUCH, SHORT_OF_STOP_MM, DETENT_UM = 0.12, 1.0, 500  # the first in shares of the strip's height


class Film:
    """Pictures of a screen, one after the other."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.frames: list[Image.Image] = []
        self.shown_ms: list[int] = []

    def take(self, shown_ms: int) -> None:
        screen.drawn(self.page)
        self.frames.append(Image.open(BytesIO(self.page.screenshot())).convert("RGB"))
        self.shown_ms.append(shown_ms)

    def webp(self) -> bytes:
        out = BytesIO()
        first, *others = self.frames
        first.save(
            out, "WEBP", save_all=True, append_images=others, duration=self.shown_ms, loop=0, quality=80, method=6
        )
        return out.getvalue()


def test_a_canal_is_worked_step_by_step(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Reed 20")
    to_the_first_engine_instrument(phone, laptop, case)
    expect(phone.get_by_text("not sent yet")).to_be_hidden()
    film, before = Film(phone), len(records.events(phone, case))
    film.take(LONG_MS)
    for _ in range(STEPS):
        drag(film)
        place = screen.where(phone).inner_text()
        due = screen.answers(phone).get_by_role("button", name=HOPED_FOR)
        expect(due).to_be_enabled()
        with records.taken_in(phone):
            due.click()
        expect(screen.where(phone)).not_to_have_text(place)
        film.take(LONG_MS)
    done = records.events(phone, case)[before:]
    assert len(done) == STEPS
    assert [each["payload"]["exit"] for each in done if each["payload"].get("depth_um")]
    moving = film.webp()
    assert len(moving) <= MOST_BYTES
    assert len({frame.tobytes() for frame in film.frames}) == len(film.frames)
    if os.environ.get("FOURTH_CANAL_PICTURES"):
        (PICTURES / "canal-worked.webp").write_bytes(moving)


def drag(film: Film) -> None:
    """The tip goes down the strip to a little short of its stop, where the step asks how deep."""
    slider = film.page.get_by_role("slider")
    if slider.count() == 0:
        return
    box = screen.strip(film.page).bounding_box()
    assert box
    film.page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] * FIRST_TOUCH)
    film.take(SHORT_MS)
    to_mm = float(screen.stop(film.page).inner_text()) - SHORT_OF_STOP_MM
    while int(slider.input_value()) + DETENT_UM <= 1_000 * to_mm:
        slider.press("ArrowDown")
        film.take(SHORT_MS)
    film.shown_ms[-1] = LONG_MS
