"""How long the contact-depth estimate takes: against its slow twin and empty requests (e), growth, memory.

    python -m tests.bench.bench_depth

Processor time, so that other work on the machine does not count.
"""

from __future__ import annotations

import resource
import time
import tracemalloc
from collections.abc import Callable, Iterator
from dataclasses import replace
from statistics import median
from typing import Any

from planning.contract.canal_facts import WidthInput
from planning.contract.plan_input import CanalChoice, Choices, PlanInput
from planning.depth.contact_depth import light_touch
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import corners
from planning.run_sheet.graph import Step
from planning.whole_tooth.plan import plan
from planning.work import canal_work
from tests.bench.empty import empty_request
from tests.bench.rows import Row, alone
from tests.bench.scratch import scratch
from tests.planning.given import CHECK_KIT, OPEN_30, canal, confirmed, molar
from tests.planning.memory import forget
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


class Depths:
    """How much of a plan is the estimate: the time spent in it, all canals together."""

    def __init__(self) -> None:
        self.seconds, self._whole = 0.0, canal_work.expected

    def __call__(self, *arguments: Any, **more: Any) -> Any:
        start = time.process_time()
        result = self._whole(*arguments, **more)
        self.seconds += time.process_time() - start
        return result

    def of(self, plan_input: PlanInput, times: int = TIMES) -> tuple[float, float]:
        """Median [ms] of the estimate and of the whole plan."""
        spent: list[float] = []

        def once() -> None:
            self.seconds = 0.0
            forget()
            plan(plan_input)
            spent.append(self.seconds * 1000)

        canal_work.expected = self
        try:
            whole = milliseconds(once, times)
        finally:
            canal_work.expected = self._whole
        return median(spent[1:]), whole


def slow_twin(plan_input: PlanInput) -> float:
    """The same rests by the slow twin [ms]: every insertion to resistance on the expected path."""
    kit = {instrument.key: instrument for instrument in plan_input.kit.instruments}
    limit_mm2 = light_touch(Figures()).limit_mm2
    cases = []
    for canal_plan in plan(plan_input).canals:
        assert canal_plan.expectation is not None
        before = [(p.from_reference_mm, p.narrow_mm) for p in canal_plan.expectation.initial_shape.points]
        for step in canal_plan.expectation.steps:
            node = canal_plan.run_sheet.nodes[step.node]
            if isinstance(node, Step) and node.target == "to_resistance":
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
    forget()
    tracemalloc.start()
    plan(molar(samples=samples))
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return peak / 1e6


def rows() -> Iterator[Row]:
    with scratch():
        empty_ms = milliseconds(empty_request(), 60)
    depths = Depths()
    yield from _molar(depths, empty_ms)
    yield from _growth(depths)
    yield Row(what="peak held by a plan, 5,000 samples", now=peak_mb(5000), against="MB")
    yield Row(what="the process at most", now=resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1000, against="MB")


def _molar(depths: Depths, empty_ms: float) -> Iterator[Row]:
    twin_ms = slow_twin(molar())
    for samples in (0, 100, 500, 5000):
        estimate_ms, whole_ms = depths.of(molar(samples=samples), 3 if samples > 500 else TIMES)
        name, twins = f"molar of four canals, {samples:,d} samples", max(samples, 1) * twin_ms
        yield Row(what=f"{name}, whole plan", now=whole_ms / empty_ms, against="e")
        yield Row(what=f"{name}, estimate", now=estimate_ms / empty_ms, against="e")
        yield Row(what=f"{name}, its estimate", now=estimate_ms / twins, against="the slow twin", goal=1)


def _growth(depths: Depths) -> Iterator[Row]:
    for samples in (0, 500):
        first_ms, last_ms = (depths.of(of_canals(count, samples), 3)[0] for count in (1, 6))
        yield Row(what=f"six canals, {samples} samples", now=last_ms / first_ms, against="one canal")
    each_ms = {}
    for final_size in (30, 40, 50):
        plan_input = of_steps(final_size)
        steps = sum(
            len(canal_plan.expectation.steps) for canal_plan in plan(plan_input).canals if canal_plan.expectation
        )
        each_ms[steps] = depths.of(plan_input, 3)[0] / steps
    fewest = min(each_ms)
    for steps in sorted(each_ms)[1:]:
        ratio = each_ms[steps] / each_ms[fewest]
        yield Row(what=f"each of {steps} insertions, 500 samples", now=ratio, against=f"each of {fewest}")
    by_samples = {samples: depths.of(molar(samples=samples), 3)[0] / samples for samples in (500, 4000)}
    yield Row(what="each of 4,000 samples", now=by_samples[4000] / by_samples[500], against="each of 500")


if __name__ == "__main__":
    alone("depth", rows())
