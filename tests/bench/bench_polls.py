"""What a list, a plan and a preview cost that are asked for again with nothing new, and what a plan takes to keep.

    python -m tests.bench.bench_polls

DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

from collections.abc import Iterator

from tests.bench.empty import empty_request
from tests.bench.rows import KB, Row, alone, in_turns
from tests.bench.scratch import scratch

WAITING = 20
TIMES, FEWER_TIMES = 60, 5
SAMPLES = 500
GOALS = {"the worklist, nothing new": 1.5, "a preview": 100, "the same preview again": 3}


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from cases.domain.plans.lifecycle import PlanState
    from cases.services.planning import plans, remembered
    from tests.bench.chair import Chair
    from tests.cast import API, client
    from tests.many import copies
    from tests.planning.memory import forget

    chair, empty = Chair(), empty_request()
    list(copies(chair.version, WAITING, state=PlanState.WAITING))
    browser, student = client(chair.supervisor), client(chair.student)
    worklist, version = f"{API}/programmes/{chair.programme.pk}/worklist", f"{API}/plan-versions/{chair.version.pk}"
    known = {"If-None-Match": browser.get(worklist)["ETag"]}
    asked = {
        "kit_id": str(chair.version.kit_id),
        "technique": "crown-down",
        "choices": browser.get(version, {"expand": "choices"}).json()["choices"],
    }

    # As every browser asks.
    zipped = {"Accept-Encoding": "gzip"}

    def preview() -> None:
        answer = student.post(f"{API}/cases/{chair.version.case_id}/preview", asked, format="json", headers=zipped)
        assert answer.status_code == 200, answer.content

    def first_preview() -> None:
        remembered.kept.clear()
        forget()
        preview()

    plans.SAMPLES = SAMPLES
    works = {
        "empty": empty,
        f"the worklist of {WAITING}": lambda: browser.get(worklist),
        "the worklist, nothing new": lambda: browser.get(worklist, headers=known),
        "a version, whole": lambda: browser.get(version, {"expand": "plan,given"}, headers=zipped),
        "a version": lambda: browser.get(version),
        "its texts": lambda: browser.get(f"{version}/texts/{chair.version.hash}", headers=zipped),
    }
    took = in_turns(works, TIMES) | in_turns(
        {"a preview": first_preview, "the same preview again": preview}, FEWER_TIMES
    )
    for name in list(took)[1:]:
        yield took[name].over(took["empty"], what=name, against="e", goal=GOALS.get(name))
    yield Row(what="texts of a plan, kept", now=len(chair.version.texts.packed) / KB, against="kB", goal=60)


if __name__ == "__main__":
    alone("polls", rows())
