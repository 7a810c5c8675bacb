"""A supervisor's sign-off: asked for, given, given back, given in spite of something; canal by canal."""

from __future__ import annotations

from typing import Any

import pytest

from cases.models import Case, Person, Programme, ToothPlanVersion
from tests.api.test_cases_treatment import (
    APPROVED,
    LAPTOP,
    PHONE,
    TABLET,
    canal,
    event,
    report,
    running,
    to_the_length_hold_point,
)
from tests.cast import API, client, problem

AT = "length/sign-off"
IN_SPITE = APPROVED | {"despite_missing": True}


@pytest.fixture
def waiting(priya: Person, approved: ToothPlanVersion) -> ToothPlanVersion:
    """DB waits for the sign-off on its length."""
    to_the_length_hold_point(priya, approved)
    return approved


def sign_off(supervisor: Person, version: ToothPlanVersion, payload: dict[str, Any], device: str = LAPTOP) -> Any:
    return report(supervisor, version.case, device, event(version, 1, payload, node=AT))


def test_what_is_asked_stands_on_the_supervisors_list(priya: Person, vale: Person, waiting: ToothPlanVersion) -> None:
    (before,) = running(vale, waiting.case)
    assert (canal(before)["asked"], canal(before)["hold_point"]) == (False, "length")
    asking = event(waiting, 4, {"kind": "ask", "note": "Tip looks 1 mm short."}, node=AT)
    treatment = report(priya, waiting.case, PHONE, asking).json()
    assert canal(treatment)["asking"] == asking["id"]
    (work,) = running(vale, waiting.case)
    assert (canal(work)["asked"], canal(work)["note"]) == (True, "Tip looks 1 mm short.")
    assert canal(work, "P") | {"asked": False, "note": ""} == canal(work, "P")


def test_a_supervisor_who_comes_is_told_to_the_chair(vale: Person, waiting: ToothPlanVersion) -> None:
    coming = event(waiting, 1, {"kind": "come"}, node=AT)
    treatment = report(vale, waiting.case, LAPTOP, coming).json()
    assert (canal(treatment)["coming"], canal(treatment)["state"]) == (coming["id"], "hold_point")
    (work,) = running(vale, waiting.case)
    assert canal(work)["coming"] is True


def test_with_the_word_nothing_is_asked_any_more(priya: Person, vale: Person, waiting: ToothPlanVersion) -> None:
    report(priya, waiting.case, PHONE, event(waiting, 4, {"kind": "ask", "note": "Please."}, node=AT))
    treatment = sign_off(vale, waiting, APPROVED).json()
    assert (canal(treatment)["state"], canal(treatment)["asking"]) == ("open", None)
    (work,) = running(vale, waiting.case)
    assert (canal(work)["asked"], canal(work)["note"]) == (False, "")


def test_a_student_neither_comes_nor_signs_off(priya: Person, waiting: ToothPlanVersion) -> None:
    for payload in ({"kind": "come"}, APPROVED):
        answer = report(priya, waiting.case, TABLET, event(waiting, 1, payload, node=AT))
        problem(answer, 403, "not-allowed")


@pytest.mark.parametrize("payload", [IN_SPITE, IN_SPITE | {"reason": "  "}, {"kind": "sign_off", "exit": "returned"}])
def test_a_word_that_needs_its_reason_has_one(vale: Person, waiting: ToothPlanVersion, payload: dict[str, Any]) -> None:
    assert list(problem(sign_off(vale, waiting, payload), 422, "not-usable")) == ["#/events/0/payload/reason"]


def test_what_is_returned_is_not_let_pass(vale: Person, waiting: ToothPlanVersion) -> None:
    both = {"kind": "sign_off", "exit": "returned", "despite_missing": True, "reason": "Blurred."}
    assert list(problem(sign_off(vale, waiting, both), 422, "not-usable")) == ["#/events/0/payload/despite_missing"]


def test_let_pass_in_spite_the_canal_goes_on_and_the_reason_stays(vale: Person, waiting: ToothPlanVersion) -> None:
    treatment = sign_off(vale, waiting, IN_SPITE | {"reason": "Sensor broken; locator seen."}).json()
    assert canal(treatment)["state"] == "open"
    kept = treatment["events"][-1]["payload"]
    assert (kept["despite_missing"], kept["reason"], kept["on_site"]) == (True, "Sensor broken; locator seen.", False)


def test_a_device_does_not_say_that_a_word_was_given_on_site(vale: Person, waiting: ToothPlanVersion) -> None:
    answer = sign_off(vale, waiting, APPROVED | {"on_site": True})
    assert list(problem(answer, 403, "not-allowed")) == ["#/events/0/payload/on_site"]


def test_no_device_takes_the_servers_name(priya: Person, approved: ToothPlanVersion) -> None:
    nobody = "00000000-0000-0000-0000-000000000000"
    answer = report(priya, approved.case, nobody, event(approved, 1, {"kind": "note", "text": "x"}))
    assert list(problem(answer, 422, "not-usable")) == ["#/device_id"]


# --- canal by canal ---

REMARK = {"canal": "MB2", "text": "Gauge it again.", "returned": True}


def review(person: Person, version: ToothPlanVersion, **more: Any) -> Any:
    body = {"decision": "approved", "remarks": [REMARK]} | more
    at = f"{API}/plan-versions/{version.pk}/reviews"
    return client(person).post(at, body, format="json", headers={"If-Match": f'"{version.hash}"'})


def release(person: Person, version: ToothPlanVersion, canals: Any, match: str | None = None) -> Any:
    at = f"{API}/plan-versions/{version.pk}/release"
    headers = {"If-Match": f'"{match or version.hash}"'}
    return client(person).post(at, {"canals": canals}, format="json", headers=headers)


def shown(person: Person, case: Case) -> Any:
    return client(person).get(f"{API}/cases/{case.pk}/events").json()


def test_one_returned_canal_waits_and_the_others_go_on(
    priya: Person, vale: Person, submitted: ToothPlanVersion
) -> None:
    assert review(vale, submitted).json()["remarks"] == [REMARK]
    version = client(priya).get(f"{API}/plan-versions/{submitted.pk}").json()
    assert (version["state"], version["not_released"]) == ("approved", ["MB1", "MB2"])
    assert version["status"]["says"] == "Plan 1 is approved, but not MB1 and MB2."
    treatment = shown(priya, submitted.case)
    assert [each["state"] for each in treatment["canals"]] == ["not_released", "not_released", "open", "open"]
    withheld = event(submitted, 1, {"kind": "step", "exit": "reached"}, canal="MB2", node="explore/10-02")
    going_on = event(submitted, 2, {"kind": "step", "exit": "reached"}, node="explore/10-02")
    treatment = report(priya, submitted.case, PHONE, withheld, going_on).json()
    assert treatment["course"]["out_of_course"] == {withheld["id"]: "withheld"}


def test_a_later_decision_releases_the_rest(priya: Person, vale: Person, submitted: ToothPlanVersion) -> None:
    review(vale, submitted)
    assert release(vale, submitted, ["MB1", "MB2"]).json()["not_released"] == []
    assert {each["state"] for each in shown(priya, submitted.case)["canals"]} == {"open"}
    assert release(vale, submitted, ["MB1", "MB2"]).json()["not_released"] == []


def test_who_may_release_and_what(priya: Person, vale: Person, stranger: Person, submitted: ToothPlanVersion) -> None:
    problem(release(vale, submitted, ["MB2"]), 409, "conflict")
    review(vale, submitted)
    problem(release(priya, submitted, ["MB2"]), 403, "not-allowed")
    problem(release(stranger, submitted, ["MB2"]), 404, "not-found")
    problem(release(vale, submitted, ["MB2"], match="0" * 64), 412, "changed-since")
    assert list(problem(release(vale, submitted, ["MB2", "X"]), 422, "no-such-canal")) == ["#/canals/1"]
    assert list(problem(release(vale, submitted, ["MB1"]), 422, "not-usable")) == ["#/canals/0"]
    assert release(vale, submitted, []).status_code == 400
    at = f"{API}/plan-versions/{submitted.pk}/release"
    problem(client(vale).post(at, {"canals": ["MB2"]}, format="json"), 428, "precondition-missing")


def test_a_remark_alone_leaves_nothing_out(vale: Person, submitted: ToothPlanVersion, programme: Programme) -> None:
    decision = review(vale, submitted, remarks=[{"canal": "MB2", "text": "Mind the curve."}]).json()
    assert decision["remarks"] == [{"canal": "MB2", "text": "Mind the curve.", "returned": False}]
    assert client(vale).get(f"{API}/plan-versions/{submitted.pk}").json()["not_released"] == []
