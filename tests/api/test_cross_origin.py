"""Pages of other origins: what the Fetch standard's rules for CORS let a browser pass on to them."""

from __future__ import annotations

import pytest
from pytest_django.fixtures import Settings
from rest_framework.test import APIClient

from cases.models import Case, Person
from tests.cast import API
from tests.keys import service_key

COURSE, ELSEWHERE = "https://course.example", "https://elsewhere.example"


@pytest.fixture(autouse=True)
def registered(settings: Settings) -> None:
    settings.CORS_ALLOWED_ORIGINS = [COURSE]


def preflight(origin: str, where: str = f"{API}/teeth", header: str = "authorization") -> dict[str, str]:
    asks = {"Origin": origin, "Access-Control-Request-Method": "PATCH", "Access-Control-Request-Headers": header}
    return dict(APIClient().options(where, headers=asks).headers)


def test_a_browser_is_let_ask_with_a_key_and_a_condition(db: None) -> None:
    allowed = preflight(COURSE)
    assert allowed["access-control-allow-origin"] == COURSE
    for where in ("/api/fhir/R4/Patient", "/oauth/token", "/oauth/revoke"):
        assert preflight(COURSE, where)["access-control-allow-origin"] == COURSE
    assert "PATCH" in allowed["access-control-allow-methods"]
    named = {name.strip() for name in allowed["access-control-allow-headers"].split(",")}
    assert {"authorization", "content-type", "if-match", "if-none-match", "idempotency-key"} <= named
    # The cookie of somebody who is signed in here never goes with what another page asks.
    assert "access-control-allow-credentials" not in allowed


def test_nobody_else_is(db: None) -> None:
    for origin in (ELSEWHERE, "null", "http://course.example", f"{COURSE}.elsewhere.example"):
        assert "access-control-allow-origin" not in preflight(origin)
        assert "access-control-allow-origin" not in APIClient().get(f"{API}/teeth", headers={"Origin": origin}).headers


def test_only_the_api_and_where_tokens_are_got_is_read_from_elsewhere(db: None) -> None:
    for where in ("/", "/admin/login/", "/livez", "/oauth/consents", "/oauth/introspect"):
        assert "access-control-allow-origin" not in APIClient().get(where, headers={"Origin": COURSE}).headers


def test_a_page_reads_answers_refusals_and_what_they_say_beside(opened: Case, rosa: Person) -> None:
    browser = APIClient()
    text = service_key(rosa).text
    where = f"{API}/programmes/{opened.programme_id}/cases"
    for key, status in ((text, 200), ("made-up", 401)):
        answer = browser.get(where, headers={"Origin": COURSE, "Authorization": f"Bearer {key}"})
        assert answer.status_code == status
        assert answer["Access-Control-Allow-Origin"] == COURSE
        assert {"ETag", "Location", "Retry-After", "RateLimit", "X-Request-Id"} <= {
            name.strip() for name in answer["Access-Control-Expose-Headers"].split(",")
        }
        # A cache must not show one origin's answer to another.
        assert "origin" in answer["Vary"].lower()
