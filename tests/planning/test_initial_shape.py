"""How wide a canal is before anything has been in it. Published widths are from memory: reference values."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from statistics import mean

import pytest

from planning.anatomy import all_teeth, like
from planning.canal.initial_shape import Widths, initial_shape_of, widths_of
from planning.contract.canal_facts import WidthInput
from planning.contract.plan_input import PlanInput
from planning.foundation import tables
from planning.foundation.errors import CanalsDoNotFit, OutOfBounds
from planning.foundation.tables import Figures
from planning.lengths.readings import DirectSight, ImageInterval, PreOperativeImage, Resorption
from planning.whole_tooth.plan import plan
from tests.planning.given import block, canal, confirmed, four_canals, molar
from tests.planning.test_ordinary_plans import LONG_KIT


def widths(plan_input: PlanInput, number: int = 0, beyond_mm: float = 1.0) -> Widths:
    canal_widths = widths_of(plan_input, number, Figures(), beyond_mm=beyond_mm)
    assert canal_widths is not None
    return canal_widths


# Palatal canal of an upper first molar: foramen 0.33 and 0.42 (Wolf et al. 2017); median diameters at 1, 2 and 5 mm
# bucco-lingual 0.29, 0.40, 0.55 and mesio-distal 0.33, 0.40, 0.74 (Wu et al. 2000): the narrower one binds. Of the end
# itself the foramen tells; what was measured 2 and 5 mm from the apex lies 1 and 4 mm above a length set back by 1.
def test_published_widths_of_a_palatal_canal() -> None:
    palatal = widths(molar(), 3)
    levels = [(w.from_end_mm, w.narrow_mm, w.wide_mm) for w in palatal.levels]
    assert levels == [(0.0, 0.33, 0.42), (1.0, 0.4, 0.4), (4.0, 0.55, 0.74)]
    assert (palatal.know, palatal.end_sd_mm) == ("from memory", 0.1)


# Length 21.5, orifice at 7.5: ten millimetres above the last level, each wider by 0.034 and by 0.1 across: 0.55 + 0.34,
# 0.74 + 1.0.
def test_the_canal_from_orifice_to_end() -> None:
    shape = initial_shape_of(widths(molar(), 3), 7.5, 21.5)
    assert shape is not None
    points = [(p.from_reference_mm, p.narrow_mm, p.wide_mm) for p in shape.points]
    assert points[0] == (7.5, 0.89, 1.74)
    assert points[1:] == [(17.5, 0.55, 0.74), (20.5, 0.4, 0.4), (21.5, 0.33, 0.42)]


# Upper central incisor by Wu et al. 2000: 0.30, 0.36, 0.54 narrow at 1, 2 and 5 mm from the apex. Wherever its length
# ends, the same distance from the tooth's end is as wide: set back by 1.0, by 1.5 with bone resorption, by 2.5 where an
# image's own interval leaves that open, on a short and on a long tooth.
@pytest.mark.parametrize("tooth_mm", [19.0, 23.5, 27.0])
@pytest.mark.parametrize(
    ("set_back_mm", "resorption"), [(1.0, Resorption.NONE), (1.5, Resorption.BONE), (2.5, Resorption.NONE)]
)
def test_a_width_lies_as_far_from_the_apex_as_it_was_measured(
    tooth_mm: float, set_back_mm: float, resorption: Resorption
) -> None:
    readings = confirmed(tooth_mm, tooth_mm - 1, 1.0, "incisal edge")
    if set_back_mm > 2:
        interval = ImageInterval(least_mm=tooth_mm - set_back_mm, most_mm=tooth_mm + set_back_mm, rests_on="detector")
        readings = (PreOperativeImage(tooth_mm=tooth_mm, reference_point="incisal edge", interval=interval),)
    resorbed = canal("single", "single", *readings, point="incisal edge", resorption=resorption)
    planned = plan(molar(tooth="11", canals=(resorbed,), roots=(), kit=LONG_KIT)).canals[0]
    assert planned.expectation is not None
    points = planned.expectation.initial_shape.points
    assert points[-1].from_reference_mm == planned.length.working_length_mm == tooth_mm - set_back_mm
    for up_mm, narrow_mm in ((2.0, 0.36), (5.0, 0.54)):
        if up_mm > set_back_mm:
            assert (tooth_mm - up_mm, narrow_mm) in [(p.from_reference_mm, p.narrow_mm) for p in points]
    # By straight line between the levels around the end: 0.30 + 0.06 x 0.5 and 0.36 + 0.18 x 0.5/3.
    ends = {1.0: 0.30, 1.5: 0.33, 2.5: 0.39}
    assert points[-1].narrow_mm == pytest.approx(ends[set_back_mm])


# Sight is of the foramen: its own set-back, not the image's.
def test_what_is_seen_at_the_foramen_counts_from_there() -> None:
    seen = canal("single", "single", DirectSight(seen_mm=22.0, reference_point="edge"), point="edge")
    planned = plan(molar(tooth="11", canals=(seen,), roots=(), thresholds={"set_back.seen_at_foramen": 0.5})).canals[0]
    assert planned.expectation is not None
    points = [(p.from_reference_mm, p.narrow_mm) for p in planned.expectation.initial_shape.points]
    assert points[-3:] == [(20.0, 0.36), (21.0, 0.3), (21.5, 0.3)]


def test_how_a_canal_widens_is_the_mean_of_the_table() -> None:
    def side(row: dict[str, str], up: int, pick: Callable[[float, float], float]) -> float:
        return pick(float(row[f"bl_{up}_mm"]), float(row[f"md_{up}_mm"]))

    # A group that stands for two kinds of canals counts once.
    groups = {row["where"]: dict(row) for row in tables.rows("canal_widths")}
    assert len(groups) == 20
    for key, pick in (("canal.widening", min), ("canal.wide_widening", max)):
        widening = mean((side(row, 5, pick) - side(row, 1, pick)) / 4 for row in groups.values())
        assert Figures()[key] == pytest.approx(widening, abs=0.001)


# Entered widths: 0.3 + 0.034 and 0.5 + 0.1 for each of 9 mm; without a wide side it stays as round as it was said to
# be.
@pytest.mark.parametrize(("wide_mm", "across_mm"), [(0.5, 1.4), (None, 0.606)])
def test_the_wide_side_widens_by_its_own_table_where_there_is_one(wide_mm: float | None, across_mm: float) -> None:
    own = (WidthInput(from_end_mm=3.0, narrow_mm=0.3, wide_mm=wide_mm),)
    shape = initial_shape_of(
        widths(molar(canals=(replace(four_canals()[0], widths=own), *four_canals()[1:]))), 7.5, 19.5
    )
    assert shape is not None
    assert (shape.points[0].narrow_mm, shape.points[0].wide_mm) == (0.606, across_mm)


# Common description of training blocks: ISO 15 at the end, taper .02: 0.15 + 16.5 x 0.02 = 0.48 at the top.
def test_a_training_block() -> None:
    shape = initial_shape_of(widths(block()), 0.0, 16.5)
    assert shape is not None
    assert [(p.from_reference_mm, p.narrow_mm) for p in shape.points] == [(0.0, 0.48), (16.5, 0.15)]


def test_an_upper_molar_canal_without_its_partner_has_widths_of_its_own() -> None:
    alone = molar(canals=(four_canals()[0], *four_canals()[2:]), roots=())
    assert [w.narrow_mm for w in widths(alone).levels[1:]] == [0.32, 0.29]
    assert [w.narrow_mm for w in widths(molar()).levels[1:]] == [0.27, 0.32]


# 3.5 mm of canal: the orifice lies between the levels 1 and 4 mm above its end, 0.4 + 2.5/3 x 0.15 = 0.525.
def test_a_short_canal_ends_between_two_levels() -> None:
    shape = initial_shape_of(widths(molar(), 3), 18.0, 21.5)
    assert shape is not None
    assert shape.points[0].from_reference_mm == 18.0
    assert shape.points[0].narrow_mm == pytest.approx(0.525)
    assert initial_shape_of(widths(molar(), 3), 21.5, 21.5) is None


OWN = (WidthInput(from_end_mm=0.5, narrow_mm=0.2), WidthInput(from_end_mm=3.0, narrow_mm=0.3, wide_mm=0.5))


def test_entered_widths_take_the_place_of_published_ones() -> None:
    canals = (replace(four_canals()[0], widths=OWN), *four_canals()[1:])
    expectation = plan(molar(canals=canals)).canals[0].expectation
    assert expectation is not None
    points = [(p.from_reference_mm, p.narrow_mm, p.wide_mm) for p in expectation.initial_shape.points]
    # As wide below the lowest level as there.
    assert points[1:] == [(16.5, 0.3, 0.5), (19.0, 0.2, 0.2), (19.5, 0.2, 0.2)]
    assert expectation.initial_shape.know == "programme rule"


@pytest.mark.parametrize(
    ("wrong", "field"),
    [
        (WidthInput(from_end_mm=3.0, narrow_mm=0.3), "from_end_mm"),
        (WidthInput(from_end_mm=99.0, narrow_mm=0.3), "from_end_mm"),
        (WidthInput(from_end_mm=4.0, narrow_mm=0.0), "narrow_mm"),
        (WidthInput(from_end_mm=4.0, narrow_mm=30.0), "narrow_mm"),
        (WidthInput(from_end_mm=4.0, narrow_mm=0.3, wide_mm=0.2), "wide_mm"),
        (WidthInput(from_end_mm=4.0, narrow_mm=0.3, wide_mm=1e308), "wide_mm"),
    ],
)
def test_widths_that_cannot_be_right_are_refused_where_they_are(wrong: WidthInput, field: str) -> None:
    canals = (replace(four_canals()[0], widths=(*OWN, wrong)), *four_canals()[1:])
    with pytest.raises((OutOfBounds, CanalsDoNotFit)) as refusal:
        plan(molar(canals=canals))
    assert refusal.value.pointer == ("canals", 0, "widths", 2, field)


def test_without_widths_nothing_is_expected_and_that_is_said() -> None:
    unknown = canal("MM", "M", *confirmed(20.0, 19.0, 1.0, "ML cusp"), point="ML cusp")
    planned = plan(molar(tooth="36", canals=(unknown,), roots=()))
    assert planned.canals[0].expectation is None
    assert planned.canals[0].expected_path[-1] == "finished"
    assert [c.canal for c in planned.cautions if c.code == "widths-unknown"] == ["MM"]


def test_every_row_stands_for_canals_that_there_are() -> None:
    canals = {(like(t.iso), c.name) for t in all_teeth() if not t.primary for c in (*t.canals, *t.look_for)}
    named = {
        (tooth, name)
        for row in tables.rows("canal_widths")
        for tooth in row["teeth"].split()
        for name in row["canals"].split()
    }
    assert named <= canals
    usual = {(like(t.iso), c.name) for t in all_teeth() if not t.primary for c in t.canals}
    assert usual - named == set()
