"""Reading the record of a case."""

from __future__ import annotations

from datetime import UTC, datetime
from hashlib import sha256
from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader
from rest_framework.test import APIClient

from cases.api.v1 import record
from cases.domain.access.scopes import Scope
from cases.domain.image_errors import StoreAway
from cases.domain.images import BurntInText
from cases.domain.uuid7 import uuid7
from cases.models import Case, Image, Person, ToothPlanVersion
from cases.services.images import upload
from cases.services.images.upload import Announced
from tests.api.test_cases_treatment import PHONE, REACHED, event, report
from tests.cases.paper import whole_text
from tests.cases.pictures import picture
from tests.cast import API, client, problem
from tests.keys import own_key, program

NOON = datetime(2026, 3, 5, 12, tzinfo=UTC)


def at(case: Case) -> str:
    return f"{API}/cases/{case.pk}/record"


def test_it_holds_what_was_reported(priya: Person, approved: ToothPlanVersion) -> None:
    first = event(approved, 1, REACHED | {"depth_um": 18_000, "stop_um": 18_000}, node="explore/10-02")
    report(priya, approved.case, PHONE, first)
    answer = client(priya).get(at(approved.case))
    body = answer.json()
    assert answer["ETag"] == f'"{body["hash"]}"'
    _, entry = body["record"]["timeline"]
    assert (entry["event_id"], entry["says"]) == (first["id"], "10/.02: at its stop, 18.0 mm")
    assert entry["who"] == {"id": str(priya.pk), "name": "Priya", "role": "student"}


def test_supervisor_and_coordinator_read_it_too(vale: Person, rosa: Person, approved: ToothPlanVersion) -> None:
    for person in (vale, rosa):
        assert client(person).get(at(approved.case)).status_code == 200


def test_a_case_that_was_only_opened_has_one(priya: Person, opened: Case) -> None:
    record = client(priya).get(at(opened)).json()["record"]
    assert (record["patient_alias"], record["timeline"], record["versions"]) == ("Bench 1", [], [])
    assert [canal["canal"] for canal in record["canals"]] == ["MB1", "MB2", "DB", "P"]


def test_nobody_else_reads_it(tom: Person, stranger: Person, approved: ToothPlanVersion) -> None:
    for person in (tom, stranger):
        problem(client(person).get(at(approved.case)), 404, "not-found")
    problem(client(None).get(at(approved.case)), 401, "not-authenticated")


def test_there_is_none_of_a_case_that_is_not_there(priya: Person) -> None:
    problem(client(priya).get(f"{API}/cases/{uuid7()}/record"), 404, "not-found")


def test_on_paper_it_carries_the_same_hash(priya: Person, approved: ToothPlanVersion) -> None:
    body = client(priya).get(at(approved.case)).json()
    answer = client(priya).get(f"{at(approved.case)}.pdf")
    assert (answer["Content-Type"], answer["ETag"]) == ("application/pdf", f'"{body["hash"]}"')
    assert body["hash"] in PdfReader(BytesIO(answer.content)).pages[0].extract_text().replace("\n", "")


def test_the_papers_are_for_the_same_people(tom: Person, stranger: Person, approved: ToothPlanVersion) -> None:
    sheet = f"{API}/plan-versions/{approved.pk}/work-sheet.pdf"
    for person in (tom, stranger):
        for address in (f"{at(approved.case)}.pdf", f"{API}/cases/{approved.case_id}/course.pdf", sheet):
            problem(client(person).get(address), 404, "not-found")


def test_the_course_on_paper_has_every_entry_and_the_hash(priya: Person, approved: ToothPlanVersion) -> None:
    report(priya, approved.case, PHONE, event(approved, 1, REACHED | {"depth_um": 18_000}, node="explore/10-02"))
    body = client(priya).get(at(approved.case)).json()
    answer = client(priya).get(f"{API}/cases/{approved.case_id}/course.pdf")
    assert (answer["Content-Type"], answer["ETag"]) == ("application/pdf", f'"{body["hash"]}"')
    text = whole_text(answer.content)
    assert [entry["says"] for entry in body["record"]["timeline"] if entry["says"] not in text] == []


def test_a_key_that_may_not_see_images_gets_the_record_without_them(
    priya: Person, approved: ToothPlanVersion, settings: Any
) -> None:
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": "django.core.files.storage.InMemoryStorage"}}
    data, id_ = picture(), uuid7()
    announced = Announced(id=id_, sha256=sha256(data).hexdigest(), sent_bytes=len(data), device_time=NOON)
    upload.receive(actor=priya, case=approved.case, announced=announced, data=data)
    of_image = {"kind": "image", "image_id": str(id_), "purpose": "length"}
    report(priya, approved.case, PHONE, event(approved, 1, of_image, canal=""))

    def pictures(browser: APIClient) -> int:
        answer = browser.get(f"{at(approved.case)}.pdf")
        return sum(len(page.images) for page in PdfReader(BytesIO(answer.content)).pages)

    # Nobody has looked yet whether it names a person.
    assert pictures(client(priya)) == 0
    Image.objects.filter(pk=id_).update(burnt_in_text=BurntInText.DENIED)
    assert pictures(client(priya)) == 1
    assert pictures(program(own_key(priya, [Scope.EXPORT, Scope.IMAGES_READ]).text)) == 1
    assert pictures(program(own_key(priya, [Scope.EXPORT]).text)) == 0


def test_a_store_that_is_away_is_said(
    priya: Person, approved: ToothPlanVersion, settings: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    def away(case_id: object) -> dict[str, bytes]:
        raise StoreAway

    monkeypatch.setattr(record, "thumbnails", away)
    problem(client(priya).get(f"{at(approved.case)}.pdf"), 503, "store-away")
