"""The supervisors' two lists with 10, 1,000 and 100,000 cases: ratios, one run, the least of several.

    python -m tests.bench.bench_lists

Once with fifty plans that wait and fifty running chairs whatever else there is, once with all of them waiting. Plans
carry no texts here: the lists never read them. DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

from tests.bench.scratch import scratch

COUNTS = (10, 1_000, 100_000)
BUSY = 50
TIMES = 7


def milliseconds(work: Callable[[], object]) -> float:
    def once() -> float:
        start = time.perf_counter()
        work()
        return (time.perf_counter() - start) * 1000

    once()
    return min(once() for _ in range(TIMES))


def main() -> None:
    from django.db import connection

    from cases.domain.plan_life import PlanState
    from tests.bench.chair import Chair
    from tests.cast import API, client
    from tests.many import copies

    chair = Chair()
    chair.version.input_text = chair.version.output_text = "{}"
    browser = client(chair.supervisor)
    at = f"{API}/programmes/{chair.programme.pk}"
    first: dict[str, float] = {}
    there = 0
    print(f"{connection.vendor}: {BUSY} at most wait and are worked on, whatever else there is")
    for count in COUNTS:
        for number, version in enumerate(copies(chair.version, count - there)):
            if there + number < BUSY:
                _at_work(version)
        there = count
        if count == COUNTS[0]:
            list(copies(chair.version, BUSY, state=PlanState.WAITING))
        _refresh()
        _print(browser, at, count, first)
    print(f"{connection.vendor}: everything waits")
    from cases.models import RunningWork, ToothPlanVersion

    _at_work_all(chair)
    from django.db.models.query import QuerySet

    waiting = ToothPlanVersion.objects.exclude(pk=chair.version.pk)
    QuerySet.update(waiting, state=PlanState.WAITING)
    _refresh()
    print(f"  {waiting.count()} plans, {RunningWork.objects.count()} chairs")
    _print(browser, at, COUNTS[-1], first)


def _print(browser: Any, at: str, count: int, first: dict[str, float]) -> None:
    for what in ("worklist", "running-work"):
        took = milliseconds(lambda: browser.get(f"{at}/{what}"))  # noqa: B023
        told = browser.get(f"{at}/{what}").json()
        base = first.setdefault(what, took / max(len(told["results"]), 1))
        each = took / max(len(told["results"]), 1)
        print(
            f"  {count:6d} cases: {what:13s} {took:7.1f} ms for {len(told['results']):3d} rows, "
            f"{each / base:.2f} times as long for each row as in the smallest"
        )


def _at_work(version: Any) -> None:
    _bulk([version.case])


def _at_work_all(chair: Any) -> None:
    from cases.models import Case, RunningWork

    rest = Case.objects.filter(programme=chair.programme).exclude(pk__in=RunningWork.objects.values("pk"))
    _bulk(rest)


def _bulk(cases: Any) -> None:
    from django.utils import timezone

    from cases.models import RunningWork
    from planning.encoding import canonical_text

    canal = {"canal": "P", "state": "hold_point", "hold_point": "length", "out_of_band": None}
    text = canonical_text({"canals": [canal] * 4, "now": None, "missing": [], "check_due": False})
    now = timezone.now()
    RunningWork.objects.bulk_create(
        (
            RunningWork(
                case=case,
                programme_id=case.programme_id,
                position=1,
                halted=False,
                finished=False,
                waiting_since=now,
                changed_at=now,
                text=text,
            )
            for case in cases
        ),
        batch_size=2_000,
    )


def _refresh() -> None:
    from django.db import connection

    with connection.cursor() as cursor:
        cursor.execute("ANALYZE")


if __name__ == "__main__":
    with scratch():
        main()
