"""What holds for every plan, over random lengths, joins, curves, kits, techniques and settings."""

from __future__ import annotations

from typing import Any

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from planning.contract.plan_input import (
    CanalChoice,
    CanalInput,
    Choices,
    Junction,
    Kit,
    Needle,
    Pattern,
    PlanInput,
    RootInput,
)
from planning.contract.plan_value import CanalPlan, Plan
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.instruments.iso_3630 import Use
from planning.lengths.readings import Resorption
from planning.run_sheet.graph import Action, Exit, RunSheet, Step, why_unsound
from planning.run_sheet.walk import Walk
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.draws import draws
from tests.planning.given import HAND_SIZES, OPEN_30, canal, confirmed, hand, molar, rotary, technique

NAMES = (("MB1", "MB"), ("MB2", "MB"), ("DB", "DB"), ("P", "P"))
LARGER_HANDS = (*HAND_SIZES, 70, 80, 90)
SERIES = HAND_SIZES[3:]


@st.composite
def canals(draw: st.DrawFn) -> tuple[CanalInput, ...]:
    drawn = []
    for name, root in NAMES[: draw(st.integers(2, 4))]:
        tooth_mm = draw(st.integers(32, 52)) / 2
        tip_mm = draw(st.sampled_from((-0.5, 0.5, 1.0, 1.5, 2.5)))
        readings = confirmed(tooth_mm, tooth_mm - 1.0, tip_mm, "cusp")[: draw(st.integers(1, 2))]
        more: dict[str, Any] = {
            "resorption": draw(st.sampled_from((Resorption.NONE, Resorption.BONE))),
            "curvature_deg": draw(st.none() | st.integers(0, 60)),
            "curve_start_mm": draw(st.none() | st.integers(8, 20)),
        }
        if name == "MB2":
            junction = st.builds(Junction, from_terminus_mm=st.floats(0.5, 9), method=st.just("cone_mark"))
            more["junction"] = draw(st.none() | junction)
        drawn.append(canal(name, root, *readings, point="cusp", **more))
    return tuple(drawn)


@st.composite
def kits(draw: st.DrawFn) -> Kit:
    taper, steep = draw(st.sampled_from((3, 4, 6))), draw(st.sampled_from((8, 10, 12)))
    series = (rotary(size, taper, length_mm=31) for size in SERIES)
    coronal = rotary(25, steep, Use.CORONAL, length_mm=31)
    hands = (hand(size, 31) for size in LARGER_HANDS)
    return Kit(name="random", instruments=(*hands, coronal, *series), needles=(OPEN_30,))


@st.composite
def inputs(draw: st.DrawFn) -> PlanInput:
    here = draw(canals())
    sizes = draw(st.lists(st.sampled_from(SERIES[2:7]), min_size=len(here), max_size=len(here)))
    needle = st.builds(Needle, gauge=st.sampled_from((25, 27, 30)), tip=st.sampled_from(("open", "side_vented")))
    return molar(
        canals=here,
        roots=(RootInput(name="MB", pattern=draw(st.sampled_from(list(Pattern))), main_canal="MB1"),),
        kit=draw(kits()),
        technique=technique(draw(st.sampled_from(("crown-down", "step-back")))),
        setting=draw(st.sampled_from(list(Setting))),
        isolated=draw(st.booleans()),
        choices=Choices(
            needle=draw(needle),
            glide_path_to_size=draw(st.sampled_from((None, 15, 20))),
            canals=tuple(CanalChoice(canal=c.name, final_size=s) for c, s in zip(here, sizes, strict=True)),
        ),
    )


def planned(given_: PlanInput) -> Plan:
    """The plan; an input that is refused is left out, and hypothesis complains where too many are."""
    try:
        return plan(given_)
    except PlanningError:
        assume(False)
        raise


over_plans = settings(max_examples=draws(60), deadline=None, suppress_health_check=[HealthCheck.too_slow])


def steps(sheet: RunSheet) -> list[Step]:
    return [node for node in sheet.nodes.values() if isinstance(node, Step)]


def size_of(node: Step) -> int:
    return int((node.instrument or "0").split("/")[0])


@over_plans
@given(inputs())
def test_no_stop_lies_beyond_the_working_length(given_: PlanInput) -> None:
    made = planned(given_)
    ends = {c.canal: c.length.stop_mm for c in made.canals}
    for canal_plan in made.canals:
        most = canal_plan.length.working_length_mm
        stops = [n.stop_um for n in steps(canal_plan.run_sheet) if n.stop_um is not None]
        assert not stops or (most is not None and max(stops) <= most * 1000)
    assert all(s.stop_mm <= (ends[s.canal] or 0) for row in made.stop_table for s in row.stops)


@over_plans
@given(inputs())
def test_nothing_larger_than_the_small_file_passes_a_junction(given_: PlanInput) -> None:
    small = given_.technique.recapitulate_size
    for canal_plan in planned(given_).canals:
        if canal_plan.junction_mm is not None:
            stops = [n.stop_um for n in steps(canal_plan.run_sheet) if size_of(n) > small and n.stop_um is not None]
            assert all(stop <= canal_plan.junction_mm * 1000 for stop in stops)


@over_plans
@given(inputs())
def test_irrigation_and_recapitulation_follow_every_instrument_larger_than_the_small_file(given_: PlanInput) -> None:
    small = given_.technique.recapitulate_size
    for canal_plan in planned(given_).canals:
        nodes = canal_plan.run_sheet.nodes
        for node in steps(canal_plan.run_sheet):
            if node.action is Action.INSTRUMENT and size_of(node) > small and node.phase != "explore":
                after = [nodes[target] for target in node.exits.values()]
                assert all(isinstance(a, Step) and a.action is Action.IRRIGATE for a in after)
                then = [nodes[a.exits[Exit.DONE]] for a in after if isinstance(a, Step)]
                assert all(isinstance(t, Step) and t.action is Action.RECAPITULATE for t in then)


@over_plans
@given(inputs(), st.randoms(use_true_random=False))
def test_every_run_sheet_ends_however_it_is_answered(given_: PlanInput, dice: Any) -> None:
    for canal_plan in planned(given_).canals:
        assert why_unsound(canal_plan.run_sheet) == ""
        walk = Walk(canal_plan.run_sheet)
        visits = 0
        while not walk.ended:
            node = walk.node
            assert isinstance(node, Step)
            exit_ = dice.choice(sorted(node.exits))
            depth = dice.randrange(0, (node.stop_um or 0) + 1000, 500) if exit_ is Exit.SHORT else None
            walk.leave(exit_, depth)
            visits += 1
            assert visits < 40 * len(canal_plan.run_sheet.nodes)


def own_order(canal_plan: CanalPlan, made: Plan) -> list[str]:
    return [s.instrument for s in made.one_at_a_time.steps if s.canals == (canal_plan.canal,)]


@over_plans
@given(inputs())
def test_the_tray_order_keeps_every_canals_own_order_and_all_come_to_the_first_image_together(
    given_: PlanInput,
) -> None:
    made = planned(given_)
    phases = [step.phase for step in made.tray.steps]
    assert phases == sorted(phases, key=lambda phase: phase != "explore")
    for canal_plan in made.canals:
        at_tray = [s.instrument for s in made.tray.steps if canal_plan.canal in s.canals]
        assert at_tray == own_order(canal_plan, made)


@over_plans
@given(inputs())
def test_the_needle_never_goes_past_its_ceiling(given_: PlanInput) -> None:
    for canal_plan in planned(given_).canals:
        if canal_plan.needle is not None:
            depths = [n.needle_at_most_um for n in steps(canal_plan.run_sheet) if n.needle_at_most_um is not None]
            assert all(depth <= canal_plan.needle.ceiling_mm * 1000 for depth in depths)
            assert all(now.at_most_mm <= canal_plan.needle.ceiling_mm for now in canal_plan.needle.now)


@over_plans
@given(inputs())
def test_on_the_way_expected_the_needle_never_has_to_be_taken_back(given_: PlanInput) -> None:
    """A canal only grows wider: what was free stays free."""
    for canal_plan in planned(given_).canals:
        way = [canal_plan.run_sheet.nodes[id_] for id_ in canal_plan.expected_path]
        depths = [n.needle_at_most_um for n in way if isinstance(n, Step) and n.needle_at_most_um is not None]
        assert depths == sorted(depths)


@over_plans
@given(inputs())
def test_the_same_input_gives_the_same_bytes(given_: PlanInput) -> None:
    assert canonical_text(planned(given_)) == canonical_text(planned(given_))
