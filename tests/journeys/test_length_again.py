"""A length taken again in the middle of the work: stops are worked out anew, and the work goes on where it stood."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any
from uuid import uuid4

from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import choose, type_mm
from tests.journeys.records import send, stored_by_now
from tests.journeys.test_chair import WORD_MS, answer, to_the_length


def signs_off(supervisor: Page, case: str, node: str) -> None:
    """The supervisor signs off what MB waits for, by the plan that is worked now."""
    now = supervisor.request.get(f"/api/v1/cases/{case}/events").json()
    word = {
        "id": str(uuid4()),
        "device_seq": 1,
        "seen_position": now["position"],
        "plan_hash": now["course"]["plan_hash"],
        "device_time": "2026-03-05T12:00:00Z",
        "canal": "MB",
        "node": node,
        "payload": {"kind": "sign_off", "exit": "approved"},
    }
    send(supervisor, "POST", f"cases/{case}/events", {"device_id": str(uuid4()), "events": [word]})


def test_a_length_taken_again_moves_the_stops_and_nothing_that_is_done(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = to_the_length(phone, laptop, demo, "Bench 211")
    answer(phone, "Image elsewhere")
    stored_by_now(phone, case, 3)
    signs_off(laptop, case, "length/sign-off")
    expect(screen.where(phone)).to_contain_text("Glide path", timeout=WORD_MS)
    phone.get_by_role("button", name="As it was").click()
    answer(phone, "At length")
    expect(screen.what(phone)).to_contain_text("water")

    # 19.0 so far; by the new image 18.5 less the set-back of 1.0 that the first one had too.
    phone.get_by_text(re.compile("^Length .* · take it again$")).click()
    type_mm(phone, "Stop that was set", "18.5")
    choose(phone, "short of the apex")
    type_mm(phone, "By how much", "1")
    phone.get_by_role("button", name="Record this length").click()

    # Nothing but a length moved: the approval holds, and the length alone is signed off.
    phone.get_by_role("button", name="I work by plan 2 now").click()
    expect(phone.get_by_text("Length 18.5 · take it again")).to_be_visible()
    treatment = phone.request.get(f"/api/v1/cases/{case}/events").json()
    state = {canal["canal"]: (canal["state"], canal["node"]) for canal in treatment["canals"]}
    assert state["MB"] == ("hold_point", "length-moved/sign-off")
    signs_off(laptop, case, "length-moved/sign-off")
    expect(screen.where(phone)).to_contain_text("Glide path", timeout=WORD_MS)
    expect(screen.what(phone)).to_contain_text("water")
    treatment = phone.request.get(f"/api/v1/cases/{case}/events").json()
    assert [canal["node"] for canal in treatment["canals"] if canal["canal"] == "MB"] == ["glide-path/10-02/irrigate"]
