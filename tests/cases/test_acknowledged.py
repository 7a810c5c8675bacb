"""What must be put right is acknowledged by its name before a plan is approved; an empty plan is not asked for."""

from __future__ import annotations

from typing import Any

import pytest

from cases.domain.errors import EmptyPlan, NotAcknowledged, NotUsable
from cases.domain.plans.acknowledged import Named, to_acknowledge
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.mapping.plans import plan_of
from cases.models import Case, Person, Review, ToothPlanVersion
from cases.queries.record import record_of
from cases.services.charting import canals
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from tests.cast import API, canal_of, chart, client, decide, problem

CURVED = Named(code="curve-supervisor", canal="DB")


@pytest.fixture
def curved(molar: Case, priya: Person, asked: Asked) -> ToothPlanVersion:
    """DB bends by 40 degrees: from 35 on a supervisor decides (programme rule `curvature.supervisor_deg`)."""
    canals.change_canal(actor=priya, canal=canal_of(molar, "DB"), changes={"curvature_deg": 40.0})
    molar.refresh_from_db()
    return plans.submit(actor=priya, version=plans.propose(actor=priya, case=molar, asked=asked)[0])


def approve(person: Person, version: ToothPlanVersion, *acknowledged: Any) -> Any:
    body = {"decision": "approved", "acknowledged": list(acknowledged)}
    headers = {"If-Match": f'"{version.hash}"'}
    return client(person).post(f"{API}/plan-versions/{version.pk}/reviews", body, format="json", headers=headers)


def test_what_must_be_put_right_is_acknowledged_by_its_name(curved: ToothPlanVersion, vale: Person) -> None:
    assert list(to_acknowledge(plan_of(curved).cautions)) == [CURVED]
    with pytest.raises(NotAcknowledged, match="Still missing: DB: "):
        decide(vale, curved, Decision.APPROVED, acknowledged=())
    curved.refresh_from_db()
    assert (curved.state, Review.objects.exists()) == (PlanState.WAITING, False)
    decide(vale, curved, Decision.APPROVED, acknowledged=(CURVED,))
    assert Review.objects.get().acknowledged == [{"code": "curve-supervisor", "canal": "DB"}]
    (decision,) = record_of(curved.case_id).record.versions[-1].decisions
    assert [(caution.code, caution.canal) for caution in decision.acknowledged] == [("curve-supervisor", "DB")]


def test_a_returned_plan_asks_for_no_acknowledgement(curved: ToothPlanVersion, vale: Person) -> None:
    decide(vale, curved, Decision.RETURNED)
    assert Review.objects.get().acknowledged == []


def test_only_what_the_plan_carries_is_acknowledged(curved: ToothPlanVersion, vale: Person) -> None:
    for wrong in (Named(code="curve-supervisor"), Named(code="curve-supervisor", canal="P"), Named(code="no-such")):
        with pytest.raises(NotUsable, match="has to be acknowledged"):
            decide(vale, curved, Decision.APPROVED, acknowledged=(CURVED, wrong))


@pytest.mark.parametrize("canal", [None, ""])
def test_a_name_without_a_canal_is_of_the_whole_tooth(
    canal: str | None, curved: ToothPlanVersion, vale: Person
) -> None:
    with pytest.raises(NotUsable, match="no 'no-such' of the whole tooth"):
        decide(vale, curved, Decision.APPROVED, acknowledged=(CURVED, Named(code="no-such", canal=canal)))


def test_the_answer_names_what_is_missing_and_where(curved: ToothPlanVersion, vale: Person) -> None:
    assert list(problem(approve(vale, curved), 422, "not-acknowledged")) == ["#/acknowledged"]
    named = {"code": "curve-supervisor", "canal": "DB"}
    wrong = problem(approve(vale, curved, named, {"code": "curve-supervisor"}), 422, "not-usable")
    assert list(wrong) == ["#/acknowledged/1"]
    answer = approve(vale, curved, named)
    assert (answer.status_code, answer.json()["acknowledged"]) == (201, [named])


def test_an_empty_plan_is_not_asked_for(opened: Case, priya: Person, asked: Asked) -> None:
    """Nothing is measured in any canal."""
    version = plans.propose(actor=priya, case=opened, asked=asked)[0]
    with pytest.raises(EmptyPlan, match="Measure one"):
        plans.submit(actor=priya, version=version)
    version.refresh_from_db()
    assert version.state == PlanState.DRAFT
    problem(client(priya).post(f"{API}/plan-versions/{version.pk}/submit"), 409, "empty-plan")


def test_what_a_supervisor_may_let_pass_is_asked_for_although_nothing_is_open(
    opened: Case, priya: Person, asked: Asked
) -> None:
    """Every canal bends too much to be worked without a supervisor, who has to see what the work would be."""
    chart(opened, priya)
    for name in ("MB1", "MB2", "DB", "P"):
        canals.change_canal(actor=priya, canal=canal_of(opened, name), changes={"curvature_deg": 40.0})
    opened.refresh_from_db()
    version = plans.propose(actor=priya, case=opened, asked=asked)[0]
    assert not any(
        node.kind == "do" for canal_plan in plan_of(version).canals for node in canal_plan.run_sheet.nodes.values()
    )
    assert plans.submit(actor=priya, version=version).state == PlanState.WAITING
