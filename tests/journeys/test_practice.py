"""Practice on a phone: ready in two taps from sign-in, worked to its reveal; a supervisor sets the next as a task."""

from __future__ import annotations

import re
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.journeys import hands
from tests.journeys.conftest import PHONE, Opens

MOST_STEPS = 40  # the incisor takes a dozen, however the canal turns out
STEP = re.compile("^(Say where|Work |Recapitulate|Gauge)")


def fits(phone: Page) -> None:
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth"), "runs out of the screen"


def work_step(phone: Page) -> None:
    """The step that is due, its rest said two millimetres short of the stop where it is asked for."""
    shown = phone.get_by_text(re.compile("^Step \\d+ ·")).inner_text()
    slider = phone.get_by_role("slider")
    if slider.count():
        slider.press("End")
        slider.press("PageUp")
        phone.get_by_role("button", name=re.compile("^Rests at")).tap()
    else:
        phone.get_by_role("button", name=STEP).tap()
    expect(phone.get_by_text(shown, exact=True)).to_have_count(0)


def test_a_hidden_canal_is_worked_and_seen(demo: dict[str, Any], open_phone: Opens, open_laptop: Opens) -> None:
    phone = open_phone(viewport=PHONE)
    hands.sign_in(phone, hands.person(demo, "student", 1))
    phone.get_by_role("link", name="Practice").tap()
    phone.get_by_role("button", name="Begin: Straight block").tap()
    expect(phone.get_by_text("Step 1 · single")).to_be_visible()
    fits(phone)
    phone.get_by_role("link", name="Practice").tap()
    expect(phone.get_by_role("link", name="Go on")).to_be_visible()
    phone.get_by_role("button", name="Upper incisor").tap()
    expect(phone.get_by_text("Step 1 · single")).to_be_visible()
    see = phone.get_by_role("button", name="See the canal")
    for _ in range(MOST_STEPS):
        if see.count():
            break
        work_step(phone)
        fits(phone)
    see.tap()
    expect(phone.get_by_role("heading", name="The canal as it was")).to_be_visible()
    expect(phone.get_by_role("img", name="single as it was, drawn over what was worked")).to_be_visible()
    points = phone.get_by_role("heading", name=re.compile("^\\d+ points$"))
    expect(points).to_be_visible()
    fits(phone)
    assert Axe().run(phone).response["violations"] == []

    laptop = open_laptop()
    hands.sign_in(laptop, hands.person(demo, "supervisor"))
    laptop.get_by_role("link", name="Practice").click()
    expect(laptop.get_by_role("link", name=re.compile("^Upper incisor"))).to_contain_text(points.inner_text())
    laptop.get_by_label("Level").select_option("Curved mesial canal")
    laptop.get_by_role("button", name="Set as a task").click()
    expect(laptop.get_by_text("Curved mesial canal, All students")).to_be_visible()
    assert Axe().run(laptop).response["violations"] == []

    phone.get_by_role("link", name="Practice").tap()
    expect(phone.get_by_role("heading", name="Set for you")).to_be_visible()
    phone.get_by_role("button", name="Begin: Curved mesial canal").tap()
    expect(phone.get_by_text("Step 1 · MB")).to_be_visible()


def test_without_a_connection_it_says_what_it_needs(demo: dict[str, Any], open_phone: Opens) -> None:
    phone = open_phone(viewport=PHONE)
    hands.sign_in(phone, hands.person(demo, "student", 1))
    phone.wait_for_function("() => navigator.serviceWorker.controller !== null")
    phone.context.set_offline(True)
    phone.get_by_role("link", name="Practice").tap()
    expect(phone.get_by_text("This needs the server, and there is no connection.")).to_be_visible()
