"""Grades go back by LTI Assignment and Grade Services 2.0: what a platform is asked for and told, and how often.

The other side is a platform of the tests' own, which reads what the program signs by another library.
"""

from __future__ import annotations

import socket
from datetime import datetime, timedelta
from typing import Any

import pytest
from django.core.management import call_command
from django.test import Client
from django.utils import timezone
from requests_hardened.ip_filter import InvalidIPAddress

from cases.domain.lti import Progress
from cases.domain.plans.lifecycle import Decision
from cases.domain.webhooks import TRIED_FOR_S
from cases.models import Case, LtiPlatform, LtiWork, Person, ToothPlanVersion
from cases.services.lti import grades
from cases.services.lti.line import PlatformSession
from cases.services.lti.scores import ScoreLine
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from tests.at_once import at_once, database_of_many
from tests.cast import *  # noqa: F403
from tests.cast import API, chart, client, decide
from tests.factories import PASSWORD
from tests.lti_course import course, send, work
from tests.lti_platform import CLAIM, GRADES, PERSONAL, Platform

__all__ = ["course", "database_of_many", "work"]

pytestmark = pytest.mark.django_db
SCORE = f"{GRADES}scope/score"


def later(**time: Any) -> None:
    """So much time passes for what waits."""
    passed = timedelta(**time)
    for row in LtiWork.objects.exclude(due_at=None):
        first = row.first_tried_at and row.first_tried_at - passed
        assert row.due_at is not None
        LtiWork.objects.filter(pk=row.pk).update(due_at=row.due_at - passed, first_tried_at=first)


def shown(coordinator: Person) -> tuple[int, str]:
    (row,) = (
        client(coordinator)
        .get(f"{API}/programmes/{LtiPlatform.objects.get().programme_id}/lti-platforms")
        .json()["results"]
    )
    return row["grades_waiting"], row["last_refusal"]


def test_an_approved_plan_is_told_as_the_standard_has_it(
    course: Platform, work: LtiWork, approved: ToothPlanVersion
) -> None:
    """Score publish service of Assignment and Grade Services 2.0; the token by the 1EdTech security framework."""
    call_command("deliver", "--once")
    (form,) = course.asked
    assert form["grant_type"] == "client_credentials"
    assert form["client_assertion_type"] == "urn:ietf:params:oauth:client-assertion-type:jwt-bearer"
    assert form["scope"] == SCORE
    claims = course.read(form["client_assertion"])
    assert (claims["iss"], claims["sub"], claims["aud"]) == ("fourth-canal-1", "fourth-canal-1", f"{course.at}token")
    (score,) = course.scores
    assert score.at == "/items/7/scores?course=3"
    assert score.kind == "application/vnd.ims.lis.v1.score+json"
    at = datetime.fromisoformat(score.body.pop("timestamp"))
    assert abs(at - timezone.now()) < timedelta(minutes=1)
    assert score.body == {
        "userId": "a7f3-52",
        "scoreGiven": 1,
        "scoreMaximum": 1,
        "activityProgress": "Completed",
        "gradingProgress": "FullyGraded",
        "comment": f"https://canals.example/cases/{work.case_id}/record",
    }
    send()
    assert len(course.scores) == 1


def test_a_token_is_for_the_audience_that_was_registered(
    course: Platform, work: LtiWork, approved: ToothPlanVersion
) -> None:
    LtiPlatform.objects.update(token_audience="https://courses.example/oauth")
    send()
    assert course.read(course.asked[0]["client_assertion"])["aud"] == "https://courses.example/oauth"
    assert len(course.scores) == 1


def test_a_token_is_for_one_deployment(course: Platform, work: LtiWork, approved: ToothPlanVersion) -> None:
    with PlatformSession() as session:
        line = ScoreLine(LtiPlatform.objects.get(), session)
        for deployment_id in ("1", "1", "2"):
            work.deployment_id = deployment_id
            assert line.put(work, Progress.APPROVED) is None
    claims = [course.read(form["client_assertion"]) for form in course.asked]
    assert [each[f"{CLAIM}deployment_id"] for each in claims] == ["1", "2"]


@pytest.mark.parametrize("status", [302, 400, 404, 500, 503])
def test_what_is_not_taken_is_sent_again_and_the_coordinator_sees_why(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, rosa: Person, status: int
) -> None:
    course.answers = [status]
    send()
    send()
    assert course.scores == []
    number, refusal = shown(rosa)
    assert number == 1
    assert (f"HTTP {status}" in refusal) == (status != 302)
    later(minutes=1)
    send()
    assert len(course.scores) == 1
    assert shown(rosa) == (0, "")


def test_a_platform_that_is_away_is_asked_until_it_is_back(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, rosa: Person
) -> None:
    there, nowhere = course.line_item, "http://127.0.0.1:9/items/7"
    LtiWork.objects.update(line_item=nowhere)
    for _ in range(3):
        send()
        later(hours=1)
    assert shown(rosa) == (1, "It gave no answer: not_reached.")
    LtiWork.objects.update(line_item=there)
    send()
    assert len(course.scores) == 1
    assert LtiWork.objects.get().tries == 0


def test_an_answer_that_breaks_off_is_none(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, rosa: Person
) -> None:
    course.breaks_off = True
    send()
    assert shown(rosa) == (1, "It gave no answer: not_reached.")


def test_a_platform_may_say_in_its_own_words_that_it_took_the_grade(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, rosa: Person
) -> None:
    course.says = "Thank you."
    send()
    assert (len(course.scores), shown(rosa)) == (1, (0, ""))


def test_it_is_given_up_after_two_days_until_the_coordinator_saves_the_platform(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, rosa: Person
) -> None:
    course.gives_tokens = False
    for _ in range(2):
        send()
        later(seconds=TRIED_FOR_S)
    assert LtiWork.objects.get().due_at is None
    course.gives_tokens = True
    send()
    assert course.scores == []
    assert shown(rosa) == (1, "It gave no token: HTTP 400.")
    row = LtiPlatform.objects.get()
    at = f"{API}/programmes/{row.programme_id}/lti-platforms/{row.pk}"
    saved = client(rosa).put(
        at, {**course.registered, "login_address": "https://courses.example/authorize", "password": PASSWORD}
    )
    assert saved.status_code == 200, saved.json()
    send()
    assert len(course.scores) == 1


def test_a_token_that_counts_no_more_is_asked_for_anew(
    course: Platform, work: LtiWork, approved: ToothPlanVersion
) -> None:
    work.sent_at = timezone.now()
    with PlatformSession() as session:
        line = ScoreLine(LtiPlatform.objects.get(), session)
        for _ in range(2):
            assert line.put(work, Progress.APPROVED) is None
        assert len(course.asked) == 1
        course.tokens.clear()
        assert line.put(work, Progress.APPROVED) is None
    assert [score.authorization for score in course.scores] == ["Bearer token-1", "Bearer token-1", "Bearer token-2"]


def test_a_platform_that_refuses_its_own_tokens_is_not_asked_without_end(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, rosa: Person
) -> None:
    course.answers = [401, 401, 401]
    send()
    assert len(course.asked) == 1
    assert shown(rosa) == (1, "It did not take the grade: HTTP 401.")


def test_a_platform_that_is_switched_off_is_told_nothing(
    course: Platform, work: LtiWork, approved: ToothPlanVersion
) -> None:
    LtiPlatform.objects.update(active=False)
    send()
    assert (course.asked, course.scores) == ([], [])
    LtiPlatform.objects.update(active=True)
    send()
    assert len(course.scores) == 1


def test_no_name_goes_out(course: Platform, work: LtiWork, approved: ToothPlanVersion) -> None:
    send()
    sent = f"{course.asked} {course.read(course.asked[0]['client_assertion'])} {course.scores}"
    assert "a7f3-52" in sent
    for text in (work.person.person.username, work.case.patient.alias, "vale"):
        assert text not in sent


def test_whoever_was_killed_holds_nothing_up_for_ever(
    course: Platform, work: LtiWork, approved: ToothPlanVersion
) -> None:
    killed = grades.take_up(work_id=work.pk)
    send()
    assert killed is not None
    assert course.scores == []
    later(minutes=3)
    send()
    grades.note(held=killed, refusal=None)
    (score,) = course.scores
    assert killed.work.sent_at is not None
    assert datetime.fromisoformat(score.body["timestamp"]) > killed.work.sent_at


# --- launches say where to ---


def graded(course: Platform, **more: Any) -> dict[str, Any]:
    return {f"{GRADES}claim/endpoint": {"scope": [SCORE], "lineitem": course.line_item, **more}}


def test_a_launch_says_where_the_grade_goes_and_the_link_leads_to_the_record(course: Platform) -> None:
    course.launch(Client(), graded(course))
    work = LtiWork.objects.get()
    assert work.line_item == course.line_item
    assert work.record_address == f"http://testserver/cases/{work.case_id}/record"
    assert not any(text in str(LtiWork.objects.values()) for text in PERSONAL.values())


@pytest.mark.parametrize(
    "more",
    [
        {"lineitem": None},
        {"scope": [f"{GRADES}scope/lineitem"]},
        {"scope": None},
        {"lineitem": "https://10.0.0.1/items/7"},
        {"lineitem": "http://courses.example/items/7"},
        {"lineitem": f"https://courses.example/{'7' * 1000}"},
    ],
)
def test_without_a_line_item_or_leave_to_score_nothing_goes_out(course: Platform, more: dict[str, Any]) -> None:
    assert course.launch(Client(), graded(course, **more)).status_code == 303
    assert LtiWork.objects.get().line_item == ""


def test_a_grade_for_which_there_is_no_line_item_does_not_wait(
    course: Platform, work: LtiWork, approved: ToothPlanVersion, rosa: Person
) -> None:
    LtiWork.objects.update(line_item="")
    send()
    assert (course.asked, course.scores, shown(rosa)) == ([], [], (0, ""))


def test_another_line_item_of_the_same_link_is_told_too(
    course: Platform, work: LtiWork, approved: ToothPlanVersion
) -> None:
    send()
    course.launch(Client(), graded(course))
    send()
    assert len(course.scores) == 1
    course.launch(Client(), graded(course, lineitem=f"{course.at}items/8"))
    send()
    assert [score.at for score in course.scores] == ["/items/7/scores?course=3", "/items/8/scores"]


def test_a_name_that_leads_inside_is_not_gone_to(monkeypatch: pytest.MonkeyPatch) -> None:
    inside = [(socket.AF_INET, socket.SOCK_STREAM, 6, "", ("10.0.0.1", 443))]
    monkeypatch.setattr(socket, "getaddrinfo", lambda *_, **__: inside)
    with PlatformSession() as session, pytest.raises(InvalidIPAddress):
        session.post("https://courses.example/token", data={})


@pytest.mark.usefixtures("database_of_many")
def test_two_workers_send_it_once(course: Platform, work: LtiWork, approved: ToothPlanVersion) -> None:
    at_once(send, send, send)
    assert len(course.scores) == 1
    assert LtiWork.objects.get().progress_told == Progress.APPROVED


def test_the_whole_way_from_a_launch_to_its_grade(course: Platform, asked: Asked, vale: Person) -> None:
    course.launch(Client(), {**graded(course), f"{CLAIM}custom": {"tooth": "26", "canals": "MB1,MB2,DB,P"}})
    case = Case.objects.get()
    chart(case, case.student)
    case.refresh_from_db()
    version = plans.propose(actor=case.student, case=case, asked=asked)[0]
    decide(vale, plans.submit(actor=case.student, version=version), Decision.APPROVED)
    send()
    (score,) = course.scores
    assert (score.body["userId"], score.body["scoreGiven"]) == ("a7f3-52", 1)
    assert score.body["comment"] == f"http://testserver/cases/{case.pk}/record"
    assert not any(text in f"{course.asked} {course.scores}" for text in PERSONAL.values())
