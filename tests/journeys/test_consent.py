"""A program on a student's own machine asks to act for them: they sign in by the app, read who asks for what, allow it,
and end it. The program is a library of other make, with an address of its own (RFC 8252, 7.3)."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, HTTPServer
from threading import Thread
from typing import Any

import pytest
from authlib.common.security import generate_token
from authlib.integrations.requests_client import OAuth2Session
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.journeys import hands
from tests.journeys.conftest import PHONE, TALL_PHONE, Opens, Scheme

LEAST_TOUCH_PX = 44  # WCAG 2.2, 2.5.5
SCOPES = "cases:read events:write"


class Receiver(HTTPServer):
    """Where the program waits for the person to come back."""

    came_back: list[str]


class _Handler(BaseHTTPRequestHandler):
    server: Receiver

    def do_GET(self) -> None:
        if self.path.startswith("/back?"):
            self.server.came_back.append(self.path)
        self.send_response(200)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.end_headers()
        self.wfile.write(b"<!doctype html><title>Diary</title><h1>Back at the diary</h1>")

    def log_message(self, format: str, *args: Any) -> None:
        """Nothing is to be read on the way."""


@contextmanager
def receiving() -> Iterator[Receiver]:
    with Receiver(("127.0.0.1", 0), _Handler) as server:
        server.came_back = []
        Thread(target=server.serve_forever, daemon=True).start()
        yield server
        server.shutdown()


def registered(phone: Page, demo: dict[str, Any], name: str) -> str:
    """The id of a client that the coordinator registers, as another system would."""
    keeper = hands.person(demo, "coordinator")
    hands.sign_in(phone, keeper)
    session = phone.request.get("/api/v1/session").json()
    token = next(each["value"] for each in phone.context.cookies() if each["name"] == "csrftoken")
    answer = phone.request.post(
        f"/api/v1/programmes/{session['memberships'][0]['programme']['id']}/clients",
        data={
            "name": name,
            "acts_for": "people",
            "client_type": "public",
            "scopes": SCOPES.split(),
            "redirect_uris": ["http://127.0.0.1/back"],
            "password": keeper["password"],
        },
        headers={"X-CSRFToken": token},
    )
    assert answer.status == 201, answer.text()
    return str(answer.json()["client"]["id"])


def assert_everybody_can_use(page: Page) -> None:
    judged = Axe().run(page)
    assert judged.violations_count == 0, judged.generate_report()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "runs out of the screen"
    for button in page.get_by_role("button").all():
        box = button.bounding_box()
        assert box
        assert box["height"] >= LEAST_TOUCH_PX


@pytest.mark.parametrize(("scheme", "viewport"), [("light", PHONE), ("dark", TALL_PHONE)])
def test_a_student_lets_a_program_act_for_them_and_ends_it(
    demo: dict[str, Any], open_phone: Opens, scheme: Scheme, viewport: Any
) -> None:
    name = f"Diary in {scheme}"
    client_id = registered(open_phone(), demo, name)
    student = hands.person(demo, "student")
    phone = open_phone(scheme=scheme, viewport=viewport)
    errors: list[str] = []
    phone.on("console", lambda message: errors.append(message.text) if message.type == "error" else None)
    with receiving() as receiver:
        back = f"http://127.0.0.1:{receiver.server_port}/back"
        program = OAuth2Session(
            client_id, scope=SCOPES, redirect_uri=back, token_endpoint_auth_method="none", code_challenge_method="S256"
        )
        verifier = generate_token(48)
        address, state = program.create_authorization_url(f"{demo['url']}/oauth/authorize", code_verifier=verifier)

        phone.goto(address)
        phone.get_by_label("User name").fill(student["username"])
        phone.get_by_label("Password").fill(student["password"])
        phone.get_by_role("button", name="Sign in").click()
        expect(phone.get_by_role("heading", name=f"May {name} act for you?")).to_be_visible()
        expect(phone.get_by_role("listitem")).to_have_count(2)
        expect(phone.get_by_text(f"as {student['name']}")).to_be_visible()
        assert_everybody_can_use(phone)

        phone.get_by_role("button", name="Allow", exact=True).click()
        expect(phone.get_by_role("heading", name="Back at the diary")).to_be_visible()
        (came_back,) = receiver.came_back
        token = program.fetch_token(
            f"{demo['url']}/oauth/token", authorization_response=came_back, code_verifier=verifier, state=state
        )
    assert token["scope"] == SCOPES
    key = f"{demo['url']}/api/v1/key"
    assert program.get(key).json()["person"]["name"] == student["name"]

    phone.goto("/account/keys")
    phone.get_by_role("button", name="Understood").click()
    phone.get_by_role("link", name="Programs that act for you").click()
    expect(phone.get_by_role("heading", name=name)).to_be_visible()
    assert_everybody_can_use(phone)
    phone.get_by_role("button", name=f"End it for {name}").click()
    expect(phone.get_by_role("heading", name=name)).to_have_count(0)
    assert program.get(key).status_code == 401
    assert errors == []
