"""A patient's case over two visits: named, worked, closed, checked, opened again, renewed, gone on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import choose, person, sign_in
from tests.journeys.records import approved_case, events, taken_in
from tests.journeys.test_chair import WORD_MS, answer, approve, due


def press(page: Page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).click()


def in_a_group(page: Page, label: str, name: str) -> None:
    choose(page.get_by_role("group", name=label), name)


def test_a_clinic_case_over_two_visits(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> None:
    phone, laptop = open_phone(), open_laptop()
    clinician = person(demo, "supervisor")
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, clinician)
    case = approved_case(demo, phone, laptop, "Bench 191", tooth="36", setting="clinic")

    # Nothing is worked before the dam and somebody in the room.
    phone.goto(f"/cases/{case}/chair")
    start = phone.get_by_role("region", name="May I start?")
    expect(start).to_contain_text("Not yet")
    expect(screen.answers(phone)).to_have_count(0)
    press(phone, "The dam is on")
    press(phone, clinician["name"])
    line = phone.get_by_role("group", name="May I start?")
    expect(line).to_contain_text(f"Yes. {clinician['name']} in the room · dam on · plan approved")
    expect(phone.get_by_text("Waits for the supervisor: dam and access")).to_be_visible()
    approve(laptop, case)
    due(phone, "Explore")
    answer(phone, "At length")

    # A dam that leaks halts, and only the dam lets it go on.
    line.get_by_text("May I start?").click()
    press(phone, "Dam leaks")
    expect(screen.answers(phone)).to_have_count(0)
    press(phone, "The dam is on again")
    answer(phone, "Irrigated")
    due(phone, "Length")

    # Closed in the middle, also with no connection.
    phone.context.set_offline(True)
    phone.get_by_role("link", name="Close for today").click()
    in_a_group(phone, "Dressing in the canals", "Calcium hydroxide")
    in_a_group(phone, "Temporary filling", "Glass ionomer")
    in_a_group(phone, "Is the access sealed?", "Sealed")
    press(phone, "Close for today")
    expect(phone.get_by_text("Waits for a supervisor")).to_be_visible()
    with taken_in(phone):
        phone.context.set_offline(False)

    # The supervisor finds it on the list and looks at it.
    laptop.goto("/worklist")
    row = laptop.get_by_role("link").filter(has_text="Bench 191")
    expect(row).to_contain_text("to be checked", timeout=WORD_MS)
    row.click()
    with taken_in(laptop):
        press(laptop, "Checked")
    expect(phone.get_by_text(f"Checked by {clinician['name']}.")).to_be_visible(timeout=WORD_MS)

    # The next visit: each canal is found again before any engine; one is not as it was left.
    phone.get_by_role("link", name="Open again").click()
    go = phone.get_by_role("button", name="Open the visit", exact=True)
    expect(go).to_be_disabled()
    press(phone, clinician["name"])
    phone.get_by_label("The dam is on").check()
    for group in phone.get_by_role("group", name="as it was?").all():
        choose(group, "As it was")
    worked = phone.get_by_role("region", name="MB", exact=True)
    in_a_group(phone, "goes to", "It does")
    choose(worked, "Agrees")
    expect(phone.get_by_text("Every canal is as it was left.")).to_be_visible()
    choose(worked, "Differs")
    expect(phone.get_by_text("MB: stays closed until a supervisor lets it go on.")).to_be_visible()
    go.click()

    # The approval counted for one session: a supervisor renews it, and lets the canal go on.
    expect(start).to_contain_text("approval lapsed")
    expect(screen.answers(phone)).to_have_count(0)
    laptop.goto(f"/cases/{case}/chair")
    with taken_in(laptop):
        press(laptop, "Renew the approval")
    expect(line).to_contain_text("Not yet: MB to be checked.", timeout=WORD_MS)
    expect(phone.get_by_text("A supervisor decides.")).to_be_visible()
    laptop.get_by_label("Reason").fill("Locator was wet; read again.")
    press(laptop, "Let it go on")
    with taken_in(phone):
        answer(phone, "Image elsewhere")
    kinds = [each["payload"]["kind"] for each in events(phone, case)]
    assert kinds[-6:] == ["close", "sign_off", "reopen", "sign_off", "resume", "step"]
