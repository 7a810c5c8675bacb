"""Withdrawing an approval over the API."""

from __future__ import annotations

from typing import Any

from cases.models import Person, ToothPlanVersion
from tests.cast import API, client, problem

WHY = {"reason": "The image is of another tooth."}


def revoke(person: Person, version: ToothPlanVersion, body: dict[str, Any] = WHY, hash: str | None = None) -> Any:
    at = f"{API}/plan-versions/{version.pk}/revoke"
    return client(person).post(at, body, "json", headers={"If-Match": f'"{hash or version.hash}"'})


def test_the_student_is_told_who_and_why(approved: ToothPlanVersion, priya: Person, vale: Person) -> None:
    answer = revoke(vale, approved)
    assert (answer.status_code, answer.json()["state"], answer.json()["status"]["state"]) == (201, "revoked", "revoked")
    seen = client(priya).get(f"{API}/cases/{approved.case_id}/events").json()
    assert seen["course"]["missing"] == ["revoked"]
    last = seen["events"][-1]
    assert (last["payload"], last["actor"]["name"]) == ({"kind": "revoked", **WHY}, str(vale))
    shown = client(priya).get(f"{API}/plan-versions/{approved.pk}").json()["revocations"]
    assert [(revocation["reason"], revocation["by"]["name"]) for revocation in shown] == [(WHY["reason"], str(vale))]


def test_sent_twice_it_is_one(approved: ToothPlanVersion, rosa: Person) -> None:
    body = {**WHY, "id": "019a2291-0000-7000-8000-000000000001"}
    assert [revoke(rosa, approved, body).status_code for _ in range(2)] == [201, 200]


def test_it_is_refused_with_what_to_do(
    approved: ToothPlanVersion, priya: Person, vale: Person, amari: Person, stranger: Person
) -> None:
    problem(revoke(priya, approved), 403, "not-allowed")
    problem(revoke(amari, approved), 403, "not-allowed")
    problem(revoke(vale, approved, hash="0" * 64), 412, "changed-since")
    problem(revoke(stranger, approved), 404, "not-found")
    assert "reason" in str(revoke(vale, approved, {"reason": ""}).json()["errors"])
    without = client(vale).post(f"{API}/plan-versions/{approved.pk}/revoke", WHY, "json")
    problem(without, 428, "precondition-missing")


def test_nobody_can_tell_it_from_a_device(approved: ToothPlanVersion, vale: Person) -> None:
    event = {
        "id": "019a2291-0000-7000-8000-000000000002",
        "device_seq": 1,
        "seen_position": 0,
        "plan_hash": approved.hash,
        "device_time": "2026-03-05T14:20:00Z",
        "payload": {"kind": "revoked", **WHY},
    }
    body = {"device_id": "019a2291-0000-7000-8000-000000000003", "events": [event]}
    problem(client(vale).post(f"{API}/cases/{approved.case_id}/events", body, "json"), 403, "not-allowed")
