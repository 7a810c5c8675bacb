"""An emergency reaches those who supervise, whatever else does not go through."""

from __future__ import annotations

import json
import re
import sqlite3
from collections.abc import Callable, Mapping
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from tests.journeys import hands, screen
from tests.journeys.conftest import Opens
from tests.journeys.records import events, stored_by_now
from tests.journeys.test_chair import at_the_chair

SEEN_MS = 5000
"""From the line being good again to a supervisor's screen; of a sign-in that had run out, from when it holds again.

Where the supervisor's own answers are late it comes later by as much (`test_bad_lines.py`).
"""
EVENTS = re.compile(r"/api/v1/cases/[^/]+/events$")
SENT = "it stands first on the supervisors"


def tell(phone: Page, place: Callable[[Page], Locator] = screen.dock) -> None:
    place(phone).get_by_role("button", name="Problem").click()
    phone.get_by_role("dialog").get_by_role("button", name="An instrument has separated").click()
    # On the screen that can be read: over the sign-in form where there is one.
    expect(screen.halted(phone).last.get_by_role("heading").first).to_have_text(
        "Call the person in the room now.", timeout=500
    )


def tell_with_no_line(phone: Page) -> None:
    phone.context.set_offline(True)
    tell(phone)
    expect(phone.get_by_text("NOT SENT: call out. This phone has no connection.")).to_be_visible()


def seen(laptop: Page, alias: str) -> None:
    """On whatever screen the supervisor is."""
    bar = laptop.get_by_role("alert").filter(has_text=re.compile(f"EMERGENCY: tooth .., {alias}"))
    expect(bar).to_contain_text("An instrument has separated", timeout=SEEN_MS)


def is_emergency(route: Route) -> bool:
    sent = route.request.post_data
    return bool(sent) and json.loads(sent or "{}")["events"][0]["payload"]["kind"] in ("emergency", "corrected")


def refuse(route: Route) -> None:
    if route.request.method != "POST" or is_emergency(route):
        return route.continue_()
    problem = {"type": "/api/v1/problems/not-usable", "status": 422, "detail": "Refused."}
    return route.fulfill(status=422, content_type="application/problem+json", body=json.dumps(problem))


def fail(route: Route) -> None:
    if route.request.method != "POST" or is_emergency(route):
        return route.continue_()
    return route.fulfill(status=500, content_type="text/html", body="<h1>Server Error</h1>")


@pytest.mark.parametrize(("alias", "behind"), [("Bench 911", refuse), ("Bench 912", fail)])
def test_it_is_seen_within_five_seconds_behind_an_entry_that_does_not_go_through(
    alias: str, behind: Callable[[Route], None], open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, alias)
    laptop.goto("/account")
    phone.route(EVENTS, behind)
    phone.get_by_role("button", name="At length").click()
    expect(phone.get_by_text("1 entry not sent yet")).to_be_visible()
    tell_with_no_line(phone)
    phone.context.set_offline(False)
    seen(laptop, alias)
    expect(phone.get_by_text(SENT)).to_be_visible()
    bar = laptop.get_by_role("alert").filter(has_text=alias)
    bar.get_by_role("button", name="I am going").click()
    expect(bar).to_be_hidden()
    expect(phone.get_by_text("is on the way.")).to_be_visible(timeout=SEEN_MS)

    # It was something else, and then not so: whoever was told hears it. Only the supervisor lets the work go on.
    phone.get_by_role("button", name="Correct it").click()
    phone.get_by_role("dialog").get_by_role("button", name="It was not so").click()
    expect(screen.halted(phone).get_by_text("It was not so, says")).to_be_visible()
    laptop.goto("/worklist")
    row = laptop.locator("[data-halted]").filter(has_text=alias)
    expect(row).to_contain_text("It was not so, says", timeout=SEEN_MS)
    expect(phone.get_by_role("button", name="Let it go on")).to_have_count(0)
    laptop.goto(f"/cases/{case}/chair")
    laptop.get_by_role("alert").get_by_label("Reason").fill("Nothing had happened.")
    laptop.get_by_role("alert").get_by_role("button", name="Let it go on").click()
    expect(phone.get_by_role("heading", name="Call the person in the room now.")).to_be_hidden(timeout=SEEN_MS)
    # What was done before it counts, though it came after it.
    phone.unroute(EVENTS)
    if again := phone.get_by_role("button", name="Try again").all():
        again[0].click()
    # A line that comes back is tried at once; that it is tried by itself too is another journey's.
    phone.context.set_offline(True)
    phone.context.set_offline(False)
    expect(phone.get_by_text("not sent yet")).to_be_hidden(timeout=40_000)
    kinds = [each["payload"]["kind"] for each in events(phone, case)]
    assert kinds == ["emergency", "come", "corrected", "resume", "step"]
    assert (
        phone.evaluate(
            "async (at) => (await (await fetch(at)).json()).course.out_of_course", f"/api/v1/cases/{case}/events"
        )
        == {}
    )


def test_a_sign_in_that_has_run_out_covers_nothing(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    at_the_chair(phone, laptop, demo, "Bench 913")
    laptop.goto("/account")
    phone.context.clear_cookies()
    expect(phone.get_by_text("Your sign-in has run out")).to_be_visible()
    over = phone.get_by_role("main", name="Sign in again")
    tell(phone, lambda _: over)
    expect(
        over.get_by_text("NOT SENT: call out. Your sign-in has run out. Sign in: it goes out at once.")
    ).to_be_visible()
    expect(screen.first_steps(over).first).to_be_in_viewport()
    with phone.expect_response(lambda answer: answer.url.endswith("/session") and answer.request.method == "POST"):
        hands.type_sign_in(phone, hands.person(demo, "student"))
    seen(laptop, "Bench 913")
    expect(over).to_have_count(0)
    expect(phone.get_by_text(SENT)).to_be_visible()


def test_with_a_store_that_takes_nothing_it_is_shown_and_sent(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    at_the_chair(phone, laptop, demo, "Bench 914")
    # Over the list itself as well, whose own row stands under it.
    laptop.goto("/worklist")
    full = "() => { throw new DOMException('no room', 'QuotaExceededError') }"
    phone.evaluate(f"() => {{ IDBObjectStore.prototype.put = IDBObjectStore.prototype.add = {full} }}")
    tell(phone)
    seen(laptop, "Bench 914")


def test_answers_of_eight_seconds_keep_it_from_nobody(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    at_the_chair(phone, laptop, demo, "Bench 915")
    laptop.goto("/account")
    slow = "({ of }) => { const ask = window.fetch; window.fetch = async (...g) => "
    slow += "{ const answer = await ask(...g); await new Promise((r) => setTimeout(r, of)); return answer } }"
    phone.evaluate(slow, {"of": 8000})
    tell_with_no_line(phone)
    phone.context.set_offline(False)
    seen(laptop, "Bench 915")
    expect(phone.get_by_text(SENT)).to_be_visible(timeout=20_000)


def test_a_server_brought_back_from_a_copy_gets_again_what_the_phone_had_told(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    database = Path(demo["database"])
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 916")
    laptop.goto("/account")
    kept = database.with_suffix(".kept")
    copy(database, kept)
    phone.get_by_role("button", name="At length").click()
    expect(screen.where(phone)).to_contain_text("Explore")
    expect(phone.get_by_text("not sent yet")).to_be_hidden()
    done = [each["id"] for each in stored_by_now(phone, case, 1)]
    shown = screen.card(phone).inner_text()
    copy(kept, database)
    expect(phone.get_by_text("The server was brought back to an earlier state.")).to_be_visible()
    expect(phone.get_by_text("1 entry of yours had got lost there and was sent again.")).to_be_visible()
    # There once, as it was; and the chair stands where it stood.
    assert [each["id"] for each in events(phone, case)] == done
    assert screen.card(phone).inner_text() == shown
    tell_with_no_line(phone)
    copy(kept, database)
    phone.context.set_offline(False)
    seen(laptop, "Bench 916")


def copy(from_: Path, to: Path) -> None:
    """https://www.sqlite.org/backup.html: of a database that is in use, to one that is."""
    with closing(sqlite3.connect(from_, timeout=20)) as source, closing(sqlite3.connect(to, timeout=20)) as target:
        source.backup(target)


def test_what_to_do_first_is_in_sight_from_wherever_it_was_told(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    at_the_chair(phone, laptop, demo, "Bench 919")
    phone.get_by_role("link", name="Close for today").scroll_into_view_if_needed()
    phone.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
    assert phone.evaluate("scrollY") > 200
    tell(phone)
    phone.wait_for_function("() => !history.state?.sheet")
    screen.drawn(phone)  # the browser scrolls back with the next picture
    expect(phone.get_by_role("heading", name="Call the person in the room now.")).to_be_in_viewport(ratio=1)
    expect(screen.first_steps(phone).first).to_be_in_viewport(ratio=1)
