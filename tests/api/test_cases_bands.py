"""What is expected of the rest of the work, asked for while it goes on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from django.core.cache import cache
from pytest_django import DjangoAssertNumQueries

from cases.domain.plans.lifecycle import Decision
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, Person, ToothPlanVersion
from cases.queries import bands as queries
from planning.contract.plan_input import PlanInput
from planning.foundation.encoding import encode
from planning.run_sheet.graph import Exit
from planning.run_sheet.walk import Walk
from planning.work.bands import bands
from tests.api.test_cases_treatment import LAPTOP, PHONE, event, report
from tests.cast import API, client, decide

SHORT = {"kind": "step", "exit": "short", "depth_um": 16_500, "stop_um": 18_000}


@pytest.fixture(autouse=True)
def nothing_kept() -> None:
    """Another test's work on the same plan is kept too."""
    cache.clear()


def at(case: Case) -> str:
    return f"{API}/cases/{case.pk}/bands"


def canal(body: dict[str, Any], name: str) -> dict[str, Any]:
    return next(each for each in body["canals"] if each["canal"] == name)


def short(version: ToothPlanVersion, seq: int, **more: Any) -> dict[str, Any]:
    return event(version, seq, SHORT, node="explore/10-02", **more)


def test_before_anything_was_done_they_are_the_plans_own(priya: Person, approved: ToothPlanVersion) -> None:
    bands_ = client(priya).get(at(approved.case)).json()
    assert (bands_["plan_hash"], bands_["position"]) == (approved.hash, 1)
    planned = {each.canal: encode(each.expectation) for each in plan_of(approved).canals}
    assert {each["canal"]: each["expectation"] for each in bands_["canals"]} == planned


def test_a_recorded_depth_is_in_them(priya: Person, approved: ToothPlanVersion) -> None:
    """By the planner's own bands of the same walk."""
    report(priya, approved.case, PHONE, short(approved, 1))
    bands_ = client(priya).get(at(approved.case)).json()
    sheet = next(each.run_sheet for each in plan_of(approved).canals if each.canal == "DB")
    walk = Walk(sheet)
    walk.leave(Exit.SHORT, 16_500)
    assert bands_["position"] == 2
    assert canal(bands_, "DB") == encode(bands(plan_input_of(approved), {"DB": walk})[0])


def test_what_was_undone_or_came_out_of_course_does_not_count(priya: Person, approved: ToothPlanVersion) -> None:
    untouched = client(priya).get(at(approved.case)).json()["canals"]
    wrong = event(approved, 1, SHORT, node="descending/25-04")
    first = short(approved, 2)
    undo = event(approved, 3, {"kind": "undo", "undoes": first["id"]})
    report(priya, approved.case, PHONE, wrong, first, undo)
    assert client(priya).get(at(approved.case)).json()["canals"] == untouched


def test_nothing_new_costs_one_look(
    priya: Person, approved: ToothPlanVersion, django_assert_max_num_queries: DjangoAssertNumQueries
) -> None:
    browser = client(priya)
    seen = browser.get(at(approved.case))["ETag"]
    with django_assert_max_num_queries(4):
        again = browser.get(at(approved.case), headers={"If-None-Match": seen})
    assert (again.status_code, again.content) == (304, b"")
    report(priya, approved.case, PHONE, short(approved, 1))
    assert browser.get(at(approved.case), headers={"If-None-Match": seen}).status_code == 200


def test_they_are_worked_out_once_for_everybody(
    priya: Person, vale: Person, approved: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = client(priya).get(at(approved.case)).json()
    monkeypatch.delattr(queries, "bands")
    assert client(vale).get(at(approved.case)).json() == first


def test_before_an_approval_there_are_none(priya: Person, proposed: ToothPlanVersion) -> None:
    assert client(priya).get(at(proposed.case)).json() == {"plan_hash": None, "position": 0, "canals": []}


def test_somebody_who_saw_no_plan_sees_the_approved_one(
    priya: Person, vale: Person, submitted: ToothPlanVersion
) -> None:
    """No event marks the approval of a first plan: what was seen before it is not the present state all the same."""
    browser = client(priya)
    before = {
        path: browser.get(path)["ETag"] for path in (at(submitted.case), f"{API}/cases/{submitted.case.pk}/events")
    }
    decide(vale, submitted, Decision.APPROVED)
    for path, seen in before.items():
        assert browser.get(path, headers={"If-None-Match": seen}).status_code == 200


def test_another_programmes_case_is_not_here(stranger: Person, approved: ToothPlanVersion) -> None:
    assert client(stranger).get(at(approved.case)).status_code == 404


def test_what_moves_no_canal_leaves_them_as_they_are(
    priya: Person, approved: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    report(priya, approved.case, PHONE, short(approved, 1))
    first = client(priya).get(at(approved.case)).json()
    monkeypatch.delattr(queries, "bands")
    report(priya, approved.case, PHONE, event(approved, 2, {"kind": "note", "text": "Tight."}, node=""))
    assert client(priya).get(at(approved.case)).json() == {**first, "position": 3}


def test_a_step_that_a_supervisor_names_moves_them(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    """By the planner's own bands of a walk that stands there, nothing having been answered."""
    canals = plan_of(approved).canals
    sheet = next(each.run_sheet for each in canals if each.canal == "DB")
    walk = Walk(sheet)
    assert walk.go_to("descending/25-04")
    before = client(priya).get(at(approved.case)).json()
    report(
        priya, approved.case, PHONE, event(approved, 1, {"kind": "pause", "what": "not_sure", "reason": ""}, node="")
    )
    word = {"kind": "resume", "reason": "Goes on there."}
    report(vale, approved.case, LAPTOP, event(approved, 1, word, node="descending/25-04"))
    after = client(priya).get(at(approved.case)).json()
    assert canal(after, "DB") != canal(before, "DB")
    assert canal(after, "DB") == encode(bands(plan_input_of(approved), {"DB": walk})[0])


def test_a_step_in_one_canal_leaves_those_of_the_others(
    priya: Person, approved: ToothPlanVersion, monkeypatch: pytest.MonkeyPatch
) -> None:
    client(priya).get(at(approved.case))
    computed: list[str] = []

    def noted(plan_input: PlanInput, walks: Mapping[str, Walk]) -> Any:
        computed.extend(walks)
        return bands(plan_input, walks)

    monkeypatch.setattr(queries, "bands", noted)
    report(priya, approved.case, PHONE, short(approved, 1))
    assert len(client(priya).get(at(approved.case)).json()["canals"]) > 1
    assert computed == ["DB"]
