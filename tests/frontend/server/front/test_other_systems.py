"""Other systems that wait for what changes, or fetch everything once a night, at a real server with the
demonstration's cases.
"""

from __future__ import annotations

import http.client
import json
import os
import select
import subprocess
import sys
import time
from contextlib import ExitStack, closing
from pathlib import Path
from typing import Any
from urllib.request import Request, urlopen

import pytest

from frontend.server import serve
from frontend.server.environment import ROOT
from frontend.server.front.lanes import READS
from frontend.server.front.waiting import MOST_OF_ONE
from frontend.server.serve import Address
from tests.frontend.server.front.running import running
from tests.reference import feed_copy, nightly

KEY = "fourthcanal_01930000000070008000000000000001_" + "0f" * 32
# An answer that does not come fails by this.
PATIENCE_S = 120
LOAD = "from cases.services.demo import cases; cases.load()"


class System:
    """Another system, with the demonstration's key."""

    def __init__(self, address: Address) -> None:
        self.address = address
        self.programme = self.get("/api/v1/key")["programmes"][0]["id"]
        self.changes = f"/api/v1/programmes/{self.programme}/changes"

    def ask(self, path: str, method: str = "GET", body: Any = None, **headers: str) -> http.client.HTTPConnection:
        """The line of a question just sent."""
        line = http.client.HTTPConnection(self.address.host, self.address.port, timeout=PATIENCE_S)
        more = {"Authorization": f"Bearer {KEY}", "Content-Type": "application/json"}
        sent = None if body is None else json.dumps(body)
        line.request(method, path, sent, more | {name.replace("_", "-"): value for name, value in headers.items()})
        return line

    def get(self, path: str) -> Any:
        with closing(self.ask(path)) as line:
            answer = line.getresponse()
            assert answer.status == 200, answer.read()
            return json.load(answer)

    def status(self, wait_s: int) -> int:
        """What one who waits in vain is answered."""
        with closing(self.waits(wait_s)) as line:
            return line.getresponse().status

    def waits(self, wait_s: int = 30) -> http.client.HTTPConnection:
        """The line of one who waits for the next change."""
        return self.ask(f"{self.changes}?after={self.last()}&wait_s={wait_s}")

    def last(self) -> str:
        """After which all that is new will come."""
        last: str = self.get(f"{self.changes}?after=last")["next"]
        return last

    def full(self, lines: ExitStack) -> list[http.client.HTTPConnection]:
        """The lines of as many as may wait, all of them waiting: one more has been refused."""
        # Sent at once: none has waited in vain before the last is there.
        asked = f"{self.changes}?after={self.last()}&wait_s=30"
        those = [lines.enter_context(closing(self.ask(asked))) for _ in range(MOST_OF_ONE)]
        end = time.monotonic() + PATIENCE_S
        while self.status(1) != 503:
            assert time.monotonic() < end
            # Who asked meanwhile whether there is room may have taken the place of one of them.
            refused, _, _ = select.select([line.sock for line in those], [], [], 0)
            those = [line for line in those if line.sock not in refused]
            those += [lines.enter_context(closing(self.waits())) for _ in refused]
        return those

    def until_there_is_room(self) -> None:
        end = time.monotonic() + PATIENCE_S
        while self.status(1) != 200:
            assert time.monotonic() < end

    def chart(self, case: dict[str, Any], point: str) -> None:
        """Changes a case: the reference point of its first canal."""
        canal = case["canals"][0]
        with closing(self.ask(f"/api/v1/canals/{canal['id']}", "PATCH", {"reference_point": point})) as line:
            answer = line.getresponse()
            assert answer.status == 200, answer.read()

    def cases(self) -> list[dict[str, Any]]:
        listed = self.get(f"/api/v1/programmes/{self.programme}/cases?limit=100")["results"]
        return [self.get(f"/api/v1/cases/{case['id']}") for case in listed]

    def charted(self) -> list[dict[str, Any]]:
        """Those with canals."""
        return [case for case in self.cases() if case["canals"]]


@pytest.fixture(scope="module")
def system(records: Path, served: Address) -> System:
    own = {**os.environ, "DATABASE_URL": f"sqlite:///{records}"}
    subprocess.run([sys.executable, "manage.py", "shell", "-c", LOAD], cwd=ROOT, env=own, check=True)
    return System(served)


def test_who_waits_is_answered_once_something_changes(system: System) -> None:
    with closing(system.waits()) as line:
        system.chart(case := system.charted()[0], "one")
        page = json.load(line.getresponse())
    assert [(change["kind"], change["case_id"]) for change in page["results"]] == [("canal_changed", case["id"])]


def test_who_waits_in_vain_is_answered_in_time_with_where_to_go_on(system: System) -> None:
    began = time.monotonic()
    with closing(system.waits(1)) as line:
        answer = line.getresponse()
        page = json.load(answer)
    assert time.monotonic() - began >= 1
    assert (page["results"], page["next"]) == ([], system.get(f"{system.changes}?after=last")["next"])
    assert answer.headers["Nothing-New"] is None


def test_a_page_that_is_known_is_waited_on_until_it_is_another(system: System) -> None:
    with closing(system.ask(f"{system.changes}?limit=1000")) as line:
        answer = line.getresponse()
        known = json.load(answer)
    asked = f"{system.changes}?limit=1000&wait_s=30"
    with closing(system.ask(asked, If_None_Match=answer.headers["ETag"])) as line:
        system.chart(system.charted()[0], "another")
        page = json.load(line.getresponse())
    assert len(page["results"]) == len(known["results"]) + 1


def test_more_who_wait_than_there_are_threads_hold_nobody_up_and_too_many_are_told_to_come_back(
    system: System,
) -> None:
    assert READS.at_once < MOST_OF_ONE
    with ExitStack() as lines:
        those = system.full(lines)
        # Others go on being answered, by the reading threads and in this lane too.
        assert system.get("/api/v1/teeth")
        assert system.get(system.changes)["results"]
        refused = lines.enter_context(closing(system.waits())).getresponse()
        assert (refused.status, int(refused.headers["Retry-After"]) > 0) == (503, True)
        system.chart(system.charted()[0], "a third")
        assert {line.getresponse().status for line in those} == {200}


def test_who_leaves_makes_room(system: System) -> None:
    with ExitStack() as lines:
        system.full(lines)
    # The server learns of it when it looks.
    system.until_there_is_room()


def test_who_waits_is_answered_before_the_server_ends(records: Path, system: System) -> None:
    with running(records) as (address, server), ExitStack() as lines:
        ending = System(address)
        those = ending.full(lines)
        # In the time that is given to those who are being answered.
        serve.stop(server)
        assert [json.load(line.getresponse())["results"] for line in those] == [[]] * MOST_OF_ONE


def test_a_copy_is_brought_up_to_date_by_what_changed_alone(system: System, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []

    def counting(request: Request, timeout: float) -> Any:
        asked.append(request.full_url)
        return urlopen(request, timeout=timeout)  # noqa: S310

    monkeypatch.setattr(feed_copy, "urlopen", counting)

    def copied(copy: Any) -> Any:
        asked.clear()
        return feed_copy.copied(system.address.url, KEY, system.programme, copy)

    copy = copied(None)
    cases = {case["id"]: case for case in system.cases()}
    assert copy["cases"] == cases
    charted = system.charted()
    for number in range(30):
        system.chart(charted[number % len(charted)], f"cusp {number}")
    copy = copied(copy)
    assert copy["cases"] == {case["id"]: case for case in system.cases()} != cases
    assert len(asked) == 1 + len(charted) <= 32
    copied(copy)
    assert len(asked) == 1


# --- once a night ---


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
