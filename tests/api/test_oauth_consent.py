"""A person is asked whether a program may act for them, and sent back to nowhere else (RFC 6749, 4.1.1;
RFC 8252; RFC 9207; RFC 9700)."""

from __future__ import annotations

from typing import Any

import pytest
from django.test import Client as Browser

from cases.domain.access.scopes import Scope
from cases.models import Consent, Person
from tests.cast import API
from tests.oauth import (
    BACK,
    HERE,
    answered,
    asked,
    browser_of,
    for_people,
    query,
)

KEY, CONSENTS = f"{API}/key", f"{API}/consents"
READ = (Scope.CASES_READ,)


def test_the_page_says_who_asks_for_what_in_plain_words(rosa: Person, priya: Person) -> None:
    made = for_people(rosa, (Scope.CASES_READ, Scope.EVENTS_WRITE, Scope.REVIEWS_WRITE))
    page = browser_of(priya).get(asked(made, scope="cases:read events:write reviews:write"))
    text = page.content.decode()
    assert "May Course diary act for you?" in text
    assert "<strong>Priya</strong>" in text
    assert "Tell what is done at the chair, as you" in text
    assert "diary.example" in text
    # Her role decides on no plan, so nobody does so for her.
    assert "Approve" not in text
    assert (page["Cache-Control"], "default-src 'none'" in page["Content-Security-Policy"]) == (
        "max-age=0, no-cache, no-store, must-revalidate, private",
        True,
    )


def test_sign_in_comes_first_and_is_the_apps_own(rosa: Person, settings: Any, tmp_path: Any) -> None:
    (tmp_path / "index.html").write_text("the app")
    settings.FRONTEND_DIST = tmp_path
    address = asked(for_people(rosa))
    assert Browser().get(address).content == b"the app"
    # Not even what is wrong with it is answered before: nobody is sent elsewhere unasked (RFC 9700, 4.11.2).
    assert Browser().get(f"{address}&scope=x").content == b"the app"
    assert Browser().post(address, {"answer": "allow"})["Location"] == address
    assert not Consent.objects.exists()


def test_another_page_cannot_answer(rosa: Person, priya: Person) -> None:
    browser = Browser(enforce_csrf_checks=True)
    browser.force_login(priya)
    assert browser.post(asked(for_people(rosa)), {"answer": "allow"}).status_code == 403
    assert not Consent.objects.exists()


def test_what_is_not_allowed_is_said(rosa: Person, priya: Person) -> None:
    made = for_people(rosa)
    came_back = query(answered(browser_of(priya), asked(made), "refuse"))
    assert came_back == {"error": "access_denied", "state": "as-sent", "iss": HERE}
    assert not Consent.objects.exists()


@pytest.mark.parametrize(
    ("other", "error"),
    [
        ({"code_challenge": None, "code_challenge_method": None}, "invalid_request"),
        ({"code_challenge_method": "plain"}, "invalid_request"),
        # RFC 7636, 4.3: left out it would be plain.
        ({"code_challenge_method": None}, "invalid_request"),
        ({"response_type": "token"}, "unsupported_response_type"),
        ({"scope": "export"}, "invalid_scope"),
        ({"scope": "everything"}, "invalid_scope"),
    ],
)
def test_a_request_that_is_wrong_is_sent_back(
    rosa: Person, priya: Person, other: dict[str, str | None], error: str
) -> None:
    made = for_people(rosa, READ)
    answer = browser_of(priya).get(asked(made, **other))
    assert answer.status_code == 302
    assert answer["Location"].startswith(f"{BACK}?")
    fields = query(answer["Location"])
    assert (fields["error"], fields["state"], fields["iss"]) == (error, "as-sent", HERE)


@pytest.mark.parametrize(
    "elsewhere",
    [
        "https://diary.example/back/",
        "https://diary.example/back?x=1",
        "https://diary.example/back#x",
        "https://diary.example:8443/back",
        "https://diary.example.evil.example/back",
        "https://x@diary.example/back",
        "http://diary.example/back",
        "//diary.example/back",
        "javascript:alert(1)",
    ],
)
def test_nobody_is_sent_to_an_address_that_is_not_registered(rosa: Person, priya: Person, elsewhere: str) -> None:
    made, browser = for_people(rosa), browser_of(priya)
    for answer in (browser.get(asked(made, redirect_uri=elsewhere)), browser.post(asked(made, redirect_uri=elsewhere))):
        assert answer.status_code == 400
        assert "Location" not in answer
        assert elsewhere not in answer.content.decode()


def test_an_app_on_a_device_is_answered_at_whatever_port_it_has(rosa: Person, priya: Person) -> None:
    """RFC 8252, 7.3."""
    made = for_people(rosa, back=("http://127.0.0.1/back", "http://[::1]/back"))
    for address in ("http://127.0.0.1:51004/back", "http://[::1]:61023/back"):
        came_back = answered(browser_of(priya), asked(made, redirect_uri=address))
        assert came_back.startswith(f"{address}?code=")
    assert browser_of(priya).get(asked(made, redirect_uri="http://localhost:51004/back")).status_code == 400


def test_a_program_of_another_programme_is_not_there(rosa: Person, stranger: Person) -> None:
    browser, address = browser_of(stranger), asked(for_people(rosa))
    assert browser.get(address).status_code == 404
    assert browser.post(address, {"answer": "allow"}).status_code == 404
    assert not Consent.objects.exists()
