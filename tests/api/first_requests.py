"""A process that serves as one just started does, and counts the calls of functions that each request takes.

    echo '[["GET", "/api/v1/session", "the session's key", []]]' | python -m tests.api.first_requests

Prints for each request of the list how many its first, second and third took. Bodies are sent one at a time.
"""

from __future__ import annotations

import json
import multiprocessing
import sys
from collections.abc import Callable

from frontend.server import wsgi
from frontend.server.front.gateway import answered, own_question
from frontend.server.health import READY
from frontend.server.warm import warm

TIMES = 3
TOKEN = "t" * 32


def main() -> None:
    warm(wsgi.application)
    # Each in a process of its own, as what one makes ready is ready for the next.
    with multiprocessing.get_context("fork").Pool(1, maxtasksperchild=1) as processes:
        json.dump(processes.map(_counts, json.load(sys.stdin), chunksize=1), sys.stdout)


def _counts(request: tuple[str, str, str, list[object]]) -> list[int]:
    # Each thread that answers opens its connection before anybody asks.
    answered(wsgi.application, own_question(READY), b"")
    return [_calls(_once(*request, number)) for number in range(TIMES)]


def _once(method: str, path: str, session: str, bodies: list[object], number: int) -> Callable[[], None]:
    body = json.dumps(bodies[number]).encode() if bodies else b""
    environ = own_question(path) | {
        "REQUEST_METHOD": method,
        "HTTP_COOKIE": f"csrftoken={TOKEN}; sessionid={session}",
        "HTTP_X_CSRFTOKEN": TOKEN,
        "CONTENT_TYPE": "application/json",
        "CONTENT_LENGTH": str(len(body)),
    }

    def once() -> None:
        answer = answered(wsgi.application, environ, body)
        assert answer.status == 200, answer

    return once


def _calls(work: Callable[[], None]) -> int:
    count = 0

    def called(_frame: object, event: str, _what: object) -> None:
        nonlocal count
        count += event == "call"

    sys.setprofile(called)
    try:
        work()
    finally:
        sys.setprofile(None)
    return count


if __name__ == "__main__":
    main()
