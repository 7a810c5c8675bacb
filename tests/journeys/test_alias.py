"""An alias that looks like a name is asked about once; a mistyped one is corrected, and gone from everybody's sight."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys import hands
from tests.journeys.conftest import PHONE, TALL_PHONE, Opens, Scheme


@pytest.mark.parametrize(
    ("scheme", "viewport", "name", "alias"),
    [("light", PHONE, "Anna Kellermann", "Dunlin 31"), ("dark", TALL_PHONE, "Bertha Kellermann", "Dunlin 32")],
)
def test_a_name_is_asked_about_and_corrected_later(
    demo: dict[str, Any],
    open_phone: Opens,
    laptop: Page,
    scheme: Scheme,
    viewport: Any,
    name: str,
    alias: str,
) -> None:
    phone = open_phone(scheme=scheme, viewport=viewport)
    hands.sign_in(phone, hands.person(demo, "student"))
    phone.get_by_role("link", name="New case").click()
    phone.get_by_label("Patient alias").fill(name)
    phone.get_by_role("button", name="Upper left").click()
    phone.get_by_role("radio", name="24, upper left first premolar").check()
    expect(phone.get_by_text("Maxillary left first premolar", exact=True)).to_be_visible()
    hands.choose(phone, "Extracted tooth")
    phone.get_by_role("button", name="Open the case").click()
    expect(phone.get_by_text("This looks like somebody's name.")).to_be_visible()
    phone.get_by_role("button", name="It is no name: take it").click()
    expect(phone.get_by_role("heading", level=1, name=name)).to_be_visible()

    phone.get_by_text("Correct the alias").click()
    phone.get_by_label(f"Instead of {name}").fill("Dunlin 12.3.1987")
    phone.get_by_role("button", name="Put this in its place").click()
    expect(phone.get_by_text("This looks like a date, of birth perhaps.")).to_be_visible()
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth"), "runs out of the screen"
    phone.get_by_label(f"Instead of {name}").fill(alias)
    phone.get_by_role("button", name="Put this in its place").click()
    expect(phone.get_by_role("heading", level=1, name=alias)).to_be_visible()
    hands.back(phone)
    expect(phone.get_by_role("link", name=alias)).to_be_visible()
    expect(phone.get_by_text(name)).to_have_count(0)

    hands.sign_in(laptop, hands.person(demo, "supervisor"))
    laptop.goto("/cases")
    expect(laptop.get_by_role("link", name=alias)).to_be_visible()
    expect(laptop.get_by_text(name)).to_have_count(0)
