"""How long the contact-depth estimate takes: ratios to its slow twin and to one empty request, growth, memory; one run.

    python -m tests.bench.bench_depth

Processor time, so that other work on the machine does not count. The request is an authenticated one with a session,
through the whole stack of the server, that does nothing.
"""

from __future__ import annotations

import os
import resource
import time
import tracemalloc
from collections.abc import Callable
from dataclasses import replace
from statistics import median
from typing import Any

import django
from django.contrib.auth import get_user_model
from django.test import Client, override_settings
from django.test.runner import DiscoverRunner

from planning.contract.canal_facts import WidthInput
from planning.contract.plan_input import CanalChoice, Choices, PlanInput
from planning.depth.contact_depth import light_touch
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import corners
from planning.run_sheet.graph import Do
from planning.whole_tooth.plan import plan
from planning.work import canal_work
from tests.planning.given import CHECK_KIT, OPEN_30, canal, confirmed, molar
from tests.reference import slow_contact_depth

TIMES = 7
WIDTHS = (WidthInput(from_end_mm=0.0, narrow_mm=0.2), WidthInput(from_end_mm=5.0, narrow_mm=0.35))


def milliseconds(work: Callable[[], object], times: int = TIMES) -> float:
    def once() -> float:
        start = time.process_time()
        work()
        return (time.process_time() - start) * 1000

    once()
    return median(once() for _ in range(times))


def empty_request() -> float:
    """Median of one empty request [ms]."""
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")
    django.setup()
    runner = DiscoverRunner(verbosity=0)
    tables = runner.setup_databases()
    try:
        client = Client()
        client.force_login(get_user_model().objects.create_user(username="bench"))
        with override_settings(ROOT_URLCONF="tests.bench.empty_view", ALLOWED_HOSTS=["testserver"]):
            assert client.get("/empty").status_code == 200
            return milliseconds(lambda: client.get("/empty"), 60)
    finally:
        runner.teardown_databases(tables)


class Depths:
    """How much of a plan is the estimate: the time spent in it, all canals together."""

    def __init__(self) -> None:
        self.seconds, self._whole = 0.0, canal_work.expected

    def __call__(self, *given: Any, **more: Any) -> Any:
        start = time.process_time()
        result = self._whole(*given, **more)
        self.seconds += time.process_time() - start
        return result

    def of(self, given: PlanInput, times: int = TIMES) -> tuple[float, float]:
        """Median [ms] of the estimate and of the whole plan."""
        spent: list[float] = []

        def once() -> None:
            self.seconds = 0.0
            plan(given)
            spent.append(self.seconds * 1000)

        canal_work.expected = self
        try:
            whole = milliseconds(once, times)
        finally:
            canal_work.expected = self._whole
        return median(spent[1:]), whole


def slow_twin(given: PlanInput) -> float:
    """The same rests by the slow twin [ms]: every insertion to resistance on the expected path."""
    kit = {instrument.key: instrument for instrument in given.kit.instruments}
    limit_mm2 = light_touch(Figures()).limit_mm2
    cases = []
    for canal_plan in plan(given).canals:
        assert canal_plan.expectation is not None
        before = [(p.from_reference_mm, p.narrow_mm) for p in canal_plan.expectation.initial_shape.points]
        for step in canal_plan.expectation.steps:
            node = canal_plan.run_sheet.nodes[step.node]
            if isinstance(node, Do) and node.target == "to_resistance":
                cases.append((list(corners(kit[step.instrument])), before, (node.stop_um or 0) / 1000))
            before = [(p.from_reference_mm, p.diameter_mm) for p in step.shape]

    def work() -> None:
        for instrument, canal_line, stop_mm in cases:
            slow_contact_depth.rest_mm(instrument, canal_line, stop_mm, limit_mm2)

    return milliseconds(work, 3)


def of_canals(count: int, samples: int) -> PlanInput:
    """So many canals of one kind, none joining another."""
    canals = tuple(canal(f"C{n}", f"R{n}", *confirmed(20.5, 19.5, 1.0, "cusp"), point="cusp") for n in range(count))
    return molar(canals=tuple(replace(canal_input, widths=WIDTHS) for canal_input in canals), roots=(), samples=samples)


def of_steps(final_size: int) -> PlanInput:
    sizes = tuple(CanalChoice(canal=name, final_size=final_size) for name in ("MB1", "MB2", "DB", "P"))
    return molar(samples=500, choices=Choices(needle=OPEN_30, canals=sizes), kit=CHECK_KIT)


def peak_mb(samples: int) -> float:
    """Peak of what a plan holds at one time [MB]."""
    tracemalloc.start()
    plan(molar(samples=samples))
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return peak / 1e6


def main() -> None:
    request, depths = empty_request(), Depths()
    print(f"one empty authenticated request: {request:.2f} ms")
    twin = slow_twin(molar())
    for samples in (0, 100, 500, 5000):
        estimate, whole = depths.of(molar(samples=samples), 3 if samples > 500 else TIMES)
        print(
            f"molar of four canals, {samples:4d} samples: estimate {estimate:7.1f} ms = {estimate / request:6.1f} "
            f"requests; whole plan {whole:7.1f} ms = {whole / request:6.1f} requests; the slow twin of one canal each "
            f"takes {twin * max(samples, 1) / estimate:6.1f} times as long"
        )
    for samples in (0, 500):
        times = [depths.of(of_canals(count, samples), 3)[0] for count in range(1, 7)]
        ratios = ", ".join(f"{ms / times[0]:.1f}" for ms in times)
        print(f"one to six canals, {samples} samples, in times of one canal: {ratios}")
    for final_size in (30, 40, 50):
        given = of_steps(final_size)
        steps = sum(len(canal_plan.expectation.steps) for canal_plan in plan(given).canals if canal_plan.expectation)
        estimate = depths.of(given, 3)[0]
        print(f"{steps} insertions, 500 samples: {estimate:.1f} ms, {estimate / steps:.2f} ms each")
    by_samples = {samples: depths.of(molar(samples=samples), 3)[0] for samples in (250, 500, 1000, 2000, 4000)}
    print("samples, in ms each thousand:", ", ".join(f"{n}: {ms / n * 1000:.0f}" for n, ms in by_samples.items()))
    most_kb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(f"peak held by a plan of 5,000 samples: {peak_mb(5000):.0f} MB; the process at most {most_kb / 1000:.0f} MB")


if __name__ == "__main__":
    main()
