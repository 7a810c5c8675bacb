"""How wide a canal is before anything has been in it. Published widths are from memory: reference values."""

from __future__ import annotations

from dataclasses import replace
from statistics import mean

import pytest

from planning import tables
from planning.errors import CanalsDoNotFit, OutOfBounds
from planning.natural import Widths, natural_canal, widths_of
from planning.plan import plan
from planning.plan_input import PlanInput, WidthInput
from planning.tables import Figures
from planning.teeth import all_teeth, like
from tests.planning.given import block, canal, confirmed, four_canals, molar


def widths(given: PlanInput, number: int = 0) -> Widths:
    found = widths_of(given, number, Figures())
    assert found is not None
    return found


# Palatal canal of an upper first molar: foramen 0.33 and 0.42 (Wolf et al. 2017); median diameters at 1, 2 and 5 mm
# bucco-lingual 0.29, 0.40, 0.55 and mesio-distal 0.33, 0.40, 0.74 (Wu et al. 2000): the narrower one binds.
def test_published_widths_of_a_palatal_canal() -> None:
    found = widths(molar(), 3)
    levels = [(w.from_end_mm, w.narrow_mm, w.wide_mm) for w in found.levels]
    assert levels == [(0.0, 0.33, 0.42), (1.0, 0.29, 0.33), (2.0, 0.4, 0.4), (5.0, 0.55, 0.74)]
    assert (found.know, found.end_sd_mm) == ("from memory", 0.1)


# Length 21.5, orifice at 7.5: nine millimetres above the last level, widening by 0.034 each: 0.55 + 0.306 = 0.856.
def test_the_canal_from_orifice_to_end() -> None:
    found = natural_canal(widths(molar(), 3), 7.5, 21.5)
    assert found is not None
    points = [(p.from_reference_mm, p.narrow_mm, p.wide_mm) for p in found.points]
    assert points[0] == (7.5, 0.856, 1.046)
    assert points[1:] == [(16.5, 0.55, 0.74), (19.5, 0.4, 0.4), (20.5, 0.29, 0.33), (21.5, 0.33, 0.42)]


def test_how_a_canal_widens_is_the_mean_of_the_table() -> None:
    def narrow(row: dict[str, str], up: int) -> float:
        return min(float(row[f"bl_{up}_mm"]), float(row[f"md_{up}_mm"]))

    # A group that stands for two kinds of canals counts once.
    groups = {row["where"]: dict(row) for row in tables.rows("canal_widths")}
    assert len(groups) == 20
    found = mean((narrow(row, 5) - narrow(row, 1)) / 4 for row in groups.values())
    assert Figures()["canal.widening"] == pytest.approx(found, abs=0.001)


# Common description of training blocks: ISO 15 at the end, taper .02: 0.15 + 16.5 x 0.02 = 0.48 at the top.
def test_a_training_block() -> None:
    found = natural_canal(widths(block()), 0.0, 16.5)
    assert found is not None
    assert [(p.from_reference_mm, p.narrow_mm) for p in found.points] == [(0.0, 0.48), (16.5, 0.15)]


def test_an_upper_molar_canal_without_its_partner_has_widths_of_its_own() -> None:
    alone = molar(canals=(four_canals()[0], *four_canals()[2:]), roots=())
    assert [w.narrow_mm for w in widths(alone).levels[1:]] == [0.22, 0.32, 0.29]
    assert [w.narrow_mm for w in widths(molar()).levels[1:]] == [0.13, 0.27, 0.32]


# 4.5 mm of canal: the orifice lies between the levels at 2 and 5 mm, 0.4 + 2.5/3 x 0.15 = 0.525.
def test_a_short_canal_ends_between_two_levels() -> None:
    found = natural_canal(widths(molar(), 3), 17.0, 21.5)
    assert found is not None
    assert found.points[0].from_reference_mm == 17.0
    assert found.points[0].narrow_mm == pytest.approx(0.525)
    assert natural_canal(widths(molar(), 3), 21.5, 21.5) is None


OWN = (WidthInput(from_end_mm=0.5, narrow_mm=0.2), WidthInput(from_end_mm=3.0, narrow_mm=0.3, wide_mm=0.5))


def test_entered_widths_take_the_place_of_published_ones() -> None:
    canals = (replace(four_canals()[0], widths=OWN), *four_canals()[1:])
    expectation = plan(molar(canals=canals)).canals[0].expectation
    assert expectation is not None
    points = [(p.from_reference_mm, p.narrow_mm, p.wide_mm) for p in expectation.natural.points]
    # As wide below the lowest level as there.
    assert points[1:] == [(16.5, 0.3, 0.5), (19.0, 0.2, 0.2), (19.5, 0.2, 0.2)]
    assert expectation.natural.know == "programme rule"


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
