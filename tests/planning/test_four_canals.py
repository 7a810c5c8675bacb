"""The main job: an upper left first molar with four canals, one of them joining.

Numbers by hand from the rules named at each; tooth lengths and gaps are check values, common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.anatomy import Notation, ToothName, find
from planning.contract.plan_input import CanalChoice, Choices, Junction, Pattern, RootInput
from planning.contract.plan_value import CanalPlan, Plan, Severity
from planning.lengths.readings import LengthState
from planning.run_sheet.graph import Action, Step
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.given import OPEN_30, four_canals, molar

CANALS = ("MB1", "MB2", "DB", "P")


@pytest.fixture(scope="module")
def planned() -> Plan:
    sizes = tuple(CanalChoice(canal=name, final_size=30) for name in CANALS)
    return plan(molar(choices=Choices(needle=OPEN_30, canals=sizes)))


def by_name(planned: Plan) -> dict[str, CanalPlan]:
    return {canal.canal: canal for canal in planned.canals}


# Grossman (summary): estimated = length on the image less 1.0.
def test_estimated_lengths(planned: Plan) -> None:
    assert [c.length.estimate_mm for c in planned.canals] == [19.5, 19.0, 18.5, 21.0]


# Ingle: corrected = set + short - 1.0, no resorption.
def test_corrected_lengths(planned: Plan) -> None:
    assert [c.length.stop_mm for c in planned.canals] == [19.5, 19.0, 18.0, 21.5]
    assert {c.length.state for c in planned.canals} == {LengthState.SETTLED}


def stops(planned: Plan, canal: str) -> dict[str, float]:
    return {
        row.instrument.name: stop.stop_mm for row in planned.stop_table for stop in row.stops if stop.canal == canal
    }


def test_nothing_passes_the_junction_once_it_is_known(planned: Plan) -> None:
    """19.0 - 3.0 = 16.0, also for what explores; coronal instruments have their own, shallower stop."""
    stops_mm = stops(planned, "MB2")
    # Sizes above the final 30 end 1.0 short for each.
    assert {name: stop for name, stop in stops_mm.items() if not name.endswith((".10", ".08"))} == {
        **dict.fromkeys(("10/.02", "15/.02", "20/.02", "30/.04", "25/.04"), 16.0),
        "35/.04": 15.0,
        "40/.04": 14.0,
    }
    nodes = by_name(planned)["MB2"].run_sheet.nodes.values()
    assert max(node.stop_um for node in nodes if isinstance(node, Step) and node.stop_um) == 16_000


def test_nothing_larger_than_size_10_without_a_junction_reading() -> None:
    """But for room in the coronal third, where the 10 is held: no junction lies so high that it would be passed."""
    unread = plan(molar(canals=four_canals(junction=None)))
    mb2 = by_name(unread)["MB2"]
    worked = [n for n in mb2.run_sheet.nodes.values() if isinstance(n, Step) and n.instrument and n.stop_um]
    third_um = next(n.stop_um or 0 for n in worked if "/room/" in n.id)
    assert {n.instrument for n in worked if (n.stop_um or 0) > third_um} <= {"08/.02 hand", "10/.02 hand"}
    assert {n.phase for n in worked if "continuous" in (n.instrument or "")} == {"explore"}
    assert [w.code for w in mb2.withheld] == ["junction-missing"]
    assert any(c.code == "junction-missing" and c.severity is Severity.STOP for c in unread.cautions)
    assert "MB2" not in {canal for step in unread.tray.steps if len(step.canals) > 1 for canal in step.canals}


def test_a_junction_guessed_from_an_image_opens_nothing() -> None:
    guessed = Junction(from_terminus_mm=3.0, method="image_estimate")
    assert by_name(plan(molar(canals=four_canals(junction=guessed))))["MB2"].withheld


def test_a_junction_does_not_move_with_a_later_length() -> None:
    found_at = Junction(from_terminus_mm=3.0, method="cone_mark", at_length_mm=19.5)
    planned = plan(molar(canals=four_canals(junction=found_at)))
    assert by_name(planned)["MB2"].end_mm == 16.5
    assert "junction-moved" in {c.code for c in planned.cautions}


# ISO 9626: 30 gauge is at most 0.32 mm; ceilings 2.0 short of the end; now: binding distance and 1.0 more. P is wider
# than 20/.02 makes it: a tenth of such canals are narrower than exp(-1.2816·√ln(1 + 0.32²)) = 0.670 of the published
# width, 0.369 at 17.5 and 0.268 at 20.5 (5 and 2 mm from an apex at 22.5), so the needle is free to 17.5 +
# 3·0.0486/0.1005 = 18.95, and 17.5 is told. MB1 alike, 0.397 at its orifice and 0.214 at 15.5: free to 7.5 +
# 8·0.0768/0.1823 = 10.87; DB, 0.356 and 0.208 at 14.0: to 7.5 + 6.5·0.0359/0.1481 = 9.08.
def test_needle_ceilings_and_how_deep_it_may_go_now(planned: Plan) -> None:
    needles = [c.needle for c in planned.canals]
    assert [n.ceiling_mm for n in needles if n] == [17.5, 14.0, 16.0, 19.5]
    now = {c.canal: {n.after: n.at_most_mm for n in c.needle.now} for c in planned.canals if c.needle}
    assert [now[name]["20/.02"] for name in ("MB1", "DB", "P")] == [12.5, 11.0, 17.5]
    assert now["MB1"]["25/.04"] == 16.5
    assert [n.begins_mm for n in needles if n] == [9.5, 7.5, 8.0, 17.5]
    assert (now["MB1"]["30/.04"], now["MB2"]["30/.04"]) == (17.5, 14.0)


def test_what_is_withheld_opens_nothing_for_the_needle() -> None:
    """Before the junction is found the needle stays in the coronal third: crown 7.5 and (19.0 - 7.5) / 3 = 11.3."""
    mb2 = by_name(plan(molar(canals=four_canals(junction=None))))["MB2"]
    assert mb2.needle is not None
    assert (mb2.needle.ceiling_mm, mb2.needle.now) == (11.0, ())


def test_where_nothing_opens_no_needle_depth_is_given() -> None:
    closed = plan(molar(setting=Setting.CLINIC, isolated=False))
    assert {c.needle for c in closed.canals} == {None}


def test_the_recapitulating_file_stays_above_the_junction(planned: Plan) -> None:
    sheet = by_name(planned)["MB2"].run_sheet
    again = {n.stop_um for n in sheet.nodes.values() if isinstance(n, Step) and n.action is Action.RECAPITULATE}
    assert again == {16_000}


# Orifice at the crown's mean length 7.5 (Nelson & Ash), plus a third of the rest: 11.5, 11.0, 11.0, 12.0.
def test_coronal_instruments_stay_in_the_coronal_third(planned: Plan) -> None:
    assert [stops(planned, name)["25/.10"] for name in CANALS] == [11.5, 11.0, 11.0, 12.0]


@pytest.mark.parametrize(
    ("notation", "designation"),
    [(Notation.ISO_3950, "26"), (Notation.UNIVERSAL, "14"), (Notation.PALMER, "UL6")],
)
def test_the_same_tooth_in_every_notation(notation: Notation, designation: str, planned: Plan) -> None:
    tooth = find(ToothName(notation=notation, designation=designation))
    assert tooth.iso == planned.tooth.iso == "26"


def test_the_stop_table_goes_phase_by_phase(planned: Plan) -> None:
    rows = [(row.phase, row.instrument.name) for row in planned.stop_table]
    assert rows[0] == ("Explore", "10/.02")
    # Size 10 has the same stops again in the glide path: no row. 30/.04 goes down to resistance, then up to length.
    assert ("Glide path", "10/.02") not in rows
    assert [phase for phase, name in rows if name == "30/.04"] == ["Descending series", "Up to the final size"]


def test_sharing_at_the_tray_takes_fewer_changes(planned: Plan) -> None:
    assert planned.tray.changes < planned.one_at_a_time.changes
    assert [item.instrument.name for item in planned.tray_list][:3] == ["10/.02", "15/.02", "20/.02"]


def test_an_estimate_withholds_what_shapes_and_marks_the_stops_provisional() -> None:
    canals = four_canals()
    db = replace(canals[2], readings=canals[2].readings[:1])
    planned = plan(molar(canals=(*canals[:2], db, canals[3])))
    distobuccal = by_name(planned)["DB"]
    assert (distobuccal.provisional, distobuccal.withheld[0].from_phase) == (True, "glide-path")
    assert stops(planned, "DB")["30/.04"] == 18.5
    assert not any(n.phase == "glide-path" for n in distobuccal.run_sheet.nodes.values() if isinstance(n, Step))


def test_two_canals_of_one_root_not_known_to_join_are_warned_of() -> None:
    planned = plan(molar(roots=(RootInput(name="MB", pattern=Pattern.UNKNOWN),)))
    assert "join-not-tested" in {c.code for c in planned.cautions}
    assert by_name(planned)["MB2"].end_mm == 19.0


def test_a_plan_names_the_rows_and_versions_it_rests_on(planned: Plan) -> None:
    used = {row.key: row for row in planned.rows_used}
    assert used["allowance.image"].source
    assert used["needle.short_open"].know == "read"
    assert planned.planner_version
    assert len(planned.data_version) == 12
