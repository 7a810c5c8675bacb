"""Sixteen clients that poll and write at once on a served process, and the first requests after its start.

    python -m tests.bench.bench_many

Each client is a student with a case of their own: it asks what is new, reports an event, and a supervisor's list is
asked for with what was seen last. Against as many clients that ask for their session, the least that somebody signed
in can ask for; both take turns. DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

import http.client
import json
import os
import statistics
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from threading import Thread
from typing import TYPE_CHECKING

from frontend.server import serve
from frontend.server.serve import Address
from tests.bench.rows import Row, alone
from tests.bench.scratch import scratch
from tests.bucket import free_port

if TYPE_CHECKING:
    from cases.models import ToothPlanVersion
    from tests.bench.chair import Chair

CLIENTS, ROUNDS, ROUND_S, LATER = 16, 5, 3.0, 20
KEY, TOKEN, API = "k" * 50, "t" * 32, "/api/v1"


class Caller:
    """One client on a line that is kept open."""

    def __init__(self, chair: Chair, version: ToothPlanVersion, address: Address) -> None:
        from cases.domain.uuid7 import uuid7
        from tests.cast import client

        self.chair, self.address, self.device, self.seq = chair, address, str(uuid7()), 0
        self.events = f"{API}/cases/{version.case_id}/events"
        self.running = f"{API}/programmes/{chair.programme.pk}/running-work"
        self.student, self.supervisor = (
            client(person).cookies["sessionid"].value for person in (chair.student, chair.supervisor)
        )
        self.tags: dict[str, str] = {}
        self.statuses: Counter[int] = Counter()
        self.line = http.client.HTTPConnection(address.host, address.port, timeout=60)

    def ask(self, method: str, path: str, session: str, body: object = None) -> None:
        headers = {"Cookie": f"csrftoken={TOKEN}; sessionid={session}", "X-CSRFToken": TOKEN}
        if body is not None:
            headers["Content-Type"] = "application/json"
        elif path in self.tags:
            headers["If-None-Match"] = self.tags[path]
        self.line.request(method, path, json.dumps(body) if body is not None else None, headers)
        answer = self.line.getresponse()
        answer.read()
        self.statuses[answer.status] += 1
        if method == "GET" and (tag := answer.headers["ETag"]):
            self.tags[path] = tag

    def session(self) -> None:
        self.ask("GET", f"{API}/session", self.student)

    def poll(self) -> None:
        self.ask("GET", self.events, self.student)

    def poll_in_full(self) -> None:
        self.tags.clear()
        self.poll()

    def report(self) -> None:
        from tests.bench.bench_events import event_body

        self.seq += 1
        events = [event_body(event) for event in self.chair.quiet(1, self.seq)]
        self.ask("POST", self.events, self.student, {"device_id": self.device, "events": events})

    def look(self) -> None:
        self.ask("GET", self.running, self.supervisor)

    def work(self) -> None:
        self.poll()
        self.report()
        self.look()


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory() as folder:
        os.environ.update(IMAGE_FOLDER=folder, SECRET_KEY=KEY)
        with scratch():
            yield from _rows()


def _rows() -> Iterator[Row]:
    from cases.domain.uuid7 import uuid7
    from cases.services.treatment import treatment
    from tests.bench.chair import Chair
    from tests.many import copies

    chair, address = Chair(), Address("127.0.0.1", free_port())
    versions = list(copies(chair.version, CLIENTS))
    for version in versions:
        # In the middle of the work, as after a restart in a clinic.
        treatment.record(actor=chair.student, case=version.case, device=uuid7(), batch=chair.batch(1))
    callers = [Caller(chair, version, address) for version in versions]
    server = serve.start(address, {"SECRET_KEY": KEY, "ALLOWED_HOSTS": "127.0.0.1", "LOG_LEVEL": "CRITICAL"})
    try:
        yield from _first(callers[0])
        yield from _at_once(callers)
    finally:
        serve.stop(server)


def _first(caller: Caller) -> Iterator[Row]:
    """The first of each kind after the start, one after the other, against the later ones."""
    for what, once in (("session", caller.session), ("poll", caller.poll_in_full), ("event", caller.report)):
        first_ms, *later_ms = (_milliseconds(once) for _ in range(1 + LATER))
        ratio = first_ms / statistics.median(later_ms)
        yield Row(what=f"the first {what} after the start", now=ratio, against="the median of later ones", goal=2)


def _milliseconds(once: Callable[[], None]) -> float:
    start = time.perf_counter()
    once()
    return (time.perf_counter() - start) * 1000


def _at_once(callers: list[Caller]) -> Iterator[Row]:
    per_second: dict[str, list[float]] = {"session": [], "work": []}
    for _ in range(ROUNDS):
        for name, each in per_second.items():
            each.append(_throughput([getattr(caller, name) for caller in callers], callers))
    statuses = sum((caller.statuses for caller in callers), Counter[int]())
    against = "as many asking for their session"
    yield Row(
        what=f"{CLIENTS} clients polling and writing, requests a second",
        now=max(per_second["work"]) / max(per_second["session"]),
        median=statistics.median(per_second["work"]) / statistics.median(per_second["session"]),
        against=against,
    )
    wrong = sum(count for status, count in statuses.items() if status not in (200, 304))
    yield Row(what=f"of {statuses.total():,d} requests refused or failed", now=wrong, against="requests", goal=0)


def _throughput(works: list[Callable[[], None]], callers: list[Caller]) -> float:
    """Requests a second, all clients together."""
    before, start = sum(caller.statuses.total() for caller in callers), time.monotonic()

    def again(work: Callable[[], None]) -> None:
        while time.monotonic() < start + ROUND_S:
            work()

    threads = [Thread(target=again, args=(work,)) for work in works]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return (sum(caller.statuses.total() for caller in callers) - before) / (time.monotonic() - start)


if __name__ == "__main__":
    alone("many", rows())
