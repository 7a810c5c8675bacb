"""Signing in and out."""

from __future__ import annotations

import pytest
from rest_framework.test import APIClient

from cases.models import FailedSignIn, Person
from cases.services.people import sign_in as service
from cases.services.people import tries
from cases.services.people.tries import MOST_FOR_ONE_NAME
from tests.cast import API, client, problem
from tests.factories import PASSWORD

SESSION = f"{API}/session"


def fresh() -> APIClient:
    """A browser that has just loaded the page: strict about the token, as the real one is."""
    browser = APIClient(enforce_csrf_checks=True)
    browser.get(SESSION)
    return browser


def sign_in(browser: APIClient, username: str, password: str = PASSWORD) -> object:
    token = browser.cookies["csrftoken"].value
    body = {"username": username, "password": password}
    return browser.post(SESSION, body, format="json", headers={"X-CSRFToken": token})


@pytest.mark.parametrize("made_up", [None, "made-up"])
def test_that_nobody_is_signed_in_is_no_error_and_brings_the_token(db: None, made_up: str | None) -> None:
    browser = APIClient()
    if made_up:
        browser.cookies["sessionid"] = made_up
    answer = browser.get(SESSION)
    assert (answer.status_code, answer.content) == (204, b"")
    assert "csrftoken" in browser.cookies
    # Only the server itself asks to sign in: something in between that answers with nothing does not.
    assert answer["WWW-Authenticate"].startswith("Session")


def test_the_token_that_comes_to_nobody_is_the_one_to_sign_in_with(priya: Person) -> None:
    browser = APIClient(enforce_csrf_checks=True)
    assert browser.get(SESSION).status_code == 204
    assert sign_in(browser, "priya").status_code == 200  # type: ignore[attr-defined]


def test_a_student_signs_in_and_learns_where_they_study(priya: Person) -> None:
    browser = fresh()
    session = sign_in(browser, "priya").json()  # type: ignore[attr-defined]
    assert session["person"] == {"id": str(priya.pk), "username": "priya", "name": "Priya"}
    (membership,) = session["memberships"]
    assert (membership["programme"]["name"], membership["role"]) == ("Check programme", "student")
    assert browser.get(SESSION).json() == session
    assert browser.cookies["sessionid"]["httponly"]


def test_without_the_token_nobody_is_signed_in(priya: Person) -> None:
    browser = fresh()
    answer = browser.post(SESSION, {"username": "priya", "password": PASSWORD}, format="json")
    problem(answer, 403, "token-missing")
    assert browser.get(SESSION).status_code == 204


@pytest.mark.parametrize("token", ["", "lost", "x" * 32])
def test_a_change_without_the_right_token_says_so_and_a_new_one_helps(priya: Person, token: str) -> None:
    browser = fresh()
    sign_in(browser, "priya")
    del browser.cookies["csrftoken"]
    problem(browser.delete(SESSION, headers={"X-CSRFToken": token}), 403, "token-missing")
    assert browser.get(SESSION).status_code == 200
    renewed = browser.cookies["csrftoken"].value
    assert browser.delete(SESSION, headers={"X-CSRFToken": renewed}).status_code == 204


def test_signing_out_ends_it(priya: Person) -> None:
    browser = fresh()
    sign_in(browser, "priya")
    token = browser.cookies["csrftoken"].value
    assert browser.delete(SESSION, headers={"X-CSRFToken": token}).status_code == 204
    assert browser.get(SESSION).status_code == 204


@pytest.mark.parametrize(("username", "password"), [("priya", "wrong"), ("nobody", PASSWORD)])
def test_a_wrong_name_and_a_wrong_password_sound_the_same(priya: Person, username: str, password: str) -> None:
    answer = sign_in(fresh(), username, password)
    assert problem(answer, 401, "sign-in-refused") == {}
    assert answer.json()["detail"] == "Name or password is wrong."  # type: ignore[attr-defined]


def test_guessing_is_stopped_and_others_sign_in_meanwhile(priya: Person, tom: Person) -> None:
    browser = fresh()
    for _ in range(MOST_FOR_ONE_NAME):
        problem(sign_in(browser, "priya", "wrong"), 401, "sign-in-refused")
    answer = sign_in(browser, "priya")
    problem(answer, 429, "too-many-tries")
    assert answer["Retry-After"] == "300"  # type: ignore[index]
    assert sign_in(browser, "tom").status_code == 200  # type: ignore[attr-defined]


def test_who_signed_in_here_before_is_not_locked_out_by_others_behind_the_same_address(
    priya: Person, tom: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tries, "MOST_FROM_ONE_ADDRESS", 3)
    phone = fresh()
    sign_in(phone, "priya")
    kept = phone.cookies[service.WAS_HERE]
    assert (kept["httponly"], kept["samesite"], kept["path"]) == (True, "Strict", SESSION)
    for number in range(3):
        problem(sign_in(fresh(), f"somebody {number}", "wrong"), 401, "sign-in-refused")
    problem(sign_in(fresh(), "priya"), 429, "too-many-tries")
    assert sign_in(phone, "priya").status_code == 200  # type: ignore[attr-defined]
    # It helps nobody else, and does not allow more guesses.
    problem(sign_in(phone, "tom"), 429, "too-many-tries")
    for _ in range(MOST_FOR_ONE_NAME):
        problem(sign_in(phone, "priya", "wrong"), 401, "sign-in-refused")
    problem(sign_in(phone, "priya"), 429, "too-many-tries")


@pytest.mark.parametrize("kept", ["", "x", "x:y:z"])
def test_what_was_kept_here_cannot_be_made_up(priya: Person, kept: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tries, "MOST_FROM_ONE_ADDRESS", 1)
    problem(sign_in(fresh(), "somebody", "wrong"), 401, "sign-in-refused")
    browser = fresh()
    browser.cookies[service.WAS_HERE] = kept
    problem(sign_in(browser, "priya"), 429, "too-many-tries")


def test_signing_in_forgets_the_wrong_tries(priya: Person) -> None:
    browser = fresh()
    sign_in(browser, "priya", "wrong")
    sign_in(browser, "priya")
    assert FailedSignIn.objects.count() == 1  # the one that counts the address


def test_somebody_switched_off_is_out_at_once(priya: Person) -> None:
    browser = client(priya)
    assert browser.get(SESSION).status_code == 200
    Person.objects.filter(pk=priya.pk).update(is_active=False)
    assert browser.get(SESSION).status_code == 204


def test_a_number_is_no_name(db: None) -> None:
    browser = fresh()
    token = browser.cookies["csrftoken"].value
    answer = browser.post(SESSION, {"username": 7, "pasword": "x"}, format="json", headers={"X-CSRFToken": token})
    assert set(problem(answer, 400, "not-understood")) == {"#/pasword"}
