"""A mistyped alias is corrected: the old text is nowhere any more, that it was changed is in the log.

The whole database is searched, every column of every table: no list of places that somebody has to keep.
"""

from __future__ import annotations

import json
from typing import Any

import pytest
from django.apps import apps
from django.db import connection

from cases.domain.errors import AliasLooksLikeAName, AliasRefused, ChangedSince, NotAllowed, NotHere
from cases.models import Case, ChangeLog, DemoPatient, Person, Programme, ToothPlanVersion
from cases.services.charting import cases
from cases.services.images import gone
from cases.services.people import push_sender
from tests.api.test_cases_treatment import PHONE, event, report
from tests.cast import API, client, open_case, problem

OLD = "Anna Kellermann"


@pytest.fixture
def mistyped(programme: Programme, priya: Person) -> Case:
    return open_case(programme, priya, patient_alias=OLD, alias_is_no_name=True)


def everything() -> str:
    """All that the database holds, as text."""
    cells: list[str] = []
    with connection.cursor() as cursor:
        for table in connection.introspection.table_names(cursor):
            cursor.execute(f"SELECT * FROM {connection.ops.quote_name(table)}")  # noqa: S608  a table of our own
            cells += [str(bytes(cell) if isinstance(cell, memoryview) else cell) for row in cursor for cell in row]
    return "\n".join(cells)


def correct(actor: Person, case: Case, alias: str, **more: Any) -> Case:
    changes = {"patient_alias": alias, **more}
    return cases.change_case(actor=actor, case=case, seen_revision=case.revision, changes=changes)


def test_the_search_reads_every_table(mistyped: Case) -> None:
    with connection.cursor() as cursor:
        tables = set(connection.introspection.table_names(cursor))
    assert {model._meta.db_table for model in apps.get_models()} <= tables
    assert OLD in everything()


def test_the_old_text_is_nowhere_any_more(approved: ToothPlanVersion, priya: Person, vale: Person) -> None:
    """Of a case with a plan, an approval, work at the chair and running work."""
    case = approved.case
    correct(vale, case, OLD, alias_is_no_name=True)
    assert report(priya, approved.case, PHONE, event(approved, 1, {"kind": "turn"})).status_code == 200
    assert OLD in everything()
    correct(priya, Case.objects.get(pk=case.pk), "Reed 12")
    assert OLD not in everything()
    assert "Reed 12" in everything()


@pytest.mark.skipif(connection.vendor != "sqlite", reason="PostgreSQL's files are not written anew at once")
def test_what_it_was_is_left_in_no_file_of_sqlite(
    mistyped: Case, priya: Person, django_capture_on_commit_callbacks: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    """That working off the log does so is a test of its own."""
    worked_off: list[object] = []
    monkeypatch.setattr(gone, "work_off_the_log", worked_off.append)
    with django_capture_on_commit_callbacks(execute=True):
        correct(priya, mistyped, "Reed 12")
    assert worked_off


def test_that_it_was_changed_is_logged_and_neither_text_is(mistyped: Case, priya: Person) -> None:
    correct(priya, mistyped, "Reed 12")
    line = ChangeLog.objects.filter(case=mistyped).latest("id")
    assert (line.verb, line.actor, line.before, line.after) == ("correct_alias", priya, "", "")
    assert line.at is not None


def test_no_plan_is_stale_for_it(approved: ToothPlanVersion, priya: Person) -> None:
    before = approved.case.revision
    assert correct(priya, approved.case, "Reed 12").revision == before


@pytest.mark.parametrize("who", ["priya", "vale", "amari", "rosa"])
def test_who_may(who: str, mistyped: Case, request: pytest.FixtureRequest) -> None:
    assert correct(request.getfixturevalue(who), mistyped, "Reed 12").patient.alias == "Reed 12"


def test_who_may_not(mistyped: Case, tom: Person, stranger: Person) -> None:
    with pytest.raises(NotAllowed):
        correct(tom, mistyped, "Reed 12")
    with pytest.raises(NotHere):
        correct(stranger, mistyped, "Reed 12")


def test_the_coordinator_changes_nothing_else(mistyped: Case, rosa: Person) -> None:
    with pytest.raises(NotAllowed):
        correct(rosa, mistyped, "Reed 12", perforation=True)
    mistyped.refresh_from_db()
    assert mistyped.patient.alias == OLD


def test_every_case_of_the_patient_follows(programme: Programme, priya: Person, mistyped: Case) -> None:
    other = open_case(programme, priya, "11", patient_alias=OLD, alias_is_no_name=True)
    correct(priya, mistyped, "Reed 12")
    other.refresh_from_db()
    assert other.patient.alias == "Reed 12"
    assert ChangeLog.objects.filter(verb="correct_alias").count() == 2
    assert OLD not in everything()


def test_an_alias_that_is_there_is_the_same_patient(programme: Programme, priya: Person, mistyped: Case) -> None:
    right = open_case(programme, priya, "11", patient_alias="Reed 12")
    assert correct(priya, mistyped, "Reed 12").patient_id == right.patient_id
    assert DemoPatient.objects.count() == 1


def test_another_students_case_is_not_renamed_under_them(
    programme: Programme, priya: Person, tom: Person, vale: Person, mistyped: Case
) -> None:
    open_case(programme, tom, "11", patient_alias=OLD, alias_is_no_name=True)
    with pytest.raises(NotAllowed, match="Another student"):
        correct(priya, mistyped, "Reed 12")
    correct(vale, mistyped, "Reed 12")
    assert OLD not in everything()


def test_what_is_refused_at_opening_is_refused_here(mistyped: Case, priya: Person) -> None:
    with pytest.raises(AliasRefused):
        correct(priya, mistyped, "Reed 12.3.1987")
    with pytest.raises(AliasLooksLikeAName):
        correct(priya, mistyped, "Bertha Kellermann")
    with pytest.raises(ChangedSince):
        cases.change_case(
            actor=priya, case=mistyped, seen_revision=mistyped.revision + 1, changes={"patient_alias": "Reed 12"}
        )


def test_a_list_that_was_shown_is_told_anew(approved: ToothPlanVersion, priya: Person, vale: Person) -> None:
    assert report(priya, approved.case, PHONE, event(approved, 1, {"kind": "turn"})).status_code == 200
    at = f"{API}/programmes/{approved.case.programme_id}/running-work"
    tag = client(vale).get(at).headers["ETag"]
    correct(priya, approved.case, "Reed 12")
    again = client(vale).get(at, headers={"If-None-Match": tag})
    assert (again.status_code, again.json()["results"][0]["patient_alias"]) == (200, "Reed 12")


def test_a_message_not_yet_sent_says_the_alias_as_it_is_by_now(mistyped: Case, priya: Person) -> None:
    message = json.dumps({"case_id": str(mistyped.pk), "alias": OLD, "what": "emergency"}).encode()
    correct(priya, mistyped, "Reed 12")
    assert json.loads(push_sender._as_called_now(message))["alias"] == "Reed 12"


# --- at the door ---


def test_opening_asks_once(programme: Programme, priya: Person) -> None:
    at = f"{API}/programmes/{programme.pk}/cases"
    body = {
        "patient_alias": OLD,
        "tooth": {"notation": "iso_3950", "designation": "26"},
        "setting": "extracted",
    }
    answer = client(priya).post(at, body, format="json")
    problem(answer, 422, "alias-looks-like-a-name")
    assert [error["pointer"] for error in answer.json()["errors"]] == ["#/patient_alias"]
    assert not Case.objects.exists()
    assert client(priya).post(at, {**body, "alias_is_no_name": True}, format="json").status_code == 201


@pytest.mark.parametrize("alias", ["a@example.org", "12.3.1987", "0791 234 567", "Reed\u202e12", "Reed\u200b12"])
def test_what_leads_to_a_person_is_refused_whatever_is_said(alias: str, programme: Programme, priya: Person) -> None:
    body = {
        "patient_alias": alias,
        "alias_is_no_name": True,
        "tooth": {"notation": "iso_3950", "designation": "26"},
        "setting": "extracted",
    }
    problem(client(priya).post(f"{API}/programmes/{programme.pk}/cases", body, format="json"), 422, "alias-refused")


def test_correcting_at_the_door(mistyped: Case, priya: Person) -> None:
    at = f"{API}/cases/{mistyped.pk}"
    tag = client(priya).get(at).headers["ETag"]
    answer = client(priya).patch(at, {"patient_alias": "Reed 12"}, format="json", headers={"If-Match": tag})
    assert (answer.status_code, answer.json()["patient_alias"]) == (200, "Reed 12")
    assert OLD not in json.dumps(client(priya).get(at).json())
