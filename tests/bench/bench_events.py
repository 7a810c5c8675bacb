"""Batches of events against bare inserts of the rows they leave and an empty request (e), by what was done before.

    python -m tests.bench.bench_events

Wall time, the disk waited for. Cases have histories: notes between the steps. A batch leaves its events and a row of
the feed for each. What it takes over the inserts of its events alone, the unit before there was a feed, stands below.
DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

import gzip
import json
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import TYPE_CHECKING

from tests.bench.empty import empty_request
from tests.bench.rows import KB, Row, alone, in_turns
from tests.bench.scratch import scratch

if TYPE_CHECKING:
    from cases.models import ToothPlanVersion, TreatmentEvent
    from cases.services.treatment.treatment import ReceivedEvent
    from tests.bench.chair import Chair

TIMES, OF = 60, 10
COUNTS = (100, 1_000, 10_000)


class Worked:
    """A case with so many events before it, and what is done to it."""

    def __init__(self, chair: Chair, version: ToothPlanVersion, before: int) -> None:
        from cases.domain.uuid7 import uuid7
        from tests.cast import API, client

        self.chair, self.version, self.phone, self.seq = chair, version, uuid7(), 1
        self.browser, self.at = client(chair.student), f"{API}/cases/{version.case_id}/events"
        self.last = ""
        while self.seq < before:
            self.record(chair.quiet(min(200, before - self.seq + 1), self.seq))
        self.record(chair.batch(1, self.seq))
        self.rows = self.record(self.batch())
        self.made: list[ReceivedEvent] = []

    def record(self, batch: Sequence[ReceivedEvent]) -> Sequence[TreatmentEvent]:
        from cases.services.treatment import treatment

        self.seq += len(batch)
        stored = treatment.record(actor=self.chair.student, case=self.version.case, device=self.phone, batch=batch)
        self.last = str(stored[-1].pk)
        return stored

    def batch(self) -> list[ReceivedEvent]:
        """A step, and what is said around it."""
        return [*self.chair.batch(1, self.seq), *self.chair.quiet(OF - 1, self.seq + 1)]

    def make(self) -> None:
        """A service is handed its batch: making it is not its work."""
        self.made = self.batch()

    def service(self) -> None:
        self.record(self.made)

    def request(self) -> int:
        events = [event_body(event) for event in self.batch()]
        self.seq += OF
        body = {"device_id": str(self.phone), "after_id": self.last, "events": events}
        answer = self.browser.post(self.at, body, headers={"Accept-Encoding": "gzip"})
        assert answer.status_code == 200, answer.content
        self.last = json.loads(gzip.decompress(answer.content))["events"][-1]["id"]
        return len(answer.content)


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from django.db import transaction

    from cases.domain.feed import FeedKind
    from cases.domain.uuid7 import uuid7
    from cases.models import Change, TreatmentEvent
    from tests.bench.chair import Chair
    from tests.many import copies

    chair, empty = Chair(), empty_request()
    bare_case, *every = copies(chair.version, 1 + len(COUNTS))
    for count, version in zip(COUNTS, every, strict=True):
        case = Worked(chair, version, count)
        rows, place = list(case.rows), iter(range(10, 1_000_000))

        def bare(*, feed: bool) -> None:
            for row in rows:  # noqa: B023
                row.pk, row.case_id, row.version_id = uuid7(), bare_case.case_id, bare_case.pk
                row.position = row.device_seq = next(place) + count * 1_000  # noqa: B023
            with transaction.atomic():
                TreatmentEvent.objects.bulk_create(rows)  # noqa: B023
                if feed:
                    Change.objects.bulk_create([told(row) for row in rows])  # noqa: B023

        def told(row: TreatmentEvent) -> Change:
            of = {"programme_id": bare_case.case.programme_id, "case_id": row.case_id, "actor_id": row.actor_id}
            return Change(kind=FeedKind.EVENT, event=row.kind, subject_id=row.pk, **of)

        works: dict[str, Callable[[], object]] = {
            "bare": partial(bare, feed=True),
            "events": partial(bare, feed=False),
            "empty": empty,
            "make": case.make,
            "service": case.service,
            "request": case.request,
        }
        took = in_turns(works, TIMES)
        name = f"{OF} events after {count:,d}"
        yield took["service"].over(took["bare"], what=f"{name}, the service", against="bare inserts", goal=2)
        yield took["service"].over(took["events"], what=f"{name}, by its events alone", against="bare inserts")
        yield took["request"].over(took["empty"], what=f"{name}, the request", against="e")
        yield Row(what=f"{name}, the answer over the wire", now=case.request() / KB, against="kB", goal=5)


def event_body(event: object) -> dict[str, object]:
    """As a device sends it."""
    from planning.foundation.encoding import canonical_text

    body: dict[str, object] = json.loads(canonical_text(event))
    return {key: value for key, value in body.items() if key != "schema_version"} | {
        "device_time": "2026-03-05T12:00:00Z"
    }


if __name__ == "__main__":
    alone("events", rows())
