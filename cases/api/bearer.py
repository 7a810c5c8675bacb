"""Access keys: `Authorization: Bearer <key>` (RFC 6750). A request with one is judged by it alone, without a cookie.

Whether the key's scopes open the operation is asked here, whatever else its view asks for.
"""

from __future__ import annotations

from typing import Any

from rest_framework.authentication import BaseAuthentication
from rest_framework.exceptions import AuthenticationFailed, PermissionDenied
from rest_framework.request import Request

from cases.api.needs import FHIR_PREFIX, PREFIX, Need, Without, need_of
from cases.domain.access.scopes import FOR_SERVICES, Scope
from cases.domain.errors import KeyRefused
from cases.models import AccessKey, Person, Service
from cases.queries.access_keys import student_acted_for
from cases.services.people import access_keys

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
    """A person whose script it is; the student that a service acts for; or a service where no one case is asked for."""

    def authenticate(self, request: Request) -> tuple[Any, AccessKey] | None:
        scheme, _, text = request.headers.get("Authorization", "").partition(" ")
        if scheme.lower() != _SCHEME:
            return None
        try:
            key = access_keys.admit(text=text.strip())
        except KeyRefused as refusal:
            raise AuthenticationFailed(str(refusal), refusal.code) from None
        match = request._request.resolver_match
        route, kwargs = (match.route, match.kwargs) if match else ("", {})
        _refuse_unless_opens(key, need_of(str(request.method), route))
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


def _refuse_unless_opens(key: AccessKey, need: Need | None) -> None:
    if need is None or need is Without.KEY:
        raise KeyOpensNot("No key opens this: it is for people who are signed in at the app.", "key-opens-not")
    if isinstance(need, Scope) and need not in scopes_of(key):
        says = f"This needs the scope {need.value}, which the key does not have."
        if key.service is not None and need not in FOR_SERVICES:
            says = f"This needs the scope {need.value}, which no service has: it is a person's own word."
        raise KeyOpensNot(says, "scope-missing", need.value)


def scopes_of(key: AccessKey) -> list[str]:
    """What the key opens; whatever its row says, a service is never given a person's own word."""
    return [scope for scope in key.scopes if key.service is None or scope in FOR_SERVICES]


def _of_service(service: Service, route: str, kwargs: dict[str, Any]) -> Person | Service:
    """An address begins with what it is of, and with its id: only a single case's have somebody to act for, and FHIR's,
    where nothing is changed, have nobody."""
    word = route.removeprefix(PREFIX.removeprefix("/")).partition("/")[0]
    if word == "programmes" or not kwargs or route.startswith(FHIR_PREFIX.removeprefix("/")):
        return service
    return student_acted_for(service, word, next(iter(kwargs.values())))
