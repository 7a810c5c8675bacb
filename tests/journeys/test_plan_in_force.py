"""A plan approved while the phone was away: it rules at once, and what was tapped by the older one moves nothing."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import hands, screen
from tests.journeys.conftest import Opens
from tests.journeys.records import approves, events, plan_anew, send
from tests.journeys.test_chair import WORD_MS, answer, at_the_chair


def another_plan(student: Page, supervisor: Page, case: str, *, set_mm: float) -> Mapping[str, Any]:
    """MB is measured again and the plan approved anew, both on other devices than the phone at the chair."""
    charted = student.request.get(f"/api/v1/cases/{case}").json()
    canal = next(each for each in charted["canals"] if each["name"] == "MB")
    reading = {
        "method": "confirming_image",
        "set_mm": set_mm,
        "tip_short_mm": 1.0,
        "reference_point": canal["reference_point"],
    }
    send(student, "POST", f"canals/{canal['id']}/readings", {"reading": reading})
    version = plan_anew(student, case)
    approves(supervisor, version)
    return version


def test_the_phone_comes_back_to_the_plan_in_force_and_what_it_did_by_the_older_one_is_kept(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    """Plan 1 has MB to 19.0; while the phone is away plan 2 has it to 16.0, 3 mm less."""
    phone, laptop, tablet = open_phone(), open_laptop(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 310")
    hands.sign_in(tablet, hands.person(demo, "student"))
    expect(screen.stop(phone)).to_have_text("19.0")
    phone.context.set_offline(True)
    answer(phone, "At length")
    expect(phone.get_by_text("1 entry not sent yet")).to_be_visible()
    another_plan(tablet, laptop, case, set_mm=16.0)

    phone.context.set_offline(False)
    notice = phone.get_by_role("alert", name="Plan 2 is in force now")
    expect(notice).to_be_visible(timeout=WORD_MS)
    expect(notice).to_contain_text("Plan 1 is over. Set every rubber stop by plan 2.")
    mb = notice.get_by_role("region", name="MB")
    expect(mb.get_by_role("listitem").filter(has_text="ends at")).to_have_text(re.compile("19.0.*→.*16.0"))
    expect(notice).to_contain_text("MB 10/.02 at its stop")
    # Nothing of either plan is answered before this was read; help is in reach all the same.
    expect(screen.answers(phone)).to_be_hidden()
    expect(phone.get_by_role("button", name="Problem")).to_be_visible()
    phone.reload()
    expect(notice).to_be_visible()
    go = phone.get_by_role("button", name="I work by plan 2 now")
    for width in (320, 360):
        phone.set_viewport_size({"width": width, "height": 740})
        box = go.bounding_box()
        assert box is not None
        assert box["height"] >= 56
        assert box["y"] + box["height"] <= 740
    go.click()

    # Something has been in MB that plan 2 does not know of: it is worked out anew, to the same stop.
    expect(screen.stop(phone)).to_have_text("16.0")
    expect(notice).to_be_hidden()
    stored = events(phone, case)
    treatment = phone.request.get(f"/api/v1/cases/{case}/events").json()
    assert [each["payload"]["kind"] for each in stored] == ["step"]
    assert treatment["course"]["out_of_course"] == {stored[0]["id"]: "other_plan"}
    assert [(each["node"], each["stop_um"]) for each in treatment["canals"] if each["canal"] == "MB"] == [
        ("explore/10-02", 16_000)
    ]
    phone.get_by_text("What was done").click()
    expect(screen.done(phone)).to_contain_text("recorded on another version of the plan")


def test_a_plan_that_is_on_its_way_to_the_phone_leaves_nothing_of_the_older_one_to_answer(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop, tablet = open_phone(), open_laptop(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 311")
    hands.sign_in(tablet, hands.person(demo, "student"))
    phone.context.route("**/plan-versions/**", lambda route: route.abort())
    another_plan(tablet, laptop, case, set_mm=16.0)
    expect(phone.get_by_text("Another plan is in force, and is on its way to this phone.")).to_be_visible(
        timeout=WORD_MS
    )
    expect(screen.answers(phone)).to_be_hidden()
    # Help is there all the while.
    door = phone.get_by_role("region", name="Emergency")
    expect(door.get_by_role("button", name="Problem")).to_be_in_viewport(ratio=1)
    phone.context.unroute("**/plan-versions/**")
    phone.reload()
    phone.get_by_role("button", name="I work by plan 2 now").click()
    expect(screen.stop(phone)).to_have_text("16.0")
