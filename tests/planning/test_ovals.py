"""Share of an oval wall that a round preparation reaches. Judges: shapely's polygons, scipy's elliptic integrals."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from scipy.special import ellipe, ellipeinc

from planning.ovals import reached_share

WIDTHS = st.floats(0.1, 0.5)
FLATTER = st.floats(1.0, 7.0)


def by_shapely(narrow_mm: float, wide_mm: float, round_mm: float) -> float:
    around = np.linspace(0, 2 * math.pi, 40_001)
    oval = shapely.LineString(np.column_stack([narrow_mm / 2 * np.cos(around), wide_mm / 2 * np.sin(around)]))
    preparation = shapely.Point(0, 0).buffer(round_mm / 2, quad_segs=5_000)
    return float(oval.intersection(preparation).length / oval.length)


# Medians of foramina by Wolf et al. 2017, table 5, with sizes 25, 30, 35, 40.
@pytest.mark.parametrize(
    ("narrow_mm", "wide_mm", "round_mm"),
    [(0.33, 0.42, 0.35), (0.24, 0.39, 0.25), (0.24, 0.39, 0.30), (0.30, 0.46, 0.40), (0.29, 2.11, 0.80)],
)
def test_as_shapely_cuts_it(narrow_mm: float, wide_mm: float, round_mm: float) -> None:
    assert reached_share(narrow_mm, wide_mm, round_mm) == pytest.approx(
        by_shapely(narrow_mm, wide_mm, round_mm), abs=2e-4
    )


@given(WIDTHS, FLATTER, st.floats(0.001, 0.999))
def test_as_elliptic_integrals_have_it(narrow: float, flatter: float, between: float) -> None:
    wide = narrow * flatter
    across = narrow + between * (wide - narrow)
    if not narrow < across < wide:
        return
    upto = math.asin(math.sqrt((across**2 - narrow**2) / (wide**2 - narrow**2)))
    m = 1 - (narrow / wide) ** 2
    assert reached_share(narrow, wide, across) == pytest.approx(ellipeinc(upto, m) / ellipe(m), abs=1e-9)


def test_nothing_before_the_narrow_side_everything_from_the_wide_one() -> None:
    assert [reached_share(0.24, 0.40, size) for size in (0.20, 0.24, 0.40, 0.45)] == [0.0, 0.0, 1.0, 1.0]
    assert [reached_share(0.30, 0.30, size) for size in (0.25, 0.30)] == [0.0, 1.0]
