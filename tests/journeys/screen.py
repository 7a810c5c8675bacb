"""What stands on the screen at the chair, by role and name: as somebody finds it who does not see how it is drawn."""

from __future__ import annotations

import re
import time
from collections.abc import Callable

from playwright.sync_api import Locator, Page, expect

PATIENCE_S = 30
# What was asked of the page before it has been answered and drawn by then.
DRAWN = "() => new Promise(go => requestAnimationFrame(() => requestAnimationFrame(() => go(true))))"


def drawn(page: Page) -> None:
    """The page has come to what it was asked, and shows it."""
    page.evaluate(DRAWN)


def until(page: Page, is_so: Callable[[], bool], within_s: float = PATIENCE_S) -> None:
    """What no screen shows is asked for again, once in every picture that the page draws."""
    give_up_at = time.monotonic() + within_s
    while not is_so():
        assert time.monotonic() < give_up_at, "it never came to that"
        drawn(page)


def card(page: Page, canal: str = "") -> Locator:
    """The step that is due in a canal; without one, in the canal in hand."""
    return page.get_by_role("region", name=re.compile(f"^Now in {canal}$" if canal else "^Now in "))


def where(page: Page) -> Locator:
    """Canal and phase, and how far one has come."""
    return card(page).get_by_role("heading", level=2).first


def what(page: Page) -> Locator:
    return page.get_by_role("group", name="What to do now")


def stop(page: Page) -> Locator:
    """The number to set a rubber stop to."""
    return what(page).get_by_role("status", name="stop", exact=True)


def dock(page: Page) -> Locator:
    """What is answered with, at the foot of the screen."""
    return page.get_by_role("region", name="Answers and ways out")


def answers(page: Page | Locator) -> Locator:
    return page.get_by_role("group", name="Answers", exact=True)


def other_canals(page: Page) -> Locator:
    """One place to touch; its name says where each of them stands."""
    return page.get_by_role("navigation", name="Canals").get_by_role("button", name="Other canals")


def canal_row(page: Page, canal: str) -> Locator:
    """Where one turns to a canal: its row among all of them, which opens."""
    # The next tap answers what was on the screen for a while: the app says when it takes one.
    expect(other_canals(page)).to_be_enabled()
    other_canals(page).click()
    return page.get_by_role("dialog").get_by_role("button", name=re.compile(f"^{canal} "))


def turn(page: Page, canal: str) -> None:
    """To a canal that is not in hand."""
    row = canal_row(page, canal)
    expect(row).to_be_enabled()
    row.click()
    expect(card(page, canal)).to_be_visible()


def strip(page: Page) -> Locator:
    """What a thumb drags the tip along: all around the slider."""
    return page.get_by_role("slider").locator("..")


def halted(page: Page) -> Locator:
    return page.get_by_role("alert", name="The tooth is halted")


def first_steps(page: Page | Locator) -> Locator:
    return page.get_by_role("list", name="What to do first").get_by_role("listitem")


def done(page: Page) -> Locator:
    return page.get_by_role("group", name="What was done")


def removed(page: Page) -> Locator:
    """Of an image that was removed: what it showed, why it went, by whom."""
    return page.get_by_role("paragraph").filter(has_text="Removed.")
