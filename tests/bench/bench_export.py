"""What an exported row and a filtered list cost, in times of an empty request.

    python -m tests.bench.bench_export

DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Any

from tests.bench.empty import empty_request
from tests.bench.rows import Row, Took, alone, in_turns
from tests.bench.scratch import scratch

CASES, ROWS = 10_000, 1000
TIMES = 20
GOALS = {"a row of cases": 0.5, "a row of canal-plans": 0.15, "a row of events": 0.3}
TABLES = ("cases", "canal-plans", "events")
LISTS = {
    "30 cases, unfiltered": {},
    "30 cases, by state": {"state": "approved"},
    "30 cases, by tooth and setting": {"tooth": "26", "setting": "extracted"},
    "30 cases, changed since": {"updated_since": "2026-01-01T00:00:00Z"},
}


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from tests.bench.chair import Chair
    from tests.cast import API, client
    from tests.many import copies

    chair, empty = Chair(), empty_request()
    list(copies(chair.version, CASES - 1))
    system, at = client(chair.supervisor), f"{API}/programmes/{chair.programme.pk}"

    def asked(address: str, query: dict[str, Any]) -> None:
        assert system.get(f"{at}/{address}", query).status_code == 200

    tables = {table: partial(asked, f"export/{table}.ndjson", {"limit": ROWS}) for table in TABLES}
    lists = {what: partial(asked, "cases", query) for what, query in LISTS.items()}
    took = in_turns({"empty": empty, **tables, **lists}, TIMES)
    for table in TABLES:
        each = Took(took[table].least / ROWS, took[table].median / ROWS)
        yield each.over(took["empty"], what=(what := f"a row of {table}"), against="e", goal=GOALS.get(what))
    for what in LISTS:
        yield took[what].over(took["empty"], what=what, against="e")


if __name__ == "__main__":
    alone("export", rows())
