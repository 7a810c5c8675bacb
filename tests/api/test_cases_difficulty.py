"""What makes a case difficult: recorded of the case, counted in its plans, over the API."""

from __future__ import annotations

import json
from typing import Any

import pytest

from cases.models import Case, ChangeLog, Person, Programme
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from tests.cast import API, chart, client, open_case, problem, state_of


def at(case: Case) -> str:
    return f"{API}/cases/{case.pk}"


def record(person: Person, case: Case, *factors: str) -> Any:
    etag = f'"{Case.objects.get(pk=case.pk).revision}"'
    return client(person).patch(at(case), {"factors": factors}, format="json", headers={"If-Match": etag})


@pytest.fixture
def at_the_chair(programme: Programme, priya: Person) -> Case:
    """The molar, of a patient, the dam in place."""
    case = open_case(programme, priya, setting="clinic")
    client(priya).patch(at(case), {"isolated": True}, format="json", headers={"If-Match": '"1"'})
    chart(case, priya)
    return case


def preview(person: Person, case: Case, asked: Asked) -> Any:
    body = {
        "kit_id": str(asked.kit_id),
        "technique": asked.technique,
        "choices": {"needle": {"gauge": 30, "tip": "open"}},
    }
    answer = client(person).post(f"{at(case)}/preview", body, format="json")
    assert answer.status_code == 200, answer.json()
    return answer.json()


def test_what_is_recorded_is_shown_in_one_order_and_logged(opened: Case, priya: Person, vale: Person) -> None:
    recorded = record(priya, opened, "opening:moderate", "health:low")
    assert recorded.json()["factors"] == ["health:low", "opening:moderate"]
    assert (recorded.json()["revision"], state_of(recorded)) == (2, "2")
    assert state_of(record(vale, opened, "health:low", "opening:moderate")) == "2"  # nothing new
    line = ChangeLog.objects.filter(case=opened, verb="change").get()
    assert json.loads(line.before) == {"factors": []}
    assert json.loads(line.after) == {"factors": ["health:low", "opening:moderate"]}
    assert record(vale, opened).json()["factors"] == []


def test_a_plan_counts_what_is_recorded_with_what_it_shows(molar: Case, priya: Person, asked: Asked) -> None:
    assert preview(priya, molar, asked)["difficulty"]["level"] == "moderate"  # a first molar, and nothing more
    record(priya, molar, "health:moderate", "opening:moderate")
    counted = preview(priya, molar, asked)["difficulty"]
    assert counted["level"] == "high"
    assert {factor["code"]: factor["from_plan"] for factor in counted["factors"]} == {
        "health": False,
        "opening": False,
        "kind": True,
    }


def test_a_high_case_of_a_patient_waits_until_a_supervisor_accepts_it(
    at_the_chair: Case, priya: Person, vale: Person, asked: Asked
) -> None:
    record(priya, at_the_chair, "cooperation:high")
    shut = preview(priya, at_the_chair, asked)
    assert all("difficulty-high" in {reason["code"] for reason in canal["withheld"]} for canal in shut["canals"])
    plans.propose(actor=priya, case=at_the_chair, asked=asked)
    accepted = {"code": "difficulty-high", "canal": None, "reason": "I am at the chair beside it."}
    problem(client(priya).post(f"{at(at_the_chair)}/overrides", accepted, format="json"), 403, "not-allowed")
    assert client(vale).post(f"{at(at_the_chair)}/overrides", accepted, format="json").status_code == 201
    opened = preview(priya, at_the_chair, asked)
    assert not any("difficulty-high" in {reason["code"] for reason in canal["withheld"]} for canal in opened["canals"])
    assert opened["difficulty"]["level"] == "high"


@pytest.mark.parametrize(
    ("factors", "status", "code", "pointer"),
    [
        (["health:awful"], 422, "factor-not-known", "#/factors/0"),
        (["health:low", "luck:high"], 422, "factor-not-known", "#/factors/1"),
        (["health:low", "health:high"], 422, "factor-not-known", "#/factors/1"),
        ("health:low", 400, "not-understood", "#/factors"),
        ([7], 400, "not-understood", "#/factors/0"),
        (None, 400, "not-understood", "#/factors"),
    ],
)
def test_what_is_no_factor(opened: Case, priya: Person, factors: Any, status: int, code: str, pointer: str) -> None:
    answer = client(priya).patch(at(opened), {"factors": factors}, format="json", headers={"If-Match": '"1"'})
    assert pointer in problem(answer, status, code)
    assert Case.objects.get(pk=opened.pk).facts == {}


def test_who_records(opened: Case, tom: Person, rosa: Person, stranger: Person) -> None:
    problem(record(rosa, opened, "health:low"), 403, "not-allowed")
    for person in (tom, stranger):
        problem(record(person, opened, "health:low"), 404, "not-found")
