"""The step that is due, answered with one thumb: depths by touch, times that outlive the app, instruments, saline."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.records import events, stored_by_now
from tests.journeys.test_chair import WORD_MS, answer, approve, at_the_chair, due

LEAST_TOUCH_PX = 56


def to_the_first_engine_instrument(phone: Page, laptop: Page, case: str) -> None:
    answer(phone, "At length")
    answer(phone, "Irrigated")
    answer(phone, "Image elsewhere")
    expect(phone.get_by_text("Waits for the supervisor: length")).to_be_visible()
    approve(laptop, case)
    expect(screen.where(phone)).to_contain_text("Glide path", timeout=WORD_MS)
    while not phone.get_by_role("button", name="Stopped at").count():
        first = screen.answers(phone).get_by_role("button").first
        before = first.inner_text(), screen.where(phone).inner_text()
        first.click()
        screen.until(phone, lambda: (first.inner_text(), screen.where(phone).inner_text()) != before)  # noqa: B023


def everything_can_be_touched(page: Page) -> None:
    small = (
        screen.dock(page)
        .get_by_role("button")
        .or_(screen.card(page).get_by_role("button"))
        .evaluate_all(
            """(buttons, least) => buttons.map(each => [each.innerText, each.getBoundingClientRect()])
        .filter(([, box]) => box.width < least || box.height < least).map(([says]) => says)""",
            LEAST_TOUCH_PX,
        )
    )
    assert small == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_a_step_with_one_thumb(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 181")
    to_the_first_engine_instrument(phone, laptop, case)
    everything_can_be_touched(phone)

    # Nothing is answered before it is touched; a touch on the strip is a depth, keys put it right.
    expect(phone.get_by_role("button", name="Stopped at —")).to_be_disabled()
    box = screen.strip(phone).bounding_box()
    assert box
    phone.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 4)
    touched = phone.get_by_role("button", name="Stopped at").inner_text()
    phone.get_by_role("slider").press("ArrowDown")
    expect(phone.get_by_role("button", name="Stopped at")).not_to_have_text(touched)
    said = phone.get_by_role("button", name="Stopped at").inner_text()
    phone.get_by_role("button", name="Stopped at").tap()
    expect(phone.get_by_role("button", name="Take back")).to_contain_text(said.lower())

    # Counting goes on while the app is closed.
    phone.get_by_role("button", name="Count the time").tap()
    phone.reload()
    expect(phone.get_by_role("timer")).to_be_visible()
    phone.get_by_role("button", name="Done after").tap()
    answer(phone, "Passes freely")

    # Another canal: what comes from this one is looked at first, and a bent one is not used again.
    screen.turn(phone, "ML")
    expect(phone.get_by_role("slider")).to_have_count(0)
    phone.get_by_role("button", name="Discard").tap()
    discarded = phone.get_by_role("dialog").get_by_role("button").first
    name = discarded.inner_text()
    discarded.tap()
    phone.get_by_role("button", name="Bent").tap()
    expect(screen.dock(phone)).not_to_contain_text(f"Look at {name},")
    phone.get_by_role("button", name="Not sure", exact=True).tap()
    phone.get_by_role("button", name="Ask a supervisor").tap()
    expect(phone.get_by_role("dialog").get_by_text("A supervisor is asked.")).to_be_visible()
    phone.go_back()
    expect(phone.get_by_role("dialog")).to_be_hidden()
    expect(phone.get_by_text("not sent yet")).to_be_hidden()

    laptop.goto("/worklist")
    row = laptop.get_by_role("link").filter(has_text="Bench 181")
    expect(row).to_contain_text("is not sure · asked")
    row.click()
    laptop.get_by_role("button", name="Come to the chair").click()
    expect(phone.get_by_text("comes to the chair.")).to_be_visible(timeout=WORD_MS)

    payloads = [each["payload"] for each in events(phone, case)]
    depth = next(each for each in payloads if each.get("depth_um") and each["exit"] == "short")
    assert f"{depth['depth_um'] / 1000:.1f}" in said
    counted = [each["contact_s"] for each in payloads if each["kind"] == "step" and each["contact_s"] is not None]
    assert len(counted) == 1
    assert [(each["found"], each["why"]) for each in payloads if each["kind"] == "inspected"][-1] == (
        "discarded",
        "Bent",
    )
    assert [each["kind"] for each in payloads[-2:]] == ["ask", "come"]


def test_after_an_accident_the_first_steps_without_a_connection_and_saline_alone(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 182")
    phone.context.set_offline(True)
    phone.reload()
    phone.get_by_role("button", name="Problem").tap()
    phone.get_by_role("button", name="A perforation is suspected").tap()
    alert = screen.halted(phone)
    expect(alert.get_by_role("heading").first).to_have_text("Call the person in the room now.")
    expect(alert.get_by_text("NOT SENT: call out")).to_be_visible()
    expect(alert.get_by_role("listitem").first).to_have_text("Take the instrument out and leave the canal alone.")
    phone.context.set_offline(False)

    laptop.goto(f"/cases/{case}/chair")
    laptop.get_by_label("Reason").fill("Calm again; nothing hurts.")
    laptop.get_by_label("Keep to saline after this").check()
    laptop.get_by_role("button", name="Let it go on").click()
    expect(phone.get_by_text("Saline only, in every canal")).to_be_visible(timeout=WORD_MS)
    answer(phone, "At length")
    due(phone, "Explore")
    expect(screen.what(phone)).to_have_text(re.compile("^saline"))
    answer(phone, "Irrigated")
    # The accident, the word, the instrument, and the rinse.
    rinsed = stored_by_now(phone, case, 4)[-1]["payload"]
    assert (rinsed["irrigant"], rinsed["exit"]) == ("saline", "done")
