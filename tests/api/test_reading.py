"""How every address of the description is read (RFC 9110): queries by name, tags, conditions, HEAD, pages."""

from __future__ import annotations

import re
from base64 import b64encode
from string import Formatter
from typing import Any

import pytest
from django.urls import resolve
from rest_framework.test import APIClient

from cases.api.reading import query_names
from cases.domain.plans.lifecycle import Decision
from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, ToothPlanVersion
from tests.api.test_cases_description import description
from tests.cast import API, canal_of, client, decide, problem

METHODS = ("get", "post", "put", "patch", "delete")


def operations() -> list[tuple[str, str, dict[str, Any]]]:
    """Method, address and description of each."""
    return [
        (method, address, operation)
        for address, path in description()["paths"].items()
        for method, operation in path.items()
        if method in METHODS
    ]


def at(address: str, version: ToothPlanVersion) -> str:
    """The address of something that is there, as far as the approved molar has it."""
    case = version.case
    there = {
        "programme_id": case.programme_id,
        "case_id": case.pk,
        "canal_id": canal_of(case, "P").pk,
        "version_id": version.pk,
        "code": "not-found",
        "page": "changes",
        "hash_": version.hash,
        "name": "MB",
        "iso": "26",
        "key": "passes.gain",
        "tooth": "16",
        "canal": "P",
    }
    names = [name for _, name, _, _ in Formatter().parse(address) if name]
    return address.format(**{name: there.get(name, uuid7()) for name in names})


@pytest.mark.one_database
def test_what_a_query_may_hold_is_what_is_described(approved: ToothPlanVersion) -> None:
    for method, address, operation in operations():
        view: Any = resolve(at(address, approved)).func
        known = query_names(view.cls, method.upper())
        described = {each["name"] for each in operation.get("parameters", []) if each["in"] == "query"}
        assert {*known} == described, (method, address)


@pytest.mark.one_database
def test_a_name_that_is_not_known_is_refused_at_every_address(approved: ToothPlanVersion, vale: Person) -> None:
    browser = client(vale)
    for method, address, _ in operations():
        answer = browser.generic(method.upper(), f"{at(address, approved)}?limt=3")
        assert problem(answer, 400, "not-understood") == {"#/limt": "Is not known here."}, (method, address)


@pytest.mark.one_database
def test_what_is_said_twice_is_refused(approved: ToothPlanVersion, vale: Person) -> None:
    answer = client(vale).get(f"{API}/programmes/{approved.case.programme_id}/cases?tooth=16&tooth=26")
    assert problem(answer, 400, "not-understood") == {"#/tooth": "Is there twice."}


@pytest.mark.one_database
def test_every_answer_has_a_tag_and_is_not_sent_twice(approved: ToothPlanVersion, vale: Person) -> None:
    """13.1.2; 9.3.2: HEAD says what GET would say. Some have a body of none (204), and no tag."""
    browser = client(vale)
    read = 0
    for method, address, _ in operations():
        where = at(address, approved)
        answer = browser.get(where) if method == "get" else None
        if answer is None or answer.status_code != 200:
            continue
        read += 1
        assert answer["Cache-Control"].startswith("private"), where
        head = browser.head(where)
        assert (head.status_code, head.content) == (200, b""), where
        assert {name: head[name] for name in ("ETag", "Content-Type")} == {
            name: answer[name] for name in ("ETag", "Content-Type")
        }, where
        for seen in (answer["ETag"], "*"):
            for ask in (browser.get, browser.head):
                again = ask(where, headers={"If-None-Match": seen})
                assert (again.status_code, again.content) == (304, b""), where
        problem(browser.get(where, headers={"If-Match": '"another"'}), 412, "changed-since")
    assert read > 25


def test_a_tag_of_a_case_tells_more_than_its_revision(molar: Case, submitted: ToothPlanVersion, vale: Person) -> None:
    """A plan is decided on: the case is what it was, and what it shows is not. A change goes by the revision alone."""
    browser, where = client(vale), f"{API}/cases/{molar.pk}"
    before = browser.get(where)
    decide(vale, submitted, Decision.APPROVED)
    after = browser.get(where)
    assert before.json()["revision"] == after.json()["revision"]
    assert browser.get(where, headers={"If-None-Match": before["ETag"]}).status_code == 200
    assert browser.get(where, headers={"If-None-Match": after["ETag"]}).status_code == 304
    for seen in (before["ETag"], f'"{after.json()["revision"]}"'):
        changed = browser.patch(where, {"supervisor_id": None}, format="json", headers={"If-Match": seen})
        assert changed.status_code == 200
    problem(browser.patch(where, {}, format="json", headers={"If-Match": '"99"'}), 412, "changed-since")


@pytest.mark.parametrize("limit", ["0", "-1", "abc", "101", "", "1e1", "٣", "1" * 5000])
def test_a_limit_that_is_none_is_refused_in_words(opened: Case, vale: Person, limit: str) -> None:
    answer = client(vale).get(f"{API}/programmes/{opened.programme_id}/cases", {"limit": limit})
    assert problem(answer, 400, "not-understood") == {"#/limit": "Must be a whole number from 1 to 100."}


CURSORS = [
    "cD0x",
    "###",
    "r=2",
    b64encode(b"r=x").decode(),
    b64encode(b"p=2026-11-30T10:00:00").decode(),  # of no zone
    b64encode(b"p=0001-01-01T00:00:00%2B14:00").decode(),  # before every time in UTC
    b64encode(b"p=9999-12-31T23:59:59-14:00").decode(),
]


def test_a_cursor_may_name_its_moment_with_any_offset(opened: Case, vale: Person) -> None:
    """PostgreSQL itself knows none beyond 15:59."""
    cursor = b64encode(b"p=2001-01-01T00:00:00-17:39").decode()
    answer = client(vale).get(f"{API}/programmes/{opened.programme_id}/cases", {"cursor": cursor})
    assert (answer.status_code, answer.json()["results"]) == (200, [])


@pytest.mark.parametrize("cursor", CURSORS)
def test_a_cursor_of_no_page_is_refused_in_words(opened: Case, vale: Person, cursor: str) -> None:
    answer = client(vale).get(f"{API}/programmes/{opened.programme_id}/cases", {"cursor": cursor})
    assert [*problem(answer, 400, "not-understood")] == ["#/cursor"]


def test_a_problem_is_json_also_where_the_description_was_asked_for_as_yaml(db: None, vale: Person) -> None:
    answer = client(vale).post(f"{API}/schema?format=yaml")
    problem(answer, 400, "not-understood")  # a POST has no query
    answer = client(vale).post(f"{API}/schema", headers={"Accept": "application/vnd.oai.openapi"})
    problem(answer, 405, "method-not-allowed")


@pytest.mark.one_database
def test_a_key_that_does_not_count_is_refused_at_every_address(approved: ToothPlanVersion) -> None:
    """The door takes any other answer to a key as proof of it."""
    browser = APIClient()
    browser.credentials(HTTP_AUTHORIZATION="Bearer made-up")
    for method, address, _ in operations():
        problem(browser.generic(method.upper(), at(address, approved)), 401, "key-refused")


@pytest.mark.parametrize(("page", "heading"), [("changes", "# Changes"), ("tour", "# ")])
def test_the_guide_is_text_for_everybody(db: None, page: str, heading: str) -> None:
    answer = APIClient().get(f"{API}/guide/{page}")
    assert answer["Content-Type"] == "text/markdown; charset=utf-8"
    assert answer.content.decode().startswith(heading)
    problem(APIClient().get(f"{API}/guide/else"), 404, "not-found")


def test_the_description_has_the_version_that_the_changes_end_with(db: None) -> None:
    text = APIClient().get(f"{API}/guide/changes").content.decode()
    newest = next(line.removeprefix("## ") for line in text.splitlines() if re.match(r"## \d", line))
    assert description()["info"]["version"] == newest
    assert description()["externalDocs"]["url"] == f"{API}/guide/changes"
