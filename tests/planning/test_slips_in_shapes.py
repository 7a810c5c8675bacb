"""What a slip of a recorded depth may move: never how deep a needle goes, nor the shape that is drawn.

Judges: the slow twin of the contact-depth estimate, ISO 9626 and ISO 3630-1 by hand, hidden canals of known truth.
"""

from __future__ import annotations

import math
from dataclasses import replace
from statistics import NormalDist

import numpy as np
import pytest

from planning.canal.profile import Line
from planning.contract.plan_input import PastInsertion, PlanInput
from planning.contract.plan_value import CanalPlan
from planning.depth import contact_depth
from planning.depth.sure import surely_stood
from planning.instruments.iso_3630 import Use, corners
from planning.run_sheet.walk import Walk
from planning.whole_tooth.plan import plan
from planning.work.mid_course import begun_by
from tests.draws import draws
from tests.planning.given import block, hand, molar, rotary
from tests.planning.hidden_canals import BY, END_MM, NARROW, drawn
from tests.reference import slow_contact_depth

FLARING, SERIES = "25/.10 continuous", "40/.04 continuous"


def after(plan_input: PlanInput, name: str, *made: PastInsertion) -> CanalPlan:
    """The canal's plan made anew in the descending series, after what was made."""
    walk = Walk(next(canal_plan.run_sheet for canal_plan in plan(plan_input).canals if canal_plan.canal == name))
    progress = begun_by(walk, length_mm=None, made=made)
    canals = tuple(
        replace(canal_input, progress=progress) if canal_input.name == name else canal_input
        for canal_input in plan_input.canals
    )
    return next(
        canal_plan for canal_plan in plan(replace(plan_input, canals=canals)).canals if canal_plan.canal == name
    )


def to_resistance(depth_mm: float, key: str = SERIES, stop_mm: float = 18.0, **more: bool) -> PastInsertion:
    phase = "descending" if key == SERIES else "coronal-flaring"
    return PastInsertion(
        step=f"{phase}/{key[:2]}",
        phase=phase,
        instrument=key,
        depth_mm=depth_mm,
        stop_mm=stop_mm,
        **({"to_resistance": True} | more),
    )


def needle_mm(*made: PastInsertion, name: str = "MB1") -> float:
    needle = after(molar(), name, *made).needle
    assert needle is not None
    assert needle.begins_mm is not None
    return needle.begins_mm


def in_a_narrow_canal_mm(name: str, size: int, end_mm: float, foramen_share: float) -> float:
    """Where an instrument of taper .04 rests in a canal that nine in ten are wider than, by the slow twin."""
    plain = after(molar(), name).expectation
    assert plain is not None
    low, end = (
        math.exp(NormalDist().inv_cdf(0.1) * math.sqrt(math.log1p(share**2))) for share in (0.32, foramen_share)
    )
    points = plain.initial_shape.points
    narrow = [(p.from_reference_mm, p.narrow_mm * (end if p is points[-1] else low)) for p in points]
    tip = size / 100
    # A second stroke goes overcut / taper deeper.
    return slow_contact_depth.rest_mm([(0.0, tip), (16.0, tip + 0.64)], narrow, end_mm, 0.15) + 0.015 / 0.04


# DB: foramen 0.22 ± 0.06 (Wolf et al. 2017). 40/.04 is wide enough for the needle, 0.32, down to its tip; 1.0 above it.
@pytest.mark.parametrize("recorded_mm", [7.5, 8.0, 8.5, 9.0, 10.0, 12.0, 15.0, 18.0])
def test_the_needle_goes_by_what_a_narrow_canal_lets_an_instrument_do(recorded_mm: float) -> None:
    surely_mm = min(recorded_mm, in_a_narrow_canal_mm("DB", 40, 18.0, 0.06 / 0.22))
    expected_mm = max(needle_mm(name="DB"), math.floor((surely_mm - 1.0) * 2) / 2)
    assert needle_mm(to_resistance(recorded_mm), name="DB") == expected_mm


def test_a_slip_lets_the_needle_no_deeper_than_the_right_depth_does() -> None:
    right = needle_mm(to_resistance(11.0, FLARING))
    assert [needle_mm(to_resistance(mm, FLARING)) for mm in (13.0, 14.0, 15.0, 16.0)] == [right] * 4


# 30/.04 at its stop of 19.5 is 0.32 wide 0.5 mm higher, and 1.0 more: 18.0, the ceiling of 17.5 before it. Recorded
# short of its stop, at 19.0, it counts as far as it gets in a narrow canal. MB1: foramen 0.22 ± 0.07.
def test_only_what_came_to_its_stop_has_surely_stood_where_it_is_recorded() -> None:
    at_stop = to_resistance(19.5, "30/.04 continuous", 19.5, to_resistance=False)
    assert needle_mm(at_stop) == 17.5
    surely_mm = in_a_narrow_canal_mm("MB1", 30, 19.5, 0.07 / 0.22)
    assert needle_mm(replace(at_stop, depth_mm=19.0)) == math.floor((surely_mm - 1.5) * 2) / 2 < 17.5
    past = tuple(
        surely_stood((to_resistance(19.5, stop_mm=18.0, to_resistance=False),), {SERIES: rotary(40, 4)}, (), BY)
    )
    assert [stood.tip_mm for stood in past] == [18.0]


def test_where_no_widths_are_known_a_depth_that_was_felt_tells_the_needle_nothing() -> None:
    kit = {FLARING: rotary(25, 10, Use.CORONAL), "20/.02 hand": hand(20)}
    felt = (to_resistance(12.0, FLARING), to_resistance(18.0, "20/.02 hand", to_resistance=False))
    assert [stood.instrument.size for stood in surely_stood(felt, kit, (), BY)] == [20]


def test_of_ten_canals_one_at_most_is_narrower_than_the_needle_counts_on_after_any_slip() -> None:
    """Straight practice canals that differ as natural ones do, 40/.04 recorded 2 to 5 mm too deep in each."""
    count, file = draws(240), rotary(40, 4)
    world = drawn(count, seed=5)
    canals, chance = world.canals(NARROW), np.random.default_rng(3)
    share = 0.32  # of canals of one kind (samples.width_share)
    factor = math.exp(NormalDist().inv_cdf(0.1) * math.sqrt(math.log1p(share**2)))
    low: Line = tuple((x, wide * factor) for x, wide in NARROW)
    deeper = 0
    for row in range(count):
        canal = tuple(zip(canals.depth_mm[row].tolist(), canals.wide_mm[row].tolist(), strict=True))
        stood_mm = contact_depth.insert(file, canal, END_MM, BY).depth_mm
        slip = to_resistance(min(END_MM, stood_mm + chance.uniform(2, 5)), stop_mm=END_MM)
        (sure,) = surely_stood((slip,), {SERIES: file}, low, BY)
        deeper += sure.tip_mm > stood_mm
    assert corners(file)[0][1] == 0.4
    assert deeper / count <= 0.1 + 3 * math.sqrt(0.1 * 0.9 / count)


# --- the shape that is drawn --------------------------------------------------------------------------------------


def prepared(*made: PastInsertion) -> dict[float, float]:
    """Diameter of a block's canal by depth, every half millimetre."""
    expectation = after(replace(block(), samples=300), "single", *made).expectation
    assert expectation is not None
    line = expectation.prepared or ()
    x, d = [p.from_reference_mm for p in line], [p.diameter_mm for p in line]
    return {at: float(np.interp(at, x, d)) for at in np.arange(0.5, 16.5, 0.5)}


# A block's canal is 0.15 at 16.5 and .02 wider each millimetre: what was not reached is as it was.
def test_a_slip_is_not_drawn() -> None:
    slipped, untouched = (
        prepared(to_resistance(12.0, FLARING, 16.5)),
        {mm: 0.15 + 0.02 * (16.5 - mm) for mm in (6.0, 8.0, 11.0)},
    )
    assert {mm: slipped[mm] for mm in untouched} == pytest.approx(untouched, abs=1e-3)


# 25/.10 at 5.0: 0.25 + 0.015 there and .10 wider each millimetre above, 0.565 at 2.0.
def test_a_depth_as_expected_is_drawn_where_it_was_felt() -> None:
    assert prepared(to_resistance(5.0, FLARING, 16.5))[2.0] == pytest.approx(0.565, abs=1e-3)


def test_two_running_that_fit_no_canal_are_believed_from_the_second_on() -> None:
    both = prepared(to_resistance(12.0, FLARING, 16.5), to_resistance(12.5, "25/.08 continuous", 16.5))
    assert both[11.5] == pytest.approx(0.25 + 0.08 * 1.0 + 0.015, abs=1e-3)
