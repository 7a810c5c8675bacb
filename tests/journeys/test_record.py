"""The record: what was done stands in it at once, it opens without a connection, and it comes as paper."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys.conftest import Opens
from tests.journeys.test_chair import answer, at_the_chair, due


def test_the_course_is_read_back_on_the_phone_without_a_connection_and_on_paper(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 221")
    with phone.expect_response(lambda response: response.request.method == "POST" and response.url.endswith("/events")):
        answer(phone, "At length")
    due(phone, "Explore")

    phone.get_by_role("link", name="Record").click()
    unfold(phone)
    entry = phone.get_by_role("listitem").filter(has_text="at its stop, 19.0 mm")
    expect(entry).to_contain_text("MB")
    expect(phone.get_by_text("does not replace the supervising licensed clinician").first).to_be_visible()
    phone.context.set_offline(True)
    phone.reload()
    unfold(phone)
    expect(entry).to_be_visible()
    expect(phone.get_by_text("No connection. This is what was seen")).to_be_visible()

    laptop.goto(f"/cases/{case}/record")
    unfold(laptop)
    expect(laptop.get_by_role("listitem").filter(has_text="at its stop, 19.0 mm")).to_be_visible()
    path = laptop.get_by_role("link", name="Open as PDF").get_attribute("href")
    paper = laptop.request.get(str(path))
    assert (paper.status, paper.body()[:5]) == (200, b"%PDF-")


def unfold(page: Page) -> None:
    page.get_by_role("heading", name="Timeline").click()


def test_a_canal_is_selected_on_the_board_by_hand_and_by_key(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 222")
    phone.goto(f"/cases/{case}/record")
    canals = phone.get_by_role("radiogroup").get_by_role("radio")
    expect(canals).to_have_count(3)
    canals.nth(1).check()
    expect(phone.get_by_role("region", name="ML")).to_contain_text("not begun")
    canals.nth(1).press("ArrowRight")
    expect(phone.get_by_role("region", name="D", exact=True)).to_contain_text("19.0")
