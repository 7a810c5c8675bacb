"""Orders of work are written once, with depths left open: what writes them anew, counted, and that depths do not."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from planning.contract.plan_input import CanalChoice, Choices, Irrigant, PlanInput
from planning.foundation.encoding import canonical_text
from planning.run_sheet.graph import Step
from planning.whole_tooth.plan import plan
from planning.work import canal_work
from tests.planning.given import CHECK_KIT, OPEN_30, block, canal, confirmed, molar, technique
from tests.planning.memory import forget


def written(plan_input: PlanInput) -> int:
    """How many forms the plan has written."""
    before = canal_work.form_once.cache_info().misses
    plan(plan_input)
    return canal_work.form_once.cache_info().misses - before


def other_tooth() -> PlanInput:
    """Other lengths and another curve, planned with the same technique and kit."""
    return molar(
        tooth="16",
        seed=7,
        canals=(
            canal("MB1", "MB", *confirmed(23.5, 22.5, 1.0, "MB cusp"), curvature_deg=12.0),
            canal("DB", "DB", *confirmed(21.0, 20.0, 0.5, "DB cusp"), point="DB cusp", orifice_mm=6.0),
        ),
        roots=(),
        choices=Choices(
            needle=OPEN_30,
            canals=(CanalChoice(canal="MB1", final_size=30), CanalChoice(canal="DB", final_size=30)),
        ),
    )


def sized(final_size: int) -> PlanInput:
    case = other_tooth()
    choices = tuple(replace(choice, final_size=final_size) for choice in case.choices.canals)
    return replace(case, choices=replace(case.choices, canals=choices))


def test_another_tooth_of_the_same_sizes_writes_nothing() -> None:
    forget()
    lengths = [(18.0, 17.0), (23.0, 22.0), (21.5, 20.0)]
    case = other_tooth()
    longer = [
        replace(case, canals=tuple(replace(c, readings=confirmed(*each, 1.0, c.reference_point)) for c in case.canals))
        for each in lengths
    ]
    assert written(case) == 1
    assert [written(each) for each in longer] == [0, 0, 0]
    ends = {tuple(c.end_mm for c in plan(each).canals) for each in longer}
    assert len(ends) == len(longer)


CHANGES: dict[str, Callable[[PlanInput], PlanInput]] = {
    "the final size": lambda _: sized(35),
    "the technique": lambda case: replace(case, technique=technique("step-back")),
    "the kit": lambda case: replace(case, kit=replace(CHECK_KIT, instruments=CHECK_KIT.instruments[1:])),
    "a figure": lambda case: replace(case, thresholds={"blocked.times": 3.0}),
    "an irrigant": lambda case: replace(case, choices=replace(case.choices, irrigant=Irrigant.SALINE)),
    "the setting": lambda case: replace(case, setting=block().setting),
    "a length that nobody confirmed": lambda case: replace(
        case, canals=tuple(replace(each, readings=each.readings[:1]) for each in case.canals)
    ),
}


@pytest.mark.parametrize("what", CHANGES)
def test_what_an_order_of_work_rests_on_writes_it_anew(what: str) -> None:
    forget()
    plan(other_tooth())
    changed = CHANGES[what](other_tooth())
    assert written(changed) > 0
    warm = canonical_text(plan(changed))
    forget()
    assert canonical_text(plan(changed)) == warm


def test_every_depth_is_filled_in() -> None:
    """By hand: set at 20.0 with the tip 0.5 short is 20.5 to the apex, 19.5 to a stop 1.0 short of that; the orifice
    at 6.0 and a third of the 13.5 below it are 10.5."""
    deep = plan(other_tooth()).canals[1]
    steps = [node for node in deep.run_sheet.nodes.values() if isinstance(node, Step)]
    coronal_um = {node.stop_um for node in steps if node.id in ("coronal-flaring/25-10", "coronal-flaring/25-08")}
    assert (deep.end_mm, coronal_um) == (19.5, {10_500})
    assert all(node.stop_um for node in steps if node.instrument is not None)
    assert all(node.needle_at_most_um for node in steps if node.action == "irrigate")


def test_no_more_forms_are_kept_than_is_said() -> None:
    for number in range(canal_work.MOST_FORMS + 1):
        plan(replace(other_tooth(), thresholds={"depth.limit": 0.1 + number / 1_000}))
    assert canal_work.form_once.cache_info().currsize == canal_work.MOST_FORMS
