"""The page is killed while it writes and while it sends; the phone runs full; a newer app takes over. Nothing is lost.

The judge is the server's list of events: each once, in the order of doing. Every await of the store is killed at in
tests/frontend/crash.test.ts; here are the main ones in a real browser.
"""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Mapping
from typing import Any

import pytest
from playwright.sync_api import CDPSession, Page, Route, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in, type_sign_in
from tests.journeys.records import approved_case, events, to_the_glide_path

# Where a page stops for good: a line put into the browser's own functions before the app's code runs.
WRITES = "const {add} = IDBObjectStore.prototype; IDBObjectStore.prototype.add = function (...args) {"
WRITES += " const made = add.apply(this, args); if (this.name === 'outbox') debugger; return made }"
TAKES_OUT = "const {delete: out} = IDBObjectStore.prototype; IDBObjectStore.prototype.delete = function (...args) {"
TAKES_OUT += " const made = out.apply(this, args); if (this.name === 'outbox') debugger; return made }"
COMMITTED = "const {transaction} = IDBDatabase.prototype; IDBDatabase.prototype.transaction = function (...args) {"
COMMITTED += " const made = transaction.apply(this, args); if (`${args[0]}` === '%s')"
COMMITTED += " made.addEventListener('complete', () => { debugger }); return made }"
FETCHES = "const real = fetch; globalThis.fetch = async (request, ...more) => { const sends = request.method === 'POST'"
FETCHES += (
    " && request.url.endsWith('/events'); if (sends && %s) debugger; const answer = await real(request, ...more);"
)
FETCHES += " if (sends) debugger; return answer }"

FULL = "globalThis.full = false; navigator.storage.estimate = async () => ({quota: 1e9, usage: 988e6});"
FULL += " const {add} = IDBObjectStore.prototype; IDBObjectStore.prototype.add = function (...args) {"
FULL += " if (globalThis.full) throw new DOMException('The disk is full.', 'QuotaExceededError');"
FULL += " return add.apply(this, args) }"

NOTHING_LEFT = """() => new Promise((tell) => {
  const open = indexedDB.open('fourth-canal')
  open.onsuccess = () => {
    const left = open.result.transaction('outbox').objectStore('outbox').count()
    left.onsuccess = () => { open.result.close(); tell(left.result === 0) }
  }
})"""

# A paused page answers nobody who would wait for the click; before the button is ready a click does not count.
ANSWERS = """() => {
  const ready = setInterval(() => {
    const button = document.querySelector('fieldset[aria-label=Answers] button:not([aria-disabled])')
    if (!button) return
    clearInterval(ready)
    button.click()
  }, 50)
}"""

# What is known of the entry when the page is opened again: 0 not written, 1 written.
POINTS = {
    "written and not committed": (WRITES, 0),
    "committed and not told": (COMMITTED % "outbox,device", 1),
    "before the request": (FETCHES % "true", 1),
    "stored and not answered": (FETCHES % "false", 1),
    "taken out and not committed": (TAKES_OUT, 1),
    "taken out and not told": (COMMITTED % "outbox,kept", 1),
}


@pytest.fixture
def at_work(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> tuple[Page, str]:
    """A student's phone on the way through a canal's glide path, and the case."""
    phone, laptop = open_phone(), open_laptop()
    case = chair_at_the_glide_path(phone, laptop, demo)
    laptop.close()
    return phone, case


def chair_at_the_glide_path(phone: Page, laptop: Page, demo: Mapping[str, Any]) -> str:
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, "Bench 201")
    to_the_glide_path(phone, laptop, case, "MB")
    open_chair(phone, case)
    return case


def open_chair(page: Page, case: str) -> None:
    page.goto(f"/cases/{case}/chair")
    expect(screen.where(page)).to_contain_text("Glide path")


def tap(page: Page) -> None:
    screen.answers(page).get_by_role("button").first.click()


def no_sending(route: Route) -> None:
    if route.request.method == "POST":
        route.abort()
    else:
        route.continue_()


def no_reading(route: Route) -> None:
    if route.request.method == "GET":
        route.abort()
    else:
        route.continue_()


def settled(page: Page) -> None:
    """Everything was sent and taken out of the store; what the server shows back is hidden a moment before."""
    expect(screen.where(page)).to_be_visible()
    expect(page.get_by_text("not sent yet")).to_be_hidden()
    screen.until(page, lambda: bool(page.evaluate(NOTHING_LEFT)))


def kill_at(page: Page, hook: str, case: str) -> None:
    """Opens the chair, answers one step, and kills the page where the hook stops it."""
    page.add_init_script(hook)
    open_chair(page, case)
    devtools: CDPSession = page.context.new_cdp_session(page)
    stopped: list[Any] = []
    devtools.on("Debugger.paused", lambda pause: stopped.append(pause))
    devtools.send("Debugger.enable")
    page.evaluate(ANSWERS)
    give_up_at = time.monotonic() + screen.PATIENCE_S
    while not stopped:
        assert time.monotonic() < give_up_at, "the page never came by the point"
        # With its answer comes what the browser had to say before.
        devtools.send("Debugger.enable")
    kill_pages(page)
    page.close()


def kill_pages(page: Page) -> None:
    """The processes of the browser's pages die; where a page is merely closed, it runs on to its end."""
    browser = page.context.browser
    assert browser is not None
    browser_info = browser.new_browser_cdp_session().send("SystemInfo.getProcessInfo")
    for process in browser_info["processInfo"]:
        if process["type"] == "renderer":
            os.kill(process["id"], signal.SIGKILL)


def test_killed_while_it_writes_and_while_it_sends(at_work: tuple[Page, str]) -> None:
    phone, case = at_work
    context = phone.context
    stored = events(phone, case)
    phone.close()
    for where, (hook, written) in POINTS.items():
        kill_at(context.new_page(), hook, case)
        again = context.new_page()
        open_chair(again, case)
        settled(again)
        count = len(stored) + written
        stored = events(again, case)
        assert len(stored) == count, where
        again.close()
    assert [each["position"] for each in stored] == list(range(2, len(stored) + 2))
    assert len({each["id"] for each in stored}) == len(stored)
    own = [each["device_seq"] for each in stored if each["device_id"] == stored[-1]["device_id"]]
    assert own == list(range(1, len(POINTS)))


def test_a_full_phone_says_that_nothing_was_recorded_and_loses_nothing(at_work: tuple[Page, str]) -> None:
    phone, case = at_work
    before = len(events(phone, case))
    # The browser's own limit is not moved by DevTools while a store is open; its refusal is put in its place.
    phone.add_init_script(FULL)
    phone.context.route("**/events", no_sending)
    open_chair(phone, case)
    expect(phone.get_by_text("This phone is almost full: 12 MB")).to_be_visible()
    tap(phone)
    expect(phone.get_by_text("1 entry not sent yet")).to_be_visible()
    step = screen.where(phone).inner_text()
    phone.evaluate("globalThis.full = true")
    tap(phone)
    # Said where it is read: the answers lie at the foot of the screen, wherever it stands.
    phone.get_by_text("What was done").scroll_into_view_if_needed()
    expect(phone.get_by_role("alert").filter(has_text="NOT RECORDED")).to_be_in_viewport(ratio=1)
    assert screen.where(phone).inner_text() == step
    expect(phone.get_by_text("1 entry not sent yet")).to_be_visible()
    phone.evaluate("globalThis.full = false")
    phone.get_by_role("button", name="Record again").click()
    expect(phone.get_by_text("2 entries not sent yet")).to_be_visible()
    expect(phone.get_by_text("NOT RECORDED")).to_be_hidden()
    phone.context.unroute("**/events")
    settled(phone)
    assert len(events(phone, case)) == before + 2


def test_a_sign_in_that_runs_out_goes_on_after_signing_in_and_every_tab_shows_the_same(
    at_work: tuple[Page, str], demo: Mapping[str, Any]
) -> None:
    phone, case = at_work
    before = len(events(phone, case))
    other_tab = phone.context.new_page()
    open_chair(other_tab, case)
    # What the phone reads by itself would notice first, and sign-in cover what is to be tapped.
    phone.route("**/api/**", no_reading)
    phone.context.clear_cookies(name="sessionid")
    tap(phone)
    expect(phone.get_by_text("Your sign-in has run out")).to_be_visible()
    phone.unroute("**/api/**")
    type_sign_in(phone, person(demo, "student"))
    settled(phone)
    assert len(events(phone, case)) == before + 1
    # Both tabs show the same, and what one of them does the other has at once.
    expect(screen.card(other_tab)).to_have_text(screen.card(phone).inner_text(), use_inner_text=True)
