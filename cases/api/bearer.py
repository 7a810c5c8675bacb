"""Access keys, and tokens of clients: `Authorization: Bearer <key>` (RFC 6750). A request with one is judged by it
alone, without a cookie.

Whether its scopes open the operation is asked here, whatever else its view asks for.
"""

from __future__ import annotations

from typing import Any

from rest_framework.authentication import BaseAuthentication
from rest_framework.exceptions import AuthenticationFailed, PermissionDenied
from rest_framework.request import Request

from cases.api.needs import FHIR_PREFIX, PREFIX, Need, Without, need_of
from cases.domain.access import key_text
from cases.domain.access.scopes import FOR_SERVICES, Scope
from cases.domain.errors import KeyRefused, NotHere
from cases.models import ClientToken, Person, Service
from cases.models.clients import Key
from cases.queries.access_keys import is_of_a_case, student_acted_for
from cases.services.people import access_keys, client_tokens

REALM = 'realm="fourth-canal"'
NOBODY = f"Session {REALM}, Bearer {REALM}"
_SCHEME = "bearer"


class KeyOpensNot(PermissionDenied):
    """The key does not open the operation; `auth_header` is what the framework sends as WWW-Authenticate."""

    def __init__(self, detail: str, code: str, scope: str = "") -> None:
        super().__init__(detail, code)
        asks = f', scope="{scope}"' if scope else ""
        self.auth_header = f'Bearer {REALM}, error="insufficient_scope"{asks}'


class BearerKey(BaseAuthentication):
    """A person whose script it is, or for whom a client acts; the student that a service acts for; or a service where
    no one case is asked for."""

    def authenticate(self, request: Request) -> tuple[Any, Key] | None:
        scheme, _, text = request.headers.get("Authorization", "").partition(" ")
        if scheme.lower() != _SCHEME:
            return None
        try:
            key = _admitted(text.strip())
        except KeyRefused as refusal:
            raise AuthenticationFailed(str(refusal), refusal.code) from None
        match = request._request.resolver_match
        route, kwargs = (match.route, match.kwargs) if match else ("", {})
        _refuse_unless_opens(key, need_of(str(request.method), route))
        if isinstance(key, ClientToken) and key.person:
            _refuse_elsewhere(key.client.service, route, kwargs)
        if key.service is None:
            asker: Person | Service = key.person  # type: ignore[assignment]
        else:
            asker = _of_service(key.service, route, kwargs)
        if isinstance(asker, Person):
            asker.by_key = key
        return asker, key

    def authenticate_header(self, request: Request) -> str:
        if "Authorization" not in request.headers:
            return NOBODY
        return f'Bearer {REALM}, error="invalid_token", error_description="The key does not count."'


def _admitted(text: str) -> Key:
    """Raises KeyRefused."""
    is_key = key_text.parts_of(text) is not None
    return access_keys.admit(text=text) if is_key else client_tokens.admit(text=text)


def _refuse_unless_opens(key: Key, need: Need | None) -> None:
    if need is None or need is Without.KEY:
        raise KeyOpensNot("No key opens this: it is for people who are signed in at the app.", "key-opens-not")
    if isinstance(need, Scope) and need not in scopes_of(key):
        says = f"This needs the scope {need.value}, which the key does not have."
        if key.service is not None and need not in FOR_SERVICES:
            says = f"This needs the scope {need.value}, which no service has: it is a person's own word."
        raise KeyOpensNot(says, "scope-missing", need.value)


def scopes_of(key: Key) -> list[str]:
    """What the key opens; whatever its row says, a service is never given a person's own word."""
    return [scope for scope in key.scopes if key.service is None or scope in FOR_SERVICES]


def _of_service(service: Service, route: str, kwargs: dict[str, Any]) -> Person | Service:
    """An address begins with what it is of, and with its id: only a single case's have somebody to act for, and FHIR's,
    where nothing is changed, have nobody."""
    word = _first_word(route)
    if word == "programmes" or not kwargs or route.startswith(FHIR_PREFIX.removeprefix("/")):
        return service
    return student_acted_for(service, word, next(iter(kwargs.values())))


def _refuse_elsewhere(service: Service, route: str, kwargs: dict[str, Any]) -> None:
    """Whoever a client acts for may belong to several programmes: it acts in its own alone. Raises NotHere."""
    word = _first_word(route)
    if word == "programmes":
        if kwargs["programme_id"] != service.programme_id:
            raise NotHere(what="programme")
    elif is_of_a_case(word):
        student_acted_for(service, word, next(iter(kwargs.values())))


def _first_word(route: str) -> str:
    return route.removeprefix(PREFIX.removeprefix("/")).partition("/")[0]
