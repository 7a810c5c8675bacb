"""A tooth worked to its end at the chair, as it comes: every touch is counted, and each is where a thumb finds it at
the moment it is due. The limits are our own.
"""

from __future__ import annotations

import logging
import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, ViewportSize, expect

from tests.draws import WHOLE
from tests.journeys import screen
from tests.journeys.conftest import PHONE, SHORT_PHONE, Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case, events, taken_in
from tests.journeys.test_what_is_asked import OUT_OF_SIGHT, STILL

MOST_REQUESTS = 5
MOST_TOUCHES = 400  # no tooth asks for as many
WORD_MS = 6000
# Ordinary answers, the first that is offered.
ANSWERS = (
    "Next at the tray",
    "Go on in",
    "Image elsewhere",
    "Irrigated",
    "As it was",
    "All as they were",
    "At length",
    "At its stop",
    "Passes",
    "Done",
)
TURNS = ("Next at the tray", "Go on in")
TO_ANOTHER = re.compile("^(Next at the tray|Go on in)")
ASKS = re.compile("^Ask for")
GAUGES = re.compile("First binder|Confirm")
COMES_TOO = re.compile("comes? to this point too")


@dataclass
class Work:
    phone: Page
    supervisor: Page
    case: str
    counted: Counter[str] = field(default_factory=Counter)

    def touch(self, what: str, target: Locator) -> None:
        """In sight and uppermost when it is due; what it does is waited for."""
        expect(target).to_be_enabled()
        assert target.evaluate_all(OUT_OF_SIGHT) == [], what
        before = self.phone.get_by_role("main").inner_text()
        target.tap()
        expect(self.phone.get_by_role("main")).not_to_have_text(before, use_inner_text=True)
        # What was done is drawn first, then what follows from it.
        self.phone.evaluate(STILL)
        self.counted[what] += 1

    def is_over(self) -> bool:
        """Once it is known: there is something to answer, or nothing any more."""
        ending = self.phone.get_by_role("region", name="All canals are finished")
        expect(ending.or_(screen.answers(self.phone)).first).to_be_visible()
        return ending.is_visible()

    def step(self) -> None:
        phone = self.phone
        if self.held():
            return
        answers = screen.answers(phone).get_by_role("button")
        short = answers.filter(has_text="Stopped at")
        if GAUGES.search(screen.where(phone).inner_text()) and short.count():
            # The first that is gauged binds short of its stop, and so does one above the final size.
            phone.get_by_role("slider").press("ArrowUp")
            self.touch("binds", short)
            return
        for answer in ANSWERS:
            offered = answers.filter(has_text=re.compile(f"^{answer}"))
            if offered.count():
                self.touch("turns" if answer in TURNS else "steps", offered.first)
                return
        raise AssertionError(answers.all_inner_texts())

    def held(self) -> bool:
        """Where a supervisor is due: the other canals come to it first, then one request is for all."""
        asks = screen.answers(self.phone).get_by_role("button", name=ASKS)
        if not asks.count():
            return False
        another = self.phone.get_by_role("button", name=TO_ANOTHER)
        if self.phone.get_by_text(COMES_TOO).count() and another.count():
            self.touch("turns", another.first)
            return True
        canal = screen.where(self.phone).locator("b").inner_text()
        self.touch("requests", asks)
        self.supervisor.goto(f"/cases/{self.case}/sign-off/{canal}")
        with taken_in(self.supervisor):
            screen.answers(self.supervisor).get_by_role("button", name="Approve").click()
        expect(self.phone.get_by_text("Waits for the supervisor")).to_be_hidden(timeout=WORD_MS)
        return True


@pytest.mark.parametrize("viewport", [PHONE, SHORT_PHONE], ids=["360", "320"])
def test_a_tooth_is_worked_to_its_end(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any], viewport: ViewportSize
) -> None:
    """In the gate a tooth of one canal; with DRAWS=whole a molar of four."""
    tooth = "26" if WHOLE else "11"
    phone, laptop = open_phone(viewport=viewport), open_laptop()
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    work = Work(phone, laptop, approved_case(demo, phone, laptop, f"Bench 38{viewport['width']}", tooth=tooth))
    phone.goto(f"/cases/{work.case}/chair")
    expect(screen.answers(phone)).to_be_visible()
    while not work.is_over():
        work.step()
        assert work.counted.total() < MOST_TOUCHES
    logging.getLogger(__name__).info("tooth %s: %s", tooth, dict(work.counted))
    assert work.counted["requests"] <= MOST_REQUESTS
    # No touch that told nothing: an ordinary step takes one.
    own = [each for each in events(phone, work.case) if each["payload"]["kind"] != "sign_off"]
    assert work.counted.total() <= len(own)
