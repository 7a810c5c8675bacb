"""How the description says who may ask: the session with the page's token, or a key or a client's token with its
scope."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from cases.api.needs import Need, Without
from cases.domain.access.key_text import START
from cases.domain.access.scopes import FOR_SERVICES, NEVER_A_SERVICES, SAYS, Scope

ISSUES = "/oauth/token"


def _listed(scopes: Iterable[Scope]) -> str:
    return ", ".join(f"`{scope}`" for scope in sorted(scopes))


_SAYS = {scope.value: says for scope, says in SAYS.items()}
SECURITY_SCHEMES: dict[str, Any] = {
    "signature": {
        "type": "apiKey",
        "in": "header",
        "name": "webhook-signature",
        "description": "Of what this server sends to a webhook: whoever takes it sees that it came from here.",
    },
    "session": {"type": "apiKey", "in": "cookie", "name": "sessionid", "description": "Somebody signed in at the app."},
    "token": {
        "type": "apiKey",
        "in": "header",
        "name": "X-CSRFToken",
        "description": "With a session, every change repeats the `csrftoken` cookie here. A key needs none.",
    },
    "key": {
        "type": "http",
        "scheme": "bearer",
        "bearerFormat": f"{START}_<id>_<secret>",
        "description": "A key of a service or of a person's script. Scopes: "
        f"{_listed(Scope)}; a service has none of {_listed(NEVER_A_SERVICES)}. "
        "401 `key-refused` for a key that does not count, 403 `scope-missing` or `key-opens-not` for what it does not "
        "open, each with `WWW-Authenticate` (RFC 6750). Each answer to a key has `RateLimit` and `RateLimit-Policy` "
        "(draft-ietf-httpapi-ratelimit-headers-10).",
    },
    "oauth2": {
        "type": "oauth2",
        "description": "Tokens of a quarter of an hour, for a client that a coordinator registered; sent and refused "
        "as keys are. What a person allows is refreshed until they end it. All of it is told at "
        "`/.well-known/oauth-authorization-server` (RFC 8414).",
        "flows": {
            "clientCredentials": {
                "tokenUrl": ISSUES,
                "scopes": {scope.value: _SAYS[scope] for scope in FOR_SERVICES},
            },
            "authorizationCode": {
                "authorizationUrl": "/oauth/authorize",
                "tokenUrl": ISSUES,
                "refreshUrl": ISSUES,
                "scopes": _SAYS,
            },
        },
    },
}


def requirements(need: Need | None, *, changes: bool, open_to_all: bool) -> list[dict[str, list[str]]]:
    """What fulfils an operation's security, one of them enough; a key's scope is a role of OpenAPI 3.1's."""
    session: dict[str, list[str]] = {"session": [], "token": []} if changes else {"session": []}
    if need is None or need is Without.KEY:
        ways = [session]
    else:
        scopes = [need.value] if isinstance(need, Scope) else []
        ways = [session, {"key": scopes}, {"oauth2": scopes}]
    return [*ways, {}] if open_to_all else ways
