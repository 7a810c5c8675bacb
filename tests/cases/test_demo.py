"""The demonstration: invented, complete, loaded once, unlike the check cases."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from django.contrib.auth import authenticate
from django.contrib.auth.hashers import PBKDF2PasswordHasher
from django.core.management import CommandError, call_command
from django.db import transaction
from pytest_django.fixtures import Settings
from pytest_django.plugin import DjangoDbBlocker

from cases.mapping.charts import reading_of
from cases.mapping.kits import kit_of
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, Kit, LengthReading, Membership, Person, Programme
from cases.queries import charts, plans
from cases.services.demo import cases, drawn
from cases.services.demo.drawn import Size
from cases.services.people import access_keys
from cases.services.planning.plan_input import Asked, snapshot
from planning.contract.plan_input import Choices, Needle, Override
from planning.contract.plan_value import Severity
from planning.foundation.errors import ToothNotPlanned
from planning.whole_tooth.plan import plan
from tests.planning.given import CHECK_KIT, SECOND_KIT, four_canals


@pytest.fixture(scope="module")
def loaded_once(django_db_setup: None, django_db_blocker: DjangoDbBlocker) -> Iterator[None]:
    """The demonstration, loaded once for the tests of this file that come one after the other."""
    with django_db_blocker.unblock(), transaction.atomic():
        assert cases.load()
        yield
        transaction.set_rollback(True)


@pytest.fixture
def loaded(loaded_once: None, db: None) -> None:
    """What a test changes of it is taken back."""


def test_loading_it_again_keeps_what_is_there(loaded: None) -> None:
    Case.objects.filter(patient__alias="Training block 3").update(facts={"isolated": True})
    before = Case.objects.count()
    assert not cases.load()
    assert Case.objects.count() == before
    assert Case.objects.get(patient__alias="Training block 3").facts == {"isolated": True}


def test_everybody_named_can_sign_in(loaded: None) -> None:
    sign_ins = cases.sign_ins()
    assert {who["role"] for who in sign_ins} == {"student", "supervisor", "coordinator"}
    for who in sign_ins:
        person = authenticate(username=who["username"], password=who["password"])
        assert isinstance(person, Person)
        assert (person.display_name, person.memberships.get().role) == (who["name"], who["role"])


def test_a_known_password_gets_its_slow_hash_from_whoever_signs_in(db: None, settings: Settings) -> None:
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.PBKDF2PasswordHasher"]
    person = Person.objects.create(username="anybody", password=cases.quickly_hashed("buoy-and-tide-7"))
    assert person.password.startswith("pbkdf2_sha256$1$")
    assert authenticate(username="anybody", password="buoy-and-tide-7") == person
    person.refresh_from_db()
    assert person.password.startswith(f"pbkdf2_sha256${PBKDF2PasswordHasher.iterations}$")


def test_every_service_named_has_a_key_that_counts(loaded: None) -> None:
    (service,) = cases.service_keys()
    key = access_keys.admit(text=service["key"])
    assert (key.name, key.service and key.service.programme.invented) == (service["name"], True)


def test_it_says_that_it_is_invented(loaded: None) -> None:
    assert all(programme.invented and "invented" in programme.name for programme in Programme.objects.all())


def test_every_status_worth_seeing_is_there(loaded: None) -> None:
    rows = Case.objects.select_related("tooth").prefetch_related(plans.with_status())
    states = {charts.listed(row).status.state.value for row in rows}
    assert states == {"none", "draft", "waiting", "approved", "returned", "approval_void"}
    lengths = {canal.length.state.value for row in rows for canal in charts.shown(row.pk).canals if canal.length}
    assert lengths >= {"missing", "estimated", "settled", "unsettled"}


def test_every_plan_is_what_the_planner_says_today(loaded: None) -> None:
    versions = [version for case in Case.objects.all() for version in case.versions.all()]
    assert len(versions) >= 8
    for version in versions:
        assert plan_of(version) == plan(plan_input_of(version))
    assert any(c.severity is Severity.STOP for v in versions for c in plan_of(v).cautions)


def test_each_kit_works_in_its_programme(loaded: None) -> None:
    used = {version.kit_id for case in Case.objects.all() for version in case.versions.all()}
    assert used == set(Kit.objects.values_list("pk", flat=True))


def test_its_engine_instruments_are_none_of_the_check_kits(loaded: None) -> None:
    check = {
        instrument.name
        for kit in (CHECK_KIT, SECOND_KIT)
        for instrument in kit.instruments
        if instrument.motion != "hand"
    }
    ours = {
        instrument.name
        for row in Kit.objects.all()
        for instrument in kit_of(row).instruments
        if instrument.motion != "hand"
    }
    assert ours
    assert not ours & check


def test_its_teeth_and_lengths_are_none_of_the_check_case(loaded: None) -> None:
    assert not Case.objects.filter(tooth__iso="26").exists()
    figures = re.compile(r"tooth_mm=([0-9.]+)")
    check = set(figures.findall(str([canal.readings for canal in four_canals()])))
    readings = [reading_of(row) for row in LengthReading.objects.all()]
    ours = set(figures.findall(str(readings)))
    assert len(check) == 4
    assert len(ours) > 10
    assert not ours & check


def test_nobody_of_the_tests_cast_is_in_it(loaded: None) -> None:
    names = {membership.person.display_name for membership in Membership.objects.select_related("person")}
    assert not any(name in own_name for name in ("Priya", "Tom", "Vale", "Rosa") for own_name in names)


def test_one_canal_is_so_wide_that_a_supervisor_chooses_its_size(loaded: None) -> None:
    """First to bind 45: the next, 50, is more than is advised for a premolar (Glickman & Dumsha, from memory)."""
    version = Case.objects.get(patient__alias="Bench tooth B6").versions.get()
    (canal,) = plan_of(version).canals
    assert (canal.final_size, canal.size_range.least, canal.size_range.most) == (None, 50, 40)
    assert [reason.code for reason in canal.withheld] == ["wide-canal"]
    assert version.state == "waiting"
    chosen = Override(code="wide-canal", canal=canal.canal, reason="Seen on both images.", final_size=50)
    (opened,) = plan(replace(plan_input_of(version), overrides=(chosen,))).canals
    assert (opened.final_size, opened.withheld) == (50, ())


def test_the_primary_tooth_is_charted_and_not_planned(loaded: None) -> None:
    case = Case.objects.get(patient__alias="Bench tooth B5")
    assert case.tooth.iso.startswith("5")
    kit = Kit.objects.get(name="Hand kit")
    choices = Choices(needle=Needle(gauge=31, tip="side_vented"))
    with pytest.raises(ToothNotPlanned, match="charted"):
        plan(snapshot(case, Asked(kit_id=kit.pk, technique="step-back", choices=choices), samples=0))


@pytest.fixture
def few(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(drawn.COUNTS, Size.GROUP, (2, 9))


def drawn_cases() -> list[tuple[Any, ...]]:
    """All that is the same in two databases: ids are not, and the plans' samples are drawn from them."""
    rows = Case.objects.filter(patient__alias__startswith="Drawn tooth").order_by("pk")
    return [
        (
            row.patient.alias,
            row.student.username,
            row.tooth.iso,
            [str(reading_of(reading)) for canal in row.tooth.canals.all() for reading in canal.readings.all()],
            [version.state for version in row.versions.all()],
            row.events.count(),
        )
        for row in rows
    ]


@pytest.mark.one_database
def test_a_seed_draws_the_same_cases_each_time_and_another_seed_others(
    loaded: None, few: None, capsys: pytest.CaptureFixture[str]
) -> None:
    with transaction.atomic():
        students = drawn.load(Size.GROUP, seed=21)
        first = drawn_cases()
        transaction.set_rollback(True)
    call_command("seed", "--size", "group", "--seed", "21")
    assert "9 drawn cases of student-21-1 to student-21-2" in capsys.readouterr().out
    assert drawn_cases() == first
    assert len(first) == 9
    assert {state for *_, states, _ in first for state in states} == {"draft", "waiting", "approved", "returned"}
    assert max(events for *_, events in first) > 1
    assert isinstance(authenticate(username=students[0], password=drawn.PASSWORD), Person)

    call_command("seed", "--size", "group", "--seed", "21")
    assert "nothing is added" in capsys.readouterr().out
    assert drawn_cases() == first
    drawn.load(Size.GROUP, seed=22)
    assert [row[1:] for row in drawn_cases()[9:]] != [row[1:] for row in first]


def test_seeds_are_for_no_school(settings: Settings) -> None:
    settings.PRODUCTION = True
    with pytest.raises(CommandError, match="MODE=production"):
        call_command("seed")


def test_the_shell_has_the_case_with_the_most_work_at_hand(loaded: None, capsys: pytest.CaptureFixture[str]) -> None:
    command = "print(case.patient.alias, plan == plan_of(version), api.get(f'/api/v1/cases/{case.pk}').status_code)"
    call_command("shell", "--command", f"from cases.mapping.plans import plan_of; {command}")
    most = max(Case.objects.all(), key=lambda case: case.events.count())
    assert f"{most.patient.alias} True 200" in capsys.readouterr().out
