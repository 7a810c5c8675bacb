"""Samples cost work, and one request may ask for so much of it. Counted, not timed: the bound is this program's own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest

from planning.contract.canal_facts import WidthInput
from planning.contract.plan_input import PlanInput, RecordedDepth
from planning.contract.plan_value import Plan
from planning.depth import belief
from planning.depth.belief import Work
from planning.depth.samples import MOST_SAMPLES, MOST_WORK
from planning.foundation.bounds import within
from planning.foundation.errors import TooMuchWork
from planning.whole_tooth.limits import refuse_too_much
from planning.whole_tooth.plan import plan
from planning.work import canal_work
from tests.planning.given import molar, rotary
from tests.planning.memory import forget

# Up and down: corners that no instrument smooths away.
ZIGZAG = tuple(WidthInput(from_end_mm=0.4 * n, narrow_mm=0.15 + 0.02 * n + 0.03 * (n % 2)) for n in range(40))


def felt_everywhere(plan_input: PlanInput, samples: int) -> PlanInput:
    """A depth recorded at every insertion that is expected, a millimetre short of it."""
    canals = []
    for canal_input, planned in zip(plan_input.canals, plan(plan_input).canals, strict=True):
        assert planned.expectation is not None
        steps = planned.expectation.steps
        felt = tuple(RecordedDepth(node=step.node, depth_mm=max(1.0, round(step.depth_mm - 1, 1))) for step in steps)
        canals.append(replace(canal_input, felt=felt))
    return replace(plan_input, canals=tuple(canals), samples=samples)


def test_exactly_as_much_as_may_be_is_done() -> None:
    work = Work(10)
    work.spend(10, samples=4)
    with pytest.raises(TooMuchWork, match="Ask for 2 samples or fewer") as refusal:
        work.spend(1, samples=4)
    assert refusal.value.pointer == ("samples",)


@pytest.fixture(autouse=True)
def forgotten() -> Iterator[None]:
    """What was planned under another bound is no plan for other tests."""
    yield
    forget()


def planned_anew(plan_input: PlanInput) -> Plan:
    """The plan by an empty memory: what is remembered takes no work, and no bound is held against it."""
    forget()
    return plan(plan_input)


def test_the_bound_is_what_the_plan_takes_and_not_one_less(monkeypatch: pytest.MonkeyPatch) -> None:
    spent: list[int] = []
    spend = Work.spend

    def counted(work: Work, corners: int, samples: int) -> None:
        spent[-1] += corners
        spend(work, corners, samples)

    def made(most: int) -> Work:
        spent.append(0)
        return Work(most)

    plan_input = replace(molar(), samples=50)
    monkeypatch.setattr(Work, "spend", counted)
    monkeypatch.setattr(belief, "Work", made)
    whole = planned_anew(plan_input)
    needed = max(spent) * len(plan_input.canals)
    monkeypatch.setattr(canal_work, "MOST_WORK", needed)
    assert planned_anew(plan_input) == whole
    monkeypatch.setattr(canal_work, "MOST_WORK", needed - len(plan_input.canals))
    with pytest.raises(TooMuchWork):
        planned_anew(plan_input)


def test_the_check_molar_may_have_the_most_samples_and_hostile_canals_may_not() -> None:
    canals = plan(replace(molar(), samples=MOST_SAMPLES)).canals
    assert {canal.expectation.samples for canal in canals if canal.expectation} == {MOST_SAMPLES}
    felt = felt_everywhere(molar(), MOST_SAMPLES)
    hostile = replace(felt, canals=tuple(replace(canal, widths=ZIGZAG) for canal in felt.canals))
    with pytest.raises(TooMuchWork):
        plan(hostile)


def test_recorded_depths_get_more_samples_as_far_as_the_work_allows(monkeypatch: pytest.MonkeyPatch) -> None:
    """Four times as many by the row, fewer where many insertions leave no room, never fewer than were asked for."""
    plan_input = felt_everywhere(molar(), 20)

    def drawn() -> set[int]:
        return {canal.expectation.samples for canal in planned_anew(plan_input).canals if canal.expectation}

    assert drawn() == {80}
    monkeypatch.setattr(belief, "Work", lambda most: Work(MOST_WORK))
    monkeypatch.setattr(canal_work, "MOST_WORK", MOST_WORK // 45)
    assert all(20 < count < 80 for count in drawn())
    monkeypatch.setattr(canal_work, "MOST_WORK", 1)
    assert drawn() == {20}


def test_canals_times_instruments_is_bounded_by_a_row() -> None:
    """Eight canals and 120 instruments are each within their bound; a row says how many pairs one request may have."""
    most = int(within("instruments_by_canals").most)
    plan_input = molar()
    spare = [rotary(size, taper) for size in (15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 70, 80) for taper in range(2, 14)]
    known = {instrument.key: instrument for instrument in (*plan_input.kit.instruments, *spare)}
    instruments = tuple(known.values())[:120]
    alone = next(canal_input for canal_input in plan_input.canals if canal_input.name == "DB")
    canals = tuple(replace(alone, name=f"C{number}", root=f"R{number}") for number in range(8))

    def asked(canals_many: int, instruments_many: int) -> PlanInput:
        kit = replace(plan_input.kit, instruments=instruments[:instruments_many])
        choices = replace(plan_input.choices, canals=())
        return replace(plan_input, canals=canals[:canals_many], roots=(), kit=kit, choices=choices, samples=1)

    refuse_too_much(asked(4, most // 4))
    refuse_too_much(asked(8, most // 8))
    for many in ((5, 120), (8, most // 8 + 1)):
        with pytest.raises(TooMuchWork, match="Leave out instruments") as refusal:
            plan(asked(*many))
        assert refusal.value.pointer == ("kit", "instruments")
