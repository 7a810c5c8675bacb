"""A molar with four canals, from the list of cases to the request for approval: every touch is counted, and each is
where a thumb finds it at the moment it is due. The limits are our own.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.journeys.conftest import PHONE, Opens, Scheme
from tests.journeys.hands import person, sign_in
from tests.journeys.screen import until

MOST_TAPS, MOST_TAPS_FURTHER, MOST_ADDRESSES = 20, 4, 2
TARGET_PX = 44  # WCAG 2.2, 2.5.5: target size (enhanced)
SMALL_PHONE = {"width": 320, "height": 568}
CANALS = ("MB1", "MB2", "DB", "P")
ON_THE_IMAGE = ("20½", "20", "19½", "22")
SEEN = ("20", "19½", "19", "21½")
KEYS = {"½": "and a half"}
# What lies uppermost in the middle of it is itself, a part of it, or its label.
UPPERMOST = """element => {
  const { left, top, width, height } = element.getBoundingClientRect()
  const there = document.elementFromPoint(left + width / 2, top + height / 2)
  return element.contains(there) || element.closest('label')?.contains(there) === true
}"""


@dataclass
class Thumb:
    page: Page
    taps: int = 0
    addresses: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        # A navigation inside the app is one of its frame too.
        self.page.on("framenavigated", lambda frame: self.addresses.add(urlsplit(frame.url).path))

    def in_sight(self, target: Locator) -> None:
        """The one next action, whole and where it is due."""
        expect(target).to_be_in_viewport(ratio=1)

    def taps_on(self, target: Locator) -> None:
        expect(target).to_be_enabled()
        # A sheet that has just come takes no touch that was meant for what lay there before.
        until(self.page, lambda: bool(target.evaluate(UPPERMOST)))
        box = target.evaluate("element => element.getBoundingClientRect().toJSON()")
        wide, high = self.page.evaluate("[innerWidth, innerHeight]")
        assert min(box["width"], box["height"]) >= TARGET_PX - 0.5, f"{box} is too small for a thumb"
        assert 0 <= box["left"] < box["right"] <= wide, f"{box} runs out of the screen"
        assert 0 <= box["top"] < box["bottom"] <= high, f"{box} has to be scrolled to"
        target.tap()
        self.taps += 1

    def button(self, name: str | re.Pattern[str]) -> None:
        self.taps_on(self.page.get_by_role("button", name=name, exact=isinstance(name, str)))

    def radio(self, name: str) -> None:
        self.taps_on(self.page.get_by_role("radio", name=name))

    def measures(self, numbers: tuple[str, ...], last: str) -> None:
        """All canals, from the first one on; what keeps a number is in sight before one was typed."""
        for canal, number in zip(CANALS, numbers, strict=True):
            expect(self.page.get_by_role("heading", name=re.compile(f"^{canal}, from"))).to_be_visible()
            self.in_sight(self.page.get_by_role("button", name=re.compile("^Keep,|^Keep and plan$|^Keep$")).last)
            for digit in number:
                self.button(KEYS.get(digit, digit))
            self.button(last if canal == CANALS[-1] else re.compile("^Keep, next"))


@pytest.mark.parametrize(
    ("viewport", "scheme", "further"), [(PHONE, "light", False), (SMALL_PHONE, "dark", True)], ids=["once", "twice"]
)
def test_a_molar_is_planned_with_few_taps(
    demo: Mapping[str, Any], open_phone: Opens, viewport: Any, scheme: Scheme, further: bool
) -> None:
    page = open_phone(viewport=viewport, scheme=scheme)
    sign_in(page, person(demo, "student"))
    thumb = Thumb(page)
    thumb.taps_on(page.get_by_role("link", name="New case"))
    thumb.in_sight(page.get_by_role("button", name="Open and measure"))
    thumb.radio("Extracted tooth")
    thumb.button(re.compile("^Upper left"))
    thumb.radio("26, upper left first molar")
    expect(page.get_by_text("4 canals: MB1, MB2, DB, P")).to_be_visible()
    thumb.button("Open and measure")
    thumb.measures(ON_THE_IMAGE, "Keep" if further else "Keep and plan")
    if further:
        expect(page.get_by_role("radio", name="P, estimated")).to_be_attached()
        thumb.radio("MB1, estimated")
        thumb.radio("Direct sight")
        thumb.measures(SEEN, "Keep and plan")
    thumb.in_sight(page.get_by_role("button", name=re.compile("^(Computing|Ask for approval)")))
    thumb.button("Ask for approval")
    # The case it opened, and the form before it: nobody walked from page to page.
    assert len(thumb.addresses) <= MOST_ADDRESSES, thumb.addresses
    expect(page.get_by_role("button", name="Withdraw the request")).to_be_visible()
    assert thumb.taps <= MOST_TAPS + (MOST_TAPS_FURTHER * len(CANALS) if further else 0)
