"""What a phone meets: no connection, a sign-in that runs out, a reload in the middle of typing."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys import hands


@pytest.fixture
def student(demo: dict[str, Any], phone: Page) -> Page:
    hands.sign_in(phone, hands.person(demo, "student"))
    expect(phone.get_by_role("link", name="Bench tooth A2")).to_be_visible()
    return phone


def kept_by_worker(page: Page) -> None:
    """The worker has the app and answers for this page."""
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.reload()
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")


def test_without_a_connection_the_app_opens_with_what_was_seen_last(student: Page) -> None:
    student.get_by_role("link", name="Bench tooth A2").click()
    expect(student.get_by_role("img", name="Depth board")).to_be_visible()
    kept_by_worker(student)
    expect(student.get_by_role("img", name="Depth board")).to_be_visible()
    address = student.url
    student.context.set_offline(True)
    student.goto("/cases")
    expect(student.get_by_text("No connection. This is what was seen")).to_be_visible()
    expect(student.get_by_role("link", name="Bench tooth A2")).to_be_visible()
    student.goto(address)
    expect(student.get_by_role("img", name="Depth board")).to_be_visible()
    expect(student.get_by_text("the figures are those of before")).to_be_visible()
    hands.unfold(student, "All stops")
    # MB2 joins MB1 at 17.0: nothing passes the junction.
    assert hands.stops(student, "10/.02") == ["22.0", "17.0", "22.0", "22.5"]


def test_a_reading_that_could_not_be_sent_is_kept_and_sent_once(student: Page) -> None:
    student.get_by_role("link", name="Bench tooth A3").click()
    hands.to_canal(student, "D")
    hands.choose(student, "DB cusp")
    expect(student.get_by_text("from DB cusp")).to_be_visible()
    kept_by_worker(student)
    student.context.set_offline(True)
    sheet = hands.measures(student)
    # Whoever has a keyboard types at once.
    expect(sheet.get_by_role("textbox", name="Tooth on the image")).to_be_focused()
    student.keyboard.type("23,5")
    sheet.get_by_role("button", name="Keep", exact=True).click()
    # Longer than such a tooth usually is: asked about once.
    expect(sheet.get_by_text(re.compile(r"23\.5 mm\? This tooth is usually 18\.0.22\.0 mm long"))).to_be_visible()
    sheet.get_by_role("button", name="Keep", exact=True).click()
    expect(sheet.get_by_text("Kept on this phone")).to_be_attached()
    # Typed and not given: a draft. Given and not sent: it waits. Neither is lost with the page.
    hands.choose(sheet, "Confirming image")
    hands.type_mm(student, "Stop that was set", "22")
    student.reload()
    hands.measures(student)
    expect(student.get_by_text("Pre-operative image Not sent yet")).to_be_attached()
    expect(student.get_by_text("This is what you had typed before")).to_be_visible()
    expect(student.get_by_role("textbox", name="Stop that was set")).to_have_value("22")
    sheet.get_by_role("button", name="Close").click()
    student.context.set_offline(False)
    expect(student.get_by_text("Pre-operative image Not sent yet")).to_be_hidden()
    hands.length(student, "≈ 22.5")
    expect(student.get_by_role("listitem").filter(has_text="Pre-operative image")).to_have_count(1)


def test_a_sign_in_that_runs_out_keeps_the_form(demo: dict[str, Any], student: Page) -> None:
    student.get_by_role("link", name="New case").click()
    student.get_by_label("Patient alias").fill("Plover 5")
    hands.type_tooth(student, "UL6", "Palmer")
    expect(student.get_by_text("Maxillary left first molar", exact=True)).to_be_visible()
    hands.choose(student, "Extracted tooth")
    student.context.clear_cookies()
    student.get_by_role("button", name="Open the case").click()
    expect(student.get_by_text("Your sign-in has run out")).to_be_visible()
    hands.type_sign_in(student, hands.person(demo, "student"))
    expect(student.get_by_text("Your sign-in has run out")).to_be_hidden()
    expect(student.get_by_label("Patient alias")).to_have_value("Plover 5")
    student.get_by_role("button", name="Open the case").click()
    expect(student.get_by_role("heading", name="26 · Plover 5")).to_be_visible()


@pytest.mark.parametrize(
    ("notation", "designation", "says"),
    [("Universal", "99", "no tooth"), ("ISO 3950", "19", "no tooth"), ("Palmer", "26", "no tooth")],
)
def test_a_wrong_tooth_is_told_at_its_field(student: Page, notation: str, designation: str, says: str) -> None:
    student.get_by_role("link", name="New case").click()
    hands.type_tooth(student, designation, notation)
    field = student.get_by_label("Tooth", exact=True)
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(student.get_by_role("alert")).to_contain_text(says)


def test_another_person_on_the_phone_sees_nothing_of_the_first(demo: dict[str, Any], student: Page) -> None:
    student.get_by_role("link", name="New case").click()
    student.get_by_label("Patient alias").fill("Curlew 9")
    hands.back(student)
    hands.sign_out(student)
    hands.type_sign_in(student, hands.person(demo, "student", 1))
    expect(student.get_by_role("link", name="Bench tooth B3")).to_be_visible()
    expect(student.get_by_role("link", name="Bench tooth A2")).to_be_hidden()
    student.get_by_role("link", name="New case").click()
    expect(student.get_by_label("Patient alias")).not_to_have_value("Curlew 9")
    expect(student.get_by_text("This is what you had typed before")).to_be_hidden()


def test_back_and_a_reload_keep_the_place(student: Page) -> None:
    student.get_by_role("link", name="Bench tooth A2").click()
    hands.to_canal(student, "MB2")
    student.reload()
    readings = student.get_by_role("heading", name="Readings so far")
    expect(readings).to_be_visible()
    expect(hands.column(student, "MB2")).to_be_checked()
    student.go_back()
    expect(readings).to_be_hidden()
    expect(student.get_by_role("heading", level=1, name="16 · Bench tooth A2")).to_be_visible()
    assert student.title() == "16 · Bench tooth A2 · Fourth Canal"


def test_nothing_is_wider_than_a_narrow_phone(demo: dict[str, Any], open_phone: Callable[..., Page]) -> None:
    page = open_phone(viewport={"width": 320, "height": 640})
    hands.sign_in(page, hands.person(demo, "student"))
    page.get_by_role("link", name="Bench tooth A2").click()
    hands.to_plan(page)
    for fold in ("All stops", "All cautions", "At the tray", "Order of work"):
        hands.unfold(page, fold)
        assert page.evaluate("document.documentElement.scrollWidth") <= 320
