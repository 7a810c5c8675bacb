"""What people are in a programme is changed and ended by its coordinator, and from the next request on it is so."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from django.utils import timezone

from cases.domain.access.invited import Invited
from cases.domain.access.roles import Role
from cases.models import Case, Consent, Invitation, Membership, Person, Programme, PushSubscription, ToothPlanVersion
from cases.queries import record
from cases.services.people import invitations
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from cases.services.webhooks import keeping, outbox
from cases.services.webhooks.keeping import Keeper
from tests.cast import *  # noqa: F403
from tests.cast import API, client, open_case, problem
from tests.factories import member
from tests.keys import own_key, program
from tests.oauth import allowed, for_people, session


def at(person: Person, programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}/people/{person.pk}"


def changed(by: Person, person: Person, programme: Programme, **changes: Any) -> Any:
    return client(by).patch(at(person, programme), changes, format="json")


def ended(by: Person, person: Person, programme: Programme) -> Any:
    return client(by).delete(at(person, programme))


def test_another_role_and_group_count_from_the_next_request_on(rosa: Person, tom: Person, programme: Programme) -> None:
    browser = client(tom)
    worklist = f"{API}/programmes/{programme.pk}/worklist"
    problem(browser.get(worklist), 403, "not-allowed")
    answer = changed(rosa, tom, programme, role="supervisor", group="Staff").json()
    assert (answer["role"], answer["group"], answer["treats_patients_until"]) == ("supervisor", "Staff", None)
    assert browser.get(worklist).status_code == 200
    changed(rosa, tom, programme, role="student")
    problem(browser.get(worklist), 403, "not-allowed")


def test_a_student_with_cases_comes_to_decide_on_none(
    rosa: Person, priya: Person, opened: Case, programme: Programme
) -> None:
    problem(changed(rosa, priya, programme, role="supervisor"), 409, "conflict")
    assert changed(rosa, priya, programme, group="Friday").json()["role"] == "student"
    # Nor by going and coming back.
    assert ended(rosa, priya, programme).status_code == 204
    people = [Invited(username="priya", role=Role.SUPERVISOR)]
    made = invitations.invite(actor=rosa, programme_id=programme.pk, people=people, days=1).made
    problem(client(priya).post(f"{API}/join", {"invitation": made[0].text}, format="json"), 409, "conflict")


def test_who_went_sees_nothing_and_their_cases_stay(
    rosa: Person, priya: Person, vale: Person, submitted: ToothPlanVersion, programme: Programme
) -> None:
    case, script = submitted.case, program(own_key(priya).text)
    shown = record.record_of(case.pk).hash  # as long as she is there
    browser = client(priya)
    assert [browser.get(f"{API}/cases/{case.pk}").status_code, script.get(f"{API}/key").status_code] == [200, 200]
    assert ended(rosa, priya, programme).status_code == 204
    problem(browser.get(f"{API}/cases/{case.pk}"), 404, "not-found")
    problem(browser.get(f"{API}/programmes/{programme.pk}"), 404, "not-found")
    assert browser.get(f"{API}/session").json()["memberships"] == []
    problem(script.get(f"{API}/key"), 401, "key-refused")
    assert client(vale).get(f"{API}/cases/{case.pk}").json()["student"]["name"] == "Priya"
    assert record.record_of(case.pk).hash == shown
    (former,) = client(rosa).get(f"{API}/programmes/{programme.pk}/former-people").json()["results"]
    assert (former["person"]["name"], former["role"], former["ended_by"]["name"]) == ("Priya", "student", "Rosa")
    problem(client(rosa).get(at(priya, programme)), 404, "not-found")
    problem(ended(rosa, priya, programme), 404, "not-found")


def test_of_two_programmes_one_ends_and_keys_go_on_in_the_other(
    rosa: Person, priya: Person, elsewhere: Programme, programme: Programme
) -> None:
    priya.memberships.create(programme=elsewhere, role=Role.STUDENT)
    script = program(own_key(priya).text)
    ended(rosa, priya, programme)
    assert [each["name"] for each in script.get(f"{API}/key").json()["programmes"]] == ["Another programme"]


def test_what_others_hold_in_their_name_ends_too(
    rosa: Person, vale: Person, programme: Programme, django_capture_on_commit_callbacks: Any
) -> None:
    sol = member(programme, "sol", Role.COORDINATOR)
    token = program(allowed(session(for_people(rosa)), sol)["access_token"])
    PushSubscription.objects.create(person=sol, endpoint="https://push.example/1", p256dh="", auth="")
    hook = keeping.add(
        keeper=Keeper(actor=sol), programme_id=programme.pk, address="https://r.example/", kinds=[], reached=0
    )
    people = [Invited(role=Role.COORDINATOR)]
    way_back = invitations.invite(actor=sol, programme_id=programme.pk, people=people, days=1).made[0].text
    assert token.get(f"{API}/key").status_code == 200
    assert ended(rosa, sol, programme).status_code == 204
    problem(token.get(f"{API}/key"), 401, "key-refused")
    problem(client(None).post(f"{API}/join/link", {"invitation": way_back}, format="json"), 410, "invitation-refused")
    assert not PushSubscription.objects.exists()
    assert not Consent.objects.exists()
    keeping.send_test(keeper=Keeper(actor=rosa), webhook=hook)
    assert outbox.take_up(webhook_id=hook.pk) is None


def test_the_last_coordinator_stays(rosa: Person, programme: Programme) -> None:
    problem(ended(rosa, rosa, programme), 409, "conflict")
    problem(changed(rosa, rosa, programme, role="supervisor"), 409, "conflict")
    asleep = member(programme, "asleep", Role.COORDINATOR)
    Person.objects.filter(pk=asleep.pk).update(is_active=False)
    problem(ended(rosa, rosa, programme), 409, "conflict")
    sol = member(programme, "sol", Role.COORDINATOR)
    assert ended(rosa, rosa, programme).status_code == 204
    problem(ended(sol, sol, programme), 409, "conflict")
    problem(ended(rosa, sol, programme), 404, "not-found")


def test_a_coordinator_who_becomes_another_takes_their_links_along(rosa: Person, programme: Programme) -> None:
    sol = member(programme, "sol", Role.COORDINATOR)
    invitations.invite(actor=sol, programme_id=programme.pk, people=[Invited(role=Role.COORDINATOR)], days=1)
    assert changed(rosa, sol, programme, role="supervisor").status_code == 200
    assert not Invitation.objects.still_open(programme.pk).exists()


@pytest.mark.parametrize("asker", ["priya", "vale", "stranger"])
def test_nobody_else_changes_or_ends_anybody(request: Any, asker: str, tom: Person, programme: Programme) -> None:
    person: Person = request.getfixturevalue(asker)
    status, code = (404, "not-found") if asker == "stranger" else (403, "not-allowed")
    problem(changed(person, tom, programme, role="coordinator"), status, code)
    problem(changed(person, person, programme, role="coordinator"), status, code)
    problem(ended(person, tom, programme), status, code)
    seen = client(person).get(at(tom, programme))
    if asker == "vale":
        assert (seen.json()["person"]["name"], seen.json()["role"]) == ("Tom", "student")
    else:
        problem(seen, status, code)
    assert Membership.objects.get(person=tom).role == Role.STUDENT


@pytest.mark.parametrize("state", ["ended", "switched off", "erased"])
def test_who_is_there_no_more_may_nothing(
    rosa: Person, vale: Person, submitted: ToothPlanVersion, programme: Programme, state: str
) -> None:
    browser, case = client(vale), submitted.case_id
    reads = [f"cases/{case}", f"programmes/{programme.pk}/people", f"programmes/{programme.pk}/worklist", "keys"]
    assert {browser.get(f"{API}/{address}").status_code for address in reads} == {200}
    if state == "ended":
        ended(rosa, vale, programme)
    else:
        rows = Person.objects.filter(pk=vale.pk)
        rows.update(is_active=False, **({"username": "erased-1", "display_name": ""} if state == "erased" else {}))
    expected = [404, 404, 404, 200] if state == "ended" else [401] * 4
    assert [browser.get(f"{API}/{address}").status_code for address in reads] == expected
    review = {"decision": "approved", "seen_hash": submitted.hash}
    decided = browser.post(f"{API}/plan-versions/{submitted.pk}/reviews", review, format="json")
    assert decided.status_code == expected[0]
    people = client(rosa).get(f"{API}/programmes/{programme.pk}/people").json()["results"]
    assert str(vale.pk) not in [each["person"]["id"] for each in people]


# --- treating patients ---


def test_in_the_clinic_a_student_needs_leave_that_has_not_ended(
    rosa: Person, tom: Person, opened: Case, priya: Person, programme: Programme
) -> None:
    cases, today = f"{API}/programmes/{programme.pk}/cases", timezone.localdate()
    body = {"patient_alias": "Room 4", "tooth": {"designation": "26", "notation": "iso_3950"}, "setting": "clinic"}

    def opens(until: date | None) -> Any:
        assert changed(rosa, tom, programme, treats_patients_until=until and until.isoformat()).status_code == 200
        return client(tom).post(cases, body, format="json")

    for until in (None, today - timedelta(days=1)):
        assert list(problem(opens(until), 403, "not-allowed")) == ["#/setting"]
    assert opens(today).status_code == 201
    # On the bench nobody needs leave, and a case of the bench does not become one of the clinic.
    assert open_case(programme, tom, patient_alias="Bench 9").setting == "extracted"
    changed(rosa, priya, programme, treats_patients_until=None)
    refused = client(priya).patch(
        f"{API}/cases/{opened.pk}", {"setting": "clinic"}, format="json", headers={"If-Match": f'"{opened.revision}"'}
    )
    problem(refused, 403, "not-allowed")


def test_leave_that_ended_lets_no_plan_for_a_patient_be_submitted(
    rosa: Person, priya: Person, clinic: ToothPlanVersion, asked: Asked, programme: Programme
) -> None:
    version, _ = plans.propose(actor=priya, case=clinic.case, asked=replace(asked, technique="step-back"))
    changed(rosa, priya, programme, treats_patients_until=None)
    submit = f"{API}/plan-versions/{version.pk}/submit"
    problem(client(priya).post(submit, {}, format="json"), 403, "not-allowed")
    changed(rosa, priya, programme, treats_patients_until=timezone.localdate().isoformat())
    assert client(priya).post(submit, {}, format="json").status_code == 200


@pytest.mark.parametrize("until", ["next week", "2026-13-01", 7])
def test_leave_is_a_day(rosa: Person, tom: Person, programme: Programme, until: object) -> None:
    assert list(problem(changed(rosa, tom, programme, treats_patients_until=until), 400, "not-understood")) == [
        "#/treats_patients_until"
    ]


def test_only_students_are_given_leave(rosa: Person, vale: Person, programme: Programme) -> None:
    problem(changed(rosa, vale, programme, treats_patients_until="2030-01-01"), 422, "not-usable")
