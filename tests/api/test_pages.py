"""Lists are read page by page: all pages together are the whole list, in its order, whatever the size of a page."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from django.db.models import F, QuerySet
from django.utils import timezone

from cases.domain.plans.lifecycle import PlanState
from cases.models import Canal, Kit, Membership, Person, Programme, RunningWork, ToothPlanVersion
from tests.api.judged import description
from tests.api.test_cases_treatment import PHONE, event, report
from tests.cast import API, client, problem
from tests.many import copies


def lists() -> dict[str, set[str]]:
    """What the query of each operation may hold that answers a list."""
    schemas = description()["components"]["schemas"]
    asked = {}
    for path in description()["paths"].values():
        reads = path.get("get", {"responses": {"200": {}}})
        content = reads["responses"]["200"].get("content", {}).get("application/json", {"schema": {}})
        shown = schemas.get(content["schema"].get("$ref", "").rpartition("/")[2], {})
        if "results" in shown.get("properties", {}):
            asked[reads["operationId"]] = {each["name"] for each in reads["parameters"] if each["in"] == "query"}
    return asked


def test_every_list_is_read_in_pages() -> None:
    assert len(lists()) > 25
    for name, asked in lists().items():
        assert "limit" in asked, name
        assert asked & {"cursor", "after"}, name


def pages(person: Person, address: str, limit: int) -> list[list[dict[str, Any]]]:
    read, at = [], f"{address}?limit={limit}"
    while at:
        page = client(person).get(at).json()
        read.append(page["results"])
        at = page["next"]
    return read


def hold(person: Person, address: str, name: str, count: int) -> list[Any]:
    """The whole list; pages of one, of two and of more are the same rows in the same order."""
    (whole,) = pages(person, address, 100)
    assert len(whole) == count
    for limit in (1, 2):
        read = pages(person, address, limit)
        assert [len(page) for page in read[:-1]] == [limit] * (len(read) - 1)
        assert [row[name] for page in read for row in page] == [row[name] for row in whole]
    problem(client(person).get(f"{address}?cursor=x"), 400, "not-understood")
    problem(client(person).get(f"{address}?limit=0"), 400, "not-understood")
    return [row[name] for row in whole]


def test_waiting_plans(programme: Programme, vale: Person, submitted: ToothPlanVersion) -> None:
    for number, row in enumerate(copies(submitted, 4, state=PlanState.WAITING)):
        same = QuerySet.filter(ToothPlanVersion.objects.all(), pk=row.pk)
        QuerySet.update(same, stops=F("stops") + number % 2, cautions=F("cautions") + number // 3)
    hold(vale, f"{API}/programmes/{programme.pk}/worklist", "version_id", 5)


def test_what_is_halted_then_what_waits_then_what_goes_on(
    programme: Programme, priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    now = timezone.now()
    waits = [(True, 3), (True, 1), (False, 9), (False, 9), (False, None), (False, None)]
    rows = list(copies(approved, len(waits)))
    for version, (halted, minutes) in zip(rows, waits, strict=True):
        report(priya, version.case, PHONE, event(version, 1, {"kind": "turn"}))
        since = None if minutes is None else now - timedelta(minutes=minutes)
        RunningWork.objects.filter(case=version.case).update(halted=halted, waiting_since=since, changed_at=now)
    read = hold(vale, f"{API}/programmes/{programme.pk}/running-work", "case_id", len(waits))
    assert read[:2] == [str(rows[0].case_id), str(rows[1].case_id)]
    assert set(read[4:]) == {str(row.case_id) for row in rows[4:]}


@pytest.mark.parametrize(
    "cursor", ["W10", "WzEsMSwieCIsIngiXQ", "bnVsbA", "%00", "Wzk5OTk5OTk5OTk5OTk5OTk5OSwxLCJ4IiwieCJd"]
)
def test_what_is_no_place_in_the_list_is_refused(programme: Programme, vale: Person, cursor: str) -> None:
    for name in ("worklist", "running-work", "people"):
        problem(client(vale).get(f"{API}/programmes/{programme.pk}/{name}?cursor={cursor}"), 400, "not-understood")


def test_people(programme: Programme, vale: Person, priya: Person, tom: Person) -> None:
    count = Membership.objects.filter(programme=programme).count()
    assert count > 2
    hold(vale, f"{API}/programmes/{programme.pk}/people", "role", count)


def test_lists_of_few_rows(programme: Programme, priya: Person, approved: ToothPlanVersion) -> None:
    case = approved.case_id
    count = Canal.objects.filter(tooth__case=case).count()
    assert count > 2
    for address, name, rows in (
        (f"{API}/cases/{case}/canals", "id", count),
        (f"{API}/cases/{case}/plan-versions", "id", 1),
        (f"{API}/programmes/{programme.pk}/kits", "id", Kit.objects.filter(programme=programme).count()),
        (f"{API}/teeth", "iso", len(client(priya).get(f"{API}/teeth").json()["results"])),
    ):
        hold(priya, address, name, rows)
        beyond = client(priya).get(f"{address}?limit=1&cursor={rows}").json()
        assert (beyond["results"], beyond["next"]) == ([], None)
        (*_, last) = pages(priya, address, 1)
        assert client(priya).get(beyond["previous"]).json()["results"] == last


@pytest.mark.parametrize(
    "query", ["limit=101", "limit=x", "limit=", "cursor=0", "cursor=-1", "cursor=9999999", "cursor="]
)
def test_what_is_no_page_of_few_rows_is_refused(priya: Person, query: str) -> None:
    problem(client(priya).get(f"{API}/teeth?{query}"), 400, "not-understood")
