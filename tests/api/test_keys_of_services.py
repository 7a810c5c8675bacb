"""A service enters cases for a named student, and the record says so."""

from __future__ import annotations

from typing import Any
from uuid import uuid4

import pytest
from rest_framework.test import APIClient

from cases.domain.access.scopes import Scope
from cases.domain.errors import NotHere
from cases.models import (
    AccessKey,
    Case,
    ChangeLog,
    JunctionReading,
    Kit,
    LengthReading,
    Membership,
    Person,
    Programme,
    Service,
    ToothPlanVersion,
)
from cases.queries import seen
from cases.queries.access_keys import student_acted_for
from tests.cast import API, canal_of, problem
from tests.keys import NAME, own_key, program, service_key

GIVEN = {
    "patient_alias": "Bench 7",
    "tooth": {"notation": "iso_3950", "designation": "26"},
    "setting": "extracted",
}


@pytest.fixture
def archive(rosa: Person) -> APIClient:
    return program(service_key(rosa).text)


def cases_of(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/cases"


def test_a_service_opens_a_case_for_a_student_and_fills_it(
    archive: APIClient, programme: Programme, priya: Person
) -> None:
    opened = archive.post(cases_of(programme), GIVEN | {"student_id": str(priya.pk)}, format="json")
    assert opened.status_code == 201, opened.json()
    assert opened.json()["student"] == {"id": str(priya.pk), "name": "Priya"}
    case = Case.objects.get()
    canal = canal_of(case, "MB1")
    reading = {"reading": {"method": "pre_operative_image", "tooth_mm": 21.5, "reference_point": "MB cusp"}}
    facts = {"finding": "found", "reference_point": "MB cusp"}
    tag = {"If-Match": opened["ETag"]}
    assert archive.patch(f"{API}/canals/{canal.pk}", facts, format="json", headers=tag).status_code == 200
    taken = archive.post(f"{API}/canals/{canal.pk}/readings", reading, format="json")
    assert taken.status_code == 201, taken.json()
    record = archive.get(f"{API}/cases/{case.pk}/record").json()["record"]
    entered = [(each["service"], each["person"]["name"], each["says"]) for each in record["entered"]]
    said = ["case opened", "MB1: canal changed", "MB1: reading taken"]
    assert entered == [(NAME, "Priya", each) for each in said]
    logged = ChangeLog.objects.filter(case=case).values_list("key__service__name", "actor__username")
    assert set(logged) == {(NAME, "priya")}
    assert logged.count() == 3


def test_the_same_sent_again_is_the_same_case(archive: APIClient, programme: Programme, priya: Person) -> None:
    body = GIVEN | {"id": str(uuid4()), "student_id": str(priya.pk)}
    answers = [archive.post(cases_of(programme), body, format="json") for _ in range(2)]
    assert [each.status_code for each in answers] == [201, 200]
    assert Case.objects.count() == 1


def who_is_no_student(vale: Person, stranger: Person) -> list[Any]:
    return [{}, {"student_id": str(vale.pk)}, {"student_id": str(stranger.pk)}, {"student_id": str(uuid4())}]


def test_a_case_is_opened_only_for_a_student_of_the_programme(
    archive: APIClient, programme: Programme, vale: Person, stranger: Person
) -> None:
    for named in who_is_no_student(vale, stranger):
        answer = archive.post(cases_of(programme), GIVEN | named, format="json")
        assert "#/student_id" in problem(answer, 422, "not-usable"), named
    assert not Case.objects.exists()


def test_a_students_script_opens_cases_of_their_own_alone(programme: Programme, priya: Person, tom: Person) -> None:
    script = program(own_key(priya).text)
    answer = script.post(cases_of(programme), GIVEN | {"student_id": str(tom.pk)}, format="json")
    assert "#/student_id" in problem(answer, 422, "not-usable")
    assert script.post(cases_of(programme), GIVEN | {"student_id": str(priya.pk)}, format="json").status_code == 201


def test_another_programme_is_not_there_for_a_service(
    archive: APIClient, elsewhere: Programme, stranger: Person, opened: Case
) -> None:
    problem(archive.get(cases_of(elsewhere)), 404, "not-found")
    problem(
        archive.post(cases_of(elsewhere), GIVEN | {"student_id": str(stranger.pk)}, format="json"), 404, "not-found"
    )
    Case.objects.filter(pk=opened.pk).update(programme=elsewhere)
    problem(archive.get(f"{API}/cases/{opened.pk}"), 404, "not-found")


def test_whatever_an_address_is_of_leads_to_the_student_of_its_case(
    proposed: ToothPlanVersion, rosa: Person, priya: Person, elsewhere: Programme
) -> None:
    service = Service.objects.get(keys=service_key(rosa).row)
    ids = {
        "cases": proposed.case_id,
        "canals": canal_of(proposed.case, "MB1").pk,
        "readings": LengthReading.objects.filter(canal__tooth__case=proposed.case)[0].pk,
        "junctions": JunctionReading.objects.filter(canal__tooth__case=proposed.case)[0].pk,
        "plan-versions": proposed.pk,
    }
    for word, id_ in ids.items():
        assert student_acted_for(service, word, id_) == priya, word
    Case.objects.filter(pk=proposed.case_id).update(programme=elsewhere)
    for word, id_ in ids.items():
        with pytest.raises(NotHere):
            student_acted_for(service, word, id_)
    assert not seen.canals(service).exists()
    assert not seen.versions(service).exists()


def test_a_service_sees_the_programme_also_of_a_student_who_left(
    archive: APIClient, programme: Programme, priya: Person, opened: Case
) -> None:
    Membership.objects.filter(person=priya).delete()
    (listed,) = archive.get(cases_of(programme)).json()["results"]
    assert listed["id"] == str(opened.pk)
    answer = archive.get(f"{API}/cases/{opened.pk}")
    assert answer.status_code == 200
    # Nothing can be entered for somebody who studies here no more.
    change = archive.patch(
        f"{API}/cases/{opened.pk}", {"isolated": True}, format="json", headers={"If-Match": answer["ETag"]}
    )
    problem(change, 404, "not-found")


def test_a_service_finds_the_student_by_the_list_of_people(
    archive: APIClient, programme: Programme, priya: Person, vale: Person
) -> None:
    listed = archive.get(f"{API}/programmes/{programme.pk}/people").json()["results"]
    by_name = {each["person"]["name"]: (each["role"], each["group"]) for each in listed}
    assert by_name == {"Priya": ("student", "Monday"), "Vale": ("supervisor", ""), "Rosa": ("coordinator", "")}
    assert {each["person"]["id"] for each in listed} >= {str(priya.pk), str(vale.pk)}


def test_a_service_sees_what_the_programme_keeps(archive: APIClient, programme: Programme, kit: Kit) -> None:
    assert archive.get(f"{API}/programmes/{programme.pk}").json()["role"] is None
    (shown,) = archive.get(f"{API}/programmes/{programme.pk}/kits").json()["results"]
    assert shown["id"] == str(kit.pk)
    assert archive.get(f"{API}/programmes/{programme.pk}/worklist").json()["results"] == []


def test_a_service_submits_for_the_student_and_does_not_decide(
    archive: APIClient, proposed: ToothPlanVersion, rosa: Person
) -> None:
    address = f"{API}/plan-versions/{proposed.pk}"
    tag = {"If-Match": f'"{proposed.hash}"'}
    assert archive.post(f"{address}/submit", headers=tag).status_code == 200
    decision = archive.post(f"{address}/reviews", {"decision": "approved"}, format="json", headers=tag)
    problem(decision, 403, "scope-missing")
    assert 'error="insufficient_scope", scope="reviews:write"' in decision["WWW-Authenticate"]
    assert ChangeLog.objects.get(verb="submit").key.service.name == NAME  # type: ignore[union-attr]


def test_an_anatomy_that_a_supervisor_judges_is_not_a_services(archive: APIClient, opened: Case) -> None:
    tag = {"If-Match": archive.get(f"{API}/cases/{opened.pk}")["ETag"]}
    change = {"anatomy": "charted_by_supervisor"}
    problem(archive.patch(f"{API}/cases/{opened.pk}", change, format="json", headers=tag), 403, "not-allowed")


def test_a_second_key_is_the_same_services(rosa: Person) -> None:
    first, second = service_key(rosa), service_key(rosa, (Scope.CASES_READ,))
    other = service_key(rosa, name="Timetable")
    assert first.row.service == second.row.service != other.row.service
    assert AccessKey.objects.count() == 3
