"""The two entries of the server: both serve the same pages, both refuse the same starts."""

from __future__ import annotations

import asyncio
import os
import subprocess
import sys
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any
from wsgiref.util import setup_testing_defaults

import pytest
from django.core.signals import request_started
from django.db import close_old_connections

from frontend.server import asgi, wsgi

ROOT = Path(__file__).resolve().parents[3]
ENTRIES = ["frontend.server.wsgi", "frontend.server.asgi"]
ADDRESS = "/assets/none"


@pytest.mark.parametrize("entry", ENTRIES)
def test_an_unready_production_start_is_refused_at_the_door(entry: str) -> None:
    env = {name: value for name, value in os.environ.items() if name not in ("SECRET_KEY", "ALLOWED_HOSTS")}
    done = subprocess.run(
        [sys.executable, "-c", f"import {entry}"],
        cwd=ROOT,
        env={**env, "MODE": "production", "DATABASE_URL": "sqlite://:memory:"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 1
    assert "NotReady: This server does not start:\n- SECRET_KEY is missing" in done.stderr
    assert "- ALLOWED_HOSTS is missing" in done.stderr


@pytest.fixture
def kept_connection() -> Iterator[None]:
    """A request's start tidies connections up; here they belong to the tests around."""
    request_started.disconnect(close_old_connections)
    yield
    request_started.connect(close_old_connections)


@pytest.mark.usefixtures("kept_connection")
def test_the_usual_door_answers() -> None:
    environ: dict[str, Any] = {"PATH_INFO": ADDRESS, "HTTP_HOST": "localhost"}
    setup_testing_defaults(environ)
    statuses: list[str] = []

    def start(status: str, headers: Any, failure: Any = None, /) -> Callable[[bytes], object]:
        statuses.append(status)
        return lambda written: None

    body = b"".join(wsgi.application(environ, start))
    assert statuses == ["404 Not Found"]
    assert b"There is nothing at this address" in body


def test_the_asynchronous_door_answers_alike() -> None:
    scope = {
        "type": "http",
        "method": "GET",
        "path": ADDRESS,
        "query_string": b"",
        "headers": [(b"host", b"localhost")],
    }
    sent: list[Mapping[str, Any]] = []
    coming = [{"type": "http.request", "body": b""}]

    async def receive() -> dict[str, Any]:
        if not coming:
            await asyncio.Event().wait()  # a client that stays and says nothing more
        return coming.pop()

    async def send(message: Mapping[str, Any]) -> None:
        sent.append(message)

    asyncio.run(asgi.application(scope, receive, send))
    assert sent[0]["status"] == 404
    assert b"There is nothing at this address" in b"".join(message.get("body", b"") for message in sent[1:])
