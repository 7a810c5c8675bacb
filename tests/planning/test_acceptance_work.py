"""Cases worked by hand, told step by step: what was felt, what stops the work, what is charted and not planned.

The arithmetic is written out at each.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.contract.canal_facts import Finding, WallInput, WidthInput
from planning.contract.plan_input import (
    CanalChoice,
    Choices,
    Irrigant,
    Needle,
    Override,
    PlanInput,
    RecordedDepth,
)
from planning.contract.plan_value import CanalPlan, Plan, Severity
from planning.contract.tooth_facts import Anatomy
from planning.foundation.errors import MotionNotAccepted, ToothNotPlanned
from planning.instruments.iso_3630 import Motion, Use
from planning.lengths.readings import ApexLocator
from planning.run_sheet.graph import Action, Exit, Step
from planning.run_sheet.walk import Walk
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.given import CHECK_KIT, OPEN_30, block, canal, confirmed, four_canals, kit, molar, rotary
from tests.planning.test_walk import go


def codes(planned: Plan) -> set[str]:
    return {caution.code for caution in planned.cautions}


def phases(canal_plan: CanalPlan) -> set[str]:
    return {node.phase for node in canal_plan.run_sheet.nodes.values() if isinstance(node, Step)}


# --- C6: a training block 16.5 long, two passes, then up to size 30 ---

FIRST = {
    "coronal-flaring/25-10": 9.5,
    "coronal-flaring/25-08": 11.0,
    "descending/40-04": 13.5,
    "descending/35-04": 14.0,
    "descending/30-04": 15.0,
    "descending/25-04": 15.5,
}
SECOND = dict(zip(FIRST, (11.5, 12.5, 14.0, 14.5, 15.5, 16.5), strict=True))


def block_30(**choices: Any) -> Plan:
    sized = (CanalChoice(canal="single", final_size=30),)
    fields: dict[str, Any] = {"needle": OPEN_30, "canals": sized}
    return plan(block(choices=Choices(**(fields | choices))))


def test_c6_two_passes_bring_the_smallest_to_length_and_room_is_made_for_the_next() -> None:
    on = Walk(block_30().canals[0].run_sheet)
    go(on, "descending/25-04", FIRST).leave(Exit.SHORT, 15_500)
    go(on, "descending/25-04", SECOND).leave(Exit.SHORT, 16_500)  # its stop: reached
    go(on, "ascending/30-04").leave(Exit.SHORT, 16_000)
    go(on, "ascending/30-04/make-room")
    assert on.stop_um() == 15_000  # 16.0 - 1.0
    on.leave(Exit.REACHED)
    go(on, "ascending/30-04").leave(Exit.REACHED)
    go(on, "confirm/30-02").leave(Exit.REACHED)
    assert on.at == "confirm/larger"
    on.leave(Exit.SHORT, 15_500)  # hand 35 stays 1.0 short: the end is 30 and no wider
    assert on.at == "rinse/1-water"  # on the bench the cone's image shows the size too


def test_c6_every_instrument_is_followed_by_irrigation_and_the_small_one_to_length() -> None:
    sheet = block_30().canals[0].run_sheet
    worked = [
        n
        for n in sheet.nodes.values()
        if isinstance(n, Step) and n.action is Action.INSTRUMENT and n.phase != "explore"
    ]
    larger = [n for n in worked if n.instrument and not n.instrument.startswith(("08", "10"))]
    assert larger
    for node in larger:
        after = sheet.nodes[f"{node.id}/recapitulate"]
        assert f"{node.id}/irrigate" in sheet.nodes
        assert isinstance(after, Step)
        assert (after.instrument, after.stop_um) == ("10/.02 hand", 16_500)


# 27 gauge is at most 0.42 (ISO 9626): it binds (0.42 - 0.30) / 0.04 = 3.0 short; 16.5 - 3.0 - 1.0 = 12.5 against a
# ceiling of 14.5. First to bind 15, three sizes up: 30.
def test_c6_a_needle_too_wide_never_reaches_its_ceiling() -> None:
    wide = next(c for c in block_30(needle=Needle(gauge=27, tip="open")).cautions if c.code == "needle-wide")
    assert (wide.value, wide.limit) == (12.5, 14.5)
    assert "needle-wide" not in codes(block_30())
    assert block_30().canals[0].size_range.least == 30


def test_c6_hypochlorite_in_a_block_opens_nothing() -> None:
    planned = block_30(irrigant=Irrigant.SODIUM_HYPOCHLORITE)
    assert ("hypochlorite-in-block", Severity.STOP) in {(c.code, c.severity) for c in planned.cautions}
    assert phases(planned.canals[0]) == set()


# --- C7: an upper premolar whose buccal canal blocks after 30/.04 ---
# Length 20.0; the small instrument stops at 18.0, 2.0 short and more than 0.5, twice.


def premolar(*felt: tuple[str, float]) -> Plan:
    depths = tuple(RecordedDepth(node=node, depth_mm=depth_mm) for node, depth_mm in felt)
    b = canal("B", "B", *confirmed(21.0, 20.0, 1.0, "B cusp"), point="B cusp", felt=depths)
    p = canal("P", "P", *confirmed(20.5, 19.5, 1.0, "P cusp"), point="P cusp")
    sizes = (CanalChoice(canal="B", final_size=35),)
    choices = Choices(needle=OPEN_30, canals=sizes)
    return plan(molar(tooth="24", canals=(b, p), roots=(), choices=choices))


SHORT = {"descending/40-04": 16.5, "descending/35-04": 17.5, "descending/30-04": 18.5}
"""The larger ones of the series stop short; the smallest goes to length."""
STUCK = ("ascending/30-04/recapitulate", 18.0)


def test_c7_short_once_warns_and_short_twice_withholds_what_shapes() -> None:
    assert "patency-lost" in codes(premolar(STUCK))
    assert not premolar(STUCK).canals[0].withheld
    blocked = premolar(STUCK, STUCK)
    assert [w.code for w in blocked.canals[0].withheld] == ["canal-blocked"]
    assert "ascending" not in phases(blocked.canals[0])
    assert "ascending" in phases(blocked.canals[1])


def test_c7_once_it_passes_again_the_work_goes_on() -> None:
    opened = premolar(STUCK, STUCK, ("ascending/blocked/try", 19.0), ("ascending/blocked/try", 20.0))
    assert codes(opened) & {"patency-lost", "canal-blocked"} == set()
    assert "ascending" in phases(opened.canals[0])


def test_c7_at_the_chair_three_tries_then_the_hand_sizes_and_the_phase_anew() -> None:
    on = Walk(premolar().canals[0].run_sheet)
    go(on, "ascending/30-04/recapitulate", SHORT).leave(Exit.BLOCKED)
    for _ in range(2):
        go(on, "ascending/blocked/try").leave(Exit.BLOCKED)
    go(on, "ascending/blocked/try").leave(Exit.REACHED)
    go(on, "ascending/30-04")
    assert {"ascending/blocked/15-02", "ascending/blocked/20-02"} <= set(on.path)
    assert "ascending/35-04" not in on.path


def test_c7_one_that_never_opens_goes_to_an_image_and_the_supervisor() -> None:
    on = Walk(premolar().canals[0].run_sheet)
    go(on, "ascending/30-04/recapitulate", SHORT).leave(Exit.BLOCKED)
    while on.at != "ascending/blocked/image":
        go(on, "ascending/blocked/try").leave(Exit.BLOCKED)
    assert on.passes["ascending/blocked/try"] == 4
    on.leave(Exit.DONE)
    assert on.at == "ascending/blocked/sign-off"


# --- C8: a lower molar's mesiolingual canal, curved by 32 degrees, its thin wall measured ---
# Wall 0.79 where the canal is 0.40, 10 mm from the end. 30/.04 is 0.30 + 0.04 x 10 = 0.70 there: 0.79 - 0.30 = 0.49 in
# the worst case, less than 0.5. 30/.06 is 0.90: 0.79 - 0.50 = 0.29, less than 0.3.
# Bend 4.0 from the end, radius 6.0: 30/.04 is 0.46 there, 0.46 / 12 = 3.8 %, medium. 30/.06 is 0.54, 4.5 %; 40/.06 is
# two sizes above the final one, ends 2.0 short and is 0.52 there, 4.3 %: medium. As the final size it would be 0.64,
# 5.3 %, high.


def mesiolingual(taper: int, *overrides: Override, size: int = 30, reason: str = "") -> Plan:
    worked = canal(
        "ML",
        "M",
        *confirmed(21.0, 20.0, 1.0, "ML cusp"),
        point="ML cusp",
        curvature_deg=32.0,
        curve_radius_mm=6.0,
        curve_from_end_mm=4.0,
        wall=WallInput(thickness_mm=0.79, from_end_mm=10.0),
        widths=(WidthInput(from_end_mm=0.0, narrow_mm=0.25), WidthInput(from_end_mm=10.0, narrow_mm=0.4)),
    )
    coronal = (rotary(25, 10, Use.CORONAL), rotary(25, 8, Use.CORONAL))
    choices = Choices(needle=OPEN_30, canals=(CanalChoice(canal="ML", final_size=size, reason=reason),))
    series = kit(*coronal, *(rotary(each, taper) for each in (25, 30, 35, 40)))
    return plan(molar(tooth="36", canals=(worked,), roots=(), kit=series, choices=choices, overrides=overrides))


def test_c8_a_wall_a_little_too_thin_is_warned_of() -> None:
    planned = mesiolingual(4)
    warning = next(c for c in planned.cautions if c.code == "wall-thin")
    assert (warning.value, warning.limit, warning.severity) == (0.49, 0.5, Severity.CAUTION)
    assert not planned.canals[0].withheld
    assert codes(planned) & {"strain-high", "curve-taper", "wall-too-thin"} == set()


def test_c8_a_steeper_taper_stops_the_shaping_until_a_supervisor_lets_it_pass() -> None:
    planned = mesiolingual(6)
    bar = next(c for c in planned.cautions if c.code == "wall-too-thin")
    assert (bar.value, bar.limit, bar.severity) == (0.29, 0.3, Severity.STOP)
    assert {"curve-taper", "curve-severe"} <= codes(planned)
    assert "strain-high" not in codes(planned)
    assert "strain-high" in codes(mesiolingual(6, size=40))
    assert phases(planned.canals[0]) == {"explore", "length", "glide-path"}
    opened = mesiolingual(6, Override(code="wall-too-thin", canal="ML", reason="measured twice, leaning away"))
    assert "ascending" in phases(opened.canals[0])
    assert opened.canals[0].wall == planned.canals[0].wall


def test_c8_a_size_above_the_curves_cap_needs_a_reason() -> None:
    assert {"final-size-above", "size-reason-missing"} <= codes(mesiolingual(4, size=40))
    assert "size-reason-missing" not in codes(mesiolingual(4, size=40, reason="wide on the image"))


# --- C9: a needle too deep in the clinic ---
# P 21.5 long, open needle 2.0 short: 19.5. Recorded at 20.0: 0.5 too deep.


def test_c9_an_open_needle_too_deep_closes_its_canal() -> None:
    canals = four_canals()
    deep = (RecordedDepth(node="rinse/1-sodium_hypochlorite", depth_mm=20.0),)
    planned = plan(
        molar(
            setting=Setting.CLINIC,
            isolated=True,
            canals=(*canals[:3], replace(canals[3], felt=deep)),
            choices=Choices(needle=OPEN_30, irrigant=Irrigant.SODIUM_HYPOCHLORITE),
        )
    )
    bar = next(c for c in planned.cautions if c.code == "needle-open-too-deep")
    assert (bar.canal, bar.value, bar.limit, bar.step) == ("P", 20.0, 19.5, "rinse/1-sodium_hypochlorite")
    assert [c.canal for c in planned.canals if c.withheld] == ["P"]


# --- C10: limits ---


def incisor(apex_mm: float, *overrides: Override) -> PlanInput:
    point = "incisal edge"
    locator = ApexLocator(read_mm=19.0, repeat_mm=19.0, mark="apex", reference_point=point)
    single = canal("single", "single", *confirmed(23.0, 22.0, 1.0, point), locator, point=point, apex_mm=apex_mm)
    return molar(tooth="21", canals=(single,), roots=(), overrides=overrides)


NOT_PLANNED = [
    molar(tooth="75"),
    incisor(1.6),
    molar(tooth="46", root_filled=True),
    molar(tooth="37", anatomy=Anatomy.FUSED_OR_C_SHAPED),
]


@pytest.mark.parametrize("plan_input", NOT_PLANNED, ids=["primary", "open apex", "root-filled", "C-shaped"])
def test_c10_charted_and_not_planned(plan_input: PlanInput) -> None:
    with pytest.raises(ToothNotPlanned, match="charted but not planned"):
        plan(plan_input)


def test_c10_a_wide_apex_waits_for_the_supervisor_and_its_locator_does_not_count() -> None:
    waiting = plan(incisor(1.2))
    (canal_plan,) = waiting.canals
    # 22.0 + 1.0 - 1.0: by the image alone
    assert (canal_plan.length.state, canal_plan.length.stop_mm) == ("settled", 22.0)
    assert canal_plan.length.rests_on == ("confirming_image",)
    assert ([w.code for w in canal_plan.withheld], phases(canal_plan)) == (["apex-wide"], set())
    opened = plan(incisor(1.2, Override(code="apex-wide", canal="single", reason="1.2 mm, I stay at the chair")))
    assert opened.canals[0].length.rests_on == ("confirming_image",)
    assert "ascending" in phases(opened.canals[0])


def test_c10_a_reciprocating_instrument_is_refused_in_crown_down() -> None:
    other = tuple(
        replace(instrument, motion=Motion.RECIPROCATING)
        if (instrument.size, instrument.taper) == (25, 4)
        else instrument
        for instrument in CHECK_KIT.instruments
    )
    with pytest.raises(MotionNotAccepted, match="reciprocating"):
        plan(molar(kit=replace(CHECK_KIT, instruments=other)))


def test_c10_no_step_in_the_clinic_without_a_dam() -> None:
    planned = plan(molar(setting=Setting.CLINIC))
    assert {tuple(phases(canal_plan)) for canal_plan in planned.canals} == {()}
    assert {canal_plan.withheld[0].code for canal_plan in planned.canals} == {"isolation-missing"}


def test_c10_a_canal_searched_for_and_not_found_stays_in_the_record_and_is_not_worked() -> None:
    canals = four_canals()
    lost = replace(canals[1], finding=Finding.SEARCHED_NOT_FOUND, readings=(), junction=None)
    planned = plan(molar(tooth="17", canals=(canals[0], lost, *canals[2:]), roots=()))
    cautions = {(c.code, c.severity) for c in planned.cautions if c.canal == "MB2"}
    assert cautions == {("canal-not-found", Severity.NOTE)}
    assert ([w.code for w in planned.canals[1].withheld], phases(planned.canals[1])) == (["canal-not-found"], set())
