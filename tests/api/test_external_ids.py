"""Another system sends and finds what is here by keys of its own."""

from __future__ import annotations

from typing import Any
from uuid import uuid4

import pytest
from django.db import IntegrityError, transaction
from rest_framework.test import APIClient

from cases.models import Case, ChangeLog, ExternalId, Kit, Person, Programme
from tests.cast import API, client, problem
from tests.keys import own_key, program, service_key

KEY = "course-7.item-3120"
BENCH = {"patient_alias": "Bench 7", "tooth": {"notation": "iso_3950", "designation": "26"}, "setting": "extracted"}


@pytest.fixture
def course(rosa: Person) -> APIClient:
    return program(service_key(rosa, name="Course").text)


@pytest.fixture
def archive(rosa: Person) -> APIClient:
    return program(service_key(rosa).text)


@pytest.fixture
def at(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}"


def put(asker: APIClient, address: str, body: dict[str, Any], **headers: str) -> Any:
    return asker.put(address, body, format="json", headers=headers)


def by_key(at: str, key: str = KEY) -> str:
    return f"{at}/cases/by-external-id/{key}"


@pytest.fixture
def body(priya: Person) -> dict[str, Any]:
    return {**BENCH, "student_id": str(priya.pk), "root_filled": True}


def test_the_same_sent_twice_is_one_case_and_one_answer(course: APIClient, at: str, body: dict[str, Any]) -> None:
    first, second = (put(course, by_key(at), body) for _ in range(2))
    assert (first.status_code, second.status_code) == (201, 200), first.json()
    assert first.json() == second.json()
    assert first["ETag"] == second["ETag"]
    shown = first.json()
    assert (shown["external_id"], shown["root_filled"], shown["patient_alias"]) == (KEY, True, "Bench 7")
    assert Case.objects.count() == 1
    # What did not change is not in the log.
    assert list(ChangeLog.objects.values_list("verb", flat=True).exclude(verb="make")) == ["open", "change"]


def test_what_is_different_is_changed_and_the_rest_stays(
    course: APIClient, at: str, body: dict[str, Any], vale: Person
) -> None:
    put(course, by_key(at), body | {"supervisor_id": str(vale.pk)})
    del body["root_filled"]
    changed = put(course, by_key(at), body | {"patient_alias": "Bench 8", "perforation": True}).json()
    assert (changed["patient_alias"], changed["perforation"], changed["root_filled"]) == ("Bench 8", True, True)
    assert changed["supervisor"]["id"] == str(vale.pk)


def test_a_case_keeps_its_student_and_its_tooth(course: APIClient, at: str, body: dict[str, Any], tom: Person) -> None:
    put(course, by_key(at), body)
    another = {"tooth": {"notation": "iso_3950", "designation": "16"}}
    assert problem(put(course, by_key(at), body | another), 422, "not-usable").keys() == {"#/tooth"}
    someone = {"student_id": str(tom.pk)}
    assert problem(put(course, by_key(at), body | someone), 422, "not-usable").keys() == {"#/student_id"}
    assert Case.objects.get().tooth.iso == "26"


def test_a_state_that_was_seen_may_be_named(course: APIClient, at: str, body: dict[str, Any]) -> None:
    seen = put(course, by_key(at), body)["ETag"]
    problem(put(course, by_key(at, "other"), body, **{"If-Match": seen}), 412, "changed-since")
    assert put(course, by_key(at), body | {"perforation": True}, **{"If-Match": seen}).status_code == 200
    problem(put(course, by_key(at), body | {"perforation": False}, **{"If-Match": seen}), 412, "changed-since")


def test_what_is_refused_leaves_nothing(course: APIClient, at: str, body: dict[str, Any], vale: Person) -> None:
    for wrong in ({"patient_alias": "Anna Miller"}, {"student_id": str(vale.pk)}, {"anatomy": "charted_by_supervisor"}):
        assert put(course, by_key(at), body | wrong).status_code in {403, 422}
    assert "#/external_id" in problem(put(course, by_key(at, "anna.miller"), body), 422, "external-id-refused")
    assert not Case.objects.exists()
    assert not ExternalId.objects.exists()
    problem(course.get(by_key(at)), 404, "not-found")


def test_a_case_is_found_by_its_key_by_the_service_whose_it_is(
    course: APIClient, archive: APIClient, at: str, body: dict[str, Any]
) -> None:
    opened = put(course, by_key(at), body)
    assert course.get(by_key(at)).json() == opened.json()
    assert course.get(f"{API}/cases/{opened.json()['id']}").json() == opened.json()
    (listed,) = course.get(f"{at}/cases", {"external_id": KEY}).json()["results"]
    assert (listed["id"], listed["external_id"]) == (opened.json()["id"], KEY)
    assert course.get(f"{at}/cases", {"external_id": "other"}).json()["results"] == []
    # Another service has the same key for another case, and sees this one by none.
    problem(archive.get(by_key(at)), 404, "not-found")
    assert archive.get(f"{at}/cases", {"external_id": KEY}).json()["results"] == []
    (by_another,) = archive.get(f"{at}/cases").json()["results"]
    assert by_another["external_id"] is None
    assert put(archive, by_key(at), body | {"patient_alias": "Bench 9"}).status_code == 201
    assert Case.objects.count() == 2


def test_people_have_no_keys_and_see_none(
    course: APIClient, at: str, body: dict[str, Any], priya: Person, vale: Person, rosa: Person
) -> None:
    opened = put(course, by_key(at), body).json()
    for asker in (client(priya), client(vale), client(rosa), program(own_key(priya).text)):
        assert asker.get(f"{API}/cases/{opened['id']}").json()["external_id"] is None
        assert asker.get(f"{at}/cases").json()["results"][0]["external_id"] is None
        problem(asker.get(f"{at}/cases", {"external_id": KEY}), 403, "not-allowed")
        problem(asker.get(by_key(at)), 403, "not-allowed")
        problem(put(asker, by_key(at), body), 403, "not-allowed")
        problem(put(asker, f"{API}/cases/{opened['id']}/external-id", {"external_id": "4711"}), 403, "not-allowed")
    assert ExternalId.objects.count() == 1


def test_an_empty_key_finds_nothing_instead_of_all(course: APIClient, at: str, opened: Case) -> None:
    assert len(course.get(f"{at}/cases").json()["results"]) == 1
    assert course.get(f"{at}/cases", {"external_id": ""}).json()["results"] == []


@pytest.mark.parametrize("kind", ["case", "person", "kit"])
def test_what_is_here_already_is_given_a_key(
    course: APIClient, archive: APIClient, at: str, opened: Case, kit: Kit, priya: Person, kind: str
) -> None:
    thing = {"case": opened, "person": priya, "kit": kit}[kind]
    folder = {"case": f"{API}/cases", "person": f"{at}/people", "kit": f"{at}/kits"}[kind]
    address, listing = f"{folder}/{thing.pk}/external-id", folder if kind != "case" else f"{at}/cases"
    answers = [put(course, address, {"external_id": "4711"}) for _ in range(2)]
    assert [each.status_code for each in answers] == [201, 200], answers[0].json()
    assert {each.content for each in answers} == {b'{"external_id":"4711"}'}
    (listed,) = course.get(listing, {"external_id": "4711"}).json()["results"]
    assert listed["external_id"] == "4711"
    assert (listed["person"] if kind == "person" else listed)["id"] == str(thing.pk)
    assert archive.get(listing, {"external_id": "4711"}).json()["results"] == []
    # Another key takes its place, and it is free again.
    assert put(course, address, {"external_id": "4712"}).status_code == 200
    assert course.get(listing, {"external_id": "4711"}).json()["results"] == []
    assert [course.delete(address).status_code for _ in range(2)] == [204, 204]
    assert not ExternalId.objects.exists()


def test_one_key_is_of_one_thing_of_its_kind(
    course: APIClient, at: str, priya: Person, tom: Person, kit: Kit, opened: Case
) -> None:
    key = {"external_id": "4711"}
    assert put(course, f"{at}/people/{priya.pk}/external-id", key).status_code == 201
    assert put(course, f"{at}/kits/{kit.pk}/external-id", key).status_code == 201
    assert put(course, f"{API}/cases/{opened.pk}/external-id", key).status_code == 201
    taken = put(course, f"{at}/people/{tom.pk}/external-id", key)
    assert "#/external_id" in problem(taken, 409, "external-id-taken")


def test_a_persons_key_stands_in_no_log(course: APIClient, at: str, priya: Person) -> None:
    put(course, f"{at}/people/{priya.pk}/external-id", {"external_id": "4711"})
    assert not [row for row in ChangeLog.objects.all() if "4711" in row.before + row.after]


def test_nobody_of_another_programme_is_given_a_key(
    course: APIClient, at: str, stranger: Person, elsewhere: Programme, opened: Case
) -> None:
    key = {"external_id": "4711"}
    problem(put(course, f"{at}/people/{stranger.pk}/external-id", key), 404, "not-found")
    problem(put(course, f"{API}/programmes/{elsewhere.pk}/people/{stranger.pk}/external-id", key), 404, "not-found")
    problem(put(course, f"{at}/kits/{uuid4()}/external-id", key), 404, "not-found")
    Case.objects.filter(pk=opened.pk).update(programme=elsewhere)
    problem(put(course, f"{API}/cases/{opened.pk}/external-id", key), 404, "not-found")


def test_the_database_holds_that_a_key_is_of_one_thing(
    course: APIClient, at: str, priya: Person, kit: Kit, opened: Case
) -> None:
    put(course, f"{at}/kits/{kit.pk}/external-id", {"external_id": "4711"})
    row = ExternalId.objects.get()
    for wrong in ({"case": opened}, {"kit": None}, {"value": ""}):
        with pytest.raises(IntegrityError), transaction.atomic():
            ExternalId.objects.filter(pk=row.pk).update(**wrong)
