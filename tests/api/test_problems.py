"""Errors that no view foresaw, or that never reached one."""

from __future__ import annotations

import pytest
from rest_framework.test import APIClient

from cases.api.problems import pointer
from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, Programme
from cases.services.charting import cases
from tests.cast import API, client, problem


def test_an_address_that_is_none(db: None) -> None:
    problem(APIClient().get(f"{API}/nothing-here"), 404, "not-found")
    problem(APIClient().get(f"{API}/cases/not-an-id"), 404, "not-found")


def test_a_method_that_is_none(opened: Case, priya: Person) -> None:
    problem(client(priya).put(f"{API}/cases/{opened.pk}", {}, format="json"), 405, "method-not-allowed")


@pytest.mark.parametrize("body", ["{", "[1", '{"a": NaN}', "\x00"])
def test_no_json(programme: Programme, priya: Person, body: str) -> None:
    answer = client(priya).post(f"{API}/programmes/{programme.pk}/cases", body, content_type="application/json")
    problem(answer, 400, "parse-error")


def test_json_that_is_no_object(programme: Programme, priya: Person) -> None:
    for body in ("[]", "7", "null", '"text"'):
        answer = client(priya).post(f"{API}/programmes/{programme.pk}/cases", body, content_type="application/json")
        problem(answer, 400, "not-understood")


def test_a_form_is_not_taken(programme: Programme, priya: Person) -> None:
    answer = client(priya).post(f"{API}/programmes/{programme.pk}/cases", {"setting": "block"}, format="multipart")
    problem(answer, 415, "unsupported-media-type")


def test_a_body_too_long_is_not_read(programme: Programme, priya: Person) -> None:
    body = '{"patient_alias": "' + "a" * 600_000 + '"}'
    answer = client(priya).post(f"{API}/programmes/{programme.pk}/cases", body, content_type="application/json")
    problem(answer, 413, "body-too-long")


def test_what_nobody_foresaw_says_nothing_of_the_inside(
    opened: Case, priya: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    def breaks(**_: object) -> None:
        raise RuntimeError("a secret of the inside")

    monkeypatch.setattr(cases, "change_case", breaks)
    browser = client(priya)
    browser.raise_request_exception = False
    answer = browser.patch(f"{API}/cases/{opened.pk}", {}, format="json", headers={"If-Match": '"1"'})
    problem(answer, 500, "server-error")
    assert "secret" not in answer.content.decode()


def test_pointers_follow_the_standard() -> None:
    """RFC 6901: '~' is '~0' and '/' is '~1'."""
    assert pointer(("a/b", 0, "m~n")) == "#/a~1b/0/m~0n"
    assert pointer(()) == "#"


@pytest.mark.parametrize("more", ["", "/canals", "/plan-versions", "/preview", "/roots/MB"])
def test_a_stranger_finds_nothing_by_any_address(opened: Case, stranger: Person, more: str) -> None:
    browser = client(stranger)
    for ask in (browser.get, browser.post, browser.patch, browser.put, browser.delete):
        answer = ask(f"{API}/cases/{opened.pk}{more}", {}, format="json", headers={"If-Match": '"1"'})
        assert answer.status_code in (404, 405)


@pytest.mark.parametrize("address", ["cases", "canals", "plan-versions", "programmes"])
def test_signed_out_everything_is_a_401(db: None, address: str) -> None:
    problem(APIClient().get(f"{API}/{address}/{uuid7()}"), 401, "not-authenticated")
