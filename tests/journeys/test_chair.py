"""At the chair: one step at a time, also with no connection; a supervisor elsewhere signs off."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case, events, taken_in

WORD_MS = 5000  # how soon what the server has is seen by whoever waits for it


def at_the_chair(phone: Page, laptop: Page, demo: Mapping[str, Any], alias: str) -> str:
    """Student and supervisor signed in, and the student at the first step of an approved case; returns its id."""
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, alias)
    phone.goto(f"/cases/{case}")
    phone.get_by_role("link", name="At the chair").click()
    expect(screen.card(phone, "MB")).to_be_visible()
    return case


def answer(page: Page, name: str) -> None:
    screen.answers(page).get_by_role("button", name=name).click()


def due(page: Page, phase: str) -> None:
    expect(screen.where(page)).to_contain_text(phase)


def approve(supervisor: Page, case: str, canal: str = "MB") -> None:
    """At the hold point that the canal waits at, on its own screen."""
    supervisor.goto(f"/cases/{case}/sign-off/{canal}")
    with taken_in(supervisor):
        answer(supervisor, "Approve")


def to_the_length(phone: Page, laptop: Page, demo: Mapping[str, Any], alias: str) -> str:
    """At the chair, MB explored: an image of its length is due. Returns the case's id."""
    case = at_the_chair(phone, laptop, demo, alias)
    answer(phone, "At length")
    due(phone, "Explore")
    answer(phone, "Irrigated")
    due(phone, "Length")
    return case


def test_no_connection_in_the_middle_and_the_word_from_elsewhere(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 61")
    with taken_in(phone):
        answer(phone, "At length")
    due(phone, "Explore")

    # The connection goes in the middle of the canal; work goes on, and survives the app being closed.
    phone.context.set_offline(True)
    answer(phone, "Irrigated")
    due(phone, "Length")
    answer(phone, "Image elsewhere")
    expect(phone.get_by_text("2 entries not sent yet")).to_be_visible()
    phone.reload()
    expect(phone.get_by_text("2 entries not sent yet")).to_be_visible()
    expect(phone.get_by_text("Waits for the supervisor: length")).to_be_visible()

    phone.context.set_offline(False)
    expect(phone.get_by_text("not sent yet")).to_be_hidden()
    stored = events(phone, case)
    assert [each["payload"]["exit"] for each in stored] == ["reached", "done", "done"]
    assert [each["position"] for each in stored] == [2, 3, 4]  # the first place is the plan's that came into force

    laptop.goto(f"/cases/{case}/chair")
    laptop.get_by_role("link", name="Answer this hold point").click()
    with taken_in(laptop):
        answer(laptop, "Approve")
    expect(screen.where(phone)).to_contain_text("Glide path", timeout=WORD_MS)


def test_an_emergency_halts_the_tooth_and_says_whether_anybody_knows(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 62")
    phone.context.set_offline(True)
    phone.get_by_role("button", name="Problem").click()
    phone.get_by_role("button", name="An instrument has separated").click()
    expect(phone.get_by_role("heading", name="Call the person in the room now.")).to_be_visible()
    expect(phone.get_by_text("NOT SENT: call out")).to_be_visible()
    phone.context.set_offline(False)
    expect(phone.get_by_text("it stands first on the supervisors")).to_be_visible()
    # One thing to read, nothing to answer.
    expect(screen.answers(phone)).to_have_count(0)

    laptop.goto("/worklist")
    expect(laptop.locator("[data-halted]").filter(has_text="Bench 62")).to_contain_text("HALTED", timeout=WORD_MS)
    laptop.goto(f"/cases/{case}/chair")
    laptop.get_by_role("alert").get_by_label("Reason").fill("Piece kept, image taken.")
    with taken_in(laptop):
        laptop.get_by_role("alert").get_by_role("button", name="Let it go on").click()
    expect(phone.get_by_role("heading", name="Call the person in the room now.")).to_be_hidden(timeout=WORD_MS)


def test_the_supervisor_finds_who_waits_without_a_reload(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    at_the_chair(phone, laptop, demo, "Bench 63")
    laptop.goto("/worklist")
    expect(laptop.get_by_role("heading", name="Waiting for you")).to_be_visible()
    answer(phone, "At length")
    due(phone, "Explore")
    answer(phone, "Irrigated")
    due(phone, "Length")
    with taken_in(phone):
        answer(phone, "Image elsewhere")
    row = laptop.get_by_role("link").filter(has_text="Bench 63")
    expect(row).to_contain_text("waits: length", timeout=WORD_MS)
    row.click()
    with taken_in(laptop):
        answer(laptop, "Approve")
    expect(screen.where(phone)).to_contain_text("Glide path", timeout=WORD_MS)
