"""Records brought in over the API, for journeys that begin with a case that is already charted and approved."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from cases.domain.uuid7 import uuid7
from tests.journeys import screen
from tests.journeys.copies import copied
from tests.journeys.hands import Demo
from tests.journeys.hands import send as send

# By who works and who supervises, tooth and setting: cases of this process's server that nothing is done on.
_approved: dict[tuple[str, ...], str] = {}
PLAN = {"technique": "crown-down", "choices": {"needle": {"gauge": 30, "tip": "side_vented"}}}


def approved_case(
    demo: Demo, student: Page, supervisor: Page, alias: str, *, tooth: str = "37", setting: str = "extracted"
) -> str:
    """A lower second molar with three canals, every length confirmed, its plan approved; returns the case's id.

    The first of its kind over the API; the others are copies of it.
    """
    kind = (_person(student), _person(supervisor), tooth, setting)
    if kind not in _approved:
        version = submitted_plan(student, f"Approved {len(_approved) + 1}", tooth=tooth, setting=setting)
        approves(supervisor, version)
        _approved[kind] = str(version["case_id"])
    return copied(Path(demo["database"]), _approved[kind], alias)


def _person(page: Page) -> str:
    return str(page.request.get("/api/v1/session").json()["person"]["id"])


def approves(supervisor: Page, version: Mapping[str, Any]) -> None:
    """All that must be put right acknowledged by its name."""
    cautions = plan_of(supervisor, version["id"])["cautions"]
    bars = [caution for caution in cautions if caution["severity"] == "stop" and caution["overridden"] is None]
    body = {
        "decision": "approved",
        "acknowledged": [{"code": caution["code"], "canal": caution["canal"]} for caution in bars],
    }
    seen = {"If-Match": f'"{version["hash"]}"'}
    send(supervisor, "POST", f"plan-versions/{version['id']}/reviews", body, **seen)


def opened(student: Page, alias: str, *, tooth: str = "37", setting: str = "extracted") -> Mapping[str, Any]:
    """A case just opened, over the API."""
    body = {
        "patient_alias": alias,
        "setting": setting,
        "tooth": {"notation": "iso_3950", "designation": tooth},
    }
    case: Mapping[str, Any] = send(student, "POST", f"programmes/{_programme(student)}/cases", body)
    return case


def submitted_plan(student: Page, alias: str, *, tooth: str = "37", setting: str = "extracted") -> Mapping[str, Any]:
    """The same case with its plan asked for; returns the version."""
    case = opened(student, alias, tooth=tooth, setting=setting)
    if setting == "clinic":
        case = send(
            student, "PATCH", f"cases/{case['id']}", {"isolated": True}, **{"If-Match": f'"{case["revision"]}"'}
        )
    confirms_lengths(student, case)
    return plan_anew(student, case["id"])


def confirms_lengths(student: Page, case: Mapping[str, Any]) -> None:
    """Each canal found, and its length confirmed on an image."""
    for canal in case["canals"]:
        point = canal["reference_point"] or "DB cusp"
        send(student, "PATCH", f"canals/{canal['id']}", {"finding": "found", "reference_point": point})
        reading = {"method": "confirming_image", "set_mm": 19.0, "tip_short_mm": 1.0, "reference_point": point}
        send(student, "POST", f"canals/{canal['id']}/readings", {"reading": reading})


def plan_anew(student: Page, case: str) -> Mapping[str, Any]:
    """The case as it stands now is planned, and a decision asked for where none holds; returns the version."""
    kit = student.request.get(f"/api/v1/programmes/{_programme(student)}/kits").json()["results"][0]["id"]
    version = send(student, "POST", f"cases/{case}/plan-versions", {"kit_id": kit, **PLAN})
    if version["state"] != "approved":
        version = send(student, "POST", f"plan-versions/{version['id']}/submit", {})
    asked: Mapping[str, Any] = version
    return asked


def plan_of(page: Page, version_id: str) -> dict[str, Any]:
    """What a version says."""
    shown = page.request.get(f"/api/v1/plan-versions/{version_id}", params={"fields": "plan"}).json()
    plan: dict[str, Any] = shown["plan"]
    return plan


def _programme(student: Page) -> str:
    return str(student.request.get("/api/v1/session").json()["memberships"][0]["programme"]["id"])


def events(page: Page, case: str) -> list[Mapping[str, Any]]:
    """What was done and the server has, in its order; which plan came into force is no work."""
    every: list[Mapping[str, Any]] = page.request.get(f"/api/v1/cases/{case}/events").json()["events"]
    return [each for each in every if each["payload"]["kind"] != "replan"]


def taken_in(page: Page) -> AbstractContextManager[Any]:
    """What is done at the chair, or said to it, inside of this is stored when it ends."""
    return page.expect_response(
        lambda answer: answer.request.method == "POST" and answer.url.endswith("/events") and answer.ok
    )


def stored_by_now(page: Page, case: str, count: int) -> list[Mapping[str, Any]]:
    """The server's events once there are as many; never more."""
    stored: list[Mapping[str, Any]] = []

    def enough() -> bool:
        stored[:] = events(page, case)
        return len(stored) >= count

    screen.until(page, enough)
    assert len(stored) == count
    return stored


def to_the_glide_path(student: Page, supervisor: Page, case: str, *canals: str) -> None:
    """Brings canals past their lengths: explored, rinsed, an image taken, signed off."""
    plan = supervisor.request.get(f"/api/v1/cases/{case}/events").json()["course"]["plan_hash"]
    steps = [("reached", "explore/10-02"), ("done", "explore/10-02/irrigate"), ("done", "length/image")]
    done = [(canal, node, {"kind": "step", "exit": exit}) for canal in canals for exit, node in steps]
    word = {"kind": "sign_off", "exit": "approved", "despite_missing": True, "reason": "Seen at the bench."}
    report(student, case, plan, done)
    report(supervisor, case, plan, [(canal, "length/sign-off", word) for canal in canals])


def report(page: Page, case: str, plan: str, done: Sequence[tuple[str, str, Mapping[str, Any]]]) -> None:
    """Events of a device of its own, in this order."""
    batch = [
        {
            "id": str(uuid7()),
            "device_seq": number,
            "seen_position": 0,
            "plan_hash": plan,
            "device_time": "2026-03-05T14:20:00Z",
            "canal": canal,
            "node": node,
            "payload": payload,
        }
        for number, (canal, node, payload) in enumerate(done, start=1)
    ]
    send(page, "POST", f"cases/{case}/events", {"device_id": str(uuid7()), "events": batch})
