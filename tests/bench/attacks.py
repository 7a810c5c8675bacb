"""Attacks on a server of one's own on this machine: what a stranger, or one who is signed in, may try. Each runs in a
process of its own until it is ended, so that it takes none of the time of who measures."""

from __future__ import annotations

import http.client
import json
import os
import socket
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from threading import Thread
from typing import Any
from uuid import uuid4

API = "/api/v1"
JSON = "application/json"
# Ends by itself, whoever forgets it.
LONGEST_S = 60.0
TRICKLE_S = 0.2
PART_BYTES = 4_000_000
SEEDS = 10**9


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """The server, and what somebody who is signed in there has."""

    host: str
    port: int
    session: str
    token: str
    case: str
    plan: dict[str, Any]
    """A request for a plan with as many samples as are allowed."""
    pictures: list[bytes] = field(default_factory=list)

    def ask(self, method: str, path: str, body: bytes = b"", *, signed_in: bool = True, media_type: str = JSON) -> int:
        """The status of the answer; 0 where there is none."""
        line = http.client.HTTPConnection(self.host, self.port, timeout=LONGEST_S)
        try:
            line.request(method, f"{API}/{path}", body or None, self.headers(signed_in, media_type))
            answer = line.getresponse()
            answer.read()
            return answer.status
        except OSError:
            return 0
        finally:
            line.close()

    def headers(self, signed_in: bool, media_type: str) -> dict[str, str]:
        cookie = f"csrftoken={self.token}" + (f"; sessionid={self.session}" if signed_in else "")
        return {"Cookie": cookie, "X-CSRFToken": self.token, "Content-Type": media_type}


def description(target: Target, number: int) -> None:
    target.ask("GET", "schema?format=json" if number % 2 else "schema", signed_in=False)


def plan(target: Target, number: int) -> None:
    # Every one by another seed: nothing is remembered of what was never planned.
    target.ask("POST", "compute/plan", json.dumps({**target.plan, "seed": uuid4().int % SEEDS}).encode())


def guess(target: Target, number: int) -> None:
    tried = {"username": f"somebody{uuid4().hex[:4]}", "password": uuid4().hex}
    target.ask("POST", "session", json.dumps(tried).encode(), signed_in=False)


def picture(target: Target, number: int) -> None:
    sent = target.pictures[number % len(target.pictures)] + os.urandom(4)
    target.ask("PUT", f"cases/{target.case}/images/{uuid4()}", sent, media_type="image/jpeg")


def slow_upload(target: Target, number: int) -> None:
    """A part of an image that says it has four megabytes, and a byte now and then."""
    lines = [f"PATCH {API}/cases/{target.case}/images/{uuid4()} HTTP/1.1", f"Host: {target.host}:{target.port}"]
    lines += [f"{name}: {value}" for name, value in target.headers(True, "application/partial-upload").items()]
    lines += [f"Content-Length: {PART_BYTES}", "Upload-Offset: 0", f"Upload-Length: {PART_BYTES}"]
    with socket.create_connection((target.host, target.port)) as line:
        line.sendall(("\r\n".join(lines) + "\r\n\r\n").encode())
        while True:
            time.sleep(TRICKLE_S)
            line.sendall(b"x")


PLANS, UPLOADS = 4, 6


def plan_or_upload(target: Target, number: int) -> None:
    (plan if number < PLANS else slow_upload)(target, number)


@dataclass(frozen=True, slots=True)
class Attack:
    name: str
    once: Callable[[Target, int], None]
    at_once: int


ATTACKS = (
    Attack("anonymous, the description, 4 at once", description, 4),
    Attack("anonymous, the description, 16 at once", description, 16),
    Attack(f"{PLANS} plans with the most samples and {UPLOADS} slow uploads", plan_or_upload, PLANS + UPLOADS),
    Attack("plans with the most samples, 4 at once", plan, 4),
    Attack("6 slow uploads", slow_upload, 6),
    Attack("60 slow uploads", slow_upload, 60),
    Attack("guessing passwords, 8 at once", guess, 8),
    Attack("hostile images, 4 at once", picture, 4),
)


def run(attack: Attack, target: Target) -> None:
    """Until this process is ended."""
    ends_at = time.monotonic() + LONGEST_S

    def again(number: int) -> None:
        while time.monotonic() < ends_at:
            try:
                attack.once(target, number)
            except OSError:
                time.sleep(TRICKLE_S)

    for number in range(attack.at_once):
        Thread(target=again, args=(number,), daemon=True).start()
    time.sleep(LONGEST_S)
