"""The cast: Priya and Tom study, Dr Vale and Dr Amari supervise, Rosa coordinates; a stranger is elsewhere.

Priya has a molar with four canals: the check case of the planner, brought in by the services.
"""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache
from typing import Any
from uuid import UUID

import pytest
from rest_framework.test import APIClient

from cases.api.etags import SHOWN_DIGITS
from cases.domain.access.roles import Role
from cases.domain.plans.acknowledged import to_acknowledge
from cases.domain.plans.lifecycle import Decision
from cases.imaging import reading as image_reading
from cases.mapping.plans import plan_of
from cases.models import Canal, Case, Kit, Person, Programme, ToothPlanVersion
from cases.services.charting import canals, cases, readings
from cases.services.planning import plans, remembered, reviews
from cases.services.planning.plan_input import Asked
from planning.anatomy import Notation, ToothName
from planning.contract.canal_facts import Finding
from planning.contract.plan_input import CanalChoice, Choices, Pattern, PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import canonical_text, decode
from planning.whole_tooth.plan import plan
from tests import factories
from tests.built_once import built_once
from tests.factories import member
from tests.planning.given import OPEN_30, four_canals
from tests.read_once import run_once

# What a folder of tests takes over whole; the rest is imported by its name.
__all__ = [
    "amari",
    "approved",
    "asked",
    "clinic",
    "elsewhere",
    "few_samples",
    "images_read_once",
    "kit",
    "molar",
    "opened",
    "priya",
    "programme",
    "proposed",
    "rosa",
    "stranger",
    "submitted",
    "tom",
    "vale",
]

API = "/api/v1"

# A case's samples are drawn from its id: with the same id the same molar is the same input in every test.
MOLAR_IN_THE_HAND, MOLAR_IN_A_PATIENT = (UUID(f"01900000-0000-7000-8000-00000000000{n}") for n in (1, 2))


@cache
def _plan_of(text: str) -> Plan:
    return plan(decode(PlanInput, json.loads(text)))


def planned_once(plan_input: PlanInput) -> Plan:
    """The plan of this very input, by its canonical text."""
    return _plan_of(canonical_text(plan_input))


@pytest.fixture(autouse=True)
def few_samples(monkeypatch: pytest.MonkeyPatch) -> None:
    """How bands come about is tested with the planner; records are as right with few samples, and much quicker.

    The same input is planned once in a process: that it gives the same plan is tested with the planner, too.
    """
    monkeypatch.setattr(plans, "SAMPLES", 10)
    monkeypatch.setattr(remembered, "plan", planned_once)


@pytest.fixture
def images_read_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(image_reading, "_run", run_once)


@pytest.fixture
def programme(db: None, images_read_once: None) -> Programme:
    return factories.ProgrammeFactory.create(name="Check programme")


@pytest.fixture
def elsewhere(db: None) -> Programme:
    return factories.ProgrammeFactory.create(name="Another programme")


@pytest.fixture
def priya(programme: Programme) -> Person:
    return member(programme, "priya", Role.STUDENT, "Monday")


@pytest.fixture
def tom(programme: Programme) -> Person:
    return member(programme, "tom", Role.STUDENT, "Friday")


@pytest.fixture
def vale(programme: Programme) -> Person:
    return member(programme, "vale", Role.SUPERVISOR)


@pytest.fixture
def amari(programme: Programme) -> Person:
    return member(programme, "amari", Role.SUPERVISOR)


@pytest.fixture
def rosa(programme: Programme) -> Person:
    return member(programme, "rosa", Role.COORDINATOR)


@pytest.fixture
def stranger(elsewhere: Programme) -> Person:
    """A supervisor, but of another programme."""
    return member(elsewhere, "stranger", Role.SUPERVISOR)


@pytest.fixture
def kit(programme: Programme) -> Kit:
    return factories.kit_row(programme)


@pytest.fixture
def opened(programme: Programme, priya: Person) -> Case:
    """Tooth 26, extracted, as it opens."""
    return open_case(programme, priya, id=MOLAR_IN_THE_HAND)


@pytest.fixture
def molar(opened: Case, priya: Person) -> Case:
    """The same with every length confirmed and the junction found."""
    state = Case.objects.values_list("setting", "revision").get(pk=opened.pk)
    built_once(f"lengths of the molar {state}", named_in(opened), lambda: chart(opened, priya))
    opened.refresh_from_db()
    return opened


@pytest.fixture
def asked(kit: Kit) -> Asked:
    return Asked(kit_id=kit.pk, technique="crown-down", choices=Choices(needle=OPEN_30))


@pytest.fixture
def proposed(molar: Case, priya: Person, asked: Asked) -> ToothPlanVersion:
    return plans.propose(actor=priya, case=molar, asked=asked)[0]


@pytest.fixture
def submitted(proposed: ToothPlanVersion, priya: Person) -> ToothPlanVersion:
    return plans.submit(actor=priya, version=proposed)


@pytest.fixture
def approved(submitted: ToothPlanVersion, vale: Person) -> ToothPlanVersion:
    decide(vale, submitted, Decision.APPROVED)
    submitted.refresh_from_db()
    return submitted


@pytest.fixture
def clinic(programme: Programme, priya: Person, vale: Person, asked: Asked) -> ToothPlanVersion:
    """The check molar in a patient, isolated, its plan approved."""
    case = open_case(programme, priya, setting="clinic", id=MOLAR_IN_A_PATIENT)
    chart(case, priya)
    case.refresh_from_db()
    cases.change_case(actor=priya, case=case, seen_revision=case.revision, changes={"isolated": True})
    case.refresh_from_db()
    version = plans.submit(actor=priya, version=plans.propose(actor=priya, case=case, asked=asked)[0])
    decide(vale, version, Decision.APPROVED)
    return version


# --- what they do ---


def open_case(programme: Programme, student: Person, designation: str = "26", **more: Any) -> Case:
    fields: dict[str, Any] = {
        "patient_alias": "Bench 1",
        "tooth": ToothName(notation=Notation.ISO_3950, designation=designation),
        "setting": "extracted",
    }
    return cases.open_case(actor=student, programme_id=programme.pk, **(fields | more))[0]


def named_in(case: Case) -> dict[str, UUID]:
    """Whom and what rows of the case name, by names that are alike in every test."""
    named = {"case": case.pk, "programme": case.programme_id, "student": case.student_id}
    canals = Canal.objects.filter(tooth__case=case).values_list("name", "pk", "root__name", "root")
    for canal, key, root, root_key in canals:
        named |= {f"canal {canal}": key, f"root {root}": root_key}
    return named


def canal_of(case: Case, name: str) -> Canal:
    return Canal.objects.select_related("tooth__case").get(tooth__case=case, name=name)


def chart(case: Case, student: Person) -> None:
    """Everything the check case knows of the molar."""
    for facts in four_canals():
        canal = canal_of(case, facts.name)
        changes = {"finding": Finding.FOUND, "reference_point": facts.reference_point}
        canals.change_canal(actor=student, canal=canal, changes=changes)
        canal = canal_of(case, facts.name)
        for reading in facts.readings:
            readings.take_length(actor=student, canal=canal, reading=reading)
        if facts.junction is not None:
            readings.record_junction(actor=student, canal=canal, junction=facts.junction)
    canals.set_root(actor=student, case=case, name="MB", pattern=Pattern.JOIN, main_canal="MB1")


def with_size(asked: Asked, canal: str, final_size: int, reason: str = "") -> Asked:
    """The same with another final size in one canal."""
    choice = CanalChoice(canal=canal, final_size=final_size, reason=reason)
    return replace(asked, choices=replace(asked.choices, canals=(choice,)))


def decide(supervisor: Person, version: ToothPlanVersion, decision: Decision, **more: Any) -> Any:
    seen = tuple(to_acknowledge(plan_of(version).cautions)) if decision is Decision.APPROVED else ()
    fields: dict[str, Any] = {"seen_hash": version.hash, "note": "Seen.", "acknowledged": seen}
    return reviews.decide(supervisor=supervisor, version=version, decision=decision, **(fields | more))[0]


def client(person: Person | None) -> APIClient:
    """A client of the API with the person signed in; of nobody for None."""
    browser = APIClient()
    if person is not None:
        browser.force_login(person)
    return browser


def state_of(answer: Any) -> str:
    """What a change is compared with: the part of the tag before what else is shown."""
    state, shown = answer["ETag"].strip('"').split("-")
    assert len(shown) == SHOWN_DIGITS
    return str(state)


def problem(answer: Any, status: int, code: str) -> dict[str, str]:
    """Sentences by pointer, once status, code and media type are as claimed."""
    body = answer.json()
    assert (answer.status_code, body["type"]) == (status, f"/api/v1/problems/{code}"), body
    assert answer["Content-Type"] == "application/problem+json"
    assert body["detail"]
    return {error["pointer"]: error["detail"] for error in body["errors"]}
