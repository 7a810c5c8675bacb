"""A supervisor looks in on a chair, asks for an image, takes over and gives back; a coordinator only looks."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import expect

from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case

OF_THE_STUDENT = re.compile(
    r"^(At its stop|At length|Stopped|Done|Irrigated|Image|Not sure|I am not sure|Problem|Close for today)"
)


def test_looked_in_on_asked_for_an_image_taken_over_and_given_back(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    student, supervisor = person(demo, "student"), person(demo, "supervisor")
    sign_in(phone, student)
    sign_in(laptop, supervisor)
    case = approved_case(demo, phone, laptop, "Bench 271")
    phone.goto(f"/cases/{case}/chair")
    phone.get_by_role("button", name=re.compile("^At length")).tap()
    expect(phone.get_by_text("Irrigate").first).to_be_visible()

    # Told of somebody else, and nothing of theirs to touch.
    laptop.goto(f"/cases/{case}/chair")
    expect(laptop.get_by_text(f"{student['name']} is at irrigation in", exact=False)).to_be_visible()
    expect(laptop.get_by_role("button", name=OF_THE_STUDENT)).to_have_count(0)
    laptop.get_by_role("button", name=re.compile("^Ask for an image of")).click()
    expect(phone.get_by_text(re.compile(f"^{supervisor['name']} asks for an image of"))).to_be_visible()

    # Taken over in two touches: named to the student, and recorded as the supervisor's own.
    laptop.get_by_role("button", name="Take over").click()
    laptop.get_by_role("button", name="I take over").click()
    expect(laptop.get_by_text("You have taken over")).to_be_visible()
    expect(phone.get_by_text(f"{supervisor['name']} has taken over.", exact=False)).to_be_visible()
    laptop.get_by_role("button", name=re.compile("^Irrigated")).first.click()
    laptop.get_by_role("button", name="Give back").click()
    expect(laptop.get_by_text("You look in.", exact=False)).to_be_visible()
    expect(phone.get_by_text("has taken over.", exact=False)).to_have_count(0)
    events = laptop.request.get(f"/api/v1/cases/{case}/events").json()["events"]
    tellers = [(event["payload"]["kind"], event["actor"]["name"]) for event in events[-3:]]
    assert tellers == [(kind, supervisor["name"]) for kind in ("take_over", "step", "give_back")]


def test_a_coordinator_only_looks(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> None:
    phone, laptop, other = open_phone(), open_laptop(), open_phone()
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, "Bench 272")
    sign_in(other, person(demo, "coordinator"))
    other.goto(f"/cases/{case}/chair")
    expect(other.get_by_text("a supervisor decides", exact=False)).to_be_visible()
    expect(other.get_by_role("button", name=re.compile("Take over|Stop the work|Ask for an image"))).to_have_count(0)
    expect(other.get_by_role("button", name=OF_THE_STUDENT)).to_have_count(0)
