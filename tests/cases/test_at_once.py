"""Two at once: one wins, the other is told. On both databases, with connections of their own."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Barrier
from typing import Any

import pytest
from django.db import connection

from cases.domain.errors import CaseError
from cases.domain.plan_life import Decision
from cases.domain.roles import Role
from cases.domain.uuid7 import uuid7
from cases.models import Case, LengthReading, Person, Review, ToothPlanVersion
from cases.services import plans, readings
from cases.services.plan_input import Asked
from planning.plan_input import Choices
from planning.readings import PreOperativeImage
from tests import factories
from tests.cast import canal_of, chart, decide, open_case
from tests.planning.given import OPEN_30

pytestmark = pytest.mark.usefixtures("database_of_many")


@pytest.fixture
def database_of_many(transactional_db: None, tmp_path: Path) -> Iterator[None]:
    """A database that connections share as they do in service.

    SQLite's in-memory database for tests has one lock and no waiting, so a copy of it in a file takes its place.
    """
    if connection.vendor != "sqlite":
        yield
        return
    file = tmp_path / "at-once.sqlite3"
    with connection.cursor() as cursor:
        cursor.execute("VACUUM INTO %s", [str(file)])
    kept, name = connection.connection, connection.settings_dict["NAME"]
    connection.connection, connection.settings_dict["NAME"] = None, str(file)
    yield
    connection.close()
    connection.connection, connection.settings_dict["NAME"] = kept, name


def at_once(*acts: Callable[[], Any]) -> list[Any]:
    """What each act came to, a refusal included; all start together."""
    barrier = Barrier(len(acts))

    def run(act: Callable[[], Any]) -> Any:
        barrier.wait(10)
        try:
            return act()
        except CaseError as refusal:
            return refusal
        finally:
            connection.close()

    with ThreadPoolExecutor(len(acts)) as pool:
        return list(pool.map(run, acts))


class Scene:
    """The molar, submitted, with two supervisors."""

    def __init__(self) -> None:
        self.programme = factories.ProgrammeFactory.create()
        self.student = factories.member(self.programme, "priya", Role.STUDENT)
        self.supervisors = [factories.member(self.programme, name, Role.SUPERVISOR) for name in ("vale", "amari")]
        self.case: Case = open_case(self.programme, self.student)
        kit = factories.kit_row(self.programme)
        self.asked = Asked(kit_id=kit.pk, technique="crown-down", choices=Choices(needle=OPEN_30))

    def submitted(self) -> ToothPlanVersion:
        chart(self.case, self.student)
        version, _ = plans.propose(actor=self.student, case=self.case, asked=self.asked)
        return plans.submit(actor=self.student, version=version)


def test_of_two_supervisors_one_decides() -> None:
    scene = Scene()
    version = scene.submitted()

    def deciding(person: Person, decision: Decision) -> Callable[[], Any]:
        return lambda: decide(person, ToothPlanVersion.objects.get(pk=version.pk), decision)

    vale, amari = scene.supervisors
    came = at_once(deciding(vale, Decision.APPROVED), deciding(amari, Decision.RETURNED))
    assert sorted(type(each).__name__ for each in came) == ["MoveNotPossible", "Review"]
    assert Review.objects.count() == 1


def test_one_reading_sent_twice_at_once_is_one() -> None:
    scene, id_ = Scene(), uuid7()
    image = PreOperativeImage(tooth_mm=19.5, reference_point="DB cusp")

    def taking() -> Any:
        canal = canal_of(scene.case, "DB")
        return readings.take_length(actor=scene.student, canal=canal, reading=image, id=id_)

    came = at_once(taking, taking)
    assert sorted(made for _, made in came) == [False, True]
    assert LengthReading.objects.count() == 1
    assert Case.objects.get(pk=scene.case.pk).revision == scene.case.revision + 1


def test_one_opening_sent_twice_at_once_is_one() -> None:
    scene, id_ = Scene(), uuid7()

    def opening() -> Any:
        return open_case(scene.programme, scene.student, id=id_)

    assert [case.pk for case in at_once(opening, opening)] == [id_, id_]


def test_one_plan_proposed_twice_at_once_is_one_version() -> None:
    scene = Scene()
    chart(scene.case, scene.student)

    def proposing() -> Any:
        return plans.propose(actor=scene.student, case=Case.objects.get(pk=scene.case.pk), asked=scene.asked)

    came = at_once(proposing, proposing)
    assert sorted(made for _, made in came) == [False, True]
    assert ToothPlanVersion.objects.count() == 1
