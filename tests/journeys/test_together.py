"""Canals that are ready together: one exposure, one request, one sign-off; a canal that is not there yet is said."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.records import events
from tests.journeys.test_chair import WORD_MS, answer, at_the_chair, due

Demo = Mapping[str, Any]
UNHARMED = re.compile("^(As it was|All as they were)$")


def to_the_image(phone: Page, *, passed_on: bool = False) -> None:
    if passed_on:
        # The instrument comes from another canal: it is looked at.
        screen.answers(phone).get_by_role("button", name=UNHARMED).click()
    answer(phone, "At length")
    due(phone, "Explore")
    answer(phone, "Irrigated")
    due(phone, "Length")


def test_three_canals_take_two_exposures_one_request_and_one_sign_off(
    open_phone: Opens, open_laptop: Opens, demo: Demo
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 271")
    to_the_image(phone)
    expect(phone.get_by_text("one exposure shows all")).to_contain_text("ML and D come to this image too")

    # ML lies behind MB: it is seen apart from another angle; MB and D stand on one exposure.
    screen.turn(phone, "ML")
    to_the_image(phone, passed_on=True)
    expect(phone.get_by_text("From another angle")).to_be_visible()
    screen.turn(phone, "D")
    to_the_image(phone, passed_on=True)
    expect(phone.get_by_role("group", name="One exposure shows").get_by_role("button")).to_have_text(["D", "MB"])
    answer(phone, "On film")
    expect(phone.get_by_text("ML comes to this point too")).to_be_visible()
    screen.turn(phone, "ML")
    screen.answers(phone).get_by_role("button", name=UNHARMED).click()
    answer(phone, "On film")

    # One request, one sign-off.
    answer(phone, "Ask for ML, MB and D")
    laptop.goto(f"/cases/{case}/sign-off/ML")
    expect(laptop.get_by_role("button", name="Approve ML, MB and D")).to_be_visible()
    for canal in ("MB", "D"):
        expect(laptop.get_by_role("heading", level=2, name=canal, exact=True)).to_be_visible()
    laptop.get_by_role("button", name="Approve").click()
    expect(screen.other_canals(phone)).to_have_accessible_name("Other canals: MB open, D open", timeout=WORD_MS)

    stored = events(phone, case)
    assert len({event["payload"]["together"] for event in stored if event["payload"]["kind"] == "sign_off"}) == 1
    record = phone.request.get(f"/api/v1/cases/{case}/record").json()
    asked = record.get("record", record)["asked"]
    # The plan's decision and one sign-off; MB and D on one film, ML on another.
    assert (asked["sign_offs"], asked["exposures"]) == (2, 2)
