"""Another system that fetches everything once a night, at a real server with the demonstration's cases."""

from __future__ import annotations

import http.client
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any
from urllib.request import Request, urlopen

import pytest

from frontend.server.environment import ROOT
from frontend.server.serve import Address
from tests.frontend.server.front.test_waiting import KEY, LOAD, System
from tests.reference import nightly


@pytest.fixture(scope="module")
def system(records: Path, served: Address) -> System:
    own = {**os.environ, "DATABASE_URL": f"sqlite:///{records}"}
    subprocess.run([sys.executable, "manage.py", "shell", "-c", LOAD], cwd=ROOT, env=own, check=True)
    return System(served)


def rows(folder: Path, table: str) -> dict[str, Any]:
    lines = (folder / f"{table}.ndjson").read_text(encoding="utf-8").splitlines()
    by_id = {row["id"]: row for row in map(json.loads, lines)}
    assert len(by_id) == len(lines)
    return by_id


def test_a_night_that_broke_off_is_gone_on_with_and_a_quiet_one_fetches_nothing(
    system: System, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def breaking(request: Request, timeout: float) -> Any:
        if "/events.ndjson" in request.full_url:
            raise http.client.IncompleteRead(b"")
        return urlopen(request, timeout=timeout)  # noqa: S310

    def fetch() -> None:
        nightly.fetch(system.address.url, KEY, system.programme, tmp_path)

    monkeypatch.setattr(nightly, "urlopen", breaking)
    with pytest.raises(http.client.IncompleteRead):
        fetch()
    assert not list(tmp_path.glob("*.ndjson"))
    monkeypatch.setattr(nightly, "urlopen", urlopen)
    system.chart(system.charted()[0], "changed between the two")
    fetch()
    cases = {case["id"]: case for case in system.cases()}
    assert rows(tmp_path, "cases").keys() == cases.keys()
    canals = {canal["id"]: canal["name"] for case in cases.values() for canal in case["canals"]}
    assert {id_: row["name"] for id_, row in rows(tmp_path, "canals").items()} == canals
    assert rows(tmp_path, "events")
    # What was fetched the first time is older than the change, and the changes from where it began name it.
    after = (tmp_path / "changes_after").read_text()
    (change,) = system.get(f"{system.changes}?after={after}")["results"]
    assert change["kind"] == "canal_changed"
    # Once more, and then there is nothing new: the file that was taken away is not fetched again.
    fetch()
    (tmp_path / "cases.ndjson").unlink()
    fetch()
    assert not (tmp_path / "cases.ndjson").exists()
    assert not list(tmp_path.glob("*.part"))
