"""How long hostile requests take, over a usual request to the same address in the same run.

python -m tests.bench.bench_refusals
"""

from __future__ import annotations

import json
import logging
import os
import time
from collections.abc import Callable, Iterator
from statistics import median

import django
from django.test.utils import setup_test_environment

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")
django.setup()
setup_test_environment()

from tests.api.test_compute_whole_bodies import ADDRESSES, BODIES, example, full, lists, put, send  # noqa: E402
from tests.bench.rows import Row, alone  # noqa: E402
from tests.planning.memory import forget  # noqa: E402

TIMES = 5
MANY = (1_000, 10_000)


def seconds(work: Callable[[], object]) -> float:
    """The median of a few."""
    taken = []
    for _ in range(TIMES):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return median(taken)


def much(address: str) -> dict[str, str]:
    """The usual request with a thousand and ten thousand of each thing it lists."""
    bodies = {}
    for path in lists(full(address)):
        for many in MANY:
            request = full(address)
            held = request
            for part in path:
                held = held[part]  # type: ignore[index]
            put(request, path, held[:1] * many)  # type: ignore[index]
            bodies[f"{many} of {'/'.join(map(str, path))}"] = json.dumps(request)
    return bodies


def usual_request(address: str, usual: str) -> None:
    # A canal that was planned before is planned no more.
    forget()
    send(address, usual)


def rows() -> Iterator[Row]:
    logging.disable(logging.CRITICAL)
    for address in ADDRESSES:
        usual = json.dumps(example(address))
        assert send(address, usual).status_code == 200
        base = seconds(lambda: usual_request(address, usual))  # noqa: B023
        bodies = {**{kind: make(usual) for kind, make in BODIES.items()}, **much(address)}
        ratios = {kind: seconds(lambda: send(address, body)) / base for kind, body in bodies.items()}  # noqa: B023
        worst = max(ratios, key=lambda kind: ratios[kind])
        yield Row(what=f"{address}: the slowest of {len(ratios)}", now=ratios[worst], against=f"a usual one ({worst})")


if __name__ == "__main__":
    alone("refusals", rows())
