"""What of the API is on its way out, and until when: told in every answer of it, and in the description."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from django.http import HttpRequest, HttpResponseBase
from django.utils.http import http_date

from cases.api.needs import PREFIX, address_of

CHANGES = f"{PREFIX}guide/changes"


@dataclass(frozen=True, slots=True, kw_only=True)
class Deprecated:
    """An operation that goes. From `since` on something else does its work; it answers until `sunset`."""

    since: datetime
    sunset: datetime
    instead: str


DEPRECATED: dict[tuple[str, str], Deprecated] = {}
"""By method and address, as in the table of needs. `guide/changes` says how long something is kept."""


class DeprecationMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        answer = self.get_response(request)
        match = request.resolver_match
        goes = _of("GET" if request.method == "HEAD" else str(request.method), match.route) if match else None
        if goes is not None:
            for name, value in fields(goes).items():
                answer.headers[name] = value
        return answer


def _of(method: str, route: str) -> Deprecated | None:
    return DEPRECATED.get((method, address_of(route)))


def fields(goes: Deprecated) -> Mapping[str, str]:
    """RFC 9745 (a structured field's date), RFC 8594 (a date of HTTP) and where to read on."""
    return {
        "Deprecation": f"@{int(goes.since.timestamp())}",
        "Sunset": http_date(goes.sunset.timestamp()),
        "Link": f'<{CHANGES}>; rel="deprecation"; type="text/markdown"',
    }


def described(result: dict[str, Any], **_: object) -> dict[str, Any]:
    """The generator's hook: marks what goes."""
    for address, path in result["paths"].items():
        for method, operation in path.items():
            goes = _of(method.upper(), address)
            if goes is not None:
                operation["deprecated"] = True
                until = goes.sunset.astimezone(UTC).date()
                operation["description"] = f"{operation['description']}\n\nUntil {until}. Instead: {goes.instead}"
    return result
