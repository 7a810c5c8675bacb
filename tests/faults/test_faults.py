"""Many devices on a bad line and a server that is killed: nothing acknowledged is lost, nothing is there twice.

What must hold is stated from the outside: the devices' own journals against the rows of the database, and the state
that the server tells against the devices' fold and the phone's.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from django.db import connection

from cases.models import ToothPlanVersion, TreatmentEvent
from cases.services.treatment.server_events import HERE
from planning.techniques.technique import Setting
from tests.cast import API, client
from tests.faults.backup import Backup
from tests.faults.clinic import Clinic
from tests.walkers.state import agrees, state_of


@pytest.fixture
def clinic(approved: ToothPlanVersion, tmp_path: Path, pytestconfig: pytest.Config) -> Clinic:
    seed, devices = pytestconfig.getoption("--fault-seed"), pytestconfig.getoption("--fault-devices")
    return Clinic(approved, devices=devices, seed=seed, folder=tmp_path)


def test_nothing_acknowledged_is_lost_and_nothing_is_there_twice(
    clinic: Clinic, approved: ToothPlanVersion, pytestconfig: pytest.Config, tmp_path: Path
) -> None:
    pulls = pytestconfig.getoption("--fault-pulls")
    with clinic:
        plug = clinic.work(pytestconfig.getoption("--fault-rounds"), pulls)
        _nothing_is_missing(clinic)
        _as_bad_as_it_was_meant(clinic, plug.count, pulls)
        assert plug.half_stored == []
        clinic.drain()
        _nothing_is_missing(clinic)
        assert [device.name for device in clinic.devices if device.outbox.waiting] == []
        _stored_as_written(clinic)
        _the_same_state_everywhere(clinic, approved, tmp_path)
        _brought_back_from_a_copy(clinic, tmp_path)
        _stored_as_written(clinic)
        _the_same_state_everywhere(clinic, approved, tmp_path)


def _brought_back_from_a_copy(clinic: Clinic, folder: Path) -> None:
    """A copy is taken, work goes on and is acknowledged, the copy is brought back, work goes on once more."""
    clinic.kill()
    backup = Backup(folder)
    clinic.serve()
    clinic.work(1, 0)
    clinic.drain()
    since = TreatmentEvent.objects.count()
    clinic.kill()
    backup.bring_back()
    clinic.serve()
    gone = since - TreatmentEvent.objects.count()
    lost: set[str] = set()
    for device in clinic.devices:
        shown = clinic.asks(device)
        lost |= device.compare(shown)
        # Nobody is sent back: what was done here stands, sent or not.
        assert {event["id"] for event in device.outbox.written} <= {event.id for event in device.happened()}
        device.do()
    print(f"brought back from a copy: {gone} events were gone, {len(lost)} are sent again")
    assert len(lost) == gone > 0
    clinic.drain()
    assert lost <= {str(id_) for id_ in TreatmentEvent.objects.values_list("pk", flat=True)}
    assert [device.name for device in clinic.devices if device.outbox.waiting] == []


def _nothing_is_missing(clinic: Clinic) -> None:
    """What was written is stored, or waits in its outbox; what was acknowledged is stored."""
    stored = {str(id_) for id_ in TreatmentEvent.objects.values_list("pk", flat=True)}
    for device in clinic.devices:
        journal = type(device.outbox)(device.outbox.file)
        written = {event["id"] for event in journal.written}
        waiting = {event["id"] for event in journal.waiting}
        assert written - waiting == journal.acknowledged, device.name
        assert journal.acknowledged <= stored, device.name


def _stored_as_written(clinic: Clinic) -> None:
    """Each event once, in its device's order, as the device wrote it; none that nobody wrote; no hole in a case."""
    rows: dict[str, list[TreatmentEvent]] = {}
    for row in TreatmentEvent.objects.order_by("case_id", "position"):
        rows.setdefault(str(row.device), []).append(row)
    for device in clinic.devices:
        stored = rows.pop(device.id, [])
        assert [str(row.pk) for row in stored] == [event["id"] for event in device.outbox.written], device.name
        assert [row.device_seq for row in stored] == list(range(1, len(stored) + 1)), device.name
        for row, event in zip(stored, device.outbox.written, strict=True):
            kept = json.loads(row.text)
            assert {key: kept[key] for key in event["payload"]} == event["payload"]
            assert (row.canal, row.node, str(row.case_id)) == (event["canal"], event["node"], device.case_id)
    here = rows.pop(str(HERE))
    # Of each case, and of the one that they are copies of.
    assert [(row.kind, row.position) for row in here] == [("replan", 1)] * (len(clinic.cases) + 1)
    assert rows == {}
    for version in clinic.cases:
        positions = list(version.case.events.order_by("position").values_list("position", flat=True))
        assert positions == list(range(1, len(positions) + 1))


def _as_bad_as_it_was_meant(clinic: Clinic, pulled: dict[str, int], pulls: int) -> None:
    """A run in which nothing went wrong would prove nothing."""
    count = clinic.traffic.count
    print(f"\nseed {clinic.seed}: {clinic.traffic.begun} requests", dict(count), dict(pulled))
    for fault in ("lost_before", "half_sent", "lost_after", "late", "twice", "came_late", "device_restarted"):
        assert count[fault] > 0, fault
    assert count["answered_409"] > 0
    assert pulled["pulled"] == pulls
    assert pulled["stored_unanswered"] + pulled["not_stored"] >= pulls


def _the_same_state_everywhere(clinic: Clinic, approved: ToothPlanVersion, folder: Path) -> None:
    """What the server tells of each case is what a device makes of the same events, in Python and on the phone."""
    asked = client(approved.case.student)
    states = []
    for version in clinic.cases:
        treatment = asked.get(f"{API}/cases/{version.case_id}/events").json()
        device = next(each for each in clinic.devices if each.case_id == str(version.case_id))
        device.seen = treatment["events"]
        state, expected = state_of(device.course()), _told(treatment)
        assert {name: state[name] for name in expected} == expected, f"case {version.case_id}"
        states.append((Setting.EXTRACTED, device.happened(), state))
    agrees({approved.hash: clinic.devices[0].sheets}, states, folder=folder)


def _told(treatment: dict[str, Any]) -> dict[str, Any]:
    course = treatment["course"]
    return {
        "canals": {canal["canal"]: [canal["node"], canal["state"], canal["stop_um"]] for canal in treatment["canals"]},
        "out_of_course": course["out_of_course"],
        "undone": sorted(course["undone"]),
        "halted_by": course["halted_by"],
        "saline_by": course["saline_by"],
        "missing": list(course["missing"]),
        "check_due": course["check_due"],
        "turned_to": course["turned_to"],
        "plan": course["plan_hash"],
    }


@pytest.mark.usefixtures("shared_database")
def test_what_sqlite_acknowledged_is_on_the_disk() -> None:
    """https://www.sqlite.org/pragma.html#pragma_synchronous: in WAL mode only FULL (2) survives a power cut."""
    if connection.vendor != "sqlite":
        pytest.skip("a pragma of SQLite")
    with connection.cursor() as cursor:
        assert cursor.execute("PRAGMA journal_mode").fetchone() == ("wal",)
        assert cursor.execute("PRAGMA synchronous").fetchone() == (2,)
