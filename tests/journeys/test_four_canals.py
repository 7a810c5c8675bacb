"""The main job on a phone: a molar with four canals is planned, returned, changed, approved; then the case changes."""

from __future__ import annotations

import re
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys import hands

# Tooth, pre-operative length, stop set, tip short, length that follows: the check case of the planner.
MOLAR = {
    "MB1": ("20.5", "19.5", "1,0", "19.5"),
    "MB2": ("20,0", "19.0", "1.0", "19.0"),
    "DB": ("19.5", "18.5", "0.5", "18.0"),
    "P": ("22.0", "21.0", "1.5", "21.5"),
}


@pytest.fixture
def student(demo: dict[str, Any], phone: Page) -> Page:
    hands.sign_in(phone, hands.person(demo, "student"))
    return phone


@pytest.fixture
def supervisor(demo: dict[str, Any], laptop: Page) -> Page:
    hands.sign_in(laptop, hands.person(demo, "supervisor"))
    return laptop


def charted(page: Page, alias: str) -> None:
    """The molar with all its lengths, its mesiobuccal canals joining."""
    hands.open_case(
        page, alias, notation="Universal", tooth="14", means="Maxillary left first molar", setting="Extracted tooth"
    )
    for canal, (tooth_mm, set_mm, short_mm, comes_to) in MOLAR.items():
        hands.to_canal(page, canal)
        hands.take_image(page, tooth_mm=tooth_mm)
        hands.length(page, f"≈ {set_mm}")
        hands.confirm(page, set_mm=set_mm, short_mm=short_mm)
        hands.length(page, comes_to)
        hands.back(page)
    page.get_by_label("How its canals run").select_option("2-1")
    hands.choose(page, "MB1")


def joined(page: Page) -> None:
    page.get_by_role("link", name="Where MB2 joins is not measured yet").click()
    hands.type_mm(page, "From the common end up to the junction", "3.0")
    hands.choose(page, "mark on a cone")
    hands.keep(page)
    hands.back(page)


def test_the_molar_gives_its_numbers_on_the_phone(student: Page) -> None:
    charted(student, "Tern 31")
    hands.to_plan(student)
    hands.select(student, "MB2")
    hands.unfold(student, "Order of work in MB2")
    expect(student.get_by_text("Withheld from")).to_be_visible()
    joined(student)
    hands.to_plan(student)
    student.get_by_text("Kit, technique, irrigation").click()
    student.get_by_label("Needle").select_option(label="28 G, open-ended")
    hands.unfold(student, "All stops")
    assert hands.stops(student, "10/.02") == ["19.5", "16.0", "18.0", "21.5"]
    assert hands.stops(student, "15/.02") == ["19.5", "16.0", "18.0", "21.5"]
    assert hands.stops(student, "30/.03") == ["19.5", "16.0", "18.0", "21.5"]
    assert hands.stops(student, "Needle, never past") == ["17.5", "14.0", "16.0", "19.5"]


def test_returned_changed_approved_and_void(student: Page, supervisor: Page) -> None:
    charted(student, "Tern 32")
    joined(student)
    hands.to_plan(student)
    student.get_by_role("button", name="Ask for approval").click()
    expect(student.get_by_role("button", name="Withdraw the request")).to_be_visible()

    supervisor.get_by_role("link", name="Tern 32 · plan 1").click()
    supervisor.get_by_role("button", name="Return", exact=True).click()
    expect(supervisor.get_by_text("Say what to change")).to_be_visible()
    hands.select(supervisor, "MB2")
    supervisor.get_by_label("Remark on MB2").fill("Go one size larger here, please.")
    supervisor.get_by_role("button", name="Return", exact=True).click()
    expect(supervisor.get_by_text("Plan 1 returned by")).to_be_visible()

    student.reload()
    expect(student.get_by_text("Go one size larger here, please.")).to_be_visible()
    hands.select(student, "MB2")
    student.get_by_role("button", name="MB2: one size larger").click()
    expect(student.get_by_role("button", name="against plan 1")).to_be_visible()
    student.get_by_role("button", name="against plan 1").click()
    change = (
        student.get_by_role("region", name="MB2").get_by_role("listitem").filter(has_text=re.compile("^final size"))
    )
    expect(change).to_contain_text("35/.03")
    student.get_by_role("button", name="Ask for approval again").click()
    expect(student.get_by_role("button", name="Withdraw the request")).to_be_visible()

    supervisor.get_by_role("link", name="Tern 32 · plan 2").click()
    expect(hands.column(supervisor, "MB2")).to_be_checked()
    expect(supervisor.get_by_role("group", name="Decide on each canal")).to_contain_text("30/.03 → 35/.03")
    expect(supervisor.get_by_text("MB2: answered, see what changed")).to_be_visible()
    changed = supervisor.locator("[data-changed=true]")
    expect(changed).to_contain_text("final size")
    expect(changed).to_contain_text("30/.03")
    expect(changed).to_contain_text("35/.03")
    # What the plan answers stands on it, by whom; the student still sees it too.
    for page in (supervisor, student):
        expect(page.get_by_text("Plan 1 returned by")).to_be_visible()
        expect(page.get_by_text("Go one size larger here, please.")).to_be_visible()
    hands.agree(supervisor)
    supervisor.get_by_role("button", name="Approve plan 2").click()
    expect(supervisor.get_by_text("Plan 2 approved by")).to_be_visible()

    student.reload()
    expect(student.get_by_text("Plan 2 approved by")).to_be_visible()
    student.get_by_role("button", name="MB1: one size larger").click()
    expect(student.get_by_text("Asking with these changes ends that approval")).to_be_visible()
    student.get_by_role("button", name="MB1: one size smaller").click()
    expect(student.get_by_text("Asking with these changes ends that approval")).to_be_hidden()
    hands.to_canal(student, "DB")
    hands.confirm(student, set_mm="18.0", short_mm="1.0")
    hands.back(student)
    expect(student.get_by_text("approval void", exact=True)).to_be_visible()
    expect(student.get_by_text("the approval no longer counts")).to_be_visible()
