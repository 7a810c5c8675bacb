"""What a benchmark comes to: rows of one table, each with its goal and what it is measured against.

A benchmark is a module `bench_<name>` with a generator `rows`; run alone it prints its own part of the table.
"""

from __future__ import annotations

import csv
import json
import statistics
import sys
import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict, dataclass
from pathlib import Path

LAST_RELEASE = Path(__file__).with_name("last_release.csv")
AS_JSON = "--json"
KB = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One figure of the table."""

    what: str
    now: float
    """The figure to judge by: a ratio of minima where time is measured, else the count itself."""
    against: str
    """What `now` is in: "bare inserts", "e", "kB"."""
    goal: float | None = None
    """At most this; None where the figure is only watched."""
    median: float | None = None
    """The same as a ratio of medians."""


@dataclass(frozen=True, slots=True)
class Took:
    """Milliseconds of a piece of work that was done several times."""

    least: float
    median: float

    def over(self, unit: Took, *, what: str, against: str, goal: float | None = None) -> Row:
        """The work in times of a unit that was measured in turns with it."""
        return Row(what=what, now=self.least / unit.least, median=self.median / unit.median, against=against, goal=goal)


def in_turns(works: Mapping[str, Callable[[], object]], times: int) -> dict[str, Took]:
    """What each took, one after the other again and again, so that other work on the machine falls on all alike."""
    took: dict[str, list[float]] = {name: [] for name in works}
    for _ in range(times):
        for name, work in works.items():
            start = time.perf_counter()
            work()
            took[name].append((time.perf_counter() - start) * 1000)
    return {name: Took(min(each), statistics.median(each)) for name, each in took.items()}


def database() -> str:
    """ "sqlite" or "postgresql": where the benchmark's own tables are."""
    from django.conf import settings
    from django.db import connection

    return connection.vendor if settings.configured else ""


def last_release() -> dict[tuple[str, str, str], float]:
    """The figures by benchmark, database and what was measured."""
    with LAST_RELEASE.open(encoding="utf-8", newline="") as file:
        return {(row["bench"], row["database"], row["what"]): float(row["figure"]) for row in csv.DictReader(file)}


HEAD = f"{'':58s} {'goal':>8s} {'last':>8s} {'now':>8s} {'median':>8s}  in"


def line(row: Row, last: float | None) -> str:
    """The row as a line of the table; a goal that is missed is marked."""
    figures = (row.goal, last, row.now, row.median)
    missed = "" if row.goal is None or row.now <= row.goal else "   more than its goal"
    return f"  {row.what:56s} {' '.join(f'{_figure(figure):>8s}' for figure in figures)}  {row.against}{missed}"


def _figure(figure: float | None) -> str:
    if figure is None:
        return ""
    return f"{figure:,.0f}" if figure >= KB else f"{figure:.3g}"


def alone(name: str, rows: Iterable[Row]) -> None:
    """Prints the rows of one benchmark as they come: as lines of the table, or each as JSON for the whole table."""
    if AS_JSON in sys.argv:
        for row in rows:
            print(json.dumps({"database": database()} | asdict(row)), flush=True)
        return
    last = last_release()
    print(HEAD)
    for row in rows:
        print(line(row, last.get((name, database(), row.what))), flush=True)
