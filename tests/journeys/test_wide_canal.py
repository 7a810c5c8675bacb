"""A canal wider than the advised sizes: the student sees that none is proposed, the supervisor chooses one."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from playwright.sync_api import expect

from tests.journeys import hands
from tests.journeys.conftest import Opens
from tests.journeys.records import plan_anew, plan_of, send, submitted_plan


def test_the_supervisor_chooses_the_size_of_a_wide_canal(open_phone: Opens, demo: Mapping[str, Any]) -> None:
    """D's first size to bind was 50: it asks for 55, and at most 50 is advised (Glickman & Dumsha, from memory)."""
    student, supervisor = open_phone(), open_phone(scheme="dark")
    hands.sign_in(student, hands.person(demo, "student"))
    hands.sign_in(supervisor, hands.person(demo, "supervisor"))
    case = submitted_plan(student, "Bench 321")["case_id"]
    charted = student.request.get(f"/api/v1/cases/{case}").json()
    distal = next(each for each in charted["canals"] if each["name"] == "D")
    send(student, "PATCH", f"canals/{distal['id']}", {"first_binder_size": 50})
    version = plan_anew(student, case)

    student.goto(f"/cases/{case}/plan")
    hands.select(student, "D")
    expect(student.get_by_text("A wide canal: no size is proposed.")).to_be_visible()

    supervisor.goto(f"/plans/{version['id']}")
    hands.select(supervisor, "D")
    supervisor.get_by_role("button", name="Choose the final size").click()
    supervisor.get_by_label("Final size for D").select_option("50")
    supervisor.get_by_label("Why the work may go on").fill("Wide on both images; I look at the cone.")
    supervisor.get_by_role("button", name="Let it pass, with this reason").click()
    expect(supervisor.get_by_text("Final size 50.")).to_be_visible()

    again = plan_anew(student, case)
    made = next(canal for canal in plan_of(student, again["id"])["canals"] if canal["canal"] == "D")
    assert (made["final_size"], made["withheld"]) == (50, [])
    student.goto(f"/cases/{case}/plan")
    hands.select(student, "D")
    expect(student.get_by_text("Your supervisor chose 50/.03.")).to_be_visible()
