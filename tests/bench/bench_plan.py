"""What a plan of the four-canal molar takes, computed and remembered: in empty requests (e) made in turns with it.

    python -m tests.bench.bench_plan

No input is planned twice where a plan is computed: in each a reading was taken again, of one canal (what a tap on a
field changes), or of all, which is another case of the same programme, with its kit and its technique.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import count

from planning.contract.plan_input import CanalInput, PlanInput
from planning.depth import kernel, numpy_rows
from planning.depth.kernel import Kernel
from planning.lengths.readings import ConfirmingImage
from planning.whole_tooth.plan import plan
from tests.bench.empty import empty_request
from tests.bench.rows import Row, alone, in_turns
from tests.bench.scratch import scratch
from tests.planning.given import molar

TIMES = 20
SAMPLES = 500
STEP_MM = 0.01
GOALS = {
    "a plan, no samples, one canal new": 3,
    "a plan, no samples, all canals new": 3,
    f"a plan, {SAMPLES} samples, one canal new": 100,
    f"a plan, {SAMPLES} samples, all canals new": 100,
    "the same plan, remembered": 1,
}
numbers = count(1)


def taken_again(plan_input: PlanInput, new: int) -> PlanInput:
    """The input with a reading that no input before it had in its last canals, so many of them."""
    longer_mm = next(numbers) * STEP_MM
    kept = len(plan_input.canals) - new
    canals = (*plan_input.canals[:kept], *(_read(canal, longer_mm) for canal in plan_input.canals[kept:]))
    return replace(plan_input, canals=canals)


def _read(canal: CanalInput, longer_mm: float) -> CanalInput:
    *before, last = canal.readings
    assert isinstance(last, ConfirmingImage)
    return replace(canal, readings=(*before, replace(last, set_mm=last.set_mm + longer_mm)))


def rows() -> Iterator[Row]:
    with scratch():
        from cases.services.planning import remembered

        medians, sampled = molar(), molar(samples=SAMPLES)
        every = len(medians.canals)
        plan(medians)
        remembered.planned(sampled)
        each: tuple[Callable[[], object], ...] = (
            lambda: plan(taken_again(medians, 1)),
            lambda: plan(taken_again(medians, every)),
            lambda: plan(taken_again(sampled, 1)),
            lambda: plan(taken_again(sampled, every)),
            lambda: remembered.planned(sampled),
        )
        works: dict[str, Callable[[], object]] = {"empty": empty_request()} | dict(zip(GOALS, each, strict=True))
        took = in_turns(works, TIMES)
        for what, goal in GOALS.items():
            yield took[what].over(took["empty"], what=what, against="e", goal=goal)
    if kernel.take_compiled():
        yield _compiled(kernel.running)


def _compiled(compiled: Kernel) -> Row:
    sampled = molar(samples=SAMPLES)

    def by(running: Kernel) -> object:
        kernel.running = running
        return plan(taken_again(sampled, len(sampled.canals)))

    took = in_turns({"numpy": lambda: by(numpy_rows), "compiled": lambda: by(compiled)}, TIMES)
    what = f"a plan, {SAMPLES} samples, all canals new, compiled"
    return took["compiled"].over(took["numpy"], what=what, against="numpy's", goal=0.7)


if __name__ == "__main__":
    alone("plan", rows())
