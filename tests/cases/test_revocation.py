"""An approval that is withdrawn: by whom, and what it stops."""

from __future__ import annotations

from functools import partial

import pytest

from cases.domain.errors import ChangedSince, Conflict, NotAllowed, NothingSaid, SentDifferently
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.status import PlanStatusState
from cases.domain.progress.case_state import CaseState
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.progress.visit import Prerequisite
from cases.domain.uuid7 import uuid7
from cases.models import Person, Review, Revocation, RunningWork, ToothPlanVersion, TreatmentEvent
from cases.queries.course import treatment_of
from cases.queries.plans import status_of
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from cases.services.planning.revocation import revoke
from tests.cases.test_replan import PHONE, Hand
from tests.cast import decide, with_size

WHY = "The image is of another tooth."


def folded(version: ToothPlanVersion) -> CaseState:
    course = treatment_of(version.case_id).course
    assert course is not None
    return course


def withdrawn(actor: Person, version: ToothPlanVersion) -> Revocation:
    return revoke(actor=actor, version=version, seen_hash=version.hash, reason=WHY)[0]


def test_it_stays_beside_the_approval_which_is_not_edited(approved: ToothPlanVersion, vale: Person) -> None:
    withdrawn(vale, approved)
    approved.refresh_from_db()
    status = status_of(approved.case)
    assert (approved.state, status.state) == (PlanState.REVOKED, PlanStatusState.REVOKED)
    assert [(revocation.actor, revocation.reason) for revocation in approved.revocations.all()] == [(vale, WHY)]
    assert [review.decision for review in Review.objects.filter(version=approved)] == [Decision.APPROVED]


def test_work_halts_at_the_next_step(approved: ToothPlanVersion, priya: Person, vale: Person) -> None:
    hand = Hand(priya, approved, PHONE)
    hand.leaves("DB")
    withdrawn(vale, approved)
    hand.leaves("DB")
    late = TreatmentEvent.objects.filter(case=approved.case).order_by("position").last()
    course = folded(approved)
    assert late is not None
    assert (course.missing, course.out_of_course[str(late.pk)]) == ((Prerequisite.REVOKED,), OutOfCourse.REVOKED)
    row = RunningWork.objects.get(case=approved.case)
    assert row.waiting_since is not None
    assert "revoked" in row.text


def test_the_same_plan_approved_again_goes_on_where_the_work_stands(
    approved: ToothPlanVersion, priya: Person, vale: Person
) -> None:
    hand = Hand(priya, approved, PHONE)
    hand.leaves("DB")
    before = folded(approved).canals["DB"].walk.at
    withdrawn(vale, approved)
    approved.refresh_from_db()
    again = plans.submit(actor=priya, version=approved)
    decide(vale, again, Decision.APPROVED)
    course = folded(approved)
    assert (course.missing, course.canals["DB"].walk.at) == ((), before)


def test_a_new_plan_is_not_carried_over_on_it(
    approved: ToothPlanVersion, priya: Person, vale: Person, asked: Asked
) -> None:
    Hand(priya, approved, PHONE).leaves("DB")
    withdrawn(vale, approved)
    again, _ = plans.propose(actor=priya, case=approved.case, asked=asked)
    assert again.state == PlanState.DRAFT
    assert Prerequisite.REVOKED in folded(approved).missing


def test_whoever_gave_it_or_a_coordinator(
    approved: ToothPlanVersion, amari: Person, priya: Person, rosa: Person
) -> None:
    for nobody in (amari, priya):
        with pytest.raises(NotAllowed):
            withdrawn(nobody, approved)
    assert withdrawn(rosa, approved).actor == rosa


def test_of_the_version_on_the_screen_alone_once_and_with_a_reason(
    approved: ToothPlanVersion, submitted: ToothPlanVersion, vale: Person
) -> None:
    with pytest.raises(ChangedSince):
        revoke(actor=vale, version=approved, seen_hash="0" * 64, reason=WHY)
    with pytest.raises(NothingSaid):
        revoke(actor=vale, version=approved, seen_hash=approved.hash, reason="  ")
    once = partial(revoke, actor=vale, version=approved, seen_hash=approved.hash, id=uuid7())
    first, new = once(reason=WHY)
    assert new
    assert once(reason=WHY) == (first, False)
    with pytest.raises(SentDifferently):
        once(reason="Something else.")
    with pytest.raises(Conflict):
        withdrawn(vale, approved)


def test_an_approval_that_was_carried_over_belongs_to_who_gave_it(
    approved: ToothPlanVersion, priya: Person, vale: Person, amari: Person, asked: Asked
) -> None:
    Hand(priya, approved, PHONE).leaves("DB")
    later, _ = plans.propose(actor=priya, case=approved.case, asked=asked)
    assert (later.state, later.carried_from) == (PlanState.APPROVED, approved)
    with pytest.raises(NotAllowed):
        withdrawn(amari, later)
    withdrawn(vale, later)
    later.refresh_from_db()
    assert later.state == PlanState.REVOKED


def test_another_size_waits_for_a_word_of_its_own(
    approved: ToothPlanVersion, priya: Person, vale: Person, asked: Asked
) -> None:
    withdrawn(vale, approved)
    other, _ = plans.propose(actor=priya, case=approved.case, asked=with_size(asked, "P", 40))
    plans.submit(actor=priya, version=other)
    other.refresh_from_db()
    decide(vale, other, Decision.APPROVED)
    assert folded(approved).missing == ()
    assert status_of(approved.case).state is PlanStatusState.APPROVED
