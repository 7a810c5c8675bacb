"""Cautions over what a plan says: each on values made by hand, held against its limit from both sides."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from planning.anatomy.walls import WallLeft
from planning.canal.apical_size import SizeRequest, advise
from planning.canal.canal import Canal
from planning.canal.initial_shape import widths_of
from planning.canal.joins import join_of
from planning.contract.expected import Expectation, ExpectedStep, InitialShape
from planning.contract.plan_value import CanalPlan, Severity
from planning.foundation.tables import Figures
from planning.instruments.strain import Strain
from planning.lengths.working_length import LengthContext, settle
from planning.tray.selection import select
from planning.whole_tooth.cautions import work_cautions
from planning.work.canal_plan import PlannedCanal, plan_canal
from tests.planning.given import molar


@cache
def planned() -> tuple[Canal, PlannedCanal]:
    """MB1 of the check molar, planned with nothing that warns."""
    plan_input, figures = molar(), Figures()
    mb1 = plan_input.canals[0]
    about = LengthContext(canal=mb1.name, reference_point=mb1.reference_point, setting=plan_input.setting)
    length = settle(mb1.readings, about, figures)
    asked = SizeRequest(tooth_iso="26", canal=mb1.name, setting=plan_input.setting, taper=4)
    advised = advise(asked, figures)
    canal = Canal(
        plan_input=plan_input,
        number=0,
        length=length,
        join=join_of(plan_input, 0, length),
        size_asked=asked,
        size_range=advised,
        final_size=advised.proposed,
        crown_mm=7.5,
        widths=widths_of(plan_input, 0, figures, beyond_mm=1.0),
        held=(),
    )
    return canal, plan_canal(canal, select(plan_input, figures), figures)


def bent(strain_class: str) -> Callable[[CanalPlan], CanalPlan]:
    low = Strain(instrument="25/.04", diameter_mm=0.4, strain_pct=2.0, strain_class="low")
    worst = Strain(instrument="30/.06", diameter_mm=0.7, strain_pct=5.8, strain_class=strain_class)  # type: ignore[arg-type]
    return lambda plan: replace(plan, strain=(low, worst))


def left(worst_mm: float, *, measured: bool = True) -> Callable[[CanalPlan], CanalPlan]:
    wall = WallLeft(
        from_end_mm=10,
        before_mm=0.79,
        canal_mm=0.4,
        prepared_mm=0.7,
        centred_mm=0.64,
        worst_mm=worst_mm,
        measured=measured,
        source="made by hand",
        know="common practice",
    )
    return lambda plan: replace(plan, wall=wall)


def judged(*felt: str | None) -> Callable[[CanalPlan], CanalPlan]:
    steps = tuple(
        ExpectedStep(
            node=f"descending/{number}",
            pass_number=1,
            instrument="30/.04",
            depth_mm=15.0,
            low_mm=None,
            high_mm=None,
            reach_share=None,
            removes_mm3=0.1,
            shape=(),
            felt=each,  # type: ignore[arg-type]
        )
        for number, each in enumerate(felt)
    )
    initial_shape = InitialShape(points=(), source="made by hand", know="common practice")
    expectation = Expectation(
        initial_shape=initial_shape,
        steps=steps,
        series_passes=None,
        makes_room=False,
        samples=0,
        few_agree=False,
        narrows=False,
    )
    return lambda plan: replace(plan, expectation=expectation)


OF_VALUES: list[tuple[str, Callable[[CanalPlan], CanalPlan], Callable[[CanalPlan], CanalPlan]]] = [
    ("strain-high", bent("high"), bent("medium")),
    ("wall-thin", left(0.49), left(0.5)),
    ("wall-thin", left(0.49), left(0.49, measured=False)),
    ("wall-thin-here", left(0.49, measured=False), left(0.5, measured=False)),
    ("wall-thin-here", left(0.49, measured=False), left(0.49)),
    ("wall-too-thin", left(0.29), left(0.3)),
    ("shorter-than-expected", judged("as_expected", "shorter", None), judged("shorter", "as_expected", None)),
    ("deeper-than-expected", judged("longer"), judged(None)),
]


def codes(change: Callable[[CanalPlan], CanalPlan]) -> dict[str, Severity]:
    canal, made = planned()
    cautions = work_cautions(canal, replace(made, plan=change(made.plan)), Figures())
    return {caution.code: caution.severity for caution in cautions}


@pytest.mark.parametrize(("code", "due", "not_due"), OF_VALUES, ids=[case[0] for case in OF_VALUES])
def test_a_value_is_warned_of_where_it_passes_its_limit(
    code: str, due: Callable[[CanalPlan], CanalPlan], not_due: Callable[[CanalPlan], CanalPlan]
) -> None:
    assert code in codes(due)
    assert code not in codes(not_due)


def test_a_value_that_is_not_known_is_not_warned_of() -> None:
    assert codes(lambda plan: replace(plan, strain=(), wall=None, expectation=None)) == {}


def test_too_thin_a_wall_is_not_warned_of_twice() -> None:
    assert set(codes(left(0.29))) == {"wall-too-thin"}
    assert codes(left(0.29))["wall-too-thin"] is Severity.STOP


def test_all_strained_instruments_are_named_in_one_caution_with_the_worst() -> None:
    high = [
        Strain(instrument=name, diameter_mm=0.7, strain_pct=strain_pct, strain_class="high")
        for name, strain_pct in (("30/.06", 5.8), ("35/.06", 6.3))
    ]
    canal, made = planned()
    plan = replace(made.plan, strain=tuple(high))
    strained = [c for c in work_cautions(canal, replace(made, plan=plan), Figures()) if c.code == "strain-high"]
    assert [(caution.value, "30/.06, 35/.06" in caution.says) for caution in strained] == [(6.3, True)]
