"""How long ordinary requests take while somebody attacks, as a ratio to the quiet before and after.

    python -m tests.bench.bench_attacks

Starts the real server on this machine alone, and ends by itself. DATABASE_URL names an empty database; without it,
SQLite. 95th percentile of asking for a session, for the worklist, and of sending a batch of events; quiet and attack
take turns, medians of the rounds.
"""

from __future__ import annotations

import json
import multiprocessing
import os
import socket
import statistics
import tempfile
import time
from collections.abc import Iterator
from dataclasses import replace
from itertools import cycle
from typing import Any

from frontend.server import serve
from frontend.server.serve import Address
from tests.bench.attacks import ATTACKS, Attack, Target, run
from tests.bench.rows import Row, alone
from tests.bench.scratch import scratch

ROUNDS = 3
MEASURED_S = 4.0
# For an attack to come into its own.
BEFORE_S = 0.5
WANTED = 3.0
CASES, WAITING = 200, 20
LEAST_TIMES = 5
KEY = "k" * 50


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory() as folder:
        os.environ.update(IMAGE_FOLDER=folder, SECRET_KEY=KEY)
        with scratch():
            yield from _rows()


def _rows() -> Iterator[Row]:
    server = None
    address = Address("127.0.0.1", _free_port())
    try:
        ordinary = Ordinary(address)
        server = serve.start(address, {"SECRET_KEY": KEY, "ALLOWED_HOSTS": "127.0.0.1", "LOG_LEVEL": "CRITICAL"})
        ordinary.measured(MEASURED_S)
        for attack in ATTACKS:
            yield from _under(attack, ordinary)
    finally:
        if server is not None:
            serve.stop(server)


def _under(attack: Attack, ordinary: Ordinary) -> Iterator[Row]:
    quiet, under = [], []
    for _ in range(ROUNDS):
        quiet.append(ordinary.measured(MEASURED_S / 2))
        process = multiprocessing.get_context("spawn").Process(target=run, args=(attack, ordinary.target), daemon=True)
        process.start()
        try:
            time.sleep(BEFORE_S)
            under.append(ordinary.measured(MEASURED_S))
        finally:
            process.kill()
            process.join()
        quiet.append(ordinary.measured(MEASURED_S / 2))
    for what in ordinary.asks:
        calm, worse = (statistics.median(load[what] for load in each) for each in (quiet, under))
        yield Row(what=f"{attack.name}: {what}", now=worse / calm, against="the quiet (95th percentiles)", goal=WANTED)


class Ordinary:
    """A student whose phone asks who it is and sends what was done, and a supervisor's that asks for the worklist, one
    request after the other."""

    def __init__(self, address: Address) -> None:
        from cases.domain.plans.lifecycle import PlanState
        from tests.bench.chair import Chair
        from tests.cast import client
        from tests.many import copies

        self.chair = Chair()
        # A batch takes longer the more a case has: each has a few.
        self.cases = cycle([str(version.case_id) for version in copies(self.chair.version, CASES)])
        list(copies(self.chair.version, WAITING, state=PlanState.WAITING))
        self.devices: dict[str, tuple[str, int]] = {}
        browser, supervisor = client(self.chair.student), client(self.chair.supervisor)
        self.target = Target(
            host=address.host,
            port=address.port,
            session=browser.cookies["sessionid"].value,
            token="t" * 32,
            case=str(self.chair.version.case_id),
            plan=_most(),
            pictures=_pictures(),
        )
        self.supervisor = replace(self.target, session=supervisor.cookies["sessionid"].value)
        self.asks = {"session": self.ask_session, "worklist": self.ask_worklist, "events": self.send_events}

    def measured(self, seconds: float) -> dict[str, float]:
        """95th percentiles in milliseconds."""
        took: dict[str, list[float]] = {what: [] for what in self.asks}
        ends_at = time.monotonic() + seconds
        while time.monotonic() < ends_at or len(took["events"]) < LEAST_TIMES:
            for what, once in self.asks.items():
                start = time.perf_counter()
                status = once()
                took[what].append((time.perf_counter() - start) * 1000)
                assert status == 200, (what, status)
        return {what: statistics.quantiles(times, n=20)[-1] for what, times in took.items()}

    def ask_session(self) -> int:
        return self.target.ask("GET", "session")

    def ask_worklist(self) -> int:
        return self.supervisor.ask("GET", f"programmes/{self.chair.programme.pk}/worklist")

    def send_events(self) -> int:
        from cases.domain.uuid7 import uuid7
        from tests.bench.bench_events import OF, event_body

        case = next(self.cases)
        device, seq = self.devices.get(case, (str(uuid7()), 0))
        self.devices[case] = device, seq + OF
        events = [*self.chair.batch(1, seq + 1), *self.chair.quiet(OF - 1, seq + 2)]
        batch = {"device_id": device, "events": [event_body(event) for event in events]}
        return self.target.ask("POST", f"cases/{case}/events", json.dumps(batch).encode())


def _most() -> dict[str, Any]:
    """The check molar with as many samples as one request may have."""
    from planning.depth.samples import MOST_SAMPLES
    from tests.api.compute import plan_request

    return plan_request(samples=MOST_SAMPLES)


def _pictures() -> list[bytes]:
    from tests.cases.pictures import noise

    return [noise(6000, 4000, "JPEG"), os.urandom(30_000_000)]


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


if __name__ == "__main__":
    alone("attacks", rows())
