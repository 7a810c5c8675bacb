"""An image that was taken in the wrong canal: a supervisor puts it to the right one, and the chair follows."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.test_chair import answer, to_the_length
from tests.journeys.test_images import take_photo

SEEN_MS = 15_000


def opened(page: Page, name: str) -> Any:
    page.get_by_role("button", name=re.compile(name)).first.click(timeout=30_000)
    return page.get_by_role("dialog")


def test_put_to_another_canal_and_struck(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = to_the_length(phone, laptop, demo, "Bench 245")
    take_photo(phone)
    answer(phone, "Image taken")
    expect(phone.get_by_text("Waits for the supervisor: length")).to_be_visible()

    laptop.goto(f"/cases/{case}")
    viewer = opened(laptop, "^Open MB: length")
    viewer.get_by_role("button", name="Wrong canal?").click()
    viewer.get_by_role("button", name="ML", exact=True).click()
    expect(viewer.get_by_text("Put from MB to ML.")).to_be_visible()
    viewer.get_by_role("button", name="Close").click()

    # At the chair: the hold point has no image any more, what was done says who put it where.
    phone.get_by_text("What was done").click()
    expect(screen.done(phone)).to_contain_text("put to ML", timeout=SEEN_MS)
    laptop.goto(f"/cases/{case}/sign-off/MB")
    lacking = laptop.get_by_role("region", name="Images")
    expect(lacking.get_by_role("status").or_(lacking.get_by_role("paragraph")).first).to_contain_text(
        "image", timeout=SEEN_MS
    )

    laptop.goto(f"/cases/{case}")
    viewer = opened(laptop, "^Open ML: length")
    viewer.get_by_role("button", name="Wrong canal?").click()
    viewer.get_by_role("button", name=re.compile("does not show what it should")).click()
    expect(viewer.get_by_text("Struck, counts for nothing: it does not show what it should.")).to_be_visible()
    expect(viewer.get_by_role("button", name="Wrong canal?")).to_have_count(0)
    laptop.goto(f"/cases/{case}/record")
    laptop.get_by_role("heading", name="Images that were put right").scroll_into_view_if_needed()
    expect(laptop.get_by_text("MB length: Put from MB to ML.")).to_be_visible()
