"""One simulated device: it writes what was done to its outbox, then sends in order until the server shows it back.

The same rules as the phone's: one batch under way, entries leave on acknowledgement alone, and the outbox survives.
"""

from __future__ import annotations

import json
import os
import time
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from random import Random
from typing import Any

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import EventPayload
from cases.domain.progress.case_state import CaseState, Sheets
from cases.domain.progress.course import fold
from cases.domain.uuid7 import uuid7
from planning.foundation.encoding import Mode, decode
from planning.techniques.technique import Setting
from tests.faults.deeds import Owner, deed
from tests.faults.line import Line, NoAnswer, NoServer, Request

BATCH = 8
MOST_DEEDS = 3  # between two tries to send
DOWN_S = 1  # where nobody listens, a device waits a little
Event = dict[str, Any]


@dataclass(slots=True)
class Outbox:
    """A journal on the disk: a line for each event, and one for each acknowledgement."""

    file: Path
    written: list[Event] = field(default_factory=list)
    acknowledged: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        """Reads what survived."""
        for line in self.file.read_text(encoding="utf-8").splitlines() if self.file.exists() else ():
            entry = json.loads(line)
            if "acknowledged" in entry:
                self.acknowledged.update(entry["acknowledged"])
            elif "lost" in entry:
                self.acknowledged.difference_update(entry["lost"])
            else:
                self.written.append(entry)

    @property
    def waiting(self) -> list[Event]:
        return [event for event in self.written if event["id"] not in self.acknowledged]

    def write(self, event: Event) -> None:
        self._append(event)
        self.written.append(event)

    def acknowledge(self, ids: set[str]) -> None:
        self._append({"acknowledged": sorted(ids)})
        self.acknowledged |= ids

    def lose(self, ids: set[str]) -> None:
        """A server that was brought back from a copy has lost what it had acknowledged: it waits once more."""
        self._append({"lost": sorted(ids)})
        self.acknowledged -= ids

    def _append(self, entry: Event) -> None:
        with self.file.open("a", encoding="utf-8") as journal:
            journal.write(json.dumps(entry) + "\n")
            journal.flush()
            os.fsync(journal.fileno())


class Device:
    """Works on one case. A seed fixes its dice; how the devices fall in with each other is the machine's."""

    def __init__(
        self, name: str, owner: Owner, case_id: str, plan: tuple[str, Sheets], line: Line, folder: Path
    ) -> None:
        self.name, self.owner, self.case_id, self.line = name, owner, case_id, line
        self.hash, self.sheets = plan
        self.id = str(uuid7())
        self.dice: Random = line.dice
        self.outbox = Outbox(folder / f"{name}.jsonl")
        self.opened: list[Event] = []
        """The events of the case when it was opened on this device: the plan is in force."""
        self.seen: list[Event] = []
        """The events of the case as the server told them last."""
        self.position = 0

    def opens(self, treatment: Event) -> None:
        """The case is looked at while the line is good, before the work begins."""
        self.opened = self.seen = treatment["events"]
        self.position = treatment["position"]

    def turn(self) -> None:
        """Some things are done, then one try to send. Now and then the device falls and starts anew from its outbox."""
        if self.dice.random() < 0.05:
            self.outbox = Outbox(self.outbox.file)
            self.seen, self.position = self.opened, 0
            self.line.traffic.count["device_restarted"] += 1
        for _ in range(self.dice.randint(0, MOST_DEEDS)):
            self.do()
        self.send()

    def do(self) -> None:
        """One thing is done, as the present state of the work suggests it."""
        canal, node, payload = deed(self.course(), self.happened(), self.owner, self.dice)
        event = {
            "id": str(uuid7()),
            "device_seq": len(self.outbox.written) + 1,
            "seen_position": self.position,
            "plan_hash": self.hash,
            "device_time": datetime.now(UTC).isoformat(),
            "canal": canal,
            "node": node,
            "payload": payload,
        }
        self.outbox.write(event)

    def send(self) -> None:
        """One batch, at most; in one of five the first entry is left out by mistake, which the server must notice."""
        waiting = self.outbox.waiting
        if not waiting:
            return
        skips = len(waiting) > 1 and not self.line.good and self.dice.random() < 0.2
        batch = waiting[1:] if skips else waiting[: self.dice.randint(1, BATCH)]
        try:
            status, answer = self.line.post(self._request(batch))
        except NoAnswer as why:
            time.sleep(DOWN_S if isinstance(why, NoServer) else 0)
            return
        self.line.traffic.count[f"answered_{status}"] += 1
        if status == 200:
            self._take(answer, batch)
        elif skips:
            assert answer["type"].endswith("/sequence-gap"), answer
            assert f"Expected event {waiting[0]['device_seq']} " in answer["errors"][0]["detail"], answer
        else:
            raise AssertionError(f"{self.name}: {status} {answer}")

    def compare(self, treatment: Event) -> set[str]:
        """What was acknowledged is held against what the server shows now; what it has lost is sent again."""
        self.seen, self.position = treatment["events"], treatment["position"]
        lost = self.outbox.acknowledged - {event["id"] for event in self.seen}
        if lost:
            self.outbox.lose(lost)
        return lost

    def _take(self, treatment: Event, batch: list[Event]) -> None:
        """Only what the server shows back is taken out."""
        self.seen, self.position = treatment["events"], treatment["position"]
        shown = {event["id"] for event in self.seen}
        self.outbox.acknowledge({event["id"] for event in batch} & shown)

    def _request(self, batch: list[Event]) -> Request:
        token = "t" * 32
        return Request(
            path=f"/api/v1/cases/{self.case_id}/events",
            body=json.dumps({"device_id": self.id, "events": batch}).encode(),
            headers={
                "Host": f"127.0.0.1:{self.line.traffic.port}",
                "Content-Type": "application/json",
                "Cookie": f"sessionid={self.owner.session}; csrftoken={token}",
                "X-CSRFToken": token,
            },
            ids=tuple(event["id"] for event in batch),
        )

    # --- what the device makes of it ---

    def happened(self) -> list[CourseEvent]:
        """What the server told, then what it has not shown yet."""
        shown = {event["id"] for event in self.seen}
        mine = [
            event | {"actor": {"id": self.owner.person_id}} for event in self.outbox.written if event["id"] not in shown
        ]
        return [_happened(event) for event in [*self.seen, *mine]]

    def course(self) -> CaseState:
        return fold({self.hash: self.sheets}, self.happened(), setting=Setting.EXTRACTED)


def _happened(event: Event) -> CourseEvent:
    return CourseEvent(
        id=event["id"],
        actor=event["actor"]["id"],
        plan=event["plan_hash"],
        canal=event["canal"],
        node=event["node"],
        payload=decode(EventPayload, event["payload"], Mode.KEPT),
    )
