"""Cases worked by hand, told step by step: lengths that disagree, move, or fall with their reference point.

C5, lengths by ratio, is in test_lengths; C1, the four-canal molar, in test_four_canals. The arithmetic is written out
at each.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.contract.plan_input import Choices, Junction, Needle, Pattern, PlanInput, RootInput
from planning.contract.plan_value import CanalPlan, Plan
from planning.lengths.readings import ApexLocator, ConfirmingImage, LengthState, PreOperativeImage, Reading, Resorption
from planning.run_sheet.graph import Action, Step
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.given import OPEN_30, canal, confirmed, molar

SIDE_VENTED = Choices(needle=Needle(gauge=30, tip="side_vented"))


def named(planned: Plan, name: str) -> CanalPlan:
    return next(each for each in planned.canals if each.canal == name)


def codes(planned: Plan, name: str | None = None) -> set[str]:
    return {caution.code for caution in planned.cautions if name in (None, caution.canal)}


def shaped_with(canal_plan: CanalPlan) -> set[str]:
    """Engine instruments in the order of work, but for room in the coronal third where the first hand size is held."""
    nodes = [node for node in canal_plan.run_sheet.nodes.values() if isinstance(node, Step) and node.phase != "explore"]
    return {
        n.instrument for n in nodes if n.action is Action.INSTRUMENT and n.instrument and "hand" not in n.instrument
    }


# --- C2: a lower molar in the clinic, bone lost at its distal root only ---
# Set-back 1.0, with bone resorption 1.5 (Weine, read second-hand). Tooth = set + gap; length = tooth - set-back:
#   MB 20.0 - 0.5 = 19.5, 18.5;   ML 19.5 + 1.0 = 20.5, 19.5;   D 20.5 + 2.0 = 22.5, 21.0.
# MB: the tip is past the apex and the correction is 20.0 - 18.5 = 1.5, more than 1.0: unsettled.


def lower_molar(*more: Reading, junction: Junction | None = None) -> Plan:
    mb = confirmed(21.0, 20.0, -0.5, "MB cusp")
    return plan(
        PlanInput(
            tooth="36",
            setting=Setting.CLINIC,
            isolated=True,
            canals=(
                canal("MB", "M", *mb, *more, junction=junction),
                canal("ML", "M", *confirmed(20.5, 19.5, 1.0, "ML cusp"), point="ML cusp"),
                canal("D", "D", *confirmed(21.5, 20.5, 2.0, "D cusp"), point="D cusp", resorption=Resorption.BONE),
            ),
            roots=(RootInput(name="M", pattern=Pattern.JOIN, main_canal="ML"),),
            kit=molar().kit,
            technique=molar().technique,
            choices=Choices(needle=OPEN_30),
        )
    )


FURTHER = ConfirmingImage(set_mm=18.5, tip_short_mm=1.0, reference_point="MB cusp")


def test_c2_lengths_with_and_without_bone_loss() -> None:
    planned = lower_molar()
    assert [each.length.working_length_mm for each in planned.canals] == [18.5, 19.5, 21.0]
    states = [each.length.state for each in planned.canals]
    assert states == [LengthState.UNSETTLED, LengthState.SETTLED, LengthState.SETTLED]
    assert "18.5" in named(planned, "MB").length.what_to_do
    assert not shaped_with(named(planned, "MB"))


def test_c2_the_image_at_the_corrected_length_settles_it() -> None:
    planned = lower_molar(FURTHER)  # 18.5 + 1.0 = 19.5; 19.5 - 1.0 = 18.5
    assert named(planned, "MB").length.state is LengthState.SETTLED
    assert named(planned, "MB").length.stop_mm == 18.5
    # ML is the main canal: until the junction is found MB has its glide path only.
    assert [w.code for w in named(planned, "MB").withheld] == ["junction-missing"]
    assert not shaped_with(named(planned, "MB"))
    assert shaped_with(named(planned, "ML"))


def test_c2_the_mark_on_the_cone_gives_the_stop_and_the_needle_ceiling() -> None:
    junction = Junction(from_terminus_mm=4.0, method="cone_mark", at_length_mm=18.5)
    mb = named(lower_molar(FURTHER, junction=junction), "MB")
    # 18.5 - 4.0 = 14.5; an open needle 2.0 short of it: 12.5.
    assert (mb.end_mm, mb.needle.ceiling_mm if mb.needle else None, mb.withheld) == (14.5, 12.5, ())


# --- C3: a lower premolar, image and locator ---
# Image: 21.5 + 0.5 - 1.0 = 21.0. Locator at the apex mark less 0.5: 19.5 gives 19.0, apart 2.0; 21.5 gives 21.0;
# 20.5 gives 20.0, apart 1.0; 21.0 gives 20.5, apart 0.5. Never a mean (20.0 in the first).


def premolar(read_mm: float) -> Plan:
    point = "buccal cusp"
    locator = ApexLocator(read_mm=read_mm, repeat_mm=read_mm, mark="apex", reference_point=point)
    single = canal("single", "single", *confirmed(22.5, 21.5, 0.5, point), locator, point=point)
    return plan(
        molar(tooth="34", setting=Setting.CLINIC, isolated=True, canals=(single,), roots=(), choices=SIDE_VENTED)
    )


@pytest.mark.parametrize(
    ("read_mm", "state", "stop_mm", "code"),
    [
        (19.5, LengthState.UNSETTLED, 19.0, "length-unsettled"),
        (21.5, LengthState.SETTLED, 21.0, None),
        (20.5, LengthState.TO_SETTLE, 20.0, "length-to-settle"),
        (21.0, LengthState.SETTLED, 20.5, None),
    ],
)
def test_c3_image_and_locator(read_mm: float, state: LengthState, stop_mm: float, code: str | None) -> None:
    planned = premolar(read_mm)
    (canal_plan,) = planned.canals
    assert (canal_plan.length.state, canal_plan.length.stop_mm) == (state, stop_mm)
    assert {c for c in codes(planned) if c in ("length-unsettled", "length-to-settle")} == ({code} if code else set())
    assert bool(shaped_with(canal_plan)) is (state is not LengthState.UNSETTLED)


# --- C4: a lower molar whose mesial canal curves by 28 degrees; length again after flaring ---
# Before: 20.0 + 1.0 - 1.0 = 20.0. After: set 19.5 gives 19.5, 0.5 shorter; 18.5 is 1.5 shorter, more than 1.0; 20.5 is
# longer. Needle (open, 2.0 short): 18.0, then 17.5.


def curved(*after_set_mm: float, **ml: Any) -> Plan:
    after = tuple(
        ConfirmingImage(set_mm=set_mm, tip_short_mm=1.0, reference_point="MB cusp", after_flaring=True)
        for set_mm in after_set_mm
    )
    mb = canal("MB", "M", *confirmed(21.0, 20.0, 1.0, "MB cusp"), *after, curvature_deg=28.0)
    other = canal("ML", "M", *confirmed(21.5, 20.5, 1.0, "ML cusp"), point="ML cusp")
    d = canal("D", "D", *confirmed(22.0, 21.0, 1.0, "D cusp"), point="D cusp")
    roots = (RootInput(name="M", pattern=Pattern.SEPARATE),)
    return plan(molar(tooth="46", canals=(mb, replace(other, **ml), d), roots=roots))


def ceiling_mm(canal_plan: CanalPlan) -> float | None:
    return canal_plan.needle.ceiling_mm if canal_plan.needle else None


def test_c4_a_curve_asks_for_the_length_again() -> None:
    """The order of work does so itself, and no caution says it twice."""
    before = curved()
    steps = named(before, "MB").run_sheet.nodes
    assert any(
        isinstance(node, Step) and (node.phase, node.action) == ("length-again", Action.IMAGE)
        for node in steps.values()
    )
    assert "length-again-due" not in codes(before, "MB")
    assert (named(before, "MB").length.stop_mm, ceiling_mm(named(before, "MB"))) == (20.0, 18.0)


def test_c4_half_a_millimetre_shorter_moves_stop_and_needle() -> None:
    after = curved(19.5)
    mb = named(after, "MB")
    assert (mb.length.state, mb.length.stop_mm, mb.end_mm, ceiling_mm(mb)) == (LengthState.SETTLED, 19.5, 19.5, 17.5)
    assert "length-again-due" not in codes(after, "MB")


@pytest.mark.parametrize("set_mm", [18.5, 20.5])
def test_c4_more_than_flaring_explains_is_unsettled(set_mm: float) -> None:
    planned = curved(set_mm)
    assert named(planned, "MB").length.state is LengthState.UNSETTLED
    assert "length-unsettled" in codes(planned, "MB")
    assert not shaped_with(named(planned, "MB"))
    assert shaped_with(named(planned, "D"))


def test_c4_a_lost_cusp_voids_the_lengths_measured_from_it_and_no_others() -> None:
    old = confirmed(21.5, 20.5, 1.0, "ML cusp")
    # The cusp lost 1.0: the old tooth length of 21.5 is now 20.5 from the new point, an estimate of 20.5 - 1.0 = 19.5.
    less = PreOperativeImage(tooth_mm=20.5, reference_point="ML cusp, reduced")
    planned = curved(19.5, reference_point="ML cusp, reduced", readings=(*old, less))
    ml = named(planned, "ML")
    assert (ml.length.state, ml.length.stop_mm) == (LengthState.ESTIMATED, 19.5)
    assert [reading.counts for reading in ml.length.readings] == [False, False, True]
    assert [w.code for w in ml.withheld] == ["length-estimated"]
    assert [named(planned, name).length.stop_mm for name in ("MB", "D")] == [19.5, 21.0]
