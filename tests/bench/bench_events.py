"""Batches of events against bare inserts of the same rows, and replay time against the number of events; one run.

    python -m tests.bench.bench_events

Wall time, the least of several, so that other work on the machine counts little; the disk is waited for too.
DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from tests.bench.scratch import scratch

if TYPE_CHECKING:
    from cases.models import ToothPlanVersion

BATCHES, OF = 40, 10
COUNTS = (100, 1_000, 10_000)


def milliseconds(work: Callable[[], object], times: int = 3) -> float:
    def once() -> float:
        start = time.perf_counter()
        work()
        return (time.perf_counter() - start) * 1000

    return min(once() for _ in range(times))


def main() -> None:
    from django.db import connection, transaction

    from cases.domain.uuid7 import uuid7
    from cases.mapping import courses
    from cases.models import TreatmentEvent
    from cases.services.treatment import treatment
    from tests.bench.chair import Chair
    from tests.cast import API, client
    from tests.many import copies

    chair = Chair()
    every = list(copies(chair.version, 3 * BATCHES + len(COUNTS)))
    browser = client(chair.student)

    def record(version: object, count: int = OF, first_seq: int = 1, device: object = None) -> Sequence[TreatmentEvent]:
        batch = chair.batch(count, first_seq)
        return treatment.record(actor=chair.student, case=version.case, device=device or uuid7(), batch=batch)  # type: ignore[attr-defined, arg-type]

    rows = [record(version) for version in every[:BATCHES]]

    copied = zip(rows, every[BATCHES : 2 * BATCHES], strict=True)
    worked, device = iter(every[2 * BATCHES : 3 * BATCHES] * 2), str(uuid7())

    def bare() -> None:
        batch, version = next(copied)
        for row in batch:
            row.pk, row.case_id, row.version_id = uuid7(), version.case_id, version.pk
        with transaction.atomic():
            TreatmentEvent.objects.bulk_create(batch)

    def service() -> None:
        record(next(worked))

    def request() -> None:
        events = [told(one) for one in chair.batch(OF)]
        answer = browser.post(f"{API}/cases/{next(worked).case_id}/events", {"device": device, "events": events})
        assert answer.status_code == 200, answer.content

    print(f"{connection.vendor}: {BATCHES} batches of {OF} events, each to a case of its own")
    base = milliseconds(bare, BATCHES)
    # The plan of a case is read once by each process: here, before anything is measured.
    for version in every[2 * BATCHES : 3 * BATCHES]:
        courses.plan_facts(version.pk)
    for what, work in (("the service", service), ("the whole request", request)):
        took = milliseconds(work, BATCHES)
        print(
            f"  {what}: {1000 / took:.0f} batches a second, {took / base:.1f} times the {base:.2f} ms of bare inserts"
        )
    replays(record, every[3 * BATCHES :])


def replays(record: Callable[..., object], versions: Sequence[ToothPlanVersion]) -> None:
    """How long the fold of a case takes, and one more batch on it, by the number of its events."""
    from cases.domain.uuid7 import uuid7
    from cases.mapping import courses

    first: dict[str, float] = {}
    for count, version in zip(COUNTS, versions, strict=False):
        phone = uuid7()
        for seq in range(1, count, 200):
            record(version, min(200, count - seq + 1), seq, phone)
        events = list(version.case.events.order_by("position"))
        replay = milliseconds(lambda: courses.fold_case(version.case_id, events)) / count  # noqa: B023
        more = milliseconds(lambda: record(version), 3)  # noqa: B023
        first.setdefault("replay", replay)
        first.setdefault("more", more)
        print(
            f"  {count} events: replay {replay * count:.1f} ms, each {replay / first['replay']:.2f} times as long as "
            f"with {COUNTS[0]}; one more batch {more:.1f} ms, {more / first['more']:.1f} times as long"
        )


def told(one: object) -> dict[str, object]:
    """As a device sends it."""
    from planning.foundation.encoding import canonical_text

    given: dict[str, object] = json.loads(canonical_text(one))
    return {key: value for key, value in given.items() if key != "schema_version"} | {
        "device_time": "2026-03-05T12:00:00Z"
    }


if __name__ == "__main__":
    with scratch():
        main()
