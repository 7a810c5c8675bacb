"""Courses of another platform lead here (LTI 1.3 core, its security framework, Deep Linking 2.0).

The other side is a platform of the tests' own, on another library than the program's.
"""

from __future__ import annotations

import re
from typing import Any

import pytest
from django.apps import apps
from django.db import connection
from django.test import Client

from cases.domain.access.roles import Role
from cases.models import Case, LtiPerson, LtiPlatform, LtiWork, Membership, Person, Programme
from cases.services.lti.launches import use_up
from cases.services.lti.messages import LaunchRefused, cookie_of
from tests.at_once import at_once
from tests.cast import *  # noqa: F403
from tests.lti_course import course
from tests.lti_platform import ANOTHERS_KEY, CLAIM, INSTRUCTOR, LEARNER, LINKING, PERSONAL, Platform

__all__ = ["course"]

pytestmark = pytest.mark.django_db
APP_ADDRESS = re.compile(r"/cases/([0-9a-f-]{36})")


def let_teachers_supervise() -> None:
    LtiPlatform.objects.update(teachers_supervise=True)


def who(browser: Client) -> Any:
    return browser.get("/api/v1/session").json()


def everything_kept() -> str:
    """Every column of every row of every table."""
    rows = []
    with connection.cursor() as cursor:
        for table in connection.introspection.table_names():
            cursor.execute(f'SELECT * FROM "{table}"')  # noqa: S608 (a name that the database told)
            rows.append(f"{table}: {cursor.fetchall()}")
    return "\n".join(rows)


def test_a_launch_signs_a_student_in_and_opens_the_assignment(course: Platform, programme: Programme) -> None:
    browser = Client()
    answer = course.launch(browser)
    assert answer.status_code == 303
    (case_id,) = APP_ADDRESS.fullmatch(answer["Location"]).groups()  # type: ignore[union-attr]
    case = Case.objects.get(pk=case_id)
    assert (case.tooth.iso, case.setting, case.programme) == ("26", "extracted", programme)
    # Wherever it is headed, its tooth stands before that.
    assert re.fullmatch(r"Course [A-Z]{6}", case.patient.alias)
    session = who(browser)
    assert session["person"]["id"] == str(case.student_id)
    assert [each["role"] for each in session["memberships"]] == ["student"]
    assert browser.get(f"/api/v1/cases/{case_id}").status_code == 200


def test_of_the_token_the_subject_alone_is_kept(course: Platform) -> None:
    assert course.launch(Client()).status_code == 303
    kept = everything_kept()
    assert LtiPerson.objects.get().subject in kept
    for text in PERSONAL.values():
        assert text not in kept
        assert text.casefold() not in kept.casefold()
    assert not Person.objects.get(lti_subjects__subject="a7f3-52").has_usable_password()


def test_the_same_student_comes_back_to_the_same_case_and_another_link_opens_another(course: Platform) -> None:
    first, again = course.launch(Client()), course.launch(Client())
    assert first["Location"] == again["Location"]
    other = course.launch(Client(), {f"{CLAIM}resource_link": {"id": "week-4"}})
    classmate = course.launch(Client(), {"sub": "b8"})
    assert len({each["Location"] for each in (first, other, classmate)}) == 3
    assert (LtiPerson.objects.count(), LtiWork.objects.count(), Case.objects.count()) == (2, 3, 3)


def test_canals_can_be_named(course: Platform) -> None:
    custom = {"tooth": "26", "setting": "block", "canals": "MB1, MB2 P"}
    course.launch(Client(), {f"{CLAIM}custom": custom})
    assert {canal.name for canal in Case.objects.get().tooth.canals.all()} == {"MB1", "MB2", "P"}


def test_a_link_without_an_assignment_leads_to_the_list(course: Platform) -> None:
    answer = course.launch(Client(), {f"{CLAIM}custom": None})
    assert (answer.status_code, answer["Location"], Case.objects.count()) == (303, "/cases", 0)


@pytest.mark.parametrize("custom", [{"tooth": "99"}, {"tooth": "26", "setting": "moon"}, {"tooth": "55"}])
def test_an_assignment_that_cannot_be_opened_is_said_so(course: Platform, custom: dict[str, str]) -> None:
    answer = course.launch(Client(), {f"{CLAIM}custom": custom})
    assert answer.status_code == 400
    assert b"The assignment cannot be opened" in answer.content
    assert not Case.objects.exists()
    assert not LtiPerson.objects.exists()


# --- what does not count ---


def launched(course: Platform, browser: Client) -> tuple[str, str]:
    """A launch that counted: its token and state."""
    asked = course.begin(browser)
    sent = course.token(course.claims(asked["nonce"])), asked["state"]
    assert browser.post("/lti/launch", {"id_token": sent[0], "state": sent[1]}).status_code == 303
    return sent


def refused(answer: Any) -> None:
    assert answer.status_code == 400
    assert b"You are not signed in" in answer.content


@pytest.mark.parametrize(
    "more",
    [
        {"exp": 1_700_000_000, "iat": 1_699_999_000},
        {"exp": None},
        {"iat": None},
        {"nonce": "0" * 64},
        {"iss": "https://elsewhere.example"},
        {"aud": "somebody-else"},
        {"aud": ["fourth-canal-1", "somebody-else"]},
        {"azp": "somebody-else"},
        {"sub": 7},
        {"sub": None},
        {"sub": "x" * 300},
        {f"{CLAIM}deployment_id": "2"},
        {f"{CLAIM}deployment_id": None},
        {f"{CLAIM}version": "1.1"},
        {f"{CLAIM}message_type": "LtiSomethingElse"},
        {f"{CLAIM}resource_link": None},
        {f"{CLAIM}roles": None},
        {f"{CLAIM}roles": ["http://purl.imsglobal.org/vocab/lis/v2/institution/person#Student"]},
        {f"{CLAIM}roles": [INSTRUCTOR]},
    ],
    ids=lambda more: "-".join(f"{name.rpartition('/')[2]}={str(value)[-24:]}" for name, value in more.items()),
)
def test_a_token_that_is_not_right_signs_nobody_in(course: Platform, more: dict[str, Any]) -> None:
    browser = Client()
    refused(course.launch(browser, more))
    assert browser.get("/api/v1/session").status_code == 204
    assert not LtiPerson.objects.exists()


def test_a_token_of_another_key_signs_nobody_in(course: Platform) -> None:
    refused(course.launch(Client(), key=ANOTHERS_KEY))


@pytest.mark.parametrize("token", ["", "a.b.c", "W10.W10.W10", "e30.e30.", "a.b", "eyJhbGciOiJub25lIn0.e30."])
def test_what_is_no_token_signs_nobody_in(course: Platform, token: str) -> None:
    browser = Client()
    state = course.begin(browser)["state"]
    refused(browser.post("/lti/launch", {"id_token": token, "state": state}))


def test_a_launch_counts_once(course: Platform) -> None:
    browser = Client()
    token, state = launched(course, browser)
    # A browser that keeps the cookie although it was told to forget it.
    browser.cookies[cookie_of(state)] = state
    refused(browser.post("/lti/launch", {"id_token": token, "state": state}))


def test_a_launch_belongs_to_the_browser_that_began_it(course: Platform) -> None:
    asked = course.begin(Client())
    token = course.token(course.claims(asked["nonce"]))
    refused(Client().post("/lti/launch", {"id_token": token, "state": asked["state"]}))
    refused(Client().post("/lti/launch", {"id_token": token, "state": "made-up"}))


def test_a_token_of_one_launch_does_not_serve_another(course: Platform) -> None:
    browser = Client()
    first, second = course.begin(browser), course.begin(browser)
    token = course.token(course.claims(first["nonce"]))
    refused(browser.post("/lti/launch", {"id_token": token, "state": second["state"]}))


def test_a_platform_that_is_not_registered_or_switched_off_is_not_gone_to(course: Platform) -> None:
    answer = Client().get("/lti/login", {"iss": "https://elsewhere.example", "login_hint": "7"})
    refused(answer)
    asked = course.begin(browser := Client())
    LtiPlatform.objects.update(active=False)
    refused(Client().get("/lti/login", {"iss": "https://courses.example", "login_hint": "7"}))
    refused(
        browser.post("/lti/launch", {"id_token": course.token(course.claims(asked["nonce"])), "state": asked["state"]})
    )


def test_somebody_who_may_not_sign_in_does_not_by_a_launch_either(course: Platform) -> None:
    course.launch(Client())
    Person.objects.filter(lti_subjects__subject="a7f3-52").update(is_active=False)
    refused(course.launch(Client()))


# --- roles ---


def test_who_teaches_supervises_where_the_coordinator_lets_them(course: Platform, programme: Programme) -> None:
    let_teachers_supervise()
    answer = course.launch(browser := Client(), {"sub": "t1", f"{CLAIM}roles": [INSTRUCTOR]})
    assert answer["Location"] == "/worklist"
    assert [each["role"] for each in who(browser)["memberships"]] == ["supervisor"]
    assert not Case.objects.exists()


@pytest.mark.parametrize(
    "roles",
    [
        [INSTRUCTOR, "http://purl.imsglobal.org/vocab/lis/v2/membership/Instructor#TeachingAssistant"],
        ["http://purl.imsglobal.org/vocab/lis/v2/institution/person#Instructor"],
        ["http://purl.imsglobal.org/vocab/lis/v2/membership#Administrator"],
    ],
)
def test_who_helps_or_teaches_elsewhere_does_not_supervise(course: Platform, roles: list[str]) -> None:
    let_teachers_supervise()
    refused(course.launch(Client(), {f"{CLAIM}roles": roles}))


def test_the_role_follows_the_course_but_nobody_comes_to_decide_on_their_own_cases(course: Platform) -> None:
    let_teachers_supervise()
    course.launch(Client(), {"sub": "t1", f"{CLAIM}roles": [INSTRUCTOR]})
    course.launch(Client(), {"sub": "t1", f"{CLAIM}roles": [LEARNER, INSTRUCTOR]})
    assert Membership.objects.get(person__lti_subjects__subject="t1").role == Role.STUDENT
    refused(course.launch(Client(), {"sub": "t1", f"{CLAIM}roles": [INSTRUCTOR]}))


# --- the platform's own people choose assignments ---

LINK: dict[str, Any] = {
    f"{CLAIM}message_type": "LtiDeepLinkingRequest",
    f"{CLAIM}resource_link": None,
    f"{CLAIM}custom": None,
    f"{CLAIM}roles": [INSTRUCTOR],
    f"{LINKING}deep_linking_settings": {
        "deep_link_return_url": "https://courses.example/return",
        "accept_types": ["ltiResourceLink"],
        "accept_presentation_document_targets": ["window"],
        "data": "as-it-came",
    },
}


def hidden(page: bytes, name: str) -> str:
    shown = re.search(rf'name="{name}" value="([^"]*)"', page.decode())
    assert shown is not None
    return shown[1]


def test_a_teacher_chooses_a_tooth_and_the_link_opens_it(course: Platform) -> None:
    browser = Client(enforce_csrf_checks=True)
    page = course.launch(browser, LINK)
    assert page.status_code == 200
    token = hidden(page.content, "csrfmiddlewaretoken")
    chosen = {"ticket": hidden(page.content, "ticket"), "tooth": "26", "setting": "block", "canals": "MB1 P"}
    assert browser.post("/lti/choice", chosen).status_code == 403
    carried = browser.post("/lti/choice", {**chosen, "csrfmiddlewaretoken": token})
    assert 'action="https://courses.example/return"' in carried.content.decode()
    assert "form-action 'self' https://courses.example;" in carried["Content-Security-Policy"] + ";"
    answer = course.read(hidden(carried.content, "JWT"))
    assert (answer["iss"], answer["aud"]) == ("fourth-canal-1", ["https://courses.example"])
    assert answer[f"{CLAIM}message_type"] == "LtiDeepLinkingResponse"
    assert (answer[f"{CLAIM}deployment_id"], answer[f"{LINKING}data"]) == ("1", "as-it-came")
    (item,) = answer[f"{LINKING}content_items"]
    assert item["type"] == "ltiResourceLink"
    assert item["title"] == "Plan tooth 26"
    assert item["url"] == "http://testserver/lti/launch"
    assert item["window"] == {"targetName": "_blank"}
    assert item["lineItem"] == {"label": "Plan tooth 26", "scoreMaximum": 1, "resourceId": "26-block-MB1,P"}
    # Nobody was made for it, and what was chosen is what a student is given.
    assert not LtiPerson.objects.exists()
    course.launch(Client(), {f"{CLAIM}custom": item["custom"]})
    tooth = Case.objects.get().tooth
    assert (tooth.iso, tooth.case.setting, {each.name for each in tooth.canals.all()}) == ("26", "block", {"MB1", "P"})


def test_what_cannot_be_assigned_is_asked_for_again(course: Platform) -> None:
    browser = Client()
    ticket = hidden(course.launch(browser, LINK).content, "ticket")
    for chosen in ({"tooth": ""}, {"tooth": "26", "canals": "MB9"}):
        answer = browser.post("/lti/choice", {"ticket": ticket, "setting": "block", **chosen})
        assert answer.status_code == 400
        assert b'role="alert"' in answer.content
    refused(browser.post("/lti/choice", {"ticket": "made-up", "tooth": "26", "setting": "block"}))


def test_students_choose_no_assignments_and_nothing_goes_inside(course: Platform) -> None:
    refused(course.launch(Client(), {**LINK, f"{CLAIM}roles": [LEARNER]}))
    for back in ("javascript:alert(1)", "https://intranet/", "http://courses.example/"):
        asked = {**LINK[f"{LINKING}deep_linking_settings"], "deep_link_return_url": back}
        refused(course.launch(Client(), {**LINK, f"{LINKING}deep_linking_settings": asked}))


# --- the door ---


def test_nothing_of_it_is_shown_in_a_frame_or_runs_a_script(course: Platform) -> None:
    page = course.launch(Client(), LINK)
    assert page["X-Frame-Options"] == "DENY"
    assert "frame-ancestors 'none'" in page["Content-Security-Policy"]
    assert b"<script" not in page.content
    assert b"style=" not in page.content
    assert "no-store" in page["Cache-Control"]


def test_the_public_key_is_open_and_the_private_one_is_not_in_it() -> None:
    (key,) = Client().get("/lti/keys").json()["keys"]
    assert (key["kty"], key["alg"], key["use"]) == ("RSA", "RS256", "sig")
    assert not {"d", "p", "q"} & set(key)


@pytest.mark.parametrize("address", ["/lti", "/lti/", "/lti/other"])
def test_no_other_address_below_the_door_opens_the_app(address: str) -> None:
    assert Client().get(address).status_code == 404


def test_every_table_is_looked_through() -> None:
    assert {model._meta.db_table for model in apps.get_models()} <= set(connection.introspection.table_names())


@pytest.mark.usefixtures("database_of_many")
def test_a_launch_used_at_once_by_two_counts_for_one() -> None:
    def use() -> str:
        try:
            use_up(nonce="n" * 64)
        except LaunchRefused:
            return "refused"
        return "counted"

    assert sorted(at_once(use, use)) == ["counted", "refused"]
