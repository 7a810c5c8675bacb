"""A supervisor's sign-off: asked for on a phone, given on a laptop or on the phone itself; canal by canal."""

from __future__ import annotations

import re
import time
from collections.abc import Mapping
from typing import Any

import pyotp
from playwright.sync_api import Page, expect

from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import agree, person, sign_in
from tests.journeys.records import submitted_plan
from tests.journeys.test_chair import WORD_MS, answer, at_the_chair, due

Demo = Mapping[str, Any]
STEP_S = 30  # RFC 6238


def to_the_length_hold_point(phone: Page) -> None:
    answer(phone, "At length")
    due(phone, "Explore")
    answer(phone, "Irrigated")
    due(phone, "Length")
    answer(phone, "Image elsewhere")
    expect(phone.get_by_text("Waits for the supervisor: length")).to_be_visible()


def test_asked_on_the_phone_and_answered_from_the_list(open_phone: Opens, open_laptop: Opens, demo: Demo) -> None:
    phone, laptop, other = open_phone(), open_laptop(), open_laptop()
    case = at_the_chair(phone, laptop, demo, "Bench 171")
    to_the_length_hold_point(phone)
    laptop.goto("/worklist")
    row = laptop.get_by_role("link").filter(has_text="Bench 171")
    expect(row).to_contain_text("waits: length · not asked yet", timeout=WORD_MS)

    phone.get_by_label("What to look at, if you like").fill("Tip 0.5 short on the image.")
    answer(phone, "Ask for sign-off")
    expect(row).to_contain_text("asked", timeout=WORD_MS)
    expect(row).to_contain_text("Tip 0.5 short on the image.")
    expect(phone.get_by_text(re.compile(r"Asked \d\d:\d\d"))).to_be_visible()

    # What the sign-off rests on is on one screen; the supervisor comes first, then decides.
    row.click()
    expect(laptop.get_by_role("heading", level=1, name="MB: length")).to_be_visible()
    expect(laptop.get_by_text("Tip 0.5 short on the image.")).to_be_visible()
    expect(laptop.get_by_text("One reading counts, and nothing else tests it.")).to_be_visible()
    since = laptop.get_by_role("region", name="Done since the last sign-off")
    expect(since.get_by_role("listitem")).to_have_count(3)
    answer(laptop, "Come to the chair")
    expect(phone.get_by_text("comes to the chair.")).to_be_visible(timeout=WORD_MS)

    # Two look at once; what is returned needs its reason.
    sign_in(other, person(demo, "supervisor", 1))
    other.goto(f"/cases/{case}/sign-off/MB")
    expect(other.get_by_role("button", name="Approve")).to_be_visible()
    other.context.set_offline(True)
    answer(laptop, "Return")
    answer(laptop, "Return, with this reason")
    expect(laptop.get_by_text("Say why, first.")).to_be_visible()
    answer(laptop, "Go back")
    answer(laptop, "Approve")
    expect(screen.where(phone)).to_contain_text("Glide path", timeout=WORD_MS)
    expect(laptop.get_by_text(re.compile("Approved by "))).to_be_visible()

    # The second supervisor's sign-off comes late: it is told who was first.
    answer(other, "Approve")
    other.context.set_offline(False)
    expect(other.get_by_text(re.compile(r"was first, .* Your sign-off is kept"))).to_be_visible(timeout=WORD_MS)


def test_an_on_site_sign_off_with_a_one_time_code(open_phone: Opens, open_laptop: Opens, demo: Demo) -> None:
    phone, laptop = open_phone(), open_laptop()
    at_the_chair(phone, laptop, demo, "Bench 172")
    supervisor = person(demo, "supervisor")

    # The supervisor makes codes on the account screen; another maker of codes by the same standard takes them in.
    laptop.goto("/account")
    laptop.get_by_label("Your password, once more").fill(supervisor["password"])
    laptop.get_by_role("button", name="Make codes").click()
    expect(laptop.get_by_role("img", name="Square code for a code app")).to_be_visible()
    codes = pyotp.TOTP(laptop.get_by_role("code").inner_text().replace(" ", ""))
    step = int(time.time()) // STEP_S
    laptop.get_by_label("One-time code").fill(codes.generate_otp(step))
    laptop.get_by_role("button", name="Confirm").click()
    expect(laptop.get_by_text("Your codes count since")).to_be_visible()

    to_the_length_hold_point(phone)
    phone.get_by_role("button", name="The supervisor is here").click()
    sheet = phone.get_by_role("dialog")
    sheet.get_by_label("Supervisor").select_option(label=supervisor["name"])
    # A code counts once: the one that confirmed is refused.
    sheet.get_by_label("One-time code").fill(codes.generate_otp(step))
    sheet.get_by_role("button", name="Give this answer").click()
    expect(sheet.get_by_text("This code is wrong, too old, or was used before.")).to_be_visible()
    # The next one counts already: a window of one step.
    sheet.get_by_label("One-time code").fill(codes.generate_otp(step + 1))
    sheet.get_by_role("button", name="Give this answer").click()
    due(phone, "Glide path")
    expect(sheet).to_be_hidden()


def test_one_canal_is_returned_and_the_others_go_on(open_phone: Opens, open_laptop: Opens, demo: Demo) -> None:
    phone, laptop = open_phone(), open_laptop()
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    version = submitted_plan(phone, "Bench 173")
    laptop.goto(f"/plans/{version['id']}")
    agree(laptop)
    laptop.get_by_role("button", name="ML: agreed").click()
    laptop.get_by_role("button", name="Approve all but ML").click()
    expect(laptop.get_by_text("Say what is to change in ML.")).to_be_visible()
    laptop.get_by_label("Remark on ML").fill("One size larger.")
    laptop.get_by_role("button", name="Approve all but ML").click()
    expect(laptop.get_by_text("Not released: ML. The other canals go on.")).to_be_visible()

    phone.goto(f"/cases/{version['case_id']}/chair")
    screen.turn(phone, "ML")
    expect(phone.get_by_text("The supervisor returned this canal: One size larger.")).to_be_visible()
    expect(screen.answers(phone)).to_have_count(0)
    screen.turn(phone, "MB")
    answer(phone, "At length")
    due(phone, "Explore")

    # A later decision lets it go; the phone goes on within seconds.
    laptop.get_by_role("button", name="Release ML").click()
    expect(screen.other_canals(phone)).to_have_accessible_name(re.compile("ML open"), timeout=WORD_MS)
