"""What a page of changes costs, set against an empty request, and how much a system asks to bring its copy up to date.

    python -m tests.bench.bench_feed

DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any
from urllib.request import Request

from tests.bench.empty import empty_request
from tests.bench.rows import Row, alone, in_turns
from tests.bench.scratch import scratch

CASES, CHANGED, A_CASE = 10_000, 30, 10
TIMES = 40
GOALS = {"nothing new": 3.0}
MOST_REQUESTS = 32


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from cases.domain.feed import FeedKind
    from cases.models import Case, Change
    from tests.bench.chair import Chair
    from tests.cast import API, client
    from tests.many import copies

    chair, empty = Chair(), empty_request()
    list(copies(chair.version, CASES - 1))
    mine = list(Case.objects.filter(programme=chair.programme).order_by("pk"))
    same = {"programme_id": chair.programme.pk, "kind": FeedKind.CASE_CHANGED, "actor_id": chair.student.pk}
    of_years = (Change(case=case, subject_id=case.pk, **same) for case in mine for _ in range(A_CASE))
    Change.objects.bulk_create(of_years, batch_size=5000)
    system, at = client(chair.supervisor), f"{API}/programmes/{chair.programme.pk}/changes"
    while system.get(at, {"after": "last"}).json()["next"].partition("-")[0] != str(Change.objects.count()):
        pass  # whoever reads first gives the positions
    last = system.get(at, {"after": "last"}).json()["next"]
    works = {
        "empty": empty,
        "100 changes": lambda: system.get(at),
        "1,000 changes": lambda: system.get(at, {"limit": 1000}),
        "nothing new": lambda: system.get(at, {"after": last}),
    }
    took = in_turns(works, TIMES)
    for name in list(took)[1:]:
        yield took[name].over(took["empty"], what=name, against="e", goal=GOALS.get(name))
    Change.objects.bulk_create(Change(case=case, subject_id=case.pk, **same) for case in mine[:CHANGED])
    asked = _asked(system, str(chair.programme.pk), last)
    what = f"{CHANGED} changes in {CASES:,d} cases, copied"
    yield Row(what=what, now=asked, against="requests", goal=MOST_REQUESTS)


def _asked(system: Any, programme: str, after: str) -> int:
    """How often a system asks that had copied everything up to there."""
    from unittest import mock

    from tests.reference import feed_copy

    asked: list[str] = []

    def urlopen(request: Request, timeout: float) -> io.BytesIO:
        asked.append(request.full_url)
        return io.BytesIO(system.get(request.full_url).content)

    with mock.patch.object(feed_copy, "urlopen", urlopen):
        copy = feed_copy.copied("http://testserver", "", programme, {"next": after, "cases": {}})
    assert len(copy["cases"]) == CHANGED
    return len(asked)


if __name__ == "__main__":
    alone("feed", rows())
