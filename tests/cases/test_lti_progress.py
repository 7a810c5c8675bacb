"""A grade goes with the plan that stands: what a platform is told as plans come and go, by the values of Assignment and
Grade Services 2.0, 3.4.7 and 3.4.8."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from django.utils import timezone

from cases.domain.plans.lifecycle import Decision
from cases.models import LtiWork, Person, ToothPlanVersion
from cases.services.charting import canals
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from cases.services.planning.revocation import revoke
from tests.cast import *  # noqa: F403
from tests.cast import canal_of, decide
from tests.lti_course import course, send, work
from tests.lti_platform import Platform

__all__ = ["course", "work"]

pytestmark = pytest.mark.django_db


def steps(course: Platform) -> list[tuple[str, str, int | None]]:
    """Of the activity and of its grading, and the score, in order."""
    bodies = [score.body for score in course.scores]
    return [(each["activityProgress"], each["gradingProgress"], each.get("scoreGiven")) for each in bodies]


def withdraw(supervisor: Person, version: ToothPlanVersion) -> None:
    revoke(actor=supervisor, version=version, seen_hash=version.hash, reason="The image is of another tooth.")


def test_of_a_draft_that_was_never_asked_for_nothing_is_told(
    course: Platform, work: LtiWork, proposed: ToothPlanVersion
) -> None:
    send()
    assert (course.asked, course.scores) == ([], [])


def test_a_plan_that_waits_is_told_and_so_is_that_it_came_back(
    course: Platform, work: LtiWork, submitted: ToothPlanVersion, vale: Person
) -> None:
    send()
    decide(vale, submitted, Decision.RETURNED, note="Look once more.")
    send()
    assert steps(course) == [("Submitted", "PendingManual", None), ("InProgress", "NotReady", None)]


def test_a_grade_stands_until_another_plan_takes_the_place_of_the_approved_one(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, vale: Person, priya: Person, asked: Asked
) -> None:
    """What is done in the tooth after the approval takes nothing away, another plan does, and its approval gives it
    again."""
    send()
    canals.change_canal(actor=priya, canal=canal_of(work.case, "P"), changes={"curvature_deg": 12.0})
    send()
    assert len(course.scores) == 1
    work.case.refresh_from_db()
    again = plans.propose(actor=priya, case=work.case, asked=asked)[0]
    assert again.number == 2
    send()
    plans.submit(actor=priya, version=again)
    send()
    decide(vale, again, Decision.APPROVED)
    send()
    assert steps(course) == [
        ("Completed", "FullyGraded", 1),
        ("InProgress", "NotReady", None),
        ("Submitted", "PendingManual", None),
        ("Completed", "FullyGraded", 1),
    ]
    times = [score.body["timestamp"] for score in course.scores]
    assert times == sorted(set(times))


def test_a_withdrawn_approval_clears_the_grade_and_another_one_gives_it_again(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, vale: Person, priya: Person
) -> None:
    send()
    withdraw(vale, approved)
    send()
    again = plans.submit(actor=priya, version=ToothPlanVersion.objects.get(pk=approved.pk))
    send()
    decide(vale, again, Decision.APPROVED)
    # As if this server's clock had been put back since.
    LtiWork.objects.update(sent_at=timezone.now() + timedelta(hours=1))
    send()
    first, cleared, submitted, last = (score.body for score in course.scores)
    assert (submitted["activityProgress"], "scoreGiven" in submitted) == ("Submitted", False)
    assert (cleared["activityProgress"], cleared["gradingProgress"]) == ("InProgress", "NotReady")
    assert "scoreGiven" not in cleared
    assert (first["scoreGiven"], last["scoreGiven"]) == (1, 1)
    times = [datetime.fromisoformat(body["timestamp"]) for body in (first, cleared, submitted, last)]
    assert times == sorted(set(times))
    assert times[-1] > timezone.now() + timedelta(minutes=59)


def test_an_approval_that_is_withdrawn_before_it_was_told_is_not_told(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, vale: Person
) -> None:
    withdraw(vale, approved)
    send()
    assert course.scores == []
