"""A name for each request, in its answer and in each line of the log that it leaves: who reports a failure names it."""

from __future__ import annotations

import re
from collections.abc import Awaitable, Callable
from contextvars import ContextVar
from logging import Filter, LogRecord
from typing import Any
from uuid import uuid4

from django.http import HttpRequest, HttpResponseBase

from frontend.server.front.gateway import Scope

Application = Callable[..., Awaitable[None]]

HEADER = b"x-request-id"
# What a sender may choose itself. Anything else could forge lines of the log.
TAKEN = re.compile(rb"[A-Za-z0-9_.-]{8,64}")
ASSETS = "/assets/"
NONE = "-"  # in the log, of what no request led to

_current: ContextVar[str] = ContextVar("request id", default=NONE)


class NamedRequests:
    """Gives each request the name that its sender chose, or one of its own, and puts it on the answer."""

    def __init__(self, application: Application) -> None:
        self._application = application

    async def __call__(self, scope: Scope, receive: Any, send: Any) -> None:
        # A file of the app is asked for by itself, and each byte of it counts on a slow line.
        if scope["type"] != "http" or scope["path"].startswith(ASSETS):
            await self._application(scope, receive, send)
            return
        chosen = dict(scope["headers"]).get(HEADER, b"")
        name = chosen if TAKEN.fullmatch(chosen) else uuid4().hex.encode()
        others = [header for header in scope["headers"] if header[0] != HEADER]

        async def answer(message: dict[str, Any]) -> None:
            if message["type"] == "http.response.start":
                message = {**message, "headers": [*message["headers"], (HEADER, name)]}
            await send(message)

        await self._application({**scope, "headers": [*others, (HEADER, name)]}, receive, answer)


class RequestIdMiddleware:
    """Keeps the request's name while it is answered, for the log."""

    def __init__(self, further: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self._further = further

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        token = _current.set(request.headers.get("X-Request-Id", NONE))
        try:
            return self._further(request)
        finally:
            _current.reset(token)


class RequestIdFilter(Filter):
    """Keeps every line of the log and adds the request's name to it."""

    def filter(self, record: LogRecord) -> bool:
        # Django tells of a failure when the middleware has ended.
        request = getattr(record, "request", None)
        of_request = request.headers.get("X-Request-Id") if isinstance(request, HttpRequest) else None
        record.request_id = of_request or _current.get()
        return True
