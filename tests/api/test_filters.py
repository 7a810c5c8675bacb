"""Lists can be asked for of a part."""

from __future__ import annotations

from datetime import datetime, timedelta
from datetime import timezone as timezone_of
from itertools import product
from typing import Any

import pytest
from django.db.models import F, QuerySet
from django.utils import timezone

from cases.api.problem_codes import problem_codes
from cases.domain.plans.lifecycle import PlanState
from cases.domain.plans.status import PlanStatusState
from cases.models import Case, ChangeLog, Membership, Person, Programme, ToothPlanVersion
from tests.cast import API, client, open_case, problem
from tests.many import at_work, copies

FAR = timezone_of(timedelta(hours=-17, minutes=-39))
STATES = [state for state in PlanState if state is not PlanState.SUPERSEDED]


@pytest.fixture
def at(programme: Programme) -> str:
    return f"{API}/programmes/{programme.pk}"


def listed(asker: Person, address: str, **query: str) -> list[Any]:
    answer = client(asker).get(address, {"limit": "100", **query} if address.endswith("cases") else query)
    assert answer.status_code == 200, answer.json()
    results: list[Any] = answer.json()["results"]
    return results


def test_cases_are_found_by_where_their_plan_stands(
    at: str, approved: ToothPlanVersion, priya: Person, programme: Programme, vale: Person
) -> None:
    """Held to `status`, which says it of each case by itself: every state of a version, stale or not, with an approved
    version before it or without."""
    open_case(programme, priya, "37")
    for state, stale, after_approval in product(STATES, (False, True), (False, True)):
        (case,) = {version.case for version in copies(approved, 1, state=state)}
        if stale:
            Case.objects.filter(pk=case.pk).update(revision=F("revision") + 1)
        if after_approval and state is not PlanState.APPROVED:
            (before,) = copies(approved, 1)
            # Past the rule that a version never changes.
            rows: QuerySet[ToothPlanVersion] = QuerySet(ToothPlanVersion).filter(pk=before.pk)
            rows.update(case=case, number=2, hash="0" * 64, state=PlanState.SUPERSEDED)
    all_of_them = listed(vale, f"{at}/cases")
    by_state = {
        state: {each["id"] for each in all_of_them if each["status"]["state"] == state} for state in PlanStatusState
    }
    assert all(by_state.values())
    assert {state: {each["id"] for each in listed(vale, f"{at}/cases", state=state)} for state in by_state} == by_state


def test_cases_are_found_by_the_group_of_their_student(
    at: str, programme: Programme, opened: Case, tom: Person, vale: Person, elsewhere: Programme
) -> None:
    of_tom = open_case(programme, tom, "37")
    Membership.objects.create(person=tom, programme=elsewhere, role="student", group="Monday")
    assert [each["id"] for each in listed(vale, f"{at}/cases", group="Monday")] == [str(opened.pk)]
    assert [each["id"] for each in listed(vale, f"{at}/cases", group="Friday")] == [str(of_tom.pk)]
    assert listed(vale, f"{at}/cases", group="Fri") == []


def test_people_are_found_by_role_and_group(at: str, priya: Person, tom: Person, vale: Person) -> None:
    def names(**query: str) -> set[str]:
        return {each["person"]["name"] for each in listed(vale, f"{at}/people", **query)}

    assert names(role="student") == {"Priya", "Tom"}
    assert names(role="student", group="Friday") == {"Tom"}
    assert names(role="supervisor", group="Friday") == set()


def test_cases_are_found_by_when_something_of_them_changed(
    at: str, approved: ToothPlanVersion, programme: Programme, priya: Person, tom: Person, vale: Person
) -> None:
    """One charted and planned, one at work, and one of which nothing has changed since."""
    charted, (at_chair, quiet) = approved.case, (version.case for version in copies(approved, 2))
    at_work([at_chair], waits=False)
    since = timezone.now() - timedelta(minutes=10)
    assert not ChangeLog.objects.filter(case__in=[at_chair, quiet]).exists()

    def listed_since(moment: datetime) -> set[str]:
        return {each["id"] for each in listed(vale, f"{at}/cases", updated_since=moment.isoformat())}

    assert listed_since(since) == {str(charted.pk), str(at_chair.pk)}
    # PostgreSQL itself knows no offset beyond 15:59.
    assert listed_since(since.astimezone(FAR)) == {str(charted.pk), str(at_chair.pk)}
    assert listed_since(timezone.now() + timedelta(minutes=10)) == set()


@pytest.mark.parametrize(
    ("folder", "name", "value", "code"),
    [
        ("cases", "state", "asleep", "not-of-these"),
        ("cases", "student_id", "priya", "not-an-id"),
        ("cases", "updated_since", "yesterday", "not-a-moment"),
        ("cases", "group", "a\0b", "control-characters"),
        ("people", "role", "patient", "not-of-these"),
        # Nothing is no condition: without a refusal all would be shown.
        ("cases", "state", "", "not-of-these"),
        ("cases", "student_id", "", "not-an-id"),
        ("cases", "updated_since", "", "not-a-moment"),
        ("cases", "updated_since", "0001-01-01T00:00:00+10:00", "not-a-moment"),
    ],
)
def test_what_nothing_can_be_is_refused_in_the_words_of_bodies(
    at: str, vale: Person, folder: str, name: str, value: str, code: str
) -> None:
    refused = client(vale).get(f"{at}/{folder}", {name: value})
    assert problem(refused, 400, "not-understood").keys() == {f"#/{name}"}
    (fault,) = refused.json()["errors"]
    assert fault["code"] == code
    assert code in problem_codes()
