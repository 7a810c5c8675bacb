"""Notifications: the built worker shows what comes, and the account screen says where they stand.

The tests' browser has no notifications of its own and refuses every leave: what the worker asks of it is listened to.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import partial
from typing import Any

from playwright.sync_api import CDPSession, Page, Worker, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in

Demo = Mapping[str, Any]
ASKED = {"case_id": "c1", "alias": "Bench 1", "tooth": "26", "canal": "MB2", "what": "asked", "hold_point": "length"}
LISTEN = """() => {
    self.heard = []
    self.registration.showNotification = async (title, { body, tag, data, requireInteraction }) =>
        self.heard.push([title, body, tag, data, requireInteraction])
    self.clients.openWindow = async (to) => self.heard.push(to)
}"""
CLICK = """(to) => {
    const click = Object.assign(new ExtendableEvent('notificationclick'), {notification: {data: to, close() {}}})
    self.dispatchEvent(click)
}"""


def listened(page: Page) -> Worker:
    """The app's worker, which from now on says what it shows."""
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    (worker,) = page.context.service_workers
    worker.evaluate(LISTEN)
    return worker


def has_heard(worker: Worker, count: int) -> bool:
    return int(worker.evaluate("self.heard.length")) >= count


def registration(page: Page) -> tuple[CDPSession, str]:
    """A session of the browser's debugging protocol, and its name for the worker's registration."""
    session = page.context.new_cdp_session(page)
    registrations: list[str] = []
    session.on(
        "ServiceWorker.workerRegistrationUpdated",
        lambda update: registrations.extend(registered["registrationId"] for registered in update["registrations"]),
    )
    session.send("ServiceWorker.enable")
    screen.until(page, lambda: bool(registrations))
    return session, registrations[0]


def test_the_worker_shows_what_comes_and_a_tap_opens_it(open_phone: Opens, demo: Demo) -> None:
    page = open_phone()
    sign_in(page, person(demo, "supervisor"))
    worker = listened(page)
    session, name = registration(page)
    messages = [json.dumps(ASKED), json.dumps(ASKED | {"what": "emergency", "canal": ""}), "no JSON"]
    for count, message in enumerate(messages, 1):
        push = {"origin": demo["url"].rstrip("/"), "registrationId": name, "data": message}
        session.send("ServiceWorker.deliverPushMessage", push)
        screen.until(page, partial(has_heard, worker, count))
    assert worker.evaluate("self.heard") == [
        ["26 MB2: your sign-off is asked for", "Bench 1, length", "c1 MB2", "/cases/c1/sign-off/MB2", False],
        ["Emergency: tooth 26", "Bench 1, length", "c1 ", "/cases/c1/chair", True],
        ["Something waits for you", "Open Fourth Canal.", "other", "/worklist", False],
    ]
    worker.evaluate(CLICK, "/cases/c1/chair")
    screen.until(page, lambda: bool(worker.evaluate("self.heard.at(-1)") == "/cases/c1/chair"))


def test_where_notifications_are_forbidden_the_account_says_so(open_phone: Opens, demo: Demo) -> None:
    page = open_phone()
    sign_in(page, person(demo, "supervisor"))
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.goto("/account")
    expect(page.get_by_text("Notifications of this app are forbidden on this device.")).to_be_visible()
    expect(page.get_by_role("button", name="Notify me on this device")).to_have_count(0)


def test_students_have_none_on_offer(open_phone: Opens, demo: Demo) -> None:
    page = open_phone()
    sign_in(page, person(demo, "student"))
    page.goto("/account")
    expect(page.get_by_role("button", name="Sign out")).to_be_visible()
    expect(page.get_by_role("heading", name="Notifications")).to_have_count(0)
