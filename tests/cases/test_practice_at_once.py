"""Two devices in one exercise at once: one goes on, the other looks again. On both databases."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from cases.domain.access.roles import Role
from cases.domain.uuid7 import uuid7
from cases.mapping.practice import worked_anew
from cases.models import Person, PracticeAct, PracticeExercise
from cases.services.practice import exercises
from planning.practice.exercise import Act, ActKind
from tests import factories
from tests.at_once import at_once
from tests.practice import LEVEL

pytestmark = pytest.mark.usefixtures("database_of_many")


@pytest.fixture
def student(database_of_many: None) -> Person:
    return factories.member(factories.ProgrammeFactory.create(), "priya", Role.STUDENT)


def starting(student: Person, **more: Any) -> Callable[[], Any]:
    programme_id = student.memberships.get().programme_id
    return lambda: exercises.start(actor=student, programme_id=programme_id, level=LEVEL, **more)


def test_of_two_acts_one_is_done(student: Person) -> None:
    row, _ = starting(student)()

    def acting(kind: ActKind) -> Callable[[], Any]:
        return lambda: exercises.act(actor=student, exercise=row, act=Act(kind=kind), seen_revision=0)

    came = at_once(acting(ActKind.WORK), acting(ActKind.SKIP))
    assert sorted(type(each).__name__ for each in came) == ["ChangedSince", "tuple"]
    row.refresh_from_db()
    assert (row.revision, PracticeAct.objects.get().number) == (1, 1)
    assert len(worked_anew(row).done) == 1


def test_one_exercise_begun_twice_at_once_is_one(student: Person) -> None:
    begun = at_once(*[starting(student, id=uuid7())] * 2)
    assert PracticeExercise.objects.count() == 1
    assert sorted(created for _, created in begun) == [False, True]


def test_of_an_act_and_an_end_one_is_first(student: Person) -> None:
    row, _ = starting(student)()
    came = at_once(
        lambda: exercises.act(actor=student, exercise=row, act=Act(kind=ActKind.WORK), seen_revision=0),
        lambda: exercises.end(actor=student, exercise=row, seen_revision=0),
    )
    assert len([each for each in came if type(each).__name__ == "ChangedSince"]) == 1
    row.refresh_from_db()
    assert (row.revision, row.ended_at is None) == (1, row.acts.exists())
