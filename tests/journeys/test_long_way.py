"""No connection from the middle of canal two on, the app killed in between: the work goes on to the next hold point."""

from __future__ import annotations

import re
import time
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens, Reopens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case, events, stored_by_now, to_the_glide_path

GOES_ON_S = 5.0  # how soon the student goes on after the sign-off is given
FIRST_TO_BIND = "First binder"
HELD = re.compile("Waits for the supervisor")
ANSWERS = re.compile("^(At its stop|At length|Passes|Done|Irrigated|Image elsewhere)")


def go_on(page: Page, steps: int, unsent: int) -> int:
    """Answers this many steps as they come, or up to the hold point; how much waits then."""
    for _ in range(steps):
        if page.get_by_text(HELD).is_visible():
            break
        if page.get_by_text(FIRST_TO_BIND).is_visible():
            # Held half a millimetre short: a size that goes to its stop is not the first to bind.
            page.get_by_role("slider").press("ArrowUp")
            page.get_by_role("button", name="Stopped at").click()
        else:
            screen.answers(page).get_by_role("button", name=ANSWERS).first.click()
        unsent += 1
        expect(page.get_by_text(re.compile(rf"^{unsent} entr(y|ies) not sent yet"))).to_be_visible()
    return unsent


def test_offline_from_the_middle_of_canal_two_to_the_hold_point_killed_and_back(
    reopen: Reopens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    context, laptop = reopen(), open_laptop()
    phone = context.pages[0]
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, "Bench 81")
    to_the_glide_path(phone, laptop, case, "MB", "ML")
    brought = len(events(phone, case))
    # Looking at the case once brings it along; nothing else was opened on this phone.
    phone.goto(f"/cases/{case}")
    phone.wait_for_function("() => navigator.serviceWorker.controller !== null")
    phone.reload(wait_until="networkidle")
    phone.get_by_role("link", name="At the chair").click()
    screen.turn(phone, "ML")
    expect(screen.where(phone)).to_contain_text("Glide path")
    screen.answers(phone).get_by_role("button").first.click()
    # The turn to this canal, and the step.
    before = stored_by_now(phone, case, brought + 2)

    context.set_offline(True)
    unsent = go_on(phone, 8, 0)
    assert unsent == 8
    context.close()

    # A cold start in flight mode: the app opens, the case opens, and the work goes on where it stood.
    context = reopen()
    context.set_offline(True)
    phone = context.pages[0]
    phone.goto(f"/cases/{case}/chair")
    expect(phone.get_by_text("8 entries not sent yet")).to_be_visible()
    expect(screen.card(phone, "ML")).to_be_visible()
    unsent = go_on(phone, 60, unsent)
    expect(phone.get_by_text(HELD)).to_be_visible()
    assert unsent < 60
    phone.goto(f"/cases/{case}/plan")
    plans_go_on(phone)

    context.set_offline(False)
    phone.goto(f"/cases/{case}/chair")
    expect(phone.get_by_text(HELD)).to_be_visible()
    expect(phone.get_by_text("not sent yet")).to_be_hidden()
    stored = stored_by_now(phone, case, len(before) + unsent)
    assert [each["position"] for each in stored] == list(range(2, len(stored) + 2))
    own = [each["device_seq"] for each in stored if each["device_id"] == stored[-1]["device_id"]]
    assert own == list(range(1, len(own) + 1))
    assert len({each["id"] for each in stored}) == len(stored)
    assert not laptop.request.get(f"/api/v1/cases/{case}/events").json()["course"]["out_of_course"]

    laptop.goto(f"/cases/{case}/sign-off/ML")
    expect(laptop.get_by_role("button", name="Approve")).to_be_visible()
    held_at = screen.card(phone).inner_text()
    laptop.get_by_role("button", name="Approve").click()
    began = time.monotonic()
    expect(phone.get_by_text(HELD)).to_be_hidden(timeout=GOES_ON_S * 1000)
    assert time.monotonic() - began < GOES_ON_S
    assert screen.card(phone).inner_text() != held_at


def plans_go_on(page: Page) -> None:
    """Choices are made with no connection, kept over a reload, and the figures said not to be computed anew."""
    expect(page.get_by_text("the figures are those of before")).to_be_visible()
    page.get_by_text("Kit, technique, irrigation").click()
    page.get_by_label("Glide path by hand").select_option(label="up to size 20")
    expect(page.get_by_role("button", name="Not computed yet")).to_be_visible()
    page.reload()
    page.get_by_text("Kit, technique, irrigation").click()
    expect(page.get_by_label("Glide path by hand")).to_have_value("20")
