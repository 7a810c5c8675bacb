"""What FHIR's addresses refuse is an OperationOutcome, whoever refuses it (FHIR R4, 3.1.0.6 and 3.2.0.1); and what the
operation on a patient leaves out."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

import pytest
from django.test import Client
from rest_framework.test import APIClient

from cases.domain.access.scopes import Scope
from cases.models import Case, Person, ToothPlanVersion
from tests.api.fhir_reader import BASE, ask, ids
from tests.cast import *  # noqa: F403
from tests.cast import client
from tests.keys import own_key, program

pytestmark = pytest.mark.django_db


def assert_refused(answer: Any, status: int, code: str) -> None:
    assert (answer.status_code, answer["Content-Type"]) == (status, "application/fhir+json"), answer.content
    outcome = answer.json()
    assert outcome["resourceType"] == "OperationOutcome"
    assert {issue["code"] for issue in outcome["issue"]} == {code}
    assert all(issue["severity"] == "error" and issue["details"]["text"] for issue in outcome["issue"])


def test_nobody_is_told_how_to_sign_in(molar: Case) -> None:
    answer = APIClient().get(f"{BASE}/Patient")
    assert_refused(answer, 401, "login")
    assert "Bearer" in answer["WWW-Authenticate"]
    assert_refused(program("fck_made_up").get(f"{BASE}/Patient"), 401, "login")


def test_a_key_that_does_not_open_it_is_told_so(molar: Case, priya: Person) -> None:
    assert_refused(program(own_key(priya, [Scope.EVENTS_WRITE]).text).get(f"{BASE}/Patient"), 403, "forbidden")


@pytest.mark.parametrize(
    "path", ["R4/Medication", "R4/Patient/a/b/c", "R4/Patient/1/_history", "R4/Patient/none", "R4/", "R4", "R5/Patient"]
)
def test_what_is_not_there_is_said_so(priya: Person, path: str) -> None:
    assert_refused(client(priya).get(f"/api/fhir/{path}"), 404, "not-found")


@pytest.mark.parametrize("query", ["_summary=true", "name=Reed", "_lastUpdated=yesterday", "_count=0", "_after=1"])
def test_what_is_not_stated_is_no_parameter(priya: Person, query: str) -> None:
    assert_refused(client(priya).get(f"{BASE}/Patient?{query}"), 400, "invalid")


def test_nothing_but_json_is_sent(priya: Person) -> None:
    assert_refused(client(priya).get(f"{BASE}/Patient?_format=xml"), 406, "not-supported")
    assert_refused(client(priya).get(f"{BASE}/Patient", HTTP_ACCEPT="application/fhir+xml"), 406, "not-supported")


def test_nothing_is_written(molar: Case, priya: Person) -> None:
    for path in ("Patient", f"Patient/{molar.patient_id}"):
        for method in ("post", "put", "patch", "delete"):
            assert_refused(getattr(client(priya), method)(f"{BASE}/{path}", {}, format="json"), 405, "not-supported")


def test_what_reaches_no_view_is_told_alike(priya: Person, monkeypatch: pytest.MonkeyPatch) -> None:
    """By the server itself: a host that is not ours, and what nobody foresaw."""
    assert_refused(Client().get(f"{BASE}/metadata", HTTP_HOST="elsewhere.example"), 400, "invalid")

    def breaks(*_: Any) -> None:
        raise RuntimeError("Nobody foresaw it.")

    monkeypatch.setattr("cases.api.fhir.search.page", breaks)
    answer = APIClient(raise_request_exception=False)
    answer.force_login(priya)
    assert_refused(answer.get(f"{BASE}/Patient"), 500, "exception")


# --- all of a patient, and less of it ---


def test_a_patient_is_asked_for_by_type_and_time(clinic: ToothPlanVersion, priya: Person) -> None:
    path = f"Patient/{clinic.case.patient_id}/$everything"
    everything = [entry["resource"] for entry in ask(priya, path)["entry"]]
    for asked in ({"_type": "CarePlan,Task"}, {"_type": ["Task", "CarePlan"]}):
        some = [entry["resource"] for entry in ask(priya, path, **asked)["entry"]]
        assert some == [each for each in everything if each["resourceType"] in ("CarePlan", "Task")]
    times = sorted(datetime.fromisoformat(each["meta"]["lastUpdated"]) for each in everything)
    middle = times[len(times) // 2]
    later = [entry["resource"] for entry in ask(priya, path, _since=middle.isoformat())["entry"]]
    assert later == [each for each in everything if datetime.fromisoformat(each["meta"]["lastUpdated"]) >= middle]
    assert 0 < len(later) < len(everything)
    # Nothing has changed since, and that is an answer.
    assert "entry" not in ask(priya, path, _since=(times[-1] + timedelta(seconds=1)).isoformat())
    assert ids(later) <= ids(everything)


@pytest.mark.parametrize(
    "query",
    [
        "_type=Medication",
        "_type=",
        "_since=2026",
        "_since=ge2026-11-30T08:00:00Z",
        "_since=2026-11-30T08:00Z",
        "_count=3",
    ],
)
def test_what_cannot_be_left_out_so_is_refused(molar: Case, priya: Person, query: str) -> None:
    assert_refused(client(priya).get(f"{BASE}/Patient/{molar.patient_id}/$everything?{query}"), 400, "invalid")
