"""What of a tooth is planned anew when some of it changes, counted; and that what is remembered is the same plan."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import count
from typing import Any

import pytest

from planning.canal.canal import Canal
from planning.contract.plan_input import CanalChoice, Choices, Override, PlanInput
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.whole_tooth import canals
from planning.whole_tooth.plan import plan
from planning.work.canal_plan import PlannedCanal, plan_canal
from tests.planning import ten_cases
from tests.planning.given import OPEN_30, canal, confirmed, molar
from tests.planning.memory import forget

SEEDS = count(1)


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The canals that were planned, as they are."""
    names: list[str] = []

    def counting(canal: Canal, *more: Any) -> PlannedCanal:
        names.append(canal.input.name)
        return plan_canal(canal, *more)

    monkeypatch.setattr(canals, "plan_canal", counting)
    return names


def unseen(**more: Any) -> PlanInput:
    """The four-canal molar of a case that nobody planned before."""
    return molar(seed=next(SEEDS), **more)


def with_last(plan_input: PlanInput, **changes: Any) -> PlanInput:
    *others, last = plan_input.canals
    return replace(plan_input, canals=(*others, replace(last, **changes)))


CHANGES: dict[str, tuple[Callable[[PlanInput], PlanInput], list[str]]] = {
    "nothing": (replace, []),
    "a reading": (
        lambda case: with_last(case, readings=confirmed(22.0, 21.0, 1.0, "P cusp")),
        ["P"],
    ),
    "what another canal joins": (
        lambda case: replace(case, canals=(replace(case.canals[0], curvature_deg=12.0), *case.canals[1:])),
        ["MB1"],
    ),
    "a final size": (
        lambda case: replace(case, choices=Choices(needle=OPEN_30, canals=(CanalChoice(canal="DB", final_size=40),))),
        ["DB"],
    ),
    "a canal more": (
        lambda case: replace(case, canals=(*case.canals, canal("DB2", "DB", *confirmed(19.5, 18.5, 0.5, "DB cusp")))),
        ["MB1", "MB2", "DB", "P", "DB2"],
    ),
    "how canals lie to each other": (lambda case: replace(case, roots=()), ["MB1", "MB2", "DB", "P"]),
    "a figure": (lambda case: replace(case, thresholds={"depth.strokes": 2.0}), ["MB1", "MB2", "DB", "P"]),
}


@pytest.mark.parametrize("what", CHANGES)
def test_only_what_rests_on_a_change_is_planned_anew(what: str, worked: list[str]) -> None:
    change, names = CHANGES[what]
    case = unseen(choices=Choices(needle=OPEN_30, canals=(CanalChoice(canal="DB", final_size=35),)))
    plan(case)
    assert worked == ["MB1", "MB2", "DB", "P"]
    worked.clear()
    plan(change(case))
    assert worked == names


def test_what_a_canal_closes_in_another_is_planned_anew_there(worked: list[str]) -> None:
    """MB2 joins MB1. With no length of MB1 nothing in MB2 may be shaped, and neither is filled."""
    case = unseen()
    plan(case)
    worked.clear()
    plan(replace(case, canals=(replace(case.canals[0], readings=()), *case.canals[1:])))
    assert sorted(worked) == ["MB1", "MB2"]


def text(plan_input: PlanInput) -> str:
    try:
        return canonical_text(plan(plan_input))
    except PlanningError as refusal:
        return f"{refusal.pointer}: {refusal}"


def cold(plan_input: PlanInput) -> str:
    """The plan by an empty memory."""
    forget()
    return text(plan_input)


def changed(case: PlanInput) -> Iterator[PlanInput]:
    """The case with one thing changed, in each of its canals."""
    for number, each in enumerate(case.canals):
        before, after = case.canals[:number], case.canals[number + 1 :]
        for change in ({"curvature_deg": 27.0}, {"readings": ()}, {"orifice_mm": 5}, {"orifice_mm": 5.0}):
            yield replace(case, canals=(*before, replace(each, **change), *after))
        yield replace(case, overrides=(Override(code="curve-supervisor", canal=each.name, reason="Seen."),))


@pytest.mark.parametrize("name", ten_cases.CASES)
def test_a_plan_is_the_same_whatever_was_planned_before(name: str) -> None:
    case = ten_cases.CASES[name]()
    inputs = [case, *changed(case)]
    alone = list(map(cold, inputs))
    assert list(map(text, inputs)) == alone
    assert list(map(text, reversed(inputs))) == alone[::-1]


def test_no_more_canals_are_kept_than_is_said() -> None:
    for _ in range(canals.MOST_KEPT // 4 + 1):
        plan(unseen())
    assert canals.plan_once.cache_info().currsize == canals.MOST_KEPT
