"""Lines that are slow, and networks that answer by themselves; a server that goes back to an older app.

A guest network's sign-in page, an empty answer or a lost cookie refuses nothing: what was done stays on the phone and
is sent by itself. Slow answers are shown, each of them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any

import pytest
from playwright.sync_api import Page, Request, Route, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case, events, report, stored_by_now
from tests.journeys.test_killed import at_work, no_sending, settled, tap

__all__ = ["at_work"]

API = re.compile(r"/api/")

# Every answer to the app arrives so much later than it was given.
SLOW = "const real = fetch; globalThis.fetch = async (...args) => { const answer = await real(...args);"
SLOW += " await new Promise((go) => setTimeout(go, %d)); return answer }"
SLACK_MS = 5_000

PAGE = "<!doctype html><title>Guest network</title><h1>Sign in to this network</h1>"
BETWEEN: Mapping[str, Mapping[str, Any]] = {
    "a page": {"status": 200, "content_type": "text/html", "body": PAGE},
    "a page that refuses": {"status": 403, "content_type": "text/html", "body": PAGE},
    "a page that knows nobody": {"status": 401, "content_type": "text/html", "body": PAGE},
    "nothing": {"status": 204, "body": ""},
    "something else": {"status": 200, "content_type": "application/json", "body": "{}"},
    "elsewhere": {"status": 302, "headers": {"Location": "/"}},
}

# The store as an app of the future would leave it, and as the last release opens it.
RAISED = """version => new Promise((tell, fail) => {
  const open = indexedDB.open('fourth-canal', version)
  open.onerror = () => fail(open.error)
  open.onsuccess = () => {
    const left = open.result.transaction('outbox').objectStore('outbox').count()
    left.onsuccess = () => { open.result.close(); tell(left.result) }
  }
})"""
LAST_RELEASE = 3
TO_COME = 99


@pytest.mark.parametrize("delay_ms", [4_000, 8_000])
def test_an_emergency_reaches_a_supervisor_whose_answers_are_slow(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any], delay_ms: int
) -> None:
    phone, laptop = open_phone(), open_laptop()
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, f"Bench {delay_ms // 1000} slow")
    laptop.add_init_script(SLOW % delay_ms)
    laptop.goto("/worklist")
    # Both lists say how old they are; an old one says so loudly.
    expect(laptop.get_by_text(re.compile(r"as of \d\d:\d\d:\d\d$"))).to_have_count(2, timeout=2 * delay_ms + SLACK_MS)
    with laptop.expect_response(lambda answer: answer.url.endswith("/running-work"), timeout=2 * delay_ms + SLACK_MS):
        pass
    plan = phone.request.get(f"/api/v1/cases/{case}/events").json()["course"]["plan_hash"]
    report(phone, case, plan, [("", "", {"kind": "emergency", "what": "sudden_bleeding"})])
    # What is on its way was asked for before; the one after it tells.
    halted = laptop.get_by_role("link").filter(has_text=f"Bench {delay_ms // 1000} slow").filter(has_text="HALTED")
    expect(halted).to_be_visible(timeout=2 * delay_ms + SLACK_MS)
    laptop.context.set_offline(True)
    expect(laptop.get_by_text("No connection. This is what was seen")).to_have_count(2, timeout=delay_ms + SLACK_MS)
    expect(halted).to_be_visible()


def is_sending(asked: Request) -> bool:
    return asked.method == "POST" and asked.url.endswith("/events")


def answering(answer: Mapping[str, Any]) -> Callable[[Route], None]:
    return lambda route: route.fulfill(**answer)


def test_networks_that_answer_by_themselves_refuse_nothing(at_work: tuple[Page, str]) -> None:
    phone, case = at_work
    for what, answer in BETWEEN.items():
        before = len(events(phone, case))
        phone.route(API, answering(answer))
        tap(phone)
        expect(phone.get_by_text("1 entry not sent yet")).to_be_visible()
        expect(phone.get_by_text("No connection. This is what was seen")).to_be_visible()
        expect(phone.get_by_text("The server would not take")).to_have_count(0)
        expect(phone.get_by_text("Your sign-in has run out")).to_have_count(0)
        with phone.expect_request(is_sending):
            pass  # it was tried again
        assert len(events(phone, case)) == before, what
        phone.unroute(API)
        # Nobody touches the phone, and the browser noticed nothing.
        stored_by_now(phone, case, before + 1)
        settled(phone)


def test_a_lost_token_is_fetched_anew_and_the_work_goes_on(at_work: tuple[Page, str]) -> None:
    phone, case = at_work
    before = len(events(phone, case))
    phone.context.clear_cookies(name="csrftoken")
    tap(phone)
    stored_by_now(phone, case, before + 1)
    settled(phone)


def test_an_app_that_is_older_than_the_store_says_so_and_shows_no_work(at_work: tuple[Page, str]) -> None:
    phone, case = at_work
    phone.route("**/events", no_sending)
    tap(phone)
    expect(phone.get_by_text("1 entry not sent yet")).to_be_visible()
    # No page of the app is open: the last release opens the store, and finds what waits.
    phone.goto("/icon-192.png")
    assert phone.evaluate(RAISED, LAST_RELEASE) == 1
    assert phone.evaluate(RAISED, TO_COME) == 1
    phone.goto(f"/cases/{case}/chair")
    expect(phone.get_by_text("This app is older than what is kept on this phone.")).to_be_visible()
    expect(phone.get_by_role("heading", name="No work is shown here")).to_be_visible()
    expect(screen.card(phone)).to_have_count(0)
    # An emergency is told all the same, and the server has it.
    before = len(events(phone, case))
    phone.unroute("**/events")
    phone.get_by_role("button", name="Problem").click()
    phone.get_by_role("button", name="Sudden bleeding").click()
    expect(phone.get_by_role("alert").filter(has_text="Sudden bleeding")).to_be_visible()
    assert stored_by_now(phone, case, before + 1)[-1]["payload"]["kind"] == "emergency"
    phone.goto(f"/cases/{case}")
    expect(phone.get_by_role("heading", name="No work is shown here")).to_be_visible()
    # What needs no store is there.
    phone.get_by_role("banner").get_by_role("link", name="Back").click()
    expect(phone.get_by_role("heading", level=1, name="Cases")).to_be_visible()
    expect(phone.get_by_text("This app is older than what is kept on this phone.")).to_be_visible()


def test_a_chair_whose_store_was_taken_by_a_newer_app_shows_no_work(at_work: tuple[Page, str]) -> None:
    phone, _ = at_work
    newer = phone.context.new_page()
    newer.goto("/icon-192.png")
    newer.evaluate(RAISED, TO_COME)
    expect(phone.get_by_text("A newer version of the app is open in another tab.")).to_be_visible()
    expect(phone.get_by_role("heading", name="No work is shown here")).to_be_visible()
    expect(screen.card(phone)).to_have_count(0)
