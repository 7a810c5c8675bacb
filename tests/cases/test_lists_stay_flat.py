"""What the supervisors' two lists read does not grow with the cases there are, nor with how many of them wait.

Counted, not timed: on SQLite the instructions of its machine, on PostgreSQL the rows of the list's own table.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from cases.domain.plans.lifecycle import PlanState
from cases.models import Person, PlanTexts, RunningWork, ToothPlanVersion
from cases.models.prepared import Prepared
from cases.queries import worklist
from tests.many import at_work, copies

MOST = 5
FEW, MANY = 10, 200
Ask = Callable[[], object]

# PostgreSQL reads a table of few rows whole whatever indexes there are; here it takes the plan that it has for many.
DEAR = ("seqscan", "bitmapscan", "hashjoin", "mergejoin", "sort")
LISTED = {"cases_toothplanversion", "cases_runningwork"}


@dataclass(frozen=True, slots=True)
class Effort:
    queries: int
    read: int

    def no_more_than(self, before: Effort) -> bool:
        """A tenth is left to SQLite, where the end of a page is worth an instruction; the rows grow twentyfold."""
        return self.queries == before.queries and self.read <= before.read * 1.1


@pytest.fixture(autouse=True)
def short_lists(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(worklist, "MOST_WAITING", MOST)
    monkeypatch.setattr(worklist, "MOST_RUNNING", MOST)
    # Put into SQL once, with how many are listed.
    for name in ("_SHOWN_WAITING", "_SHOWN_AND_WAITS", "_SHOWN_AND_GOES_ON"):
        monkeypatch.setattr(worklist, name, Prepared(getattr(worklist, name).query))


@pytest.fixture(autouse=True)
def whole_tables_are_dear(db: None) -> None:
    if connection.vendor == "postgresql":
        with connection.cursor() as cursor:
            for way in DEAR:
                cursor.execute(f"SET LOCAL enable_{way} = off")


@pytest.fixture(autouse=True)
def no_texts(approved: ToothPlanVersion) -> None:
    """Copies carry none: the lists never read them, and they are long."""
    approved.texts = PlanTexts.of(approved, plan_input="{}", plan="{}")


@pytest.fixture
def waiting(vale: Person, approved: ToothPlanVersion) -> Ask:
    programme = approved.case.programme_id

    def both() -> object:
        page = worklist.waiting(vale, programme, timezone.now())
        return page.tag, page.results

    return both


@pytest.fixture
def running(vale: Person, approved: ToothPlanVersion) -> Ask:
    programme = approved.case.programme_id

    def both() -> object:
        page = worklist.running(vale, programme, timezone.now())
        return page.tag, page.results

    return both


def test_the_worklist_reads_no_more_when_more_plans_wait_and_more_cases_are_there(
    approved: ToothPlanVersion, waiting: Ask
) -> None:
    list(copies(approved, FEW, state=PlanState.WAITING))
    before = effort(waiting)
    list(copies(approved, MANY, state=PlanState.WAITING))
    list(copies(approved, MANY))
    assert effort(waiting).no_more_than(before)


@pytest.mark.parametrize("waits", [True, False])
def test_running_work_reads_no_more_when_there_are_more_chairs_and_more_cases(
    approved: ToothPlanVersion, running: Ask, waits: bool
) -> None:
    at_work([version.case for version in copies(approved, FEW)], waits=waits)
    before = effort(running)
    at_work([version.case for version in copies(approved, MANY)], waits=waits)
    finished = [version.case for version in copies(approved, MANY)]
    at_work(finished, waits=waits)
    RunningWork.objects.filter(case__in=finished).update(finished=True)
    assert effort(running).no_more_than(before)


def test_both_lists_are_read_off_their_indexes(approved: ToothPlanVersion, waiting: Ask, running: Ask) -> None:
    list(copies(approved, FEW, state=PlanState.WAITING))
    assert "plans_that_wait" in plans_of(waiting)
    plans = plans_of(running)
    assert "work_that_waits_longest" in plans
    assert "work_that_goes_on" in plans


def effort(ask: Ask) -> Effort:
    queries = _queries(ask)
    if connection.vendor == "sqlite":
        return Effort(queries=len(queries), read=_instructions(ask))
    with connection.cursor() as cursor:
        cursor.execute("ANALYZE")
    read = sum(_rows(plan) for plan in _plans(queries))
    assert read, "No plan names a list's own table."
    return Effort(queries=len(queries), read=read)


def plans_of(ask: Ask) -> str:
    """What the database says it does for the queries."""
    queries = _queries(ask)
    if connection.vendor == "postgresql":
        return json.dumps(list(_plans(queries)))
    with connection.cursor() as cursor:
        return repr([cursor.execute(f"EXPLAIN QUERY PLAN {query}").fetchall() for query in queries])


def _queries(ask: Ask) -> list[str]:
    with CaptureQueriesContext(connection) as seen:
        ask()
    return [query["sql"] for query in seen.captured_queries]


def _instructions(ask: Ask) -> int:
    """How many instructions SQLite's machine carries out: every row that is looked at costs some."""
    count = 0

    def tick() -> None:
        nonlocal count
        count += 1

    connection.connection.set_progress_handler(tick, 1)
    try:
        ask()
    finally:
        connection.connection.set_progress_handler(None, 0)
    return count


def _plans(queries: list[str]) -> Iterator[dict[str, Any]]:
    with connection.cursor() as cursor:
        for query in queries:
            cursor.execute(f"EXPLAIN (ANALYZE, FORMAT JSON) {query}")
            yield cursor.fetchone()[0][0]["Plan"]


def _rows(plan: dict[str, Any]) -> int:
    """Rows of a list's own table that the plan read, also those it threw away."""
    listed = plan.get("Alias") in LISTED
    here = (plan["Actual Rows"] + plan.get("Rows Removed by Filter", 0)) * plan["Actual Loops"] if listed else 0
    return int(here) + sum(_rows(part) for part in plan.get("Plans", ()))
