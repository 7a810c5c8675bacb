"""What only the wrong person, or something good that does not fit, is refused: no other test asks for it.

`tests.api.recorder` keeps these refusals as examples of their operations.
"""

from __future__ import annotations

import json
from typing import Any

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from rest_framework.test import APIClient

from cases.domain.uuid7 import uuid7
from cases.models import JunctionReading, Kit, Person, Programme, ToothPlanVersion
from tests import factories
from tests.api.judged import description
from tests.cast import API, canal_of, client, open_case, problem
from tests.keys import program, service_key


@pytest.fixture
def places(proposed: ToothPlanVersion, kit: Kit) -> dict[str, str]:
    """What stands in the addresses below."""
    case = proposed.case
    return {
        "programme": f"{API}/programmes/{case.programme_id}",
        "case": f"{API}/cases/{case.pk}",
        "canal": f"{API}/canals/{canal_of(case, 'P').pk}",
        "junction": f"{API}/junctions/{JunctionReading.objects.filter(canal__tooth__case=case)[0].pk}",
        "kit": str(kit.pk),
        "student": str(case.student_id),
        "new": str(uuid7()),
    }


def example_of(operation_id: str) -> Any:
    """The body that the description shows."""
    operations = (operation for path in description()["paths"].values() for operation in path.values())
    body = next(each for each in operations if each["operationId"] == operation_id)["requestBody"]
    return next(iter(body["content"]["application/json"]["examples"].values()))["value"]


def ask(asker: APIClient, place: str, body: Any = None, seen: str = '"0"') -> Any:
    """The answer to a method and an address; `seen` is the state to be changed."""
    method, address = place.split()
    text = json.dumps(body) if body else ""
    return asker.generic(method, address, text, "application/json", headers={"If-Match": seen})


OF_NO_COORDINATOR = {
    "bend_in_space_update": "PUT {canal}/bends-in-space/{new}",
    "junctions_create": "POST {canal}/junctions",
    "readings_create": "POST {canal}/readings",
    "canals_create": "POST {case}/canals",
    "root_update": "PUT {case}/roots/MB",
    "plan_versions_create": "POST {case}/plan-versions",
    "case_preview": "POST {case}/preview",
    "case_preview_changes": "POST {case}/preview/changes",
    "junction_strike": "POST {junction}/strike",
    "on_site_sign_offs_create": "POST {case}/on-site-sign-offs",
    "case_external_id_update": "PUT {case}/external-id",
    "kit_external_id_update": "PUT {programme}/kits/{kit}/external-id",
    "person_external_id_update": "PUT {programme}/people/{student}/external-id",
}
OF_NO_STUDENT = (
    "GET {programme}/export/people.ndjson",
    "GET {programme}/kits?external_id=7",
    "DELETE {programme}/widths/16/P",
    "DELETE {programme}/kits/{kit}/external-id",
    "DELETE {programme}/people/{student}/external-id",
)
TAKEN = {"external_id": "4711"}
NAMED_BY_SERVICES = ("{case}", "{programme}/kits/{kit}", "{programme}/people/{student}")


def test_who_may_not_is_told_who_may(places: dict[str, str], priya: Person, rosa: Person) -> None:
    for operation_id, place in OF_NO_COORDINATOR.items():
        problem(ask(client(rosa), place.format(**places), example_of(operation_id)), 403, "not-allowed")
    for place in OF_NO_STUDENT:
        problem(ask(client(priya), place.format(**places)), 403, "not-allowed")


def test_what_is_good_and_does_not_fit_is_told_where(places: dict[str, str], vale: Person) -> None:
    seen = client(vale).get(places["case"])["ETag"]
    for place, body, code, pointer in (
        ("POST {case}/canals", {**example_of("canals_create"), "name": "P"}, "taken-already", "#/name"),
        ("PATCH {case}", {"setting": "block"}, "setting-fixed", "#/setting"),
    ):
        assert problem(ask(client(vale), place.format(**places), body, seen), 409, code).keys() == {pointer}


def test_an_image_by_form_is_sent_by_who_may_and_is_one(places: dict[str, str], priya: Person, rosa: Person) -> None:
    for person, status, code in ((rosa, 403, "not-allowed"), (priya, 422, "image-refused")):
        form = {"file": SimpleUploadedFile("image.png", b"no picture"), "purpose": "length", "canal": "P"}
        problem(client(person).post(places["case"] + "/images", form, format="multipart"), status, code)


def test_an_external_id_is_refused_for_what_it_is_and_where_it_is_taken(
    places: dict[str, str], programme: Programme, tom: Person, rosa: Person
) -> None:
    service = program(service_key(rosa).text)
    others = {
        **places,
        "case": f"{API}/cases/{open_case(programme, tom).pk}",
        "student": str(tom.pk),
        "kit": str(factories.kit_row(programme, name="Another kit").pk),
    }
    for thing in NAMED_BY_SERVICES:
        assert ask(service, f"PUT {thing}/external-id".format(**others), TAKEN).status_code == 201
        address = f"PUT {thing}/external-id".format(**places)
        assert problem(ask(service, address, TAKEN), 409, "external-id-taken").keys() == {"#/external_id"}
        wrong = ask(service, address, {"external_id": "anna.miller"})
        assert problem(wrong, 422, "external-id-refused").keys() == {"#/external_id"}
