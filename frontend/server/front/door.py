"""The door: an ASGI application that takes requests in and has a WSGI application's workers answer them."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable
from dataclasses import replace
from functools import partial
from hashlib import sha256
from http import HTTPStatus
from threading import Thread
from typing import Any
from wsgiref.types import WSGIApplication

from frontend.server.front.bodies import Bodies, Gone, NoRoom, Receive, TooLong, TooSlow
from frontend.server.front.cross_origin import OF_A_REFUSAL
from frontend.server.front.ending import when_ending
from frontend.server.front.gateway import Answer, Scope, address_of, environ_of
from frontend.server.front.lanes import LANES, Lane, lane_of
from frontend.server.front.rates import Known, Rates, TooOften, fields
from frontend.server.front.refused import refused
from frontend.server.front.rooms import RoomClosed
from frontend.server.front.turns import Busy
from frontend.server.front.waiting import Waiting, asked_wait_s
from frontend.server.front.workers import Workers

Send = Callable[[dict[str, Any]], Awaitable[None]]

WITHOUT_BODY = frozenset({"GET", "HEAD", "OPTIONS", "TRACE"})
WHO_ASKS = (("GET", "/api/v1/session"), ("GET", "/api/v1/key"))
SAYS_WHO = (HTTPStatus.OK, HTTPStatus.NO_CONTENT, HTTPStatus.UNAUTHORIZED)
COME_BACK_S = 5  # a queue moves on in less
NOTHING_LOST = "Nothing of it was kept, and nothing is lost: send it again"

REFUSALS: dict[type[Exception], tuple[HTTPStatus, str, str]] = {
    TooLong: (HTTPStatus.REQUEST_ENTITY_TOO_LARGE, "body-too-long", "The body has too many bytes. Send less at once."),
    TooSlow: (HTTPStatus.REQUEST_TIMEOUT, "body-too-slow", f"What was sent did not arrive in time. {NOTHING_LOST}."),
    NoRoom: (HTTPStatus.SERVICE_UNAVAILABLE, "busy", f"Too much is being sent. {NOTHING_LOST} in {{wait_s}} s."),
    Busy: (HTTPStatus.SERVICE_UNAVAILABLE, "busy", f"The server is busy. {NOTHING_LOST} in {{wait_s}} s."),
    TooOften: (
        HTTPStatus.TOO_MANY_REQUESTS,
        "too-often",
        f"That was asked for too often. {NOTHING_LOST} in {{wait_s}} s.",
    ),
    RoomClosed: (
        HTTPStatus.SERVICE_UNAVAILABLE,
        "took-too-long",
        "That took longer than one request may. Ask for less, or send it again in {wait_s} s.",
    ),
}


class Door:
    """One of a process. Reads a body whole, waits for a turn in the request's lane, hands both to a worker."""

    def __init__(
        self,
        application: WSGIApplication,
        lanes: tuple[Lane, ...] = LANES,
        warm: Callable[[WSGIApplication], None] = lambda application: None,
    ) -> None:
        self._warm = partial(warm, application)
        self.bodies = Bodies()
        self.waiting = Waiting()
        self.workers = {lane.name: Workers(lane, application) for lane in lanes}
        self.rates = Rates(lane.name for lane in lanes)
        self.known = Known()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await self._live(receive, send)
            return
        try:
            answer = await self._answer(scope, receive)
        except Gone:
            return
        except tuple(REFUSALS) as refusal:
            answer = _refused(scope["path"], refusal)
        await send({"type": "http.response.start", "status": answer.status, "headers": list(answer.headers)})
        await send({"type": "http.response.body", "body": answer.body})

    async def _answer(self, scope: Scope, receive: Receive) -> Answer:
        workers = self.workers[lane_of(scope["method"], scope["path"]).name]
        asker, address = _asker(scope), address_of(scope)
        # Before its body comes in.
        known = asker if asker in self.known else address
        quotas = self.rates.spend(workers.lane.name, known, with_key=bool(_key(scope)))
        body = await self._body(scope, receive, workers.lane)
        who = asker or address
        ask = partial(workers.answer, environ_of(scope, len(body)), body, who)
        wait_s = asked_wait_s(scope) if workers.lane.waits else 0
        try:
            answer = await self.waiting.answer(ask, wait_s=wait_s, who=who, receive=receive)
        finally:
            self.bodies.free(body)
        if asker:
            self._note(scope, asker, answer.status, workers.lane)
        return replace(answer, headers=(*answer.headers, *fields(quotas)))

    def _note(self, scope: Scope, asker: str, status: int, lane: Lane) -> None:
        """Who was answered as signed in has a rate of their own from now on; who was not has none any more."""
        if (scope["method"], scope["path"]) in WHO_ASKS and status in SAYS_WHO:
            self.known.answered(asker, signed_in=status == HTTPStatus.OK)
        elif lane.signed_in or (_key(scope) and _proved(scope, status)):
            self.known.answered(asker, signed_in=status != HTTPStatus.UNAUTHORIZED)

    async def _body(self, scope: Scope, receive: Receive, lane: Lane) -> bytes:
        headers = dict(scope["headers"])
        announced = headers.get(b"content-length", b"")
        length = int(announced) if announced.isdigit() else None
        # Nothing will come in, so it takes no place among the bodies that do.
        if not length and scope["method"] in WITHOUT_BODY and b"transfer-encoding" not in headers:
            return b""
        return await self.bodies.read(receive, lane=lane, announced_bytes=length, address=address_of(scope))

    async def _live(self, receive: Receive, send: Send) -> None:
        while True:
            message = await receive()
            if message["type"] == "lifespan.startup":
                # Nobody is let in before.
                await asyncio.to_thread(self.ready)
                when_ending(self.waiting.end)
                # The first one to need a process waits for it; nobody else does.
                Thread(target=self.start, daemon=True, name="start").start()
                await send({"type": "lifespan.startup.complete"})
            else:
                self.stop()
                await send({"type": "lifespan.shutdown.complete"})
                return

    def ready(self) -> None:
        """Does what the first requests would wait for."""
        self._warm()
        for workers in self.workers.values():
            workers.connect()

    def start(self) -> None:
        for workers in self.workers.values():
            workers.start()

    def stop(self) -> None:
        for workers in self.workers.values():
            workers.stop()


def _key(scope: Scope) -> bytes:
    """The key that a request names; empty where it names none."""
    headers = (value for name, value in scope["headers"] if name == b"authorization")
    return next((value[7:].strip() for value in headers if value[:7].lower() == b"bearer "), b"")


def _asker(scope: Scope) -> str:
    """The key or the session a request names, not to be read back; empty where it names none. No proof of anything."""
    # A request with a key is judged by it alone.
    if key := _key(scope):
        return sha256(key).hexdigest()
    for name, value in scope["headers"]:
        if name == b"cookie" and (start := value.find(b"sessionid=")) >= 0:
            return sha256(value[start:].split(b";", 1)[0]).hexdigest()
    return ""


def _proved(scope: Scope, status: int) -> bool:
    """Whether the answer tells if the request's key counts: the API refuses one that does not, wherever it is sent."""
    return status == HTTPStatus.UNAUTHORIZED or (
        status < HTTPStatus.BAD_REQUEST and scope["method"] != "OPTIONS" and scope["path"].startswith("/api/")
    )


def _refused(path: str, refusal: Exception) -> Answer:
    status, code, says = REFUSALS[type(refusal)]
    headers = [(b"cache-control", b"no-store"), *OF_A_REFUSAL]
    if status in (HTTPStatus.SERVICE_UNAVAILABLE, HTTPStatus.TOO_MANY_REQUESTS):
        wait_s = refusal.wait_s if isinstance(refusal, TooOften) else COME_BACK_S
        headers.append((b"retry-after", str(wait_s).encode()))
        headers += fields([refusal.quota]) if isinstance(refusal, TooOften) else ()
        says = says.format(wait_s=wait_s)
    own_headers, body = refused(path, status, code, says)
    return Answer(status.value, (*own_headers, *headers), body)
