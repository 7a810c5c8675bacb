"""A bad connection: what goes over it is lost on the way there, lost on the way back, late, or there twice."""

from __future__ import annotations

import http.client
import json
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from random import Random
from threading import Lock
from typing import Any, Literal

TIMEOUT_S = 20
BUSY = 503
Fault = Literal["none", "lost_before", "half_sent", "lost_after", "late", "twice"]
FAULTS: dict[Fault, int] = {"none": 60, "lost_before": 8, "half_sent": 4, "lost_after": 12, "late": 8, "twice": 8}
"""How often of a hundred."""


class NoAnswer(Exception):
    """The device cannot know whether the server took it."""


class NoServer(NoAnswer):
    """Nobody listens."""


@dataclass(frozen=True, slots=True)
class Request:
    """One batch on its way."""

    path: str
    body: bytes
    headers: dict[str, str]
    ids: tuple[str, ...]
    """Of the events in it."""


@dataclass(slots=True)
class Traffic:
    """What was on the way, for the one who pulls the plug and for the count at the end."""

    port: int
    count: Counter[str] = field(default_factory=Counter)
    begun: int = 0
    answers: int = 0
    flying: dict[int, Request] = field(default_factory=dict)
    lock: Lock = field(default_factory=Lock)

    @contextmanager
    def on_the_way(self, request: Request) -> Iterator[None]:
        with self.lock:
            self.begun += 1
            key = self.begun
            self.flying[key] = request
        try:
            yield
        finally:
            with self.lock:
                del self.flying[key]


class Line:
    """The connection of one device. The same dice give the same faults."""

    def __init__(self, traffic: Traffic, dice: Random) -> None:
        self.traffic, self.dice = traffic, dice
        self.good = False
        """No faults any more."""
        self._late: list[Request] = []

    def post(self, request: Request) -> tuple[int, dict[str, Any]]:
        """Status and answer. Raises NoAnswer."""
        fault = "none" if self.good else self.dice.choices(list(FAULTS), list(FAULTS.values()))[0]
        if fault == "late":
            self._late.append(request)
        if self._late and self.dice.random() < 1 / 2:
            self._deliver_late()
        self.traffic.count[fault] += 1
        match fault:
            case "lost_before" | "late":
                raise NoAnswer
            case "half_sent" | "lost_after":
                self._send(request, len(request.body) // 2 if fault == "half_sent" else None).close()
                raise NoAnswer
            case "twice":
                return self._twice(request)
            case _:
                with self.traffic.on_the_way(request):
                    answer = _read(self._send(request))
                self.traffic.answers += 1
                return answer

    def deliver_all(self) -> None:
        """What was late comes in after all."""
        while self._late:
            self._deliver_late()

    def _deliver_late(self) -> None:
        """An old request comes in after newer ones; nobody waits for its answer."""
        request = self._late.pop(self.dice.randrange(len(self._late)))
        self.traffic.count["came_late"] += 1
        try:
            with self.traffic.on_the_way(request):
                _read(self._send(request))
        except NoAnswer:
            pass

    def _twice(self, request: Request) -> tuple[int, dict[str, Any]]:
        with self.traffic.on_the_way(request):
            first = self._send(request)
            try:
                second = _read(self._send(request))
            except NoAnswer:
                first.close()
                raise
            return self.dice.choice([_read(first), second])

    def _send(self, request: Request, only: int | None = None) -> http.client.HTTPConnection:
        connection = http.client.HTTPConnection("127.0.0.1", self.traffic.port, timeout=TIMEOUT_S)
        try:
            connection.putrequest("POST", request.path, skip_host=True)
            for name, value in {**request.headers, "Content-Length": str(len(request.body))}.items():
                connection.putheader(name, value)
            connection.endheaders(request.body[:only])
        except OSError:
            connection.close()
            self.traffic.count["refused_or_broken"] += 1
            raise NoServer from None
        return connection


def _read(connection: http.client.HTTPConnection) -> tuple[int, dict[str, Any]]:
    try:
        answer = connection.getresponse()
        body = json.loads(answer.read())
        if answer.status == BUSY:
            raise NoAnswer  # nothing was kept; a device comes back later
        return answer.status, body
    except (OSError, http.client.HTTPException, ValueError):
        raise NoAnswer from None
    finally:
        connection.close()
