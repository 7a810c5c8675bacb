"""Reporting what was done, and reading where the work stands."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from django.db import connection
from django.db.models import F
from django.test.utils import CaptureQueriesContext
from pytest_django import DjangoAssertNumQueries

from cases.domain.plans.lifecycle import Decision
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_of
from cases.models import Case, Person, Programme, RunningWork, ToothPlanVersion
from cases.queries import worklist
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from planning.depth.last_depth import ahead, last_depth
from planning.run_sheet.graph import Exit, Step
from planning.run_sheet.walk import Walk, expected_exit
from tests.cast import API, chart, client, decide, open_case, problem
from tests.many import copies

PHONE, LAPTOP, TABLET = (str(uuid7()) for _ in range(3))
REACHED = {"kind": "step", "exit": "reached"}
DONE = {"kind": "step", "exit": "done"}
APPROVED = {"kind": "sign_off", "exit": "approved"}


def at(case: Case) -> str:
    return f"{API}/cases/{case.pk}/events"


def event(version: ToothPlanVersion, seq: int, payload: dict[str, Any], **more: Any) -> dict[str, Any]:
    body = {
        "id": str(uuid7()),
        "device_seq": seq,
        "seen_position": 0,
        "plan_hash": version.hash,
        "device_time": "2026-03-05T14:20:00Z",
        "canal": "DB",
        "payload": payload,
    }
    return body | more


def report(person: Person, case: Case, device: str, *events: dict[str, Any]) -> Any:
    return client(person).post(at(case), {"device_id": device, "events": list(events)}, format="json")


def canal(body: dict[str, Any], name: str = "DB") -> dict[str, Any]:
    return next(each for each in body["canals"] if each["canal"] == name)


def to_the_length_hold_point(priya: Person, approved: ToothPlanVersion) -> dict[str, Any]:
    """Explore DB to its stop, irrigate, take the image: the length waits for its sign-off."""
    explored = event(approved, 1, REACHED | {"depth_um": 18_000, "stop_um": 18_000}, node="explore/10-02")
    rinsed = event(approved, 2, DONE, node="explore/10-02/irrigate")
    image = event(approved, 3, DONE, node="length/image")
    treatment: dict[str, Any] = report(priya, approved.case, PHONE, explored, rinsed, image).json()
    return treatment


def test_the_answer_says_where_the_work_stands(priya: Person, approved: ToothPlanVersion) -> None:
    treatment = to_the_length_hold_point(priya, approved)
    assert canal(treatment) == {
        "canal": "DB",
        "state": "hold_point",
        "node": "length/sign-off",
        "stop_um": None,
        "asked_by": None,
        "asking": None,
        "coming": None,
        # The step was told as an older phone tells it: no image, no reason.
        "lacking": ["image"],
    }
    assert [each["position"] for each in treatment["events"]] == [1, 2, 3, 4]


def test_a_supervisor_elsewhere_signs_off_and_the_canal_goes_on(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    to_the_length_hold_point(priya, approved)
    treatment = report(vale, approved.case, LAPTOP, event(approved, 1, APPROVED, node="length/sign-off")).json()
    assert canal(treatment)["state"] == "open"
    assert canal(client(priya).get(at(approved.case)).json()) == canal(treatment)


def test_of_two_supervisors_one_wins_and_the_other_is_told(
    priya: Person, vale: Person, amari: Person, approved: ToothPlanVersion
) -> None:
    to_the_length_hold_point(priya, approved)
    report(vale, approved.case, LAPTOP, event(approved, 1, APPROVED, node="length/sign-off"))
    late = event(approved, 1, {"kind": "sign_off", "exit": "returned", "reason": "Blurred."}, node="length/sign-off")
    treatment = report(amari, approved.case, TABLET, late).json()
    assert treatment["course"]["out_of_course"] == {late["id"]: "other_step"}
    assert canal(treatment)["state"] == "open"


def test_an_emergency_halts_the_tooth_until_a_supervisor_resumes(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    halt = event(approved, 1, {"kind": "emergency", "what": "instrument_separated"}, canal="")
    treatment = report(priya, approved.case, PHONE, halt).json()
    assert treatment["course"]["halted_by"] == halt["id"]
    resume = event(approved, 1, {"kind": "resume", "reason": "Piece kept, image taken."}, canal="")
    assert report(priya, approved.case, TABLET, resume).status_code == 403
    assert report(vale, approved.case, LAPTOP, resume).json()["course"]["halted_by"] is None


def test_after_a_hypochlorite_accident_saline_alone_until_a_supervisor_lifts_it(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    halt = event(approved, 1, {"kind": "emergency", "what": "hypochlorite_accident"}, canal="")
    assert report(priya, approved.case, PHONE, halt).json()["course"]["saline_by"] == halt["id"]
    kept = event(approved, 1, {"kind": "resume", "reason": "Calm again.", "keep_saline": True}, canal="")
    course = report(vale, approved.case, LAPTOP, kept).json()["course"]
    assert (course["halted_by"], course["saline_by"]) == (None, halt["id"])
    lifted = event(approved, 2, {"kind": "resume", "reason": "Ends whole on the image."}, canal="")
    assert report(vale, approved.case, LAPTOP, lifted).json()["course"]["saline_by"] is None


def test_sent_twice_it_is_there_once(priya: Person, approved: ToothPlanVersion) -> None:
    first = event(approved, 1, REACHED, node="explore/10-02")
    assert (
        report(priya, approved.case, PHONE, first).json()["events"]
        == report(priya, approved.case, PHONE, first).json()["events"]
    )


def test_after_a_gap_the_answer_names_the_number_expected(priya: Person, approved: ToothPlanVersion) -> None:
    answer = report(priya, approved.case, PHONE, event(approved, 3, REACHED, node="explore/10-02"))
    assert "Expected event 1" in problem(answer, 409, "sequence-gap")["#/events/0/device_seq"]


def test_a_body_of_no_known_kind_is_named(priya: Person, approved: ToothPlanVersion) -> None:
    answer = report(priya, approved.case, PHONE, event(approved, 1, {"kind": "melted"}))
    assert list(problem(answer, 400, "not-understood")) == ["#/events/0/payload/kind"]


def test_another_programmes_case_is_not_here(stranger: Person, approved: ToothPlanVersion) -> None:
    assert client(stranger).get(at(approved.case)).status_code == 404
    assert report(stranger, approved.case, PHONE, event(approved, 1, REACHED)).status_code == 404


def test_nothing_new_costs_one_look(
    priya: Person, approved: ToothPlanVersion, django_assert_max_num_queries: DjangoAssertNumQueries
) -> None:
    browser = client(priya)
    seen = browser.get(at(approved.case))["ETag"]
    with django_assert_max_num_queries(4):
        again = browser.get(at(approved.case), headers={"If-None-Match": seen})
    assert (again.status_code, again.content) == (304, b"")
    report(priya, approved.case, PHONE, event(approved, 1, REACHED, node="explore/10-02"))
    assert browser.get(at(approved.case), headers={"If-None-Match": seen}).status_code == 200


def running(person: Person, case: Case) -> list[dict[str, Any]]:
    body = client(person).get(f"{API}/programmes/{case.programme_id}/running-work").json()
    assert body["next"] is None
    rows: list[dict[str, Any]] = body["results"]
    return rows


def test_running_work_tells_supervisors_what_waits(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    assert running(vale, approved.case) == []
    to_the_length_hold_point(priya, approved)
    (work,) = running(vale, approved.case)
    assert canal(work) == {
        "canal": "DB",
        "state": "hold_point",
        "hold_point": "length",
        "asked": False,
        "note": "",
        "coming": False,
        "out_of_band": None,
        "together": "",
    }
    assert (work["student"]["name"], work["halted"], work["waiting_s"] is None) == ("Priya", False, False)
    report(vale, approved.case, LAPTOP, event(approved, 1, APPROVED, node="length/sign-off"))
    (work,) = running(vale, approved.case)
    assert work["waiting_s"] is None


def test_an_emergency_comes_first_and_a_closed_visit_leaves_the_list(
    programme: Programme, priya: Person, tom: Person, vale: Person, approved: ToothPlanVersion, asked: Asked
) -> None:
    to_the_length_hold_point(priya, approved)
    other = another_approved(programme, tom, vale, asked)
    report(tom, other.case, TABLET, event(other, 1, {"kind": "emergency", "what": "sudden_bleeding"}, canal=""))
    assert [work["case_id"] for work in running(vale, approved.case)] == [str(other.case_id), str(approved.case_id)]
    report(priya, approved.case, PHONE, event(approved, 4, {"kind": "close", "access_sealed": True}, canal=""))
    assert [work["case_id"] for work in running(vale, approved.case)] == [str(other.case_id)]


def test_an_emergency_after_the_visit_was_closed_is_still_seen(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    close = event(approved, 1, {"kind": "close", "access_sealed": True}, canal="")
    swelling = event(approved, 2, {"kind": "emergency", "what": "sudden_pain_or_swelling"}, canal="")
    report(priya, approved.case, PHONE, close, swelling)
    assert [work["halted"] for work in running(vale, approved.case)] == [True]


def another_approved(programme: Programme, student: Person, supervisor: Person, asked: Asked) -> ToothPlanVersion:
    case = open_case(programme, student)
    chart(case, student)
    version, _ = plans.propose(actor=student, case=case, asked=asked)
    decide(supervisor, plans.submit(actor=student, version=version), Decision.APPROVED)
    return version


def test_who_is_not_sure_waits_on_the_supervisors_list_at_any_step(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    ask = event(approved, 1, {"kind": "ask", "note": ""}, node="explore/10-02")
    report(priya, approved.case, PHONE, ask)
    (work,) = running(vale, approved.case)
    assert work["waiting_s"] is not None
    assert next(canal_["asked"] for canal_ in work["canals"] if canal_["canal"] == ask["canal"])
    report(priya, approved.case, PHONE, event(approved, 2, REACHED, node="explore/10-02"))
    (work,) = running(vale, approved.case)
    assert work["waiting_s"] is None


def test_running_work_costs_the_same_for_one_case_or_many(
    programme: Programme, priya: Person, tom: Person, vale: Person, approved: ToothPlanVersion, asked: Asked
) -> None:
    to_the_length_hold_point(priya, approved)
    with CaptureQueriesContext(connection) as queries_of_one:
        assert len(running(vale, approved.case)) == 1
    other = another_approved(programme, tom, vale, asked)
    report(tom, other.case, TABLET, event(other, 1, REACHED, node="explore/10-02"))
    with CaptureQueriesContext(connection) as queries_of_two:
        assert len(running(vale, approved.case)) == 2
    assert len(queries_of_two) == len(queries_of_one)


def test_running_work_is_for_supervisors_of_the_programme(
    priya: Person, stranger: Person, approved: ToothPlanVersion
) -> None:
    at_work = f"{API}/programmes/{approved.case.programme_id}/running-work"
    assert client(priya).get(at_work).status_code == 403
    assert client(stranger).get(at_work).status_code == 404


def test_what_one_person_did_is_not_stored_for_another_who_signed_in_on_the_device(
    priya: Person, tom: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    batch = {"device_id": PHONE, "events": [event(approved, 1, REACHED, node="explore/10-02")]}
    # Vale sees the case, Tom does not: neither answer may let a device give up what Priya did.
    for other in (tom, vale):
        answer = client(other).post(at(approved.case), {**batch, "actor_id": str(priya.pk)}, format="json")
        assert list(problem(answer, 409, "other-person")) == ["#/actor_id"]
    assert not approved.case.events.filter(device=PHONE).exists()
    treatment = client(priya).post(at(approved.case), {**batch, "actor_id": str(priya.pk)}, format="json").json()
    assert [each["actor"]["id"] for each in treatment["events"]] == [str(vale.pk), str(priya.pk)]


def test_running_work_tells_the_step_in_hand_and_what_was_not_expected(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    sheet = plan_of(approved).canals[0]
    assert sheet.expectation is not None
    first = next(step for step in sheet.expectation.steps if step.low_mm is not None)
    short = REACHED | {"exit": "short", "depth_um": 10_000, "stop_um": 19_500}
    report(priya, approved.case, PHONE, event(approved, 1, {"kind": "turn"}, canal="MB1"))
    (work,) = running(vale, approved.case)
    assert (work["now"]["canal"], work["now"]["instrument"], work["step_s"]) == ("MB1", "10/.02", 0)
    walk = Walk(sheet.run_sheet)
    batch: list[tuple[Person, dict[str, Any], str]] = []
    while isinstance(node := walk.node, Step) and node.id != first.node:
        exit_ = expected_exit(node)
        by_supervisor = exit_ is Exit.APPROVED
        payload = {"kind": "sign_off" if by_supervisor else "step", "exit": exit_.value}
        batch.append((vale if by_supervisor else priya, payload, node.id))
        walk.leave(exit_)
    seqs = {priya: 1, vale: 0}
    batch.append((priya, short, first.node))
    for person, payload, node_id in batch:
        seqs[person] += 1
        device = PHONE if person is priya else LAPTOP
        report(person, approved.case, device, event(approved, seqs[person], payload, canal="MB1", node=node_id))
    (work,) = running(vale, approved.case)
    mb1 = next(each for each in work["canals"] if each["canal"] == "MB1")
    assert first.low_mm is not None
    assert first.high_mm is not None
    low_um, high_um = round(first.low_mm * 1000), round(first.high_mm * 1000)
    assert mb1["out_of_band"] == {
        "depth_um": 10_000,
        "low_um": low_um,
        "high_um": high_um,
        "as_if_straight": first.as_if_straight,
    }


@pytest.mark.one_database
@pytest.mark.one_database
def test_the_list_judges_by_what_the_chair_was_told_last(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    """Both the same, before the phone asks for the bands again and after; the list is sent anew where it moved."""
    plan = plan_of(approved)
    sheet = next(each.run_sheet for each in plan.canals if each.canal == "MB1")
    address, browser = f"{API}/programmes/{approved.case.programme_id}/running-work", client(vale)
    student, at_the_chair = client(priya), f"{API}/cases/{approved.case.pk}/bands"
    walk, seqs, moved = Walk(sheet), {PHONE: 0, LAPTOP: 0}, 0
    while isinstance(node := walk.node, Step) and node.phase != "ascending":
        exit_, stop_um = expected_exit(node), walk.stop_um()
        payload: dict[str, Any] = {"kind": "sign_off" if exit_ is Exit.APPROVED else "step", "exit": exit_.value}
        if node.phase in ("coronal-flaring", "descending") and exit_ is Exit.SHORT and stop_um:
            payload |= {"depth_um": stop_um - 3_000, "stop_um": stop_um}
        device = LAPTOP if exit_ is Exit.APPROVED else PHONE
        seqs[device] += 1
        who = vale if device == LAPTOP else priya
        report(who, approved.case, device, event(approved, seqs[device], payload, canal="MB1", node=node.id))
        walk.leave(exit_, payload.get("depth_um"))
        if "depth_um" not in payload:
            student.get(at_the_chair)
            continue
        before, seen = outside(vale, approved.case), browser.get(address)["ETag"]
        bands = student.get(at_the_chair).json()
        last = next(each["last"] for each in bands["canals"] if each["canal"] == "MB1")
        assert last["node"] == node.id
        by_chair = None if last["felt"] == "as_expected" else payload["depth_um"]
        assert before == outside(vale, approved.case)
        assert (before and before["depth_um"]) == by_chair
        by_plan = last_depth(ahead(next(each for each in plan.canals if each.canal == "MB1").expectation), walk)
        moved += (by_plan and by_plan.felt) != last["felt"]
        assert browser.get(address, headers={"If-None-Match": seen}).status_code == 304
    assert moved, "else the plan's own bands would have done"


def outside(person: Person, case: Case) -> dict[str, Any] | None:
    (work,) = running(person, case)
    out_of_band: dict[str, Any] | None = next(each for each in work["canals"] if each["canal"] == "MB1")["out_of_band"]
    return out_of_band


def test_unchanged_running_work_is_not_sent_again(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    to_the_length_hold_point(priya, approved)
    browser, address = client(vale), f"{API}/programmes/{approved.case.programme_id}/running-work"
    seen = browser.get(address)["ETag"]
    assert browser.get(address, headers={"If-None-Match": seen}).status_code == 304
    report(priya, approved.case, PHONE, event(approved, 4, {"kind": "note", "text": "Wait."}))
    assert browser.get(address, headers={"If-None-Match": seen}).status_code == 200
    # A minute later the times that are shown are others.
    seen = browser.get(address)["ETag"]
    RunningWork.objects.update(waiting_since=F("waiting_since") - timedelta(minutes=1))
    assert browser.get(address, headers={"If-None-Match": seen}).status_code == 200


def test_no_more_running_work_than_can_be_looked_at(
    priya: Person, vale: Person, approved: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(worklist, "MOST_RUNNING", 2)
    for version in copies(approved, 3):
        report(priya, version.case, PHONE, event(version, 1, {"kind": "turn"}))
    body = client(vale).get(f"{API}/programmes/{approved.case.programme_id}/running-work").json()
    assert (len(body["results"]), body["next"] is not None) == (2, True)
