"""The supervisors' two lists with 10, 1,000 and 100,000 cases, in times of the first.

    python -m tests.bench.bench_lists

First five plans wait and five chairs are at work whatever else there is, then everything waits and is at work: lists
are cut off, so that what they cost stays. Plans carry no texts here: the lists never read them. DATABASE_URL names an
empty database; without it, SQLite.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Any

from tests.bench.rows import Row, Took, alone, in_turns
from tests.bench.scratch import scratch

COUNTS = (10, 1_000, 100_000)
BUSY = 5
TIMES = 20
LISTS = ("worklist", "running-work")


class Lists:
    """Asks for both lists as a browser would; each of them is set against the first time it was asked for."""

    def __init__(self, supervisor: Any, programme: Any) -> None:
        from tests.cast import API, client

        self.browser = client(supervisor)
        self.at = f"{API}/programmes/{programme.pk}"
        self.first: dict[str, Took] = {}

    def compare(self, with_this_much: str) -> Iterator[Row]:
        for what, took in in_turns({what: partial(self.get, what) for what in LISTS}, TIMES).items():
            first = self.first.setdefault(what, took)
            count = len(self.get(what).json()["results"])
            yield took.over(first, what=f"{what}, {with_this_much}, {count} rows", against="the first")

    def get(self, what: str) -> Any:
        return self.browser.get(f"{self.at}/{what}")


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from cases.models import PlanTexts
    from tests.bench.chair import Chair

    chair = Chair()
    chair.version.texts = PlanTexts.of(chair.version, plan_input="{}", plan="{}")
    yield from _few_wait(chair, Lists(chair.supervisor, chair.programme))
    yield from _all_wait(chair, Lists(chair.supervisor, chair.programme))


def _few_wait(chair: Any, lists: Lists) -> Iterator[Row]:
    from cases.domain.plans.lifecycle import PlanState
    from tests.many import at_work, copies

    list(copies(chair.version, BUSY, state=PlanState.WAITING))
    at_work([version.case for version in copies(chair.version, BUSY)], waits=True)
    there = BUSY + BUSY
    for count in COUNTS:
        list(copies(chair.version, count - there))
        there = count
        _refresh()
        yield from lists.compare(f"{BUSY} of {count:,d} busy")


def _all_wait(chair: Any, lists: Lists) -> Iterator[Row]:
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
        yield from lists.compare(f"{count:,d} busy")


def _refresh() -> None:
    from django.db import connection

    with connection.cursor() as cursor:
        cursor.execute("ANALYZE")


if __name__ == "__main__":
    alone("lists", rows())
