"""Bend, wall, filling, needle and irrigants as whole plans carry them, and the reason of every number."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from planning.contract.canal_facts import WallInput, WidthInput
from planning.contract.obturation import FillingItem
from planning.contract.plan_input import CanalInput, Choices, Irrigant, PlanInput
from planning.contract.plan_value import CanalPlan, Plan
from planning.foundation.errors import OutOfBounds
from planning.lengths.readings import PreOperativeImage
from planning.run_sheet.graph import Step
from planning.whole_tooth.plan import plan
from tests.planning.given import (
    CHECK_KIT,
    OPEN_30,
    SECOND_KIT,
    block,
    canal,
    cone,
    confirmed,
    four_canals,
    molar,
    technique,
)


def curved(**more: Any) -> CanalInput:
    """Acceptance case worked by hand: 36 ML, 32 degrees, radius 6, bent 4 mm from the end at 20.5; 10 mm from the end
    the wall is 0.79 and the canal 0.40."""
    fields: dict[str, Any] = {
        "curvature_deg": 32.0,
        "curve_radius_mm": 6.0,
        "curve_from_end_mm": 4.0,
        "widths": (WidthInput(from_end_mm=0.0, narrow_mm=0.25), WidthInput(from_end_mm=10.0, narrow_mm=0.40)),
        "wall": WallInput(thickness_mm=0.79, from_end_mm=10.0),
    }
    return canal("ML", "M", *confirmed(21.5, 20.5, 1.0, "ML cusp"), point="ML cusp", **(fields | more))


def lower(kit: Any = CHECK_KIT, **more: Any) -> Plan:
    return plan(molar(tooth="36", canals=(curved(**more),), roots=(), kit=kit))


def codes(planned: Plan) -> set[str]:
    return {caution.code for caution in planned.cautions}


def test_a_severe_curve_with_a_thin_wall() -> None:
    planned = lower()
    (ml,) = planned.canals
    strain = {each.instrument: (each.diameter_mm, each.strain_pct, each.strain_class) for each in ml.strain}
    assert strain["30/.04"] == (0.46, 3.83, "medium")
    # One size above the final one: its tip ends 1.0 short, 3.0 mm past the bend.
    assert strain["35/.04"] == (0.47, 3.92, "medium")
    assert not any(name.endswith((".02", ".10", ".08")) for name in strain)  # hand, and those that end above the bend
    assert ml.wall is not None
    assert (ml.wall.centred_mm, ml.wall.worst_mm, ml.wall.prepared_mm) == (0.64, 0.49, 0.7)
    assert "wall-thin" in codes(planned)
    assert (ml.size_range.least, ml.size_range.most, ml.final_size) == (30, 30, 30)


def test_a_steeper_taper_leaves_too_little_wall() -> None:
    planned = lower(SECOND_KIT)
    (ml,) = planned.canals
    assert ml.wall is not None
    assert (ml.wall.centred_mm, ml.wall.worst_mm, ml.wall.prepared_mm) == (0.54, 0.29, 0.9)
    assert "wall-too-thin" in codes(planned)
    assert {"wall-thin", "curvature-taper"} <= {reason.code for reason in ml.size_range.reasons}


def test_what_each_size_would_mean() -> None:
    """By hand, one below the range to two above: wall 0.79 - (d - 0.40) with d = size + 0.40; strain at the bend; a
    round end of 0.25 is reached whole from 25 on."""
    (ml,) = lower().canals
    assert [
        (option.size, option.inside, option.wall_share, option.wall_left_mm, option.strain_pct)
        for option in ml.size_range.options
    ] == [
        (25, False, 1.0, 0.54, 3.42),
        (30, True, 1.0, 0.49, 3.83),
        (35, False, 1.0, 0.44, 4.25),
        (40, False, 1.0, 0.39, 4.67),
    ]


@pytest.mark.parametrize("deg", [None, 9.9])
def test_without_a_bend_nothing_is_said_of_strain(deg: float | None) -> None:
    (ml,) = lower(curvature_deg=deg, curve_radius_mm=None).canals
    assert ml.strain == ()
    assert {option.strain_pct for option in ml.size_range.options} == {None}


def test_a_bend_that_nobody_measured_is_counted_with_a_radius_that_is_said_to_be_taken() -> None:
    """Radius 5, 4 mm from the end (rows): 30/.06 is 0.54 thick there, 0.54/10 = 5.4 %, high; no caution for that."""
    planned = lower(SECOND_KIT, curve_radius_mm=None, curve_from_end_mm=None)
    (ml,) = planned.canals
    strain = next(each for each in ml.strain if each.instrument == "30/.06")
    assert (strain.strain_pct, strain.strain_class, strain.radius_mm, strain.taken) == (5.4, "high", 5.0, True)
    assert "strain-high" not in codes(planned)
    assert {"strain.radius", "strain.from_end"} <= {row.key for row in planned.rows_used}
    because = next(each for each in ml.rationales if each.of == "strain")
    assert {"strain.radius", "strain.from_end"} <= set(because.rows)


def test_a_curve_that_is_charted_whole_takes_nothing() -> None:
    planned = lower()
    assert not any(each.taken for each in planned.canals[0].strain)
    assert not {"strain.radius", "strain.from_end"} & {row.key for row in planned.rows_used}


def test_a_curve_known_by_where_it_begins() -> None:
    """At 15.5: 30/.04 is 0.30 + 0.04 x 5 = 0.50 thick there, 0.50/12 = 4.17 %."""
    (ml,) = lower(curve_from_end_mm=None, curve_start_mm=15.5).canals
    assert {each.instrument: each.strain_pct for each in ml.strain}["30/.04"] == 4.17


def test_the_cautious_wall_where_nobody_measured() -> None:
    """5 mm below an orifice at 7.5: 8 mm from the end at 20.5."""
    (ml,) = lower(wall=None).canals
    assert ml.wall is not None
    assert (ml.wall.measured, ml.wall.before_mm, ml.wall.from_end_mm) == (False, 0.61, 8.0)


@cache
def four() -> Plan:
    rinses = (Irrigant.SODIUM_HYPOCHLORITE, Irrigant.EDTA, Irrigant.SODIUM_HYPOCHLORITE)
    choices = Choices(needle=OPEN_30, irrigant=Irrigant.SODIUM_HYPOCHLORITE, final_rinse=rinses)
    return plan(molar(choices=choices))


# ISO 9626: 30 gauge is at most 0.32 mm: it binds 0.5 mm short in 30/.04, clear by 1.0 it is at its ceiling, 2.0 short.
def test_the_first_step_that_lets_the_needle_to_its_ceiling() -> None:
    assert [c.needle.first_at_ceiling for c in four().canals if c.needle] == ["ascending/30-04"] * 4


def test_irrigants_add_up_over_the_expected_path() -> None:
    for canal_plan in four().canals:
        steps = [
            node
            for node in (canal_plan.run_sheet.nodes[id_] for id_ in canal_plan.expected_path)
            if isinstance(node, Step)
        ]
        rinsed = {total.irrigant: total.volume_ml for total in canal_plan.irrigants}
        between = sum(1 for step in steps if step.irrigant and step.phase != "rinse")
        # 2 ml after every instrument, 5 ml for each rinse: from memory, and read second-hand.
        assert rinsed == {"sodium_hypochlorite": 2 * between + 10, "edta": 5}


def test_edta_is_told_its_time() -> None:
    says = [
        node.say
        for node in four().canals[0].run_sheet.nodes.values()
        if isinstance(node, Step) and node.irrigant == "edta"
    ]
    assert says
    assert all("about 1 minute" in each and "never over 10" in each and "4 mL" in each for each in says)


def test_the_cone_of_the_final_shape_is_proposed_and_ends_at_the_junction() -> None:
    for canal_plan in four().canals:
        assert canal_plan.obturation is not None
        assert canal_plan.obturation.master_cone == f"{canal_plan.final_size}/.04"
        (own,) = [
            r for r in canal_plan.obturation.rests if (r.kind, r.name) == ("cone", f"{canal_plan.final_size}/.04")
        ]
        assert (own.rests_mm, own.short_mm) == (canal_plan.end_mm, 0.0)


def test_a_wide_canal_lets_a_cone_of_the_final_taper_rest_no_higher() -> None:
    """The palatal canal is wider than its preparation further up: more to fill than the cone takes."""
    palatal = replace(
        four_canals()[3],
        widths=(WidthInput(from_end_mm=0.0, narrow_mm=0.33), WidthInput(from_end_mm=5.0, narrow_mm=1.2)),
    )
    volumes = plan(molar(canals=(*four_canals()[:3], palatal))).canals[3].obturation
    assert volumes is not None
    assert volumes.volumes.to_fill_mm3 > 1


def test_a_canal_that_does_not_get_to_its_final_size_is_not_filled() -> None:
    planned = plan(molar(canals=four_canals(junction=None)))
    assert [canal_plan.obturation is None for canal_plan in planned.canals] == [False, True, False, False]


@pytest.mark.parametrize(("size", "taper", "pointer"), [(0, 2, "size"), (30, -1, "taper")])
def test_what_fills_must_be_possible(size: int, taper: int, pointer: str) -> None:
    item = FillingItem(kind="cone", size=size, taper=taper)
    kit = replace(CHECK_KIT, filling=(cone(30, 4), item))
    with pytest.raises(OutOfBounds) as refused:
        plan(molar(kit=kit))
    assert refused.value.pointer == ("kit", "filling", 1, pointer)


# --- reasons -----------------------------------------------------------------------------------------------------

ESTIMATED = (PreOperativeImage(tooth_mm=22.0, reference_point="P cusp"),)
PLANS: dict[str, PlanInput] = {
    "four canals": molar(),
    "junction not found": molar(canals=four_canals(junction=None)),
    "one length estimated": molar(canals=(*four_canals()[:3], replace(four_canals()[3], readings=ESTIMATED))),
    "one length missing": molar(canals=(*four_canals()[:3], replace(four_canals()[3], readings=()))),
    "severe curve": molar(tooth="36", canals=(curved(),), roots=()),
    "block": block(),
    "step-back": molar(technique=technique("step-back")),
}


@pytest.fixture(params=PLANS, ids=list(PLANS))
def any_plan(request: pytest.FixtureRequest) -> Plan:
    return plan(PLANS[request.param])


def test_every_reason_rests_on_rows_that_the_plan_lists(any_plan: Plan) -> None:
    listed = {row.key for row in any_plan.rows_used}
    for canal_plan in any_plan.canals:
        assert len({why.of for why in canal_plan.rationales}) == len(canal_plan.rationales)
        for why in canal_plan.rationales:
            assert set(why.rows) <= listed, why.of
            assert why.rule.endswith((".", "!"))
    assert all(row.source and row.know for row in any_plan.rows_used)


def test_every_stop_in_the_table_has_its_reason(any_plan: Plan) -> None:
    reasons = {canal_plan.canal: {why.of for why in canal_plan.rationales} for canal_plan in any_plan.canals}
    for row in any_plan.stop_table:
        for stop in row.stops:
            assert stop.why in reasons[stop.canal], (row.instrument.name, stop)


def wanted(canal_plan: CanalPlan) -> set[str]:
    """Names of the numbers that a canal shows, by what it has."""
    parts = {
        "length.stop_mm": canal_plan.length.stop_mm,
        "length.working_length_mm": canal_plan.length.working_length_mm,
        "length.estimate_mm": canal_plan.length.estimate_mm,
        "end_mm": canal_plan.end_mm,
        "junction_mm": canal_plan.junction_mm,
        "needle.ceiling_mm": canal_plan.needle,
        "needle.now.0.at_most_mm": canal_plan.needle and canal_plan.needle.now,
        "strain": canal_plan.strain,
        "wall.worst_mm": canal_plan.wall,
        "wall.centred_mm": canal_plan.wall,
        "obturation.master_cone": canal_plan.obturation,
        "obturation.volumes.prepared_mm3": canal_plan.obturation,
        "expectation.steps": canal_plan.expectation,
        "expectation.series_passes": canal_plan.expectation and canal_plan.expectation.series_passes,
        "needle.first_at_ceiling": canal_plan.needle and canal_plan.needle.first_at_ceiling,
        "stops.to_length": canal_plan.end_mm,
        "stops.to_resistance": canal_plan.end_mm,
        "size_range.options.wall_left_mm": canal_plan.size_range.options[0].wall_left_mm,
        "size_range.options.strain_pct": canal_plan.size_range.options[0].strain_pct,
        "size_range.options.wall_share": canal_plan.size_range.options[0].wall_share is not None,
        "irrigants": canal_plan.needle and canal_plan.irrigants,
    }
    always = {"size_range.least", "size_range.most", "size_range.proposed", "final_size"}
    return always | {of for of, value in parts.items() if value}


def test_every_number_that_is_shown_has_its_reason(any_plan: Plan) -> None:
    for canal_plan in any_plan.canals:
        assert wanted(canal_plan) <= {why.of for why in canal_plan.rationales}


def test_stop_kinds_are_told_apart() -> None:
    """In a joining canal everything ends at the junction, the small instrument too."""
    stops = {
        (row.instrument.name, stop.canal): stop.why
        for row in plan(PLANS["four canals"]).stop_table
        for stop in row.stops
    }
    assert stops["10/.02", "MB2"] == "stops.end"
    assert stops["25/.04", "MB2"] == "stops.end"
    assert stops["25/.10", "MB2"] == "stops.coronal"
    back = plan(PLANS["step-back"])
    assert {stop.why for row in back.stop_table for stop in row.stops if row.phase == "Stepping back"} <= {
        "stops.step_back"
    }
    assert "stops.step_back" in {stop.why for row in back.stop_table for stop in row.stops}


def test_rows_of_every_table_are_listed_with_their_source() -> None:
    """Widths, foramina, sizes, crowns, needles; the tooth's length where it is unusual; a lower molar's wall."""
    long_one = replace(four_canals()[3], readings=confirmed(25.0, 24.0, 0.1, "P cusp"))
    listed = plan(molar(canals=(*four_canals()[:3], long_one))).rows_used
    by_key = {row.key: row for row in listed}
    tables = {key.split("/")[0] for key in by_key if "/" in key}
    assert tables == {"canal_widths", "crowns", "final_sizes", "foramina", "needles", "tooth_lengths"}
    assert {row.key.split("/")[0] for row in lower(wall=None).rows_used if row.key.startswith("walls/")} == {"walls"}
    # Wolf et al. 2017, table 5: the palatal foramen is 0.33 mm across its narrow side.
    palatal = by_key["foramina/16/P/narrow_mm"]
    assert (palatal.value, palatal.unit, palatal.know, palatal.programme) == (0.33, "mm", "read", False)
    # Black 1902 (from memory): an upper first molar is 24 mm long at most.
    assert by_key["tooth_lengths/16/A/high_mm"].value == 24.0
