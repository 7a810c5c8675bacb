"""What is expected, why, and in spite of what: a student's reason and a supervisor's sign-off travel with the plan."""

from __future__ import annotations

import re
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys import hands

# An upper premolar with two canals; the buccal one curves more than a student opens alone.
CANALS = {"B": ("22.0", "21.0", "1.0"), "P": ("21.5", "20.5", "1.0")}
TOO_CURVED_DEG = "40"
ANSWER_MS = 10_000  # what somebody else did shows within five seconds, and a loaded machine is slower


@pytest.fixture
def student(demo: dict[str, Any], phone: Page) -> Page:
    hands.sign_in(phone, hands.person(demo, "student"))
    return phone


@pytest.fixture
def supervisor(demo: dict[str, Any], laptop: Page) -> Page:
    hands.sign_in(laptop, hands.person(demo, "supervisor"))
    return laptop


def charted(page: Page, alias: str) -> None:
    hands.open_case(
        page, alias, notation="ISO 3950", tooth="24", means="Maxillary left first premolar", setting="Extracted tooth"
    )
    for canal, (tooth_mm, set_mm, short_mm) in CANALS.items():
        hands.to_canal(page, canal)
        hands.take_image(page, tooth_mm=tooth_mm)
        hands.confirm(page, set_mm=set_mm, short_mm=short_mm)
        hands.back(page)


def curved(page: Page, canal: str, by_deg: str) -> None:
    hands.to_canal(page, canal)
    page.get_by_text("About this canal").click()
    hands.type_mm(page, "Curvature", by_deg)
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_role("button", name="Save")).to_be_enabled()
    hands.back(page)


def test_a_student_steps_through_and_a_supervisor_lets_a_stop_pass(student: Page, supervisor: Page) -> None:
    charted(student, "Dunlin 7")
    curved(student, "B", TOO_CURVED_DEG)
    hands.to_plan(student)

    # What is expected, step by step: the instrument goes in, the words say it too.
    hands.select(student, "P")
    slider = student.get_by_role("slider", name="Step through the work")
    expect(slider).to_have_attribute("aria-valuetext", "the whole plan")
    slider.fill("0")
    student.get_by_role("button", name="One step on").click()
    expect(slider).to_have_attribute("aria-valuetext", re.compile(r"^1 of \d+: 10/.02 in P, expected at "))
    expect(student.locator("[data-drawn='in hand']")).to_have_count(1)
    expect(student.get_by_role("status", name="What is expected")).to_contain_text("10/.02")
    expect(student.get_by_role("status", name="What is expected")).to_contain_text("expected")

    # A number is touched: its rule, its source; the way back closes it and leaves the plan.
    hands.unfold(student, "All stops")
    number = student.get_by_role("button", name=re.compile(r"^Why [\d.]+: P, needle, never past"))
    number.click()
    sheet = student.get_by_role("dialog", name="P: needle, never past")
    expect(sheet).to_contain_text("Where it comes from")
    student.go_back()
    expect(sheet).to_be_hidden()
    expect(number).to_be_focused()

    # A size outside the advised range does not go on without a reason.
    while student.get_by_role("status").locator("[data-inside]").get_attribute("data-inside") == "true":
        student.get_by_role("button", name="P: one size larger").click()
    student.get_by_role("button", name="Ask for approval").click()
    why = student.get_by_label(re.compile(r"^P: why \d+, outside the advised"))
    expect(why).to_be_visible()
    why.fill("The canal gauged wide at its end.")
    student.get_by_role("button", name="Ask for approval").click()
    expect(student.get_by_role("button", name="Withdraw the request")).to_be_visible()

    expect(student.get_by_role("button", name="against plan")).to_have_count(0)

    # The supervisor reads the reason and the difficulty, and lets the stop of the curved canal pass.
    waiting = supervisor.get_by_role("link", name="Dunlin 7 · plan 1")
    expect(waiting).to_contain_text("difficulty high", timeout=ANSWER_MS)
    waiting.click()
    hands.select(supervisor, "P")
    expect(supervisor.get_by_role("region", name="P", exact=True)).to_contain_text("The canal gauged wide at its end.")
    expect(supervisor.get_by_text("difficulty high").first).to_be_visible()
    hands.select(supervisor, "B")
    stop = supervisor.locator("[data-severity=stop]").filter(has_text="B curves by 40 degrees")
    stop.get_by_role("button", name="Let the work go on").click()
    stop.get_by_label("Why the work may go on").fill("Seen together; pre-curved hand instruments first.")
    stop.get_by_role("button", name="Let it pass, with this reason").click()
    expect(stop.get_by_text("Let pass by")).to_be_visible()
    expect(supervisor.get_by_text("The case has changed since this plan was made")).to_be_visible()

    # The student's next plan carries the word, and the canal opens.
    student.reload()
    hands.select(student, "B")
    passed = student.locator("[data-severity=stop]").filter(has_text="B curves by 40 degrees")
    expect(passed).to_contain_text("Let pass by a supervisor: Seen together; pre-curved hand instruments first.")
    hands.unfold(student, "All stops")
    assert hands.stops(student, "10/.02") == ["21.0", "20.5"]
    student.get_by_role("button", name="Ask for approval again").click()
    expect(student.get_by_role("button", name="Withdraw the request")).to_be_visible()
    supervisor.get_by_role("link", name="Dunlin 7 · plan 2").click()
    hands.agree(supervisor)
    supervisor.get_by_role("button", name="Approve plan 2").click()
    expect(supervisor.get_by_text("Plan 2 approved by")).to_be_visible()
