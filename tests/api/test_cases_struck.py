"""A reading that was a mistake is struck: it stays with who, when and why, and nothing rests on it any more."""

from __future__ import annotations

from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader

from cases.domain.uuid7 import uuid7
from cases.exports.record_pdf import record_pdf
from cases.mapping.chart_rows import chart
from cases.mapping.charts import canal_input
from cases.models import Case, LengthReading, Person, ToothPlanVersion
from cases.queries.record import record_of
from cases.services.charting import readings
from planning.contract.plan_input import Junction
from planning.lengths.readings import ConfirmingImage
from tests.api.test_cases_treatment import at, canal, event, report
from tests.cast import API, canal_of, client, problem

WRONG = {"why": "wrong_canal"}
TURNED = {"kind": "turn"}


def strike(person: Person | None, id_: object, body: dict[str, Any] = WRONG, kind: str = "readings") -> Any:
    return client(person).post(f"{API}/{kind}/{id_}/strike", body, format="json")


def last(case: Case, name: str) -> LengthReading:
    reading: LengthReading = LengthReading.objects.filter(canal=canal_of(case, name)).latest("number")
    return reading


@pytest.fixture
def mistaken(molar: Case, priya: Person) -> LengthReading:
    """A length of another canal, put to DB: 2 mm too short."""
    image = ConfirmingImage(reference_point=canal_of(molar, "DB").reference_point, set_mm=16, tip_short_mm=0)
    row, _ = readings.take_length(actor=priya, canal=canal_of(molar, "DB"), reading=image)
    return row


def test_it_stays_with_who_when_and_why_and_counts_for_nothing(
    priya: Person, vale: Person, molar: Case, mistaken: LengthReading
) -> None:
    before = client(priya).get(f"{API}/canals/{mistaken.canal_id}").json()["length"]
    shown_canal = strike(vale, mistaken.pk).json()
    shown = next(reading for reading in shown_canal["readings"] if reading["id"] == str(mistaken.pk))
    assert (shown["struck"]["by"]["name"], shown["struck"]["why"]) == ("Vale", "wrong_canal")
    assert shown["reading"]["set_mm"] == 16
    assert [reading["struck"] for reading in shown_canal["readings"] if reading["id"] != str(mistaken.pk)] == [None] * (
        len(shown_canal["readings"]) - 1
    )
    # Taken last it had counted: a canal of 18 mm, and one of 16.
    assert before["working_length_mm"] < shown_canal["length"]["working_length_mm"] - 1
    assert (shown_canal["length"]["state"], len(shown_canal["length"]["readings"])) == (
        "settled",
        len(shown_canal["readings"]) - 1,
    )


def test_it_never_reaches_the_planner(priya: Person, molar: Case, mistaken: LengthReading) -> None:
    def given() -> list[Any]:
        return [canal_input(each, {}) for each in chart(molar.pk).tooth.canals.all() if each.name == "DB"]

    assert any(getattr(reading, "set_mm", None) == 16 for reading in given()[0].readings)
    strike(priya, mistaken.pk)
    assert not any(getattr(reading, "set_mm", None) == 16 for reading in given()[0].readings)


def test_struck_twice_the_first_stays(priya: Person, vale: Person, mistaken: LengthReading) -> None:
    first = strike(priya, mistaken.pk).json()
    again = strike(vale, mistaken.pk, {"why": "mistyped"})
    assert (again.status_code, again.json()) == (200, first)


def test_sent_again_it_stays_struck(priya: Person, molar: Case) -> None:
    """The answer was lost, and meanwhile somebody struck it."""
    row = canal_of(molar, "DB")
    body = {
        "id": str(uuid7()),
        "reading": {
            "method": "confirming_image",
            "reference_point": row.reference_point,
            "set_mm": 16,
            "tip_short_mm": 0,
        },
    }
    client(priya).post(f"{API}/canals/{row.pk}/readings", body, format="json")
    strike(priya, body["id"])
    answer = client(priya).post(f"{API}/canals/{row.pk}/readings", body, format="json")
    assert answer.status_code == 200
    assert next(reading for reading in answer.json()["readings"] if reading["id"] == body["id"])["struck"] is not None


def test_who_may(
    priya: Person, tom: Person, vale: Person, rosa: Person, stranger: Person, mistaken: LengthReading
) -> None:
    assert strike(None, mistaken.pk).status_code == 401
    for outside in (tom, stranger):
        assert strike(outside, mistaken.pk).status_code == 404
    problem(strike(rosa, mistaken.pk), 403, "not-allowed")
    assert "#/why" in problem(strike(vale, mistaken.pk, {"why": "because"}), 400, "not-understood")
    assert strike(vale, mistaken.pk).status_code == 200


def test_the_plan_no_longer_fits(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    case = approved.case
    strike(priya, last(case, "DB").pk)
    status = client(priya).get(f"{API}/cases/{case.pk}").json()["status"]
    assert (status["stale"], status["state"]) == (True, "approval_void")


def test_work_on_its_canal_waits_and_the_others_go_on(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    case = approved.case
    report(priya, case, str(uuid7()), event(approved, 1, TURNED))
    assert canal(client(priya).get(at(case)).json())["state"] == "open"
    strike(vale, last(case, "DB").pk)
    treatment = client(priya).get(at(case)).json()
    assert (canal(treatment)["state"], canal(treatment, "P")["state"]) == ("to_plan", "open")
    entry = treatment["events"][-1]
    assert (entry["payload"]["kind"], entry["actor"]["name"], entry["canal"]) == ("struck", "Vale", "DB")


def test_a_junction_too_and_the_one_before_it_counts_again(priya: Person, molar: Case) -> None:
    row = canal_of(molar, "MB2")
    before = client(priya).get(f"{API}/canals/{row.pk}").json()["junction"]
    made, _ = readings.record_junction(
        actor=priya, canal=row, junction=Junction(method="cone_mark", from_terminus_mm=9)
    )
    assert client(priya).get(f"{API}/canals/{row.pk}").json()["junction"]["from_terminus_mm"] == 9
    shown_canal = strike(priya, made.pk, kind="junctions").json()
    assert shown_canal["junction"] == before
    assert [junction["struck"] is None for junction in shown_canal["junctions"]] == [True, False]


def test_a_junction_does_not_rest_on_a_length_that_was_struck(priya: Person, opened: Case) -> None:
    """The length of that moment is kept with a junction; where it rested on a mistake it is not."""
    row = canal_of(opened, "MB2")
    row.reference_point = "MB cusp tip"
    row.save()
    wrong = ConfirmingImage(reference_point="MB cusp tip", set_mm=16, tip_short_mm=0)
    mistake, _ = readings.take_length(actor=priya, canal=row, reading=wrong)
    readings.record_junction(actor=priya, canal=row, junction=Junction(method="cone_mark", from_terminus_mm=3))
    assert client(priya).get(f"{API}/canals/{row.pk}").json()["junction"]["at_length_mm"] == pytest.approx(16, abs=1)
    assert strike(priya, mistake.pk).json()["junction"]["at_length_mm"] is None


def test_the_record_shows_it_struck_as_json_and_on_paper(vale: Person, approved: ToothPlanVersion) -> None:
    strike(vale, last(approved.case, "DB").pk)
    shown = record_of(approved.case_id)
    (struck,) = shown.record.struck
    assert (struck.canal, struck.who.name, struck.why, struck.taken_by.name) == ("DB", "Vale", "wrong_canal", "Priya")
    pages = PdfReader(BytesIO(record_pdf(shown.record, shown.hash))).pages
    paper = " ".join(" ".join(page.extract_text().split()) for page in pages)
    assert "Readings that were struck" in paper
    assert "it is of another canal" in paper
