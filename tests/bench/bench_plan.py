"""What a plan of the four-canal molar takes, computed and remembered: in empty requests (e) made in turns with it.

python -m tests.bench.bench_plan
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from planning.whole_tooth.plan import plan
from tests.bench.empty import empty_request
from tests.bench.rows import Row, alone, in_turns
from tests.bench.scratch import scratch
from tests.planning.given import molar

TIMES = 20
SAMPLES = 500
GOALS = {"a plan, no samples": 3, f"a plan, {SAMPLES} samples": 100, "the same plan, remembered": 1}


def rows() -> Iterator[Row]:
    with scratch():
        from cases.services.planning import remembered

        medians, sampled = molar(), molar(samples=SAMPLES)
        remembered.planned(sampled)
        each: tuple[Callable[[], object], ...] = (
            lambda: plan(medians),
            lambda: plan(sampled),
            lambda: remembered.planned(sampled),
        )
        works: dict[str, Callable[[], object]] = {"empty": empty_request()} | dict(zip(GOALS, each, strict=True))
        took = in_turns(works, TIMES)
        for what, goal in GOALS.items():
            yield took[what].over(took["empty"], what=what, against="e", goal=goal)


if __name__ == "__main__":
    alone("plan", rows())
