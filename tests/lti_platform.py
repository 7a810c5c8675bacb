"""A platform of courses on this machine (LTI 1.3): it signs and reads tokens by another library than the program's."""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from types import MappingProxyType
from typing import Any
from urllib.parse import parse_qs, urlsplit

from django.test import Client
from joserfc import jwt
from joserfc.jwk import KeySet, RSAKey

CLAIM = "https://purl.imsglobal.org/spec/lti/claim/"
LINKING = "https://purl.imsglobal.org/spec/lti-dl/claim/"
GRADES = "https://purl.imsglobal.org/spec/lti-ags/"
LEARNER = "http://purl.imsglobal.org/vocab/lis/v2/membership#Learner"
INSTRUCTOR = "http://purl.imsglobal.org/vocab/lis/v2/membership#Instructor"
# What a token says of a person, and what must be nowhere afterwards.
PERSONAL = {
    "name": "Zephyrine Quillfeather",
    "given_name": "Zephyrine",
    "family_name": "Quillfeather",
    "email": "zephyrine@course.example",
    "picture": "https://course.example/zephyrine.png",
}
NOTHING_ELSE: Mapping[str, Any] = MappingProxyType({})
TOOTH_26 = {"tooth": "26", "setting": "extracted"}


def new_key() -> RSAKey:
    return RSAKey.generate_key(2048, {"alg": "RS256", "use": "sig"}, auto_kid=True)


KEY, ANOTHERS_KEY = new_key(), new_key()
CLIENT = "fourth-canal-1"


Page = Callable[[dict[str, str]], str]
"""Of what was asked for, or sent, the page's HTML."""


@dataclass(frozen=True)
class Score:
    """A grade as it came."""

    at: str
    kind: str
    authorization: str
    body: dict[str, Any]


@dataclass
class Platform:
    """Its own keys lie at its address; the tool is told of the rest."""

    at: str = ""
    tool_keys: Any = None
    """Our public keys, as a registration of the tool tells them."""
    asked: list[dict[str, str]] = field(default_factory=list)
    """Forms that asked for a token."""
    tokens: list[str] = field(default_factory=list)
    """Those that count."""
    scores: list[Score] = field(default_factory=list)
    answers: list[int] = field(default_factory=list)
    """To the next scores, before it takes one."""
    gives_tokens: bool = True
    breaks_off: bool = False
    """Its answers end before they are whole."""
    says: str | None = None
    """To a score that it takes, instead of JSON."""
    pages: dict[str, Page] = field(default_factory=dict)
    """What a browser is shown, by its path."""

    @property
    def line_item(self) -> str:
        return f"{self.at}items/7?course=3"

    def token_for(self, form: dict[str, str]) -> tuple[int, Any]:
        self.asked.append(form)
        if not self.gives_tokens:
            return 400, {"error": "invalid_client"}
        self.tokens.append(f"token-{len(self.asked)}")
        return 200, {
            "access_token": self.tokens[-1],
            "token_type": "bearer",
            "expires_in": 3600,
            "scope": form["scope"],
        }

    def taken(self, score: Score) -> tuple[int, Any]:
        if score.authorization.removeprefix("Bearer ") not in self.tokens:
            return 401, {}
        if self.answers:
            return self.answers.pop(0), {}
        self.scores.append(score)
        return 200, {}

    @property
    def registered(self) -> dict[str, Any]:
        """The body of its registration."""
        return {
            "name": "Courses",
            "issuer": "https://courses.example",
            "client_id": CLIENT,
            "deployment_ids": ["1"],
            "login_address": "http://127.0.0.1/authorize",
            "token_address": f"{self.at}token",
            "key_set_address": f"{self.at}keys",
        }

    def claims(self, nonce: str, more: Mapping[str, Any] = NOTHING_ELSE) -> dict[str, Any]:
        """Of a launch of the link `week-3`."""
        now = int(time.time())
        claims = {
            "iss": "https://courses.example",
            "aud": CLIENT,
            "sub": "a7f3-52",
            "nonce": nonce,
            "iat": now,
            "exp": now + 300,
            f"{CLAIM}message_type": "LtiResourceLinkRequest",
            f"{CLAIM}version": "1.3.0",
            f"{CLAIM}deployment_id": "1",
            f"{CLAIM}target_link_uri": "http://testserver/lti/launch",
            f"{CLAIM}resource_link": {"id": "week-3", "title": "Plan tooth 26"},
            f"{CLAIM}roles": [LEARNER],
            f"{CLAIM}custom": TOOTH_26,
            **PERSONAL,
        }
        return {name: value for name, value in {**claims, **more}.items() if value is not None}

    def token(self, claims: dict[str, Any], key: RSAKey = KEY) -> str:
        return jwt.encode({"alg": "RS256", "kid": KEY.kid}, claims, key)

    def begin(self, browser: Client) -> dict[str, str]:
        """A browser at the platform follows a link to the tool: what it is asked for then."""
        asked = {"iss": "https://courses.example", "client_id": CLIENT, "login_hint": "7", "lti_message_hint": "3"}
        answer = browser.post("/lti/login", asked)
        assert answer.status_code == 302, answer.content
        return _first(urlsplit(answer["Location"]).query)

    def launch(self, browser: Client, more: Mapping[str, Any] = NOTHING_ELSE, *, key: RSAKey = KEY) -> Any:
        """What the tool answers to the launch, after the whole way. A claim of `more` that is None is left out."""
        asked = self.begin(browser)
        token = self.token(self.claims(asked["nonce"], more), key)
        return browser.post("/lti/launch", {"id_token": token, "state": asked["state"]})

    def read(self, text: str) -> dict[str, Any]:
        """What the tool signed. Raises where it was not with its key."""
        return dict(jwt.decode(text, KeySet.import_key_set(self.tool_keys), algorithms=["RS256"]).claims)


def _first(sent: str) -> dict[str, str]:
    return {name: values[0] for name, values in parse_qs(sent).items()}


@contextmanager
def platform() -> Iterator[Platform]:
    here = Platform()

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            url = urlsplit(self.path)
            if page := here.pages.get(url.path):
                self._show(page(_first(url.query)))
            else:
                self._answer(200, KeySet([KEY]).as_dict(private=False))

        def do_POST(self) -> None:
            content = self.rfile.read(int(self.headers["Content-Length"])).decode()
            if page := here.pages.get(self.path):
                self._show(page(_first(content)))
            elif self.path == "/token":
                self._answer(*here.token_for(_first(content)))
            else:
                head = self.headers
                score = Score(self.path, head["Content-Type"], head.get("Authorization", ""), json.loads(content))
                self._answer(*here.taken(score), says=here.says)

        def _show(self, page: str) -> None:
            self._send(200, "text/html; charset=utf-8", page.encode())

        def _answer(self, status: int, value: Any, says: str | None = None) -> None:
            self._send(status, "application/json", (says or json.dumps(value)).encode())

        def _send(self, status: int, kind: str, content: bytes) -> None:
            self.send_response(status)
            if status == 302:
                self.send_header("Location", f"{here.at}elsewhere")
            self.send_header("Content-Type", kind)
            self.send_header("Content-Length", str(len(content) + 10 * here.breaks_off))
            self.end_headers()
            self.wfile.write(content)

        def log_message(self, *_: Any) -> None:
            """Says nothing."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    server.daemon_threads = True
    here.at = f"http://127.0.0.1:{server.server_port}/"
    Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02}, daemon=True).start()
    try:
        yield here
    finally:
        server.shutdown()
        server.server_close()
