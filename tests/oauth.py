"""Clients of OAuth 2 for the tests: registered as a coordinator does, and driven by a library that is none of the
server's."""

from __future__ import annotations

import html
import re
from collections.abc import Sequence
from typing import Any
from urllib.parse import parse_qs, urlencode, urlsplit

import requests
from authlib.integrations.requests_client import OAuth2Session
from django.test import Client as Browser
from requests.adapters import BaseAdapter

from cases.domain.access.client_kinds import ActsFor, ClientType
from cases.domain.access.scopes import FOR_SERVICES, Scope
from cases.models import Person
from cases.services.people import clients
from cases.services.people.clients import MadeClient, NewClient

HERE = "http://testserver"
AUTHORIZE, TOKEN = f"{HERE}/oauth/authorize", f"{HERE}/oauth/token"
REVOKE, INTROSPECT = f"{HERE}/oauth/revoke", f"{HERE}/oauth/introspect"
BACK = "https://diary.example/back"
# RFC 7636, appendix B.
VERIFIER = "dBjftJeZ4CVP-mB92K27uhbUJU1p1r_wW1gFWFOEjXk"
CHALLENGE = "E9Melhoa2OwvFrEMTJguCHaoeK1t8URWbuGJSstw-cM"


class InProcess(BaseAdapter):
    """Has requests of a library answered by the application itself, in the test's own transaction."""

    def send(self, request: Any, **how: Any) -> requests.Response:  # type: ignore[override]
        # What is compressed on the way is nothing of the library's to undo here.
        sent = {name: value for name, value in request.headers.items() if name != "Accept-Encoding"}
        headers = {f"HTTP_{name.upper().replace('-', '_')}": value for name, value in sent.items()}
        parts = urlsplit(request.url)
        answer = Browser(enforce_csrf_checks=True).generic(
            request.method, f"{parts.path}?{parts.query}", request.body or "", sent.get("Content-Type", ""), **headers
        )
        response = requests.Response()
        response.status_code, response.request, response.url = answer.status_code, request, request.url
        response.headers.update(dict(answer.items()))
        response._content = answer.content
        return response

    def close(self) -> None:
        """Nothing is held."""


def for_itself(coordinator: Person, scopes: Sequence[Scope] = FOR_SERVICES, *, name: str = "Timetable") -> MadeClient:
    return _registered(coordinator, name, ActsFor.ITSELF, ClientType.CONFIDENTIAL, scopes, ())


def for_people(
    coordinator: Person,
    scopes: Sequence[Scope] = tuple(Scope),
    *,
    name: str = "Course diary",
    client_type: ClientType = ClientType.PUBLIC,
    back: Sequence[str] = (BACK,),
) -> MadeClient:
    return _registered(coordinator, name, ActsFor.PEOPLE, client_type, scopes, back)


def _registered(
    coordinator: Person, name: str, acts_for: ActsFor, type_: ClientType, scopes: Sequence[Scope], back: Sequence[str]
) -> MadeClient:
    """Of the programme that the coordinator keeps."""
    new = NewClient(name=name, acts_for=acts_for, client_type=type_, scopes=scopes, redirect_uris=back)
    return clients.grant(actor=coordinator, programme_id=coordinator.memberships.get().programme_id, new=new)


def session(made: MadeClient, scopes: Sequence[Scope] = (), **more: Any) -> OAuth2Session:
    """The library's client, as its own documentation has it."""
    method = "client_secret_basic" if made.secret else "none"
    asked = {
        "client_id": made.row.client_id,
        "client_secret": made.secret,
        "token_endpoint_auth_method": method,
        "revocation_endpoint_auth_method": method,
        "scope": " ".join(scopes) or None,
        "redirect_uri": BACK,
        "code_challenge_method": "S256",
        **more,
    }
    library = OAuth2Session(**asked)
    library.mount(HERE, InProcess())
    return library


def token_for_itself(made: MadeClient, scopes: Sequence[Scope] = ()) -> str:
    return str(session(made, scopes).fetch_token(TOKEN, grant_type="client_credentials")["access_token"])


def browser_of(person: Person) -> Browser:
    browser = Browser()
    browser.force_login(person)
    return browser


def answered(browser: Browser, address: str, answer: str = "allow") -> str:
    """Where the person is sent back to by what they answer."""
    page = browser.post(address.removeprefix(HERE), {"answer": answer})
    assert page.status_code == 200, page.content
    return sent_back(page)


def sent_back(page: Any) -> str:
    """Where a page goes on to by itself."""
    match = re.search(r'http-equiv="refresh" content="0; url=([^"]+)"', page.content.decode())
    assert match
    return html.unescape(match[1])


def query(address: str) -> dict[str, str]:
    return {name: value for name, (value,) in parse_qs(urlsplit(address).query).items()}


def allowed(library: OAuth2Session, person: Person, **more: Any) -> dict[str, Any]:
    """The tokens of a client that the person allows to act for them."""
    address, state = library.create_authorization_url(AUTHORIZE, code_verifier=VERIFIER, **more)
    came_back = answered(browser_of(person), address)
    token: dict[str, Any] = library.fetch_token(
        TOKEN, authorization_response=came_back, code_verifier=VERIFIER, state=state
    )
    return token


def asked(made: Any, **other: str | None) -> str:
    """The address that a client sends a person to."""
    fields = {
        "response_type": "code",
        "client_id": made.row.client_id,
        "redirect_uri": BACK,
        "scope": "cases:read",
        "state": "as-sent",
        "code_challenge": CHALLENGE,
        "code_challenge_method": "S256",
        **other,
    }
    return f"/oauth/authorize?{urlencode({name: value for name, value in fields.items() if value is not None})}"


def redeemed(made: Any, code: str, **other: str) -> Any:
    form = {"grant_type": "authorization_code", "code": code, "redirect_uri": BACK, "code_verifier": VERIFIER}
    return Browser().post("/oauth/token", form | {"client_id": made.row.client_id} | other)


def code_of(made: Any, person: Person) -> str:
    came_back = query(answered(browser_of(person), asked(made)))
    assert came_back.keys() == {"code", "state", "iss"}
    return came_back["code"]
