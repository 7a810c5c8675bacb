"""What the server will not take is seen from the list of cases, saved elsewhere, and set aside: the rest goes on."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys.conftest import PHONE, TALL_PHONE, Opens
from tests.journeys.records import stored_by_now
from tests.journeys.test_chair import answer, at_the_chair
from tests.journeys.test_emergency import EVENTS, refuse


def saved(phone: Page) -> Any:
    """The copy, as whoever opens the file reads it."""
    # Headless, there is no other app to share with.
    phone.evaluate("() => { Object.defineProperty(navigator, 'canShare', { value: () => false }) }")
    with phone.expect_download() as coming:
        phone.get_by_role("button", name="Save or share").click()
    return json.loads(Path(coming.value.path()).read_text(encoding="utf-8"))


@pytest.mark.parametrize(
    ("alias", "device"),
    [
        ("Bench 931", {"viewport": PHONE, "scheme": "light"}),
        ("Bench 932", {"viewport": TALL_PHONE, "scheme": "dark"}),
    ],
)
def test_an_entry_that_was_refused_is_set_aside_with_a_trace(
    alias: str, device: dict[str, Any], open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(**device), open_laptop()
    case = at_the_chair(phone, laptop, demo, alias)
    phone.route(EVENTS, refuse)
    answer(phone, "At length")
    expect(phone.get_by_text("The server would not take an entry:")).to_be_visible()
    phone.goto("/cases")
    waits = phone.get_by_role("region", name="Not sent yet")
    expect(waits).to_contain_text(alias)
    expect(waits).to_contain_text("1 entry, since")
    expect(waits).to_contain_text("The server would not take an entry, and what was done after it waits: Refused.")
    expect(waits.get_by_role("button", name="Set it aside")).to_be_in_viewport()

    waits.get_by_role("button", name="Save a copy of it").click()
    (of_case,) = saved(phone)["cases"]
    assert of_case["case"] == case
    assert [(each["payload"]["kind"], each["refused"]) for each in of_case["work"]] == [("step", "Refused.")]

    phone.unroute(EVENTS)
    waits.get_by_role("button", name="Set it aside").click()
    phone.get_by_role("dialog", name="Set this entry aside?").get_by_role("button", name="Set it aside").click()
    expect(waits).to_be_hidden()
    (note,) = stored_by_now(phone, case, 1)
    assert note["payload"]["kind"] == "note"
    assert "Refused." in note["payload"]["text"]

    # The step is due once more, and goes through.
    phone.goto(f"/cases/{case}/chair")
    answer(phone, "At length")
    assert [each["payload"]["kind"] for each in stored_by_now(phone, case, 2)] == ["note", "step"]
