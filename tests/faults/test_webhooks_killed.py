"""Webhooks while 50 write and server, worker and database are killed: nothing is missing or out of order, and nothing
comes twice but what was on its way then.

Stated from the outside: what the receiver was sent, against the writers' own journal and the rows of the feed.
"""

from __future__ import annotations

import http.client
import json
import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from threading import Event
from typing import TypeVar

import pytest
from django.conf import settings as django_settings
from django.db import connection
from django.utils import timezone
from pytest_django import Settings

from cases.domain.access.roles import Role
from cases.domain.webhooks import DeliveryState
from cases.models import Canal, Change, Programme, Webhook
from cases.services.common.feed import number
from cases.services.webhooks import keeping
from cases.services.webhooks.keeping import Keeper
from frontend.server import serve
from frontend.server.environment import ROOT
from frontend.server.serve import Address
from tests import factories
from tests.cast import API, open_case
from tests.keys import service_key
from tests.webhook_receiver import Receiver, receiver

WRITERS, EACH_WRITES, CASES = 50, 4, 10
PATIENCE_S = 120


Answer = TypeVar("Answer")


class School:
    """A programme, its server, its worker, and a receiver that is told everything."""

    def __init__(self, received: Receiver) -> None:
        self.received = received
        self.programme: Programme = factories.ProgrammeFactory.create()
        # Another school lies in the same database.
        student = factories.member(self.programme, f"ines {self.programme.pk}", Role.STUDENT)
        rosa = factories.member(self.programme, f"oren {self.programme.pk}", Role.COORDINATOR)
        cases = [open_case(self.programme, student) for _ in range(CASES)]
        self.canals = [str(Canal.objects.filter(tooth__case=case).order_by("place")[0].pk) for case in cases]
        self.key = service_key(rosa).text
        keeper = Keeper(actor=rosa)
        self.hook = keeping.add(keeper=keeper, programme_id=self.programme.pk, address=received.at, kinds=[], reached=0)
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.address = Address("127.0.0.1", int(probe.getsockname()[1]))
        own = {"ALLOWED_HOSTS": "127.0.0.1", "LOG_LEVEL": "CRITICAL"}
        self.variables = {**own, "SECRET_KEY": django_settings.SECRET_KEY}

    def __enter__(self) -> School:
        self.server = serve.start(self.address, self.variables)
        self.worker = self.works()
        return self

    def __exit__(self, *_: object) -> None:
        serve.stop(self.server)
        self.worker.kill()
        self.worker.wait()

    def works(self) -> subprocess.Popen[bytes]:
        own = {**os.environ, **self.variables, "WEBHOOKS_INSIDE": "true"}
        return subprocess.Popen([sys.executable, "manage.py", "deliver"], cwd=ROOT, env=own)

    def writes(self, number_: int) -> int:
        """How many changes were acknowledged."""
        canal = self.canals[number_ % CASES]
        for turn in range(EACH_WRITES):
            until = time.monotonic() + PATIENCE_S
            while self.status(canal, f"cusp {number_}, {turn}") != 200:
                assert time.monotonic() < until
        return EACH_WRITES

    def status(self, canal: str, point: str) -> int:
        headers = {"Authorization": f"Bearer {self.key}", "Content-Type": "application/json"}
        with closing(http.client.HTTPConnection(self.address.host, self.address.port, timeout=30)) as line:
            try:
                line.request("PATCH", f"{API}/canals/{canal}", json.dumps({"reference_point": point}), headers)
                return line.getresponse().status
            except (OSError, http.client.HTTPException):
                return 0

    def kill_server(self) -> None:
        os.killpg(self.server.pid, signal.SIGKILL)
        self.server.wait()
        self.server = serve.start(self.address, self.variables)

    def kill_worker(self) -> None:
        """While the receiver has a message that it has not answered."""
        over, count, takes = Event(), len(self.received.got), self.received.answer
        self.received.answer = lambda _: (204 if over.wait(PATIENCE_S) else 500, {})
        until = time.monotonic() + PATIENCE_S
        while len(self.received.got) == count:
            assert time.monotonic() < until
        self.worker.kill()
        self.worker.wait()
        self.received.answer = takes
        over.set()
        # Its lease ends in a minute, for which nobody has to wait here.
        asked_again(lambda: Webhook.objects.update(free_at=timezone.now()))
        self.worker = self.works()

    def kill_database(self) -> None:
        """One process of PostgreSQL's: it then ends all of them and recovers by its log. SQLite lies in the others."""
        if connection.vendor == "sqlite":
            self.kill_server()
            return
        with connection.cursor() as cursor:
            others = "SELECT pid FROM pg_stat_activity WHERE datname = %s AND pid <> pg_backend_pid()"
            cursor.execute(others, [connection.settings_dict["NAME"]])
            rows = cursor.fetchall()
        os.kill(rows[0][0], signal.SIGKILL)
        asked_again(lambda: Webhook.objects.update(free_at=timezone.now()))


def numbered(school: School) -> list[int]:
    """The positions of all changes."""
    number(school.programme.pk)
    changes = Change.objects.filter(programme=school.programme)
    return list(changes.order_by("position").values_list("position", flat=True))


def asked_again(ask: Callable[[], Answer]) -> Answer:
    """Its answer, once the database gives one: what was killed a moment ago may answer once more before it ends."""
    until = time.monotonic() + PATIENCE_S
    while True:
        try:
            return ask()
        except Exception:
            connection.close()
            assert time.monotonic() < until


@pytest.fixture
def school(shared_database: None, settings: Settings) -> Iterator[School]:
    settings.WEBHOOKS_INSIDE = True
    # The database may have been killed since.
    connection.close()
    with receiver() as received, School(received) as running:
        yield running


def test_nothing_is_missing_and_nothing_out_of_order_whatever_is_killed(
    school: School, pytestconfig: pytest.Config
) -> None:
    # Each once in the gate, twice in the longer run.
    times = max(1, pytestconfig.getoption("--fault-pulls") // 4)
    kills = [school.kill_worker, school.kill_server, school.kill_database] * times
    with ThreadPoolExecutor(WRITERS) as threads:
        writers = [threads.submit(school.writes, number_) for number_ in range(WRITERS)]
        for place, kill in enumerate(kills):
            _wait_for(school, (place + 1) * WRITERS * EACH_WRITES // (len(kills) + 1))
            kill()
        acknowledged = sum(writer.result() for writer in writers)
    positions = asked_again(lambda: numbered(school))
    assert positions == list(range(1, len(positions) + 1))
    assert len(positions) >= CASES + acknowledged == CASES + WRITERS * EACH_WRITES
    _wait_for(school, len(positions))
    came = [message.data["position"] for message in school.received.got]
    _only_as_the_scheme_allows(school, came, positions, len(kills))
    print(f"\n{connection.vendor}: {len(positions)} changes, {len(came)} messages, {len(kills)} kills")


def test_a_worker_that_is_told_to_end_ends_what_is_on_its_way_and_gives_the_rest_back(school: School) -> None:
    """SIGTERM in the middle of a message, with others behind it: that one counts, nothing else goes, nobody waits."""
    _wait_for(school, CASES)
    over, takes, count = Event(), school.received.answer, len(school.received.got)
    school.received.answer = lambda _: (204 if over.wait(PATIENCE_S) else 500, {})
    assert all(school.status(canal, "cusp") == 200 for canal in school.canals)
    _wait_for(school, count + 1)
    school.worker.send_signal(signal.SIGTERM)
    # It waits for the answer, and takes up nothing more.
    with pytest.raises(subprocess.TimeoutExpired):
        school.worker.wait(0.5)
    over.set()
    assert school.worker.wait(PATIENCE_S) == 0
    assert len(school.received.got) == count + 1
    hook = Webhook.objects.get(pk=school.hook.pk)
    assert (hook.lease, hook.free_at <= timezone.now()) == (None, True)
    sent = school.received.got[-1].data["position"]
    assert hook.deliveries.get(position=sent).state == DeliveryState.DELIVERED
    assert not hook.deliveries.filter(state=DeliveryState.WAITING, position__lte=sent).exists()
    # Another goes on at once, with the next.
    school.received.answer = takes
    school.worker = school.works()
    _wait_for(school, count + CASES)
    assert school.received.positions() == sorted(set(school.received.positions()))


def _wait_for(school: School, count: int) -> None:
    """Until the receiver has so many different ones."""
    until = time.monotonic() + PATIENCE_S
    while len({message.id for message in school.received.got}) < count:
        assert time.monotonic() < until, f"{len(school.received.got)} messages"
        time.sleep(0.01)


def _only_as_the_scheme_allows(school: School, came: list[int], positions: list[int], kills: int) -> None:
    assert sorted(set(came)) == positions
    again = [place for place in range(1, len(came)) if came[place] in came[:place]]
    # Each is the one that was on its way.
    assert [came[place] for place in again] == [came[place - 1] for place in again]
    assert kills // 3 <= len(again) <= kills
    assert sorted(came) == came
    assert len({message.id for message in school.received.got}) == len(positions)
    for message in school.received.got:
        message.verify(school.hook.secret)
