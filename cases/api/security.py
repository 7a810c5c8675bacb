"""How the description says who may ask: the session with the page's token, or a key with its scope."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from cases.api.needs import Need, Without
from cases.domain.access.key_text import START
from cases.domain.access.scopes import NEVER_A_SERVICES, Scope


def _listed(scopes: Iterable[Scope]) -> str:
    return ", ".join(f"`{scope}`" for scope in sorted(scopes))


SECURITY_SCHEMES: dict[str, Any] = {
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
}


def requirements(need: Need | None, *, changes: bool, open_to_all: bool) -> list[dict[str, list[str]]]:
    """What fulfils an operation's security, one of them enough; a key's scope is a role of OpenAPI 3.1's."""
    session: dict[str, list[str]] = {"session": [], "token": []} if changes else {"session": []}
    if need is None or need is Without.KEY:
        ways = [session]
    else:
        ways = [session, {"key": [need.value] if isinstance(need, Scope) else []}]
    return [*ways, {}] if open_to_all else ways
