"""An approval canal by canal: one returned canal waits with its partner, the others go on."""

from __future__ import annotations

from typing import Any

import pytest

from cases.domain.errors import ChangedSince, Conflict, NoSuchCanal, NotAllowed, NotUsable, PlanStale
from cases.domain.events.payloads import NotReleased, ReadingPayload
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.release import left_out
from cases.domain.plans.status import PlanStatusState
from cases.domain.progress.canal_progress import CanalState
from cases.models import Person, RunningWork, ToothPlanVersion, TreatmentEvent
from cases.queries.course import treatment_of
from cases.queries.plans import status_of
from cases.services.charting import readings
from cases.services.planning import plans, release
from cases.services.planning.plan_input import Asked
from cases.services.planning.reviews import Remark
from planning.lengths.readings import ConfirmingImage, PreOperativeImage
from tests.cases.test_replan import PHONE, Hand, course_of
from tests.cast import canal_of, decide, with_size

# The check case's molar: MB2 ends in MB1; DB and P run on their own.
JOINS = {"MB1": None, "MB2": "MB1", "DB": None, "P": None}


@pytest.mark.parametrize(
    ("returned", "waits"),
    [
        ([], []),
        (["DB"], [("DB", "")]),
        (["MB2"], [("MB1", "MB2"), ("MB2", "")]),
        (["MB1"], [("MB1", ""), ("MB2", "MB1")]),
        (["MB1", "MB2"], [("MB1", ""), ("MB2", "")]),
        (["P", "MB2"], [("MB1", "MB2"), ("MB2", ""), ("P", "")]),
    ],
)
def test_what_an_approval_leaves_out(returned: list[str], waits: list[tuple[str, str]]) -> None:
    """Every case of the check molar, by hand from its joins (teaching practice, decisions of this program)."""
    canals_left_out = left_out(dict.fromkeys(returned, "Why?"), JOINS)
    assert [(canal_.canal, canal_.joins) for canal_ in canals_left_out] == waits
    assert all(bool(canal_.remark) == (canal_.joins == "") for canal_ in canals_left_out)


def test_two_canals_that_join_one_main_wait_together() -> None:
    assert [canal_.canal for canal_ in left_out({"A": "?"}, {"M": None, "A": "M", "B": "M", "D": None})] == [
        "M",
        "A",
        "B",
    ]


def returning(*canals: str) -> dict[str, Any]:
    return {"remarks": [Remark(canal=canal, text=f"{canal} again.", returned=True) for canal in canals]}


def states(version: ToothPlanVersion) -> dict[str, CanalState]:
    return {canal.canal: canal.state for canal in treatment_of(version.case_id).canals}


@pytest.fixture
def but_mb2(submitted: ToothPlanVersion, vale: Person) -> ToothPlanVersion:
    """Approved, but for MB2."""
    decide(vale, submitted, Decision.APPROVED, **returning("MB2"))
    submitted.refresh_from_db()
    return submitted


def test_the_others_go_on(but_mb2: ToothPlanVersion) -> None:
    assert but_mb2.state == PlanState.APPROVED
    assert but_mb2.not_released == ["MB1", "MB2"]
    assert states(but_mb2) == {
        "MB1": CanalState.NOT_RELEASED,
        "MB2": CanalState.NOT_RELEASED,
        "DB": CanalState.OPEN,
        "P": CanalState.OPEN,
    }
    status = status_of(but_mb2.case)
    assert status.state is PlanStatusState.APPROVED
    assert status.says == "Plan 1 is approved, but not MB1 and MB2."


def test_the_course_has_the_remark_and_the_supervisor(but_mb2: ToothPlanVersion, vale: Person) -> None:
    in_force, shown = treatment_of(but_mb2.case_id).events
    assert in_force.row.kind == "replan"
    assert shown.row.actor == vale
    assert [NotReleased(**entry) for entry in shown.payload["not_released"]] == [
        NotReleased(canal="MB1", remark="", joins="MB2"),
        NotReleased(canal="MB2", remark="MB2 again."),
    ]


def test_nothing_runs_yet_because_of_a_decision(but_mb2: ToothPlanVersion) -> None:
    assert not RunningWork.objects.exists()


def test_an_approval_of_the_whole_plan_leaves_nothing_out_at_the_chair(approved: ToothPlanVersion) -> None:
    assert approved.not_released == []
    assert not TreatmentEvent.objects.filter(kind="release").exists()


def test_a_plan_of_which_nothing_is_left_is_not_approved(submitted: ToothPlanVersion, vale: Person) -> None:
    with pytest.raises(NotUsable, match="return the plan instead"):
        decide(vale, submitted, Decision.APPROVED, **returning(*JOINS))
    submitted.refresh_from_db()
    assert submitted.state == PlanState.WAITING


def test_a_returned_plan_returns_every_canal(submitted: ToothPlanVersion, vale: Person) -> None:
    with pytest.raises(NotUsable) as refusal:
        decide(vale, submitted, Decision.RETURNED, **returning("MB2"))
    assert refusal.value.pointer == ("remarks", 0, "returned")


# --- a later decision ---


def let_go(supervisor: Person, version: ToothPlanVersion, *canals: str, **more: Any) -> ToothPlanVersion:
    fields: dict[str, Any] = {"seen_hash": version.hash}
    return release.release(supervisor=supervisor, version=version, canals=canals, **(fields | more))


def test_a_later_decision_releases_the_rest(but_mb2: ToothPlanVersion, amari: Person) -> None:
    assert let_go(amari, but_mb2, "MB2").not_released == []
    assert set(states(but_mb2).values()) == {CanalState.OPEN}
    let_go(amari, but_mb2, "MB2")
    assert TreatmentEvent.objects.filter(kind="release").count() == 2


def test_of_two_returned_canals_one_is_released(submitted: ToothPlanVersion, vale: Person) -> None:
    decide(vale, submitted, Decision.APPROVED, **returning("DB", "P"))
    assert let_go(vale, submitted, "P").not_released == ["DB"]
    assert states(submitted)["DB"] is CanalState.NOT_RELEASED
    assert states(submitted)["P"] is CanalState.OPEN


def test_a_partner_is_not_released_alone(but_mb2: ToothPlanVersion, vale: Person) -> None:
    with pytest.raises(NotUsable, match="MB1 ends in one with MB2, which is returned: release both"):
        let_go(vale, but_mb2, "MB1")


def test_who_when_and_what_may_be_released(but_mb2: ToothPlanVersion, priya: Person, vale: Person) -> None:
    with pytest.raises(NotAllowed):
        let_go(priya, but_mb2, "MB2")
    with pytest.raises(ChangedSince):
        let_go(vale, but_mb2, "MB2", seen_hash="0" * 64)
    with pytest.raises(NoSuchCanal):
        let_go(vale, but_mb2, "X")


def test_a_plan_that_is_not_approved_releases_nothing(submitted: ToothPlanVersion, vale: Person) -> None:
    with pytest.raises(Conflict, match="Decide on the plan first"):
        let_go(vale, submitted, "MB2")


def test_after_the_case_has_changed_the_new_plan_is_decided_on(
    but_mb2: ToothPlanVersion, priya: Person, vale: Person
) -> None:
    image = PreOperativeImage(tooth_mm=19.5, reference_point="DB cusp")
    readings.take_length(actor=priya, canal=canal_of(but_mb2.case, "DB"), reading=image)
    with pytest.raises(PlanStale):
        let_go(vale, but_mb2, "MB2")


# --- a later version ---


def approve_again(student: Person, supervisor: Person, version: ToothPlanVersion, asked: Asked) -> ToothPlanVersion:
    """MB2 one size smaller, asked for and approved."""
    smaller = with_size(asked, "MB2", 30, "Gauged again.")
    later = plans.submit(actor=student, version=plans.propose(actor=student, case=version.case, asked=smaller)[0])
    decide(supervisor, later, Decision.APPROVED)
    return later


def test_a_later_version_releases_the_rest_before_any_work(
    but_mb2: ToothPlanVersion, priya: Person, vale: Person, asked: Asked
) -> None:
    later = approve_again(priya, vale, but_mb2, asked)
    assert later.hash != but_mb2.hash
    assert set(states(later).values()) == {CanalState.OPEN}


def test_a_later_version_releases_the_rest_and_the_others_go_on_where_they_stood(
    but_mb2: ToothPlanVersion, priya: Person, vale: Person, asked: Asked
) -> None:
    phone = Hand(priya, but_mb2, PHONE)
    phone.leaves("DB")
    stood = course_of(but_mb2.case)["DB"].node
    approve_again(priya, vale, but_mb2, asked)
    assert set(states(but_mb2).values()) == {CanalState.OPEN}
    assert course_of(but_mb2.case)["DB"].node == stood


def test_where_an_approval_is_carried_over_what_waits_goes_on_waiting(
    but_mb2: ToothPlanVersion, priya: Person, vale: Person, asked: Asked
) -> None:
    phone = Hand(priya, but_mb2, PHONE)
    phone.leaves("DB")
    shorter = ConfirmingImage(set_mm=18.0, tip_short_mm=0.5, reference_point="DB cusp")
    phone.tells(ReadingPayload(taken=shorter))
    carried, _ = plans.propose(actor=priya, case=but_mb2.case, asked=asked)
    assert (carried.state, carried.not_released) == (PlanState.APPROVED, ["MB1", "MB2"])
    assert states(carried)["MB2"] is CanalState.NOT_RELEASED
    assert let_go(vale, carried, "MB2").not_released == []
    assert states(carried)["MB2"] is CanalState.OPEN
