"""What a process just started answers first takes at most twice the work of what comes after: calls are counted."""

from __future__ import annotations

import json
import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from django.conf import settings
from django.db import connection

from cases.domain.uuid7 import uuid7
from cases.models import Person, ToothPlanVersion
from frontend.server.environment import ROOT
from tests.bench.bench_events import event_body
from tests.cases.test_treatment import event, record
from tests.cast import API, client

MOST = 2


@pytest.mark.skipif(connection.vendor != "sqlite", reason="the process is given a copy of the database in a file")
@pytest.mark.django_db(transaction=True)
def test_a_first_request_takes_at_most_twice_the_work_of_a_later_one(
    priya: Person, vale: Person, approved: ToothPlanVersion, tmp_path: Path
) -> None:
    record(priya, approved, event(approved, 1))
    student, supervisor = (client(person).cookies["sessionid"].value for person in (priya, vale))
    case, programme = f"{API}/cases/{approved.case_id}", f"{API}/programmes/{approved.programme_id}"
    device = str(uuid7())
    batches = [{"device_id": device, "events": [event_body(event(approved, seq))]} for seq in (1, 2, 3)]
    requests = [
        ("GET", f"{API}/session", student, []),
        ("GET", f"{case}/events", student, []),
        ("POST", f"{case}/events", student, batches),
        ("GET", case, student, []),
        ("GET", f"{programme}/running-work", supervisor, []),
        ("GET", f"{programme}/worklist", supervisor, []),
    ]
    with closing(sqlite3.connect(tmp_path / "records.sqlite3")) as copy:
        connection.connection.backup(copy)
    own = {"DATABASE_URL": f"sqlite:///{tmp_path / 'records.sqlite3'}", "IMAGE_FOLDER": str(tmp_path / "images")}
    ended = subprocess.run(
        [sys.executable, "-m", "tests.api.first_requests"],
        input=json.dumps(requests),
        cwd=ROOT,
        env={**os.environ, **own, "SECRET_KEY": settings.SECRET_KEY},
        stdout=subprocess.PIPE,
        text=True,
        check=True,
    )
    counts = json.loads(ended.stdout)
    dear = {
        f"{method} {path}": each
        for (method, path, *_), each in zip(requests, counts, strict=True)
        if each[0] > MOST * each[-1]
    }
    assert dear == {}
