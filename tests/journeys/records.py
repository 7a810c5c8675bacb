"""Records brought in over the API, for journeys that begin with a case that is already charted and approved."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Page

PLAN = {"technique": "crown-down", "choices": {"needle": {"gauge": 30, "tip": "side_vented"}}}


def send(page: Page, method: str, path: str, body: Mapping[str, Any], **headers: str) -> Any:
    """As the person signed in on the page. What the server answers."""
    token = next(c["value"] for c in page.context.cookies() if c["name"] == "csrftoken")
    with_token = {"X-CSRFToken": token, **headers}
    answer = page.request.fetch(f"/api/v1/{path}", method=method, data=dict(body), headers=with_token)
    assert answer.ok, answer.text()
    return answer.json()


def approved_case(student: Page, supervisor: Page, alias: str, *, tooth: str = "37", setting: str = "extracted") -> str:
    """A lower second molar with three canals, every length confirmed, its plan approved; returns the case's id."""
    version = submitted_plan(student, alias, tooth=tooth, setting=setting)
    seen = {"If-Match": f'"{version["hash"]}"'}
    send(supervisor, "POST", f"plan-versions/{version['id']}/reviews", {"decision": "approved"}, **seen)
    return str(version["case"])


def submitted_plan(student: Page, alias: str, *, tooth: str = "37", setting: str = "extracted") -> Mapping[str, Any]:
    """The same case with its plan asked for; returns the version."""
    programme = student.request.get("/api/v1/session").json()["memberships"][0]["programme"]["id"]
    kit = student.request.get(f"/api/v1/programmes/{programme}/kits").json()["results"][0]["id"]
    named = {"notation": "iso_3950", "designation": tooth}
    opened = send(
        student,
        "POST",
        f"programmes/{programme}/cases",
        {"patient_alias": alias, "setting": setting, "tooth": named},
    )
    if setting == "clinic":
        opened = send(
            student, "PATCH", f"cases/{opened['id']}", {"isolated": True}, **{"If-Match": f'"{opened["revision"]}"'}
        )
    for canal in opened["canals"]:
        point = canal["reference_point"] or "DB cusp"
        send(student, "PATCH", f"canals/{canal['id']}", {"finding": "found", "reference_point": point})
        reading = {"method": "confirming_image", "set_mm": 19.0, "tip_short_mm": 1.0, "reference_point": point}
        send(student, "POST", f"canals/{canal['id']}/readings", {"reading": reading})
    version = send(student, "POST", f"cases/{opened['id']}/plan-versions", {"kit": kit, **PLAN})
    asked: Mapping[str, Any] = send(student, "POST", f"plan-versions/{version['id']}/submit", {})
    return asked
