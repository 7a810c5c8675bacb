"""What an address outside the API answers with."""

from __future__ import annotations

import logging
from pathlib import Path

import pytest
from django.core.exceptions import BadRequest, PermissionDenied
from django.http import HttpRequest, HttpResponse
from django.test import Client, RequestFactory
from pytest_django.fixtures import Settings

from frontend import views
from frontend.server import files

PAGE = b"<!doctype html><title>built</title>"


@pytest.fixture
def built(settings: Settings, tmp_path: Path) -> Path:
    (tmp_path / "index.html").write_bytes(PAGE)
    settings.FRONTEND_DIST = tmp_path
    return tmp_path


@pytest.mark.parametrize("address", ["/", "/cases", "/cases/0190-a/plan", "/administration"])
def test_the_apps_own_addresses_open_the_shell(client: Client, built: Path, address: str) -> None:
    answer = client.get(address)
    assert answer.status_code == 200
    assert answer.content == PAGE
    assert answer["Cache-Control"] == "no-cache"


def test_an_unchanged_shell_is_not_sent_again(client: Client, built: Path) -> None:
    first = client.get("/")
    assert client.get("/", headers={"if-none-match": first["ETag"]}).status_code == 304


def test_a_shell_built_anew_is_sent(client: Client, built: Path) -> None:
    first = client.get("/")
    (built / "index.html").write_bytes(PAGE + b"<p>new</p>")
    assert client.get("/", headers={"if-none-match": first["ETag"]}).status_code == 200


def test_without_a_build_the_page_says_how_to_get_one(client: Client, built: Path) -> None:
    (built / "index.html").unlink()
    answer = client.get("/")
    assert answer.status_code == 503
    assert b"manage.py demo" in answer.content


@pytest.mark.parametrize("address", ["/missing.js", "/assets/none", "/static/none", "/api", "/admin"])
def test_what_is_missing_is_missing(client: Client, built: Path, address: str) -> None:
    assert client.get(address).status_code == 404


def test_the_shell_is_only_read(client: Client, built: Path) -> None:
    assert client.post("/cases").status_code == 405


def test_an_unknown_address_of_the_api_is_answered_with_a_problem(client: Client) -> None:
    answer = client.get("/api/v1/nothing-here")
    assert answer.status_code == 404
    assert answer["Content-Type"].startswith("application/problem+json")
    assert answer.json()["status"] == 404


def _failures(request: HttpRequest) -> list[HttpResponse]:
    return [
        views.bad_request(request, BadRequest("x")),
        views.permission_denied(request, PermissionDenied("x")),
        views.server_error(request),
    ]


def test_failures_are_problems_under_the_api_and_pages_elsewhere(rf: RequestFactory) -> None:
    api, page = _failures(rf.get("/api/v1/cases")), _failures(rf.get("/cases"))
    assert [answer.status_code for answer in api] == [answer.status_code for answer in page] == [400, 403, 500]
    assert {answer["Content-Type"].partition(";")[0] for answer in api} == {"application/problem+json"}
    assert {answer["Content-Type"].partition(";")[0] for answer in page} == {"text/html"}


def test_only_named_by_content_files_are_kept_for_ever() -> None:
    assert files.is_immutable("x", "/assets/app-1f2e.js")
    assert not files.is_immutable("x", "/sw.js")
    assert not files.is_immutable("x", "/index.html")


def test_a_wrong_host_is_refused_and_leaves_nothing_in_the_log(client: Client) -> None:
    answer = client.get("/api/v1/session", headers={"host": "elsewhere.example"})
    assert (answer.status_code, answer["Content-Type"]) == (400, "application/problem+json")
    # With none at all Python prints the traceback itself; pytest's own are put there for the test.
    logger = logging.getLogger("django.security.DisallowedHost")
    handlers = [type(each) for each in logger.handlers if not type(each).__module__.startswith("_pytest")]
    assert (handlers, logger.propagate) == ([logging.NullHandler], False)
