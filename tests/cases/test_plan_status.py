"""Where a plan stands, derived from its versions."""

from __future__ import annotations

from cases.domain.plans.lifecycle import PlanState
from cases.domain.plans.status import PlanStatus, PlanStatusState, VersionFacts, status


def version(number: int, state: PlanState, revision: int = 7, was_approved: bool = False) -> VersionFacts:
    return VersionFacts(number=number, state=state, case_revision=revision, was_approved=was_approved)


def of(*versions: VersionFacts) -> PlanStatus:
    return status(versions, 7)


def test_a_case_without_a_plan() -> None:
    assert (of().state, of().number) == (PlanStatusState.NONE, None)


def test_an_approval_counts_while_nothing_changes() -> None:
    standing = of(version(1, PlanState.APPROVED, was_approved=True))
    assert (standing.state, standing.stale, standing.do) == (PlanStatusState.APPROVED, False, "")


def test_an_approval_is_void_once_the_case_has_changed() -> None:
    standing = of(version(1, PlanState.APPROVED, revision=6, was_approved=True))
    assert (standing.state, standing.stale) == (PlanStatusState.APPROVAL_VOID, True)
    assert "the case has changed" in standing.says
    assert "Plan it again" in standing.do


def test_an_approval_is_void_once_the_plan_has_changed() -> None:
    standing = of(version(1, PlanState.SUPERSEDED, was_approved=True), version(2, PlanState.DRAFT))
    assert (standing.state, standing.number, standing.approved_number) == (PlanStatusState.APPROVAL_VOID, 2, 1)
    assert "the plan has changed" in standing.says
    assert standing.do == "Submit plan 2."


def test_asked_again_it_waits() -> None:
    standing = of(version(1, PlanState.SUPERSEDED, was_approved=True), version(2, PlanState.WAITING))
    assert standing.state is PlanStatusState.WAITING


def test_a_returned_plan_says_what_is_due() -> None:
    assert of(version(1, PlanState.RETURNED)).state is PlanStatusState.RETURNED
    assert "remarks" in of(version(1, PlanState.RETURNED)).do


def test_a_waiting_plan_of_a_changed_case_says_so() -> None:
    standing = of(version(1, PlanState.WAITING, revision=5))
    assert (standing.state, standing.stale) == (PlanStatusState.WAITING, True)
    assert "changed" in standing.says
