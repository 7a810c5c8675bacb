"""A database of its own that a server process shares, and how large a run is."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest
from django.core.management import call_command
from django.db import connection
from pytest_django import DjangoDbBlocker

from cases.domain.access.roles import Role
from cases.domain.plans.lifecycle import Decision
from cases.models import Person, ToothPlanVersion
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from planning.contract.plan_input import Choices
from tests import factories
from tests.cast import chart, decide, open_case
from tests.planning.given import OPEN_30


def pytest_addoption(parser: pytest.Parser) -> None:
    group = parser.getgroup("faults", "how large the fault test is")
    group.addoption("--fault-seed", type=int, default=20261125, help="the same seed: the same devices, the same faults")
    group.addoption("--fault-devices", type=int, default=200)
    group.addoption("--fault-rounds", type=int, default=3, help="turns of every device")
    group.addoption("--fault-pulls", type=int, default=4, help="times the server is killed")


@pytest.fixture(scope="session")
def shared_database(django_db_blocker: DjangoDbBlocker) -> Iterator[None]:
    """The database of DATABASE_URL itself, not a copy for tests: the server process works on it. It has no records."""
    if not os.environ.get("DATABASE_URL"):
        pytest.fail("The fault test needs a database of its own, without records: say which by DATABASE_URL.")
    with django_db_blocker.unblock():
        if Person._meta.db_table in connection.introspection.table_names() and Person.objects.exists():
            pytest.fail("The fault test needs a database without records; that of DATABASE_URL has some.")
        call_command("migrate", verbosity=0)
        yield
        connection.close()


@pytest.fixture
def approved(shared_database: None, monkeypatch: pytest.MonkeyPatch) -> ToothPlanVersion:
    """The check molar with an approved plan."""
    monkeypatch.setattr(plans, "SAMPLES", 10)
    programme = factories.ProgrammeFactory.create()
    student = factories.member(programme, "priya", Role.STUDENT)
    vale = factories.member(programme, "vale", Role.SUPERVISOR)
    kit = factories.kit_row(programme)
    case = open_case(programme, student)
    chart(case, student)
    asked = Asked(kit_id=kit.pk, technique="crown-down", choices=Choices(needle=OPEN_30))
    version, _ = plans.propose(actor=student, case=case, asked=asked)
    plans.submit(actor=student, version=version)
    decide(vale, version, Decision.APPROVED)
    approved_plan: ToothPlanVersion = ToothPlanVersion.objects.select_related("case__programme", "case__student").get(
        pk=version.pk
    )
    return approved_plan
