"""The supervisors' two lists with 10, 1,000 and 100,000 cases: ratios, one run, the least of several.

    python -m tests.bench.bench_lists

First five plans wait and five chairs are at work whatever else there is, then everything waits and is at work: lists
are cut off, so that what they cost stays. Plans carry no texts here: the lists never read them. DATABASE_URL names an
empty database; without it, SQLite.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

from tests.bench.scratch import scratch

COUNTS = (10, 1_000, 100_000)
BUSY = 5
TIMES = 20
LISTS = ("worklist", "running-work")


def milliseconds(work: Callable[[], object]) -> float:
    def once() -> float:
        start = time.perf_counter()
        work()
        return (time.perf_counter() - start) * 1000

    once()
    return min(once() for _ in range(TIMES))


class Lists:
    """Asks for both lists as a browser would; each of them is set against the first time it was asked for."""

    def __init__(self, supervisor: Any, programme: Any) -> None:
        from tests.cast import API, client

        self.browser = client(supervisor)
        self.at = f"{API}/programmes/{programme.pk}"
        self.first: dict[str, float] = {}

    def compare(self, says: str) -> None:
        for what in LISTS:
            took_ms = milliseconds(lambda: self.browser.get(f"{self.at}/{what}"))  # noqa: B023
            page = self.browser.get(f"{self.at}/{what}").json()
            ratio = took_ms / self.first.setdefault(what, took_ms)
            rows = f"{len(page['results']):3d} rows{' and more' if page['more'] else ''}"
            print(f"  {says}: {what:12s} {ratio:5.2f} times the first ({took_ms:6.1f} ms, {rows})", flush=True)


def main() -> None:
    from django.db import connection

    from cases.models import PlanTexts
    from tests.bench.chair import Chair

    chair = Chair()
    chair.version.texts = PlanTexts.of(chair.version, given="{}", plan="{}")
    print(f"{connection.vendor}: {BUSY} plans wait and {BUSY} chairs are at work, whatever else there is")
    _few_wait(chair, Lists(chair.supervisor, chair.programme))
    print(f"{connection.vendor}: everything waits and is at work")
    _all_wait(chair, Lists(chair.supervisor, chair.programme))


def _few_wait(chair: Any, lists: Lists) -> None:
    from cases.domain.plans.lifecycle import PlanState
    from tests.many import at_work, copies

    list(copies(chair.version, BUSY, state=PlanState.WAITING))
    at_work([version.case for version in copies(chair.version, BUSY)], waits=True)
    there = BUSY + BUSY
    for count in COUNTS:
        list(copies(chair.version, count - there))
        there = count
        _refresh()
        lists.compare(f"{count:7,d} cases")


def _all_wait(chair: Any, lists: Lists) -> None:
    """All but the chair's own case and those that wait by now; they have the same content."""
    from django.db.models.query import QuerySet

    from cases.domain.plans.lifecycle import PlanState
    from cases.models import Case, RunningWork, ToothPlanVersion
    from tests.many import at_work

    mine = Case.objects.filter(programme=chair.programme).exclude(pk=chair.version.case_id).order_by("pk")
    for count in COUNTS[1:]:
        some = mine[:count]
        busy = set(RunningWork.objects.values_list("pk", flat=True))
        QuerySet.update(ToothPlanVersion.objects.filter(case__in=some.values("pk")), state=PlanState.WAITING)
        at_work((case for case in some if case.pk not in busy), waits=True)
        _refresh()
        lists.compare(f"{count:7,d} of each")


def _refresh() -> None:
    from django.db import connection

    with connection.cursor() as cursor:
        cursor.execute("ANALYZE")


if __name__ == "__main__":
    with scratch():
        main()
