"""A slip is taken back by whoever made it, whatever others have noted since; a splash in an eye has first steps."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.records import stored_by_now
from tests.journeys.test_chair import WORD_MS, answer, at_the_chair

SPLASH = re.compile("A splash in somebody.s eye")


def test_a_note_from_elsewhere_stands_in_no_undos_way(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 941")
    answer(phone, "At length")
    (step,) = stored_by_now(phone, case, 1)

    laptop.goto(f"/cases/{case}/chair")
    laptop.get_by_text("Add a note").click()
    laptop.get_by_label("Note").fill("Seen from here.")
    laptop.get_by_role("button", name="Keep the note").click()
    phone.get_by_text("What was done").click()
    expect(phone.get_by_text("Seen from here.")).to_be_visible(timeout=WORD_MS)

    phone.get_by_role("button", name=re.compile(r"^Take back: MB ")).click()
    undo = stored_by_now(phone, case, 3)[-1]
    assert undo["payload"] == {"kind": "undo", "undoes": step["id"]}
    course = phone.request.get(f"/api/v1/cases/{case}/events").json()["course"]
    assert (course["undone"], course["out_of_course"]) == ([step["id"]], {})
    expect(screen.where(phone)).to_contain_text("Explore")


def test_a_splash_in_an_eye_says_what_to_do_first(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    at_the_chair(phone, laptop, demo, "Bench 942")
    laptop.goto("/account")
    screen.dock(phone).get_by_role("button", name="Problem").click()
    phone.get_by_role("dialog").get_by_role("button", name=SPLASH).click()
    first = screen.first_steps(phone).filter(has_text="Rinse the open eye at once")
    expect(first).to_be_in_viewport()
    bar = laptop.get_by_role("alert").filter(has_text="Bench 942")
    expect(bar).to_contain_text(SPLASH, timeout=WORD_MS)
