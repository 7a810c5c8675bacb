"""Cases from before it was recorded which plan is in force: said at the head of their events, the rest as it was."""

from __future__ import annotations

from importlib import import_module
from typing import Any

from django.apps import apps
from django.db import models

from cases.domain.events.payloads import PauseTold
from cases.domain.plans.lifecycle import Decision
from cases.domain.progress.course import OutOfCourse
from cases.models import Person, RunningWork, ToothPlanVersion, TreatmentEvent
from cases.queries.course import TreatmentShown, treatment_of
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from planning.run_sheet.graph import Exit
from tests.cases.test_replan import PHONE, Hand, course_of
from tests.cast import decide, with_size

migration = import_module("cases.migrations.0017_which_plan_is_in_force")


class AsItWas:
    """The models as the migration has them: with plain managers, so that rows can be moved."""

    def get_model(self, app: str, name: str) -> Any:
        plain = models.Manager[Any]()
        plain.model = apps.get_model(app, name)
        return type(name, (), {"objects": plain})


def migrated(version: ToothPlanVersion, *, without: int) -> TreatmentShown:
    """The case as it was stored before, without what its first approvals record now; then migrated."""
    events: models.QuerySet[Any] = models.QuerySet(TreatmentEvent).filter(case=version.case)
    events.filter(kind="replan", position__lte=without).delete()
    # As if they had never been: the others stand where they stood then.
    for place, pk in enumerate(events.order_by("position").values_list("pk", flat=True), start=1):
        events.filter(pk=pk).update(position=place, seen_position=0)
    RunningWork.objects.filter(case=version.case).update(position=events.count())
    migration.say_which_plan_is_in_force(AsItWas(), None)
    return treatment_of(version.case_id)


def told(shown: TreatmentShown) -> list[tuple[int, str, str]]:
    return [(event.row.position, event.row.kind, event.row.plan_hash) for event in shown.events]


def test_nothing_was_done(approved: ToothPlanVersion) -> None:
    shown = migrated(approved, without=1)
    assert told(shown) == [(1, "replan", approved.hash)]
    assert shown.events[0].row.server_time == approved.reviews.get().at
    assert shown.events[0].row.actor == approved.reviews.get().supervisor


def test_work_goes_on_where_it_stood(priya: Person, approved: ToothPlanVersion) -> None:
    phone = Hand(priya, approved, PHONE)
    phone.leaves()
    phone.tells(PauseTold(), "P")
    before = course_of(approved.case)
    shown = migrated(approved, without=1)
    assert [(place, kind) for place, kind, _ in told(shown)] == [(1, "replan"), (2, "step"), (3, "pause")]
    assert [event.row.seen_position for event in shown.events] == [0, 1, 1]
    assert course_of(approved.case) == before
    assert RunningWork.objects.get().position == 3


def test_a_version_that_took_over_says_which_one_was_in_force(
    priya: Person, vale: Person, asked: Asked, approved: ToothPlanVersion
) -> None:
    Hand(priya, approved, PHONE).leaves()
    second = plans.submit(
        actor=priya, version=plans.propose(actor=priya, case=approved.case, asked=with_size(asked, "P", 45))[0]
    )
    decide(vale, second, Decision.APPROVED)
    before = course_of(approved.case)
    shown = migrated(approved, without=1)
    assert [(kind, hash_) for _, kind, hash_ in told(shown)] == [
        ("replan", approved.hash),
        ("step", approved.hash),
        ("replan", second.hash),
    ]
    assert shown.course is not None
    assert (shown.course.plan, shown.course.out_of_course) == (second.hash, {})
    assert course_of(approved.case) == before


def test_what_came_by_an_older_plan_after_another_was_approved_moves_nothing_any_more(
    priya: Person, vale: Person, asked: Asked, approved: ToothPlanVersion
) -> None:
    """The guess from the first thing done had called the older plan the one in force."""
    second = plans.submit(
        actor=priya, version=plans.propose(actor=priya, case=approved.case, asked=with_size(asked, "P", 45))[0]
    )
    decide(vale, second, Decision.APPROVED)
    Hand(priya, approved, PHONE).leaves(exit=Exit.REACHED, canal="DB")
    shown = migrated(approved, without=2)
    assert [(kind, hash_) for _, kind, hash_ in told(shown)] == [("replan", second.hash), ("step", approved.hash)]
    assert shown.course is not None
    assert shown.course.plan == second.hash
    assert list(shown.course.out_of_course.values()) == [OutOfCourse.OTHER_PLAN]


def test_a_case_without_an_approved_plan_has_none_in_force(submitted: ToothPlanVersion) -> None:
    assert told(migrated(submitted, without=1)) == []
