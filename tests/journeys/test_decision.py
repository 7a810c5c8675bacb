"""A supervisor decides on an ordinary plan on one screen: few touches, each target in sight, by keyboard alone too."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.journeys import hands
from tests.journeys.conftest import Opens
from tests.journeys.records import submitted_plan

MOST_TAPS = 7  # what we ask of ourselves
SIZES = {"phone": (360, 740), "laptop": (1280, 800)}


@pytest.mark.parametrize("size", SIZES)
def test_an_ordinary_plan_is_decided_on_one_screen(open_phone: Opens, demo: Mapping[str, Any], size: str) -> None:
    supervisor = _asked(open_phone, demo, f"Bench 33{len(size)}")
    width, height = SIZES[size]
    supervisor.set_viewport_size({"width": width, "height": height})
    taps = 0
    for target in _targets(supervisor):
        expect(target).to_be_in_viewport(ratio=1)
        target.click()
        taps += 1
    expect(supervisor.get_by_text("Plan 1 approved by")).to_be_visible()
    assert taps <= MOST_TAPS


def test_the_keyboard_is_enough(open_phone: Opens, demo: Mapping[str, Any]) -> None:
    supervisor = _asked(open_phone, demo, "Bench 339")
    for target in _targets(supervisor):
        while not target.evaluate("element => element === document.activeElement"):
            supervisor.keyboard.press("Tab")
        supervisor.keyboard.press("Space")
    expect(supervisor.get_by_text("Plan 1 approved by")).to_be_visible()


def _asked(open_phone: Opens, demo: Mapping[str, Any], alias: str) -> Page:
    """A supervisor before a plan that somebody asked for, nothing in it to be put right."""
    student, supervisor = open_phone(), open_phone()
    hands.sign_in(student, hands.person(demo, "student"))
    hands.sign_in(supervisor, hands.person(demo, "supervisor"))
    # An emergency at another chair, of another journey, would stand above the plan and go first.
    supervisor.route(
        "**/running-work*", lambda route: route.fulfill(json={"next": None, "previous": None, "results": []})
    )
    supervisor.goto(f"/plans/{submitted_plan(student, alias)['id']}")
    expect(supervisor.get_by_role("button", name="Approve plan 1")).to_be_visible()
    return supervisor


def _targets(supervisor: Page) -> list[Locator]:
    """What is touched, in order: every canal, then the approval."""
    chips = supervisor.get_by_role("group", name="Decide on each canal").get_by_role("button")
    expect(supervisor.get_by_role("checkbox", name="put right")).to_have_count(0)
    return [*chips.all(), supervisor.get_by_role("button", name="Approve plan 1")]
