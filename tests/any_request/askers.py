"""Who asks: a student, a supervisor and the coordinator at the app, a service by a key with every scope, and nobody."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any

import pytest
from django.core.signals import request_finished, request_started
from django.db import close_old_connections

from cases.models import Person
from tests.cast import API, client
from tests.keys import service_key

ASKERS = ("student", "supervisor", "coordinator", "service", "nobody")
# Drawn too, as the description names them; who asks is said here alone.
SAID_BY_ASKER = ("authorization", "cookie", "x-csrftoken")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asker:
    cookies: Mapping[str, str] = field(default_factory=dict)
    headers: Mapping[str, str] = field(default_factory=dict)

    def put_into(self, case: Any) -> None:
        """The request comes from this asker, whatever was drawn; the judge reads answers as they are."""
        drawn = {name: value for name, value in case.headers.items() if name.lower() not in SAID_BY_ASKER}
        case.cookies = dict(self.cookies)
        case.headers.clear()
        case.headers.update({**drawn, **self.headers, "Accept-Encoding": "identity"})


@pytest.fixture
def askers(priya: Person, vale: Person, rosa: Person) -> Mapping[str, Asker]:
    """By their name, signed in once for all requests of an operation."""
    key = Asker(headers={"Authorization": f"Bearer {service_key(rosa).text}"})
    signed_in = map(_signed_in, (priya, vale, rosa))
    return dict(zip(ASKERS, (*signed_in, key, Asker()), strict=True))


def _signed_in(person: Person) -> Asker:
    browser = client(person)
    browser.get(f"{API}/session")
    cookies = {name: browser.cookies[name].value for name in ("sessionid", "csrftoken")}
    return Asker(cookies=cookies, headers={"X-CSRFToken": cookies["csrftoken"]})


@contextmanager
def one_connection() -> Iterator[None]:
    """A server closes its connection after a request; here it holds the test's rows."""
    closing = (request_started, request_finished)
    for signal in closing:
        signal.disconnect(close_old_connections)
    yield
    for signal in closing:
        signal.connect(close_old_connections)
