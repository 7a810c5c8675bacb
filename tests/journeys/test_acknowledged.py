"""A plan in which something must be put right is approved only after each of it was ticked by its name."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from playwright.sync_api import expect

from tests.journeys import hands
from tests.journeys.conftest import Opens
from tests.journeys.records import PLAN, send, submitted_plan


def test_each_bar_is_ticked_by_its_name_before_the_plan_is_approved(open_phone: Opens, demo: Mapping[str, Any]) -> None:
    """MB bends by 40 degrees: from 35 on a supervisor decides (programme rule)."""
    student, supervisor = open_phone(), open_phone()
    hands.sign_in(student, hands.person(demo, "student"))
    hands.sign_in(supervisor, hands.person(demo, "supervisor"))
    first = submitted_plan(student, "Bench 320")
    charted = student.request.get(f"/api/v1/cases/{first['case_id']}").json()
    canal = next(each for each in charted["canals"] if each["name"] == "MB")
    send(student, "PATCH", f"canals/{canal['id']}", {"curvature_deg": 40.0})
    version = send(student, "POST", f"cases/{first['case_id']}/plan-versions", {"kit_id": first["kit_id"], **PLAN})
    send(student, "POST", f"plan-versions/{version['id']}/submit", {})

    supervisor.goto(f"/plans/{version['id']}")
    hands.agree(supervisor)
    approve = supervisor.get_by_role("button", name="Approve plan 2")
    expect(approve).to_contain_text("to tick: MB")
    approve.click()
    expect(supervisor.get_by_text("Tick each that must be put right before you approve: MB.")).to_be_visible()
    assert student.request.get(f"/api/v1/plan-versions/{version['id']}").json()["state"] == "waiting"
    tick = supervisor.get_by_role("checkbox", name="MB curves by 40 degrees")
    expect(tick).to_be_in_viewport()
    assert tick.evaluate("box => box.labels[0].getBoundingClientRect().height") >= 48
    tick.check()
    expect(approve).to_have_text("Approve plan 2")
    approve.click()
    expect(supervisor.get_by_text("Plan 2 approved by")).to_be_visible()
    reviewed = student.request.get(f"/api/v1/plan-versions/{version['id']}").json()
    assert [acknowledged["code"] for acknowledged in reviewed["reviews"][-1]["acknowledged"]] == ["curve-supervisor"]
    student.goto(f"/cases/{first['case_id']}/record")
    expect(student.get_by_text("Acknowledged, MB: ")).to_be_visible()
