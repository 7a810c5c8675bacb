"""Bending strain and the thinnest wall, worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.anatomy.walls import ThinWall, left, published
from planning.canal.apical_size import WallAbove
from planning.foundation.tables import Figures
from planning.instruments.strain import Bend, strain, strain_pct
from tests.planning.given import rotary


# Beam theory, diameter / (2 x radius): 0.45/10 = 4.5 %, 0.60/10 = 6.0 %; 0.45 at radius 3 and 10: 7.5 and 2.25 %.
@pytest.mark.parametrize(
    ("thick_mm", "radius_mm", "pct"), [(0.45, 5, 4.5), (0.60, 5, 6.0), (0.45, 3, 7.5), (0.45, 10, 2.25)]
)
def test_strain(thick_mm: float, radius_mm: float, pct: float) -> None:
    assert strain_pct(thick_mm, radius_mm) == pct


# Acceptance case worked by hand: 36 ML, radius 6, bend 4 mm from the end at 20.5; 30/.04 is 0.46 thick there.
@pytest.mark.parametrize(
    ("size", "taper", "thick_mm", "pct", "named"),
    [
        (30, 4, 0.46, 3.83, "medium"),
        (35, 4, 0.51, 4.25, "medium"),
        (25, 2, 0.33, 2.75, "medium"),
        (40, 6, 0.64, 5.33, "high"),
    ],
)
def test_strain_class_at_the_bend(size: int, taper: int, thick_mm: float, pct: float, named: str) -> None:
    strained = strain(rotary(size, taper), 20.5, Bend(at_mm=16.5, radius_mm=6.0), Figures())
    assert strained is not None
    assert (strained.diameter_mm, strained.strain_pct, strained.strain_class) == (thick_mm, pct, named)


def test_bands_begin_and_end_where_they_say() -> None:
    """Own bands: below 2.5 low, above 5 high. 30/.00 is 0.30 thick: radius 6 gives 2.5, radius 3 gives 5.0 exactly."""

    def named(radius_mm: float) -> str:
        strained = strain(rotary(30, 0), 20.0, Bend(at_mm=16.0, radius_mm=radius_mm), Figures())
        assert strained is not None
        return strained.strain_class

    assert [named(radius) for radius in (6.1, 6.0, 3.0, 2.9)] == ["low", "medium", "medium", "high"]


def test_an_instrument_that_stays_above_the_bend_is_not_bent() -> None:
    assert strain(rotary(25, 10), 12.0, Bend(at_mm=16.5, radius_mm=6.0), Figures()) is None


WALL = ThinWall(thickness_mm=0.79, at_mm=10.5, measured=True, source="measured on this tooth", know="read", rows=())


# Acceptance case worked by hand: wall 0.79, canal 0.40, 10 mm from the end. 30/.04 is 0.70 wide: 0.79 - 0.15 = 0.64
# centred, 0.79 - 0.30 = 0.49 at worst; 30/.06 is 0.90 wide: 0.54 and 0.29.
@pytest.mark.parametrize(("taper", "centred_mm", "worst_mm"), [(4, 0.64, 0.49), (6, 0.54, 0.29)])
def test_wall_left(taper: int, centred_mm: float, worst_mm: float) -> None:
    prepared = WallAbove(wall=WALL, canal_mm=0.40, from_end_mm=10.0).width_mm(30, taper)
    wall_left = left(WALL, 0.40, prepared, 20.5)
    assert (wall_left.centred_mm, wall_left.worst_mm, wall_left.from_end_mm) == (centred_mm, worst_mm, 10.0)


def test_what_is_left_is_told_to_a_hundredth_and_never_as_more_than_it_is() -> None:
    """By hand: 0.61 less 0.637 - 0.474 = 0.163 is 0.447, less half of that 0.5285; 0.61 less 0.311 is below 0.3."""
    wall = replace(WALL, thickness_mm=0.61)
    wall_left = left(wall, 0.474, 0.637, 20.5)
    assert (wall_left.before_mm, wall_left.centred_mm, wall_left.worst_mm) == (0.61, 0.52, 0.44)
    assert WallAbove(wall=wall, canal_mm=0.474, from_end_mm=8.4).worst_mm(30, 4) == 0.44
    assert left(wall, 0.40, 0.711, 20.5).worst_mm == 0.29
    assert left(wall, 0.40, 0.71, 20.5).worst_mm == 0.3


def test_a_preparation_narrower_than_the_canal_takes_nothing() -> None:
    wall_left = left(WALL, 0.80, 0.70, 20.5)
    assert (wall_left.centred_mm, wall_left.worst_mm, wall_left.prepared_mm) == (0.79, 0.79, 0.80)


def test_the_cautious_value_is_judged_five_millimetres_below_the_orifice() -> None:
    figures = Figures()
    wall = published("46", "ML", 7.5, figures)
    assert wall is not None
    # Garcia Filho et al. 2003: 0.789 less one standard deviation of 0.182.
    assert (wall.thickness_mm, wall.at_mm, wall.measured) == (round(0.789 - 0.182, 2), 12.5, False)
    assert set(wall.rows) <= {figure.key for figure in figures.used()}
    assert published("46", "D", 7.5, figures) is None
    assert published("24", "B", 8.5, figures) is not None
    # Nobody has measured this root: no other root's wall is lent to it.
    assert published("26", "MB2", 7.5, figures) is None
