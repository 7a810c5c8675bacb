"""The row-wise estimate against the exact one, canal by canal, and what it draws from a seed."""

from __future__ import annotations

import random
from itertools import pairwise
from statistics import NormalDist

import numpy as np
import pytest

from planning.canal.initial_shape import widths_of
from planning.canal.profile import Line, narrows_upwards, upper
from planning.contract.plan_input import PlanInput
from planning.depth import contact_depth, contact_rows, numpy_rows, samples
from planning.depth.rows import STEP_MM, Rows, Tools
from planning.depth.samples import Samples
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Corners
from tests.planning.given import molar
from tests.planning.test_contact_depth import random_canal, random_instrument, width_mm

COUNT = 40


def as_rows(canals: list[Line]) -> Rows:
    """Steps become ramps a nanometre long; shorter canals repeat their last corner."""
    longest = max(len(canal) for canal in canals)
    padded = [[*ramps, *[ramps[-1]] * (longest - len(ramps))] for ramps in map(as_ramps, canals)]
    return Rows(
        np.array([[x for x, _ in canal] for canal in padded]), np.array([[d for _, d in canal] for canal in padded])
    )


def as_ramps(canal: Line) -> Line:
    steps = [(x + STEP_MM if x == above else x, d) for (above, _), (x, d) in pairwise(canal)]
    return (canal[0], *steps)


def as_tools(instrument: Corners) -> Tools:
    return Tools(np.array([z for z, _ in instrument]), np.array([[d for _, d in instrument]] * COUNT))


# Exact to two thousandths of a millimetre; in a stretch that narrows upwards to the distance between two looks.
@pytest.mark.parametrize("seed", range(25))
def test_every_row_rests_where_the_exact_estimate_does(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311  # nothing secret
    instrument, canals = random_instrument(rng), [random_canal(rng) for _ in range(COUNT)]
    limits = [rng.choice((0.02, 0.05, 0.1, 0.15, 0.3)) for _ in canals]
    stops = np.array([canal[-1][0] for canal in canals])
    rests = contact_rows.rest_mm(as_tools(instrument), as_rows(canals), stops, np.array(limits))
    for canal, limit, rests_mm in zip(canals, limits, rests, strict=True):
        exact_mm = contact_depth.rest_mm(instrument, canal, canal[-1][0], limit)
        near_mm = 12 / contact_rows.LOOKS if narrows_upwards(canal) else 0.003
        assert abs(rests_mm - exact_mm) <= near_mm


@pytest.mark.parametrize("seed", range(25))
def test_the_face_of_a_tip_is_stopped_in_every_row_where_it_is_in_the_exact_estimate(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311  # nothing secret
    instrument, canals = random_instrument(rng), [random_canal(rng) for _ in range(COUNT)]
    limits = [rng.choice((0.005, 0.02, 0.05, 0.1)) for _ in canals]
    faces_mm = contact_rows.face_mm(as_tools(instrument), as_rows(canals), np.array(limits))
    exact = [contact_depth.face_mm(instrument, *each) for each in zip(canals, limits, strict=True)]
    assert faces_mm == pytest.approx(exact, abs=1e-5)


@pytest.mark.parametrize("seed", range(25))
def test_every_row_is_prepared_as_the_exact_envelope_is(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311  # nothing secret
    instrument, canals = random_instrument(rng), [random_canal(rng) for _ in range(COUNT)]
    tips = [rng.uniform(8.1, canal[-1][0]) for canal in canals]
    after = numpy_rows.stood(as_tools(instrument), as_rows(canals), np.array(tips), np.full(COUNT, 0.015))
    for row, (canal, tip_mm) in enumerate(zip(canals, tips, strict=True)):
        left = [(tip_mm - z, d + 0.015) for z, d in reversed(instrument) if tip_mm - z > 8]
        exact = upper(canal, ((8.0, width_mm(instrument, tip_mm - 8) + 0.015), *left))
        places = [(a + b) / 2 for a, b in pairwise(sorted({x for x, _ in exact})) if b - a > 1e-4]
        got = np.interp(places, after.depth_mm[row], after.wide_mm[row])
        assert got == pytest.approx([width_mm(exact, x) for x in places], abs=1e-4)


def drawn(plan_input: PlanInput, count: int = 5000, seed: int = 1) -> Samples:
    widths, figures = widths_of(plan_input, 0, Figures(), beyond_mm=1.0), Figures()
    assert widths is not None
    spread = samples.spread(widths, plan_input.setting == "block", figures)
    return Samples(count=count, seed=(seed, 0), spread=spread)


def test_uniforms_are_uniform_and_named() -> None:
    uniforms, other = drawn(molar()).uniform("width"), drawn(molar()).uniform("end")
    assert np.histogram(uniforms, bins=10, range=(0, 1))[0] == pytest.approx(np.full(10, 500), abs=90)
    assert abs(np.corrcoef(uniforms, other)[0, 1]) < 0.05
    assert (uniforms == drawn(molar()).uniform("width")).all()
    assert (uniforms[:100] == drawn(molar(), count=100).uniform("width")).all()
    assert (uniforms != drawn(molar(), seed=2).uniform("width")).any()


# Pinned, no outside source: with another release of the library the samples of a stored plan must still be drawn alike.
def test_the_same_seed_gives_the_same_samples() -> None:
    assert drawn(molar(), count=3, seed=-1).uniform("width") == pytest.approx(RAW, abs=1e-12)


RAW = [0.8418035736249342, 0.6623946296935485, 0.5820733621349508]


def test_the_quantile_table_is_a_normal_one() -> None:
    normal = drawn(molar()).normal("width")
    for share in (0.1, 0.5, 0.9):
        assert np.quantile(normal, share) == pytest.approx(NormalDist().inv_cdf(share), abs=0.06)


# Foramen of an upper first molar's MB root with two canals: 0.22 ± 0.07 mm (Wolf et al. 2017).
def test_ends_spread_as_published() -> None:
    canals = drawn(molar()).canals(((7.5, 0.5), (18.5, 0.13), (19.5, 0.22)))
    ends = canals.wide_mm[:, -1]
    assert np.median(ends) == pytest.approx(0.22, abs=0.005)
    assert ends.std() == pytest.approx(0.07, abs=0.01)


# Of a logarithm: √ln(1 + 0.32²) = 0.312 and √ln(1 + 0.5²) = 0.472, by hand from the rows.
def test_all_but_the_end_are_wide_together_and_widen_together() -> None:
    canals = drawn(molar(), count=2000).canals(((0.0, 0.5), (5.0, 0.4), (10.0, 0.3), (15.0, 0.2)))
    first, second, third, _ = canals.wide_mm.T
    assert first - second == pytest.approx(second - third)
    widens = (first - second) / 0.1
    wide = (second - widens * 0.2) / 0.2
    assert np.log(wide).std() == pytest.approx(0.312, abs=0.02)
    assert np.log(widens / wide).std() == pytest.approx(0.472, abs=0.02)
