"""Reading the record of a case."""

from __future__ import annotations

from io import BytesIO

from pypdf import PdfReader

from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, ToothPlanVersion
from tests.api.test_cases_treatment import PHONE, REACHED, event, report
from tests.cast import API, client, problem


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


def test_the_paper_is_for_the_same_people(tom: Person, stranger: Person, approved: ToothPlanVersion) -> None:
    for person in (tom, stranger):
        problem(client(person).get(f"{at(approved.case)}.pdf"), 404, "not-found")


def test_what_was_seen_is_not_sent_again(priya: Person, approved: ToothPlanVersion) -> None:
    for path in (at(approved.case), f"{at(approved.case)}.pdf"):
        seen = client(priya).get(path)["ETag"]
        assert client(priya).get(path, headers={"if-none-match": seen}).status_code == 304
