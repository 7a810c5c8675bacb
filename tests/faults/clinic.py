"""A clinic of many devices on a bad line, and a server whose plug is pulled in the middle of batches."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import time
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from threading import Event as Flag
from threading import Thread

from django.conf import settings
from django.db import connection

from cases.domain.access.roles import Role
from cases.models import Person, Programme, ToothPlanVersion, TreatmentEvent
from frontend.server import serve
from frontend.server.serve import Address
from planning.foundation.encoding import decode
from planning.run_sheet.graph import RunSheet
from tests import factories
from tests.cast import client
from tests.faults.deeds import Owner
from tests.faults.device import Device, Event
from tests.faults.line import Line, Request, Traffic
from tests.many import copies

AT_ONCE = 24  # requests under way; the server works on four
A_CASE = 3  # devices: the student's phone and tablet, a supervisor's laptop


@dataclass(slots=True)
class Plug:
    """Kills the server while batches are under way, and starts it again."""

    traffic: Traffic
    dice: Random
    pulls_at: list[int]
    """Counts of answers."""
    clinic: Clinic
    over: Flag = field(default_factory=Flag)
    in_place: Flag = field(default_factory=Flag)
    """Not set while it is pulled and the server is on its way up again."""
    half_stored: list[Request] = field(default_factory=list)
    """Batches of which the database holds a part that it did not hold before: there must be none."""
    count: Counter[str] = field(default_factory=Counter)

    def run(self) -> None:
        try:
            for at in self.pulls_at:
                while self.traffic.answers < at or not self.traffic.flying:
                    if self.over.wait(0.002):
                        return
                time.sleep(self.dice.uniform(0, 0.05))
                self._pull()
        finally:
            self.in_place.set()
            connection.close()

    def _pull(self) -> None:
        self.in_place.clear()
        flying = list(self.traffic.flying.values())
        before = _stored(flying)
        self.clinic.kill()
        after = _stored(flying)
        self.count["pulled"] += 1
        for request in flying:
            new = set(request.ids) - before
            kept = new & after
            self.count["stored_unanswered" if kept else "not_stored"] += 1
            if kept and kept != new:
                self.half_stored.append(request)
        self.clinic.serve()
        self.in_place.set()


def _stored(flying: list[Request]) -> set[str]:
    ids = [id_ for request in flying for id_ in request.ids]
    return {str(id_) for id_ in TreatmentEvent.objects.filter(pk__in=ids).values_list("pk", flat=True)}


class Clinic:
    """The devices, their cases and the server."""

    def __init__(self, like: ToothPlanVersion, *, devices: int, seed: int, folder: Path) -> None:
        self.seed, self.folder = seed, folder
        self.dice = Random(f"{seed} clinic")
        self.address = Address("127.0.0.1", _free_port())
        self.traffic = Traffic(self.address.port)
        self.cases = list(copies(like, -(-devices // A_CASE)))
        self.devices = self._devices(like, devices)
        self.server: subprocess.Popen[bytes]

    def _devices(self, like: ToothPlanVersion, count: int) -> list[Device]:
        version = client(like.case.student).get(f"/api/v1/plan-versions/{like.pk}", {"expand": "plan"}).json()
        sheets = {canal["canal"]: decode(RunSheet, canal["run_sheet"]) for canal in version["plan"]["canals"]}
        programme: Programme = like.case.programme
        doctors = [factories.member(programme, f"doctor{n}", Role.SUPERVISOR) for n in range(2)]
        made = []
        for n in range(count):
            case, place = divmod(n, A_CASE)
            last = place == A_CASE - 1
            person = doctors[case % 2] if last else like.case.student
            name = f"device-{n:04d}"
            line = Line(self.traffic, Random(f"{self.seed} {name}"))
            of = Owner(str(person.pk), supervises=last, session=_session(person))
            device = Device(name, of, str(self.cases[case].case_id), (like.hash, sheets), line, self.folder)
            device.opens(client(person).get(f"/api/v1/cases/{device.case_id}/events").json())
            made.append(device)
        return made

    def __enter__(self) -> Clinic:
        self.serve()
        return self

    def __exit__(self, *exception: object) -> None:
        serve.stop(self.server)

    def serve(self) -> None:
        variables = {"SECRET_KEY": settings.SECRET_KEY, "ALLOWED_HOSTS": "127.0.0.1", "LOG_LEVEL": "ERROR"}
        self.server = serve.start(self.address, variables)

    def kill(self) -> None:
        """SIGKILL to the server and its workers."""
        os.killpg(self.server.pid, signal.SIGKILL)
        self.server.wait()

    def asks(self, device: Device) -> Event:
        """What the server tells the device's owner of its case."""
        event: Event = (
            client(Person.objects.get(pk=device.owner.person_id)).get(f"/api/v1/cases/{device.case_id}/events").json()
        )
        return event

    def work(self, rounds: int, pulls: int) -> Plug:
        """So many turns of every device, in another order each time, and on until the plug was pulled so many times."""
        answers = rounds * len(self.devices) // 3
        pulls_at = sorted(self.dice.randrange(answers // 20, answers) for _ in range(pulls))
        plug = Plug(self.traffic, Random(f"{self.seed} plug"), pulls_at, self)
        plug.in_place.set()
        thread = Thread(target=plug.run)
        thread.start()
        try:
            with ThreadPoolExecutor(AT_ONCE) as pool:
                for turn in range(rounds * 4):
                    if turn >= rounds and not thread.is_alive():
                        break
                    # However long the server takes to come up: one turn meets a dead line, the next one a server.
                    plug.in_place.wait()
                    list(pool.map(Device.turn, self.dice.sample(self.devices, len(self.devices))))
        finally:
            plug.over.set()
            thread.join()
        return plug

    def drain(self) -> None:
        """The line is good again: what was late comes in, and every device sends what it has."""
        for device in self.devices:
            device.line.good = True

        def empty(device: Device) -> None:
            device.line.deliver_all()
            while device.outbox.waiting:
                device.send()

        with ThreadPoolExecutor(AT_ONCE) as pool:
            list(pool.map(empty, self.devices))


def _session(person: Person) -> str:
    return client(person).cookies["sessionid"].value


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])
