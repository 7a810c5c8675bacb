"""What the server's answers allow a page to do, and who counts as signed in."""

from __future__ import annotations

import pytest
from django.test import Client

pytestmark = pytest.mark.django_db


def _policy(client: Client, address: str) -> dict[str, str]:
    answer = client.get(address)
    answer.close()
    header = answer["Content-Security-Policy"]
    return {name: rest for name, _, rest in (part.strip().partition(" ") for part in header.split(";"))}


def test_the_app_runs_its_own_scripts_under_trusted_types(client: Client) -> None:
    policy = _policy(client, "/")
    assert policy["script-src"] == "'self'"
    assert policy["style-src"] == "'self'"
    assert policy["trusted-types"] == "app"
    assert policy["require-trusted-types-for"] == "'script'"
    assert policy["frame-ancestors"] == "'none'"


@pytest.mark.parametrize("address", ["/api/v1/docs", "/admin/login/"])
def test_the_tools_write_markup_but_run_no_foreign_script(client: Client, address: str) -> None:
    policy = _policy(client, address)
    assert policy["script-src"] == "'self'"
    assert "require-trusted-types-for" not in policy


def test_no_policy_travels_with_what_is_no_page(client: Client) -> None:
    answer = client.get("/assets/nothing-of-this-name.js")
    assert "Content-Security-Policy" not in answer


def test_files_of_packages_carry_the_policy_too(client: Client) -> None:
    assert "script-src" in _policy(client, "/static/admin/css/base.css")


def test_the_viewer_brings_everything_from_here(client: Client) -> None:
    page = client.get("/api/v1/docs").content.decode()
    assert "<script>" not in page
    assert "https://" not in page


def test_the_description_is_open_and_of_the_promised_version(client: Client) -> None:
    answer = client.get("/api/v1/schema", headers={"accept": "application/json"})
    assert answer.json()["openapi"] == "3.1.1"


@pytest.mark.parametrize(("path", "status"), [("session", 204), ("one-time-code", 401)])
def test_who_is_not_signed_in_is_asked_to_sign_in(client: Client, path: str, status: int) -> None:
    answer = client.get(f"/api/v1/{path}")
    assert answer.status_code == status
    assert answer["WWW-Authenticate"].startswith("Session")
