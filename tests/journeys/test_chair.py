"""At the chair: one step at a time, also with no connection; a supervisor elsewhere gives the word."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in

WORD_MS = 5000  # how soon a supervisor's word reaches the phone


def to_the_chair(page: Page) -> str:
    """From the list to the work on the approved case; returns the case's id."""
    page.get_by_role("main").get_by_role("link").filter(has_text="approved").first.click()
    page.get_by_role("link", name="At the chair").click()
    expect(page.get_by_role("region", name="MB", exact=True)).to_be_visible()
    return page.url.split("/")[-2]


def answer(page: Page, name: str) -> None:
    page.locator(".step-answers").get_by_role("button", name=name).click()


def due(page: Page, phase: str) -> None:
    expect(page.locator(".now-where")).to_contain_text(phase)


def events(page: Page, case: str) -> list[Mapping[str, Any]]:
    told: list[Mapping[str, Any]] = page.request.get(f"/api/v1/cases/{case}/events").json()["events"]
    return told


def test_no_connection_in_the_middle_and_the_word_from_elsewhere(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone = open_phone()
    sign_in(phone, person(demo, "student"))
    case = to_the_chair(phone)
    already = len(events(phone, case))
    with phone.expect_response(lambda told: told.request.method == "POST" and told.url.endswith("/events")):
        answer(phone, "At its stop")
    due(phone, "Explore")

    # The connection goes in the middle of the canal; work goes on, and survives the app being closed.
    phone.context.set_offline(True)
    answer(phone, "Done")
    due(phone, "Length")
    answer(phone, "Image taken")
    expect(phone.get_by_text("2 entries not sent yet")).to_be_visible()
    phone.reload()
    expect(phone.get_by_text("2 entries not sent yet")).to_be_visible()
    expect(phone.get_by_text("Waits for the supervisor: length")).to_be_visible()

    phone.context.set_offline(False)
    expect(phone.get_by_text("not sent yet")).to_be_hidden()
    stored = events(phone, case)[already:]
    assert [each["told"]["exit"] for each in stored] == ["reached", "done", "done"]
    assert [each["position"] for each in stored] == list(range(already + 1, already + 4))

    laptop = open_laptop()
    sign_in(laptop, person(demo, "supervisor"))
    laptop.goto(f"/cases/{case}/chair")
    answer(laptop, "Approve")
    expect(phone.locator(".now-where")).to_contain_text("Glide path", timeout=WORD_MS)


def test_an_emergency_halts_the_tooth_and_says_whether_anybody_knows(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone = open_phone()
    sign_in(phone, person(demo, "student"))
    case = to_the_chair(phone)
    phone.context.set_offline(True)
    phone.get_by_role("button", name="Problem").click()
    phone.get_by_role("button", name="An instrument has separated").click()
    expect(phone.get_by_role("heading", name="Call the person in the room now.")).to_be_visible()
    expect(phone.get_by_text("NOT SENT: call out")).to_be_visible()
    phone.context.set_offline(False)
    expect(phone.get_by_text("The supervisor has been told.")).to_be_visible()

    laptop = open_laptop()
    sign_in(laptop, person(demo, "supervisor"))
    laptop.goto(f"/cases/{case}/chair")
    laptop.get_by_role("alert").get_by_label("Reason").fill("Piece kept, image taken.")
    laptop.get_by_role("alert").get_by_role("button", name="Let it go on").click()
    expect(phone.get_by_role("heading", name="Call the person in the room now.")).to_be_hidden(timeout=WORD_MS)
