"""Whether the bands can be believed: canals whose truth is known are worked by the exact estimate, and read."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from planning.depth.belief import Belief, every, quantile
from tests.draws import draws
from tests.planning.given import hand
from tests.planning.hidden_canals import (
    BY,
    END_MM,
    NARROW,
    READING,
    SAMPLES,
    WORKED,
    Told,
    all_believed,
    drawn,
    stood_mm,
    typed_mm,
)

TRUTHS = draws(240)


@cache
def bands(learns: bool) -> list[list[Told]]:
    return all_believed(typed_mm(stood_mm(TRUTHS)), learns=learns)


def held(told: Told) -> bool:
    return told.band.low_mm <= told.read_mm <= told.band.high_mm


# A band from the first to the ninth tenth holds eight of ten readings; of 240, within three standard errors of a
# binomial share: 3 √(0.8 · 0.2 / 240) = 0.077, of fewer within as much more.
# Steps at whose stop many arrive hold more, and are left out.
@pytest.mark.parametrize(("step", "learns"), [*((n, False) for n in range(3)), *((n, True) for n in range(5))])
def test_four_of_five_readings_lie_in_their_band(step: int, learns: bool) -> None:
    told = [canal[step] for canal in bands(learns) if canal[step].band.reach_share < 0.02]
    assert len(told) > TRUTHS / 2
    error = 3 * (0.8 * 0.2 / len(told)) ** 0.5
    assert np.mean([held(one) for one in told]) == pytest.approx(0.8, abs=error)


def test_bands_narrow_with_every_reading() -> None:
    def wide(learns: bool, step: int) -> float:
        return float(np.mean([canal[step].band.high_mm - canal[step].band.low_mm for canal in bands(learns)]))

    assert wide(True, 0) == wide(False, 0)
    for step in (2, 3, 4):
        assert wide(True, step) < 0.8 * wide(False, step)


def test_learning_brings_the_median_nearer() -> None:
    def off(learns: bool) -> float:
        return float(np.mean([abs(canal[4].band.median_mm - canal[4].read_mm) for canal in bands(learns)]))

    assert off(True) < 0.8 * off(False)


def fresh() -> Belief:
    return Belief(drawn(SAMPLES, seed=3), NARROW, BY, READING)


# Once 0.5/√12 and 0.2 in one: √(0.1443² + 0.2²) = 0.2467.
def test_a_reading_is_uncertain_by_its_step_and_more() -> None:
    assert READING.sd_mm == pytest.approx(0.2467, abs=1e-4)


# One may be a slip; two running are not told from a canal that is like none of the samples.
def test_readings_that_no_sample_explains_are_named_from_the_second_on() -> None:
    found, stops = fresh(), every(END_MM, SAMPLES)
    for read_mm, few in (
        (8.5, False),
        (9.0, False),
        (15.0, False),
        (9.0, False),
        (15.0, False),
        (4.0, True),
        (9.0, False),
    ):
        found.learn("step", read_mm, found.to_resistance(WORKED[2], stops), stops)
        assert found.few_agree is few


# A depth past the stop says no more than that the stop was reached.
def test_reached_is_a_bound_and_no_depth() -> None:
    one, stops = WORKED[5], every(14.0, SAMPLES)
    at_stop, past = fresh(), fresh()
    before = at_stop.band("x", at_stop.to_resistance(one, stops), stops).reach_share
    for found, read_mm in ((at_stop, 14.0), (past, 16.0)):
        to_resistance = found.to_resistance(one, stops)
        stood = found.learn("step", read_mm, to_resistance, stops)
        assert np.mean(stood == read_mm) > 0.9
        assert set(stood[stood != read_mm]) <= set(to_resistance)
    shares = [found.band("x", found.to_resistance(one, stops), stops).reach_share for found in (at_stop, past)]
    assert min(shares) > before + 0.2


def test_samples_that_count_for_little_are_drawn_anew() -> None:
    found, stops = fresh(), every(END_MM, SAMPLES)
    depths = found.to_resistance(WORKED[2], stops)
    found.learn("step", float(np.quantile(depths, 0.05)), depths, stops)
    assert found.worth == pytest.approx(SAMPLES)
    assert len({tuple(row) for row in found.canals.wide_mm}) < SAMPLES / 2


# A hand size that passes without cutting: the canal there is at least that wide, and nothing more.
def test_a_gauge_that_passes_bounds_the_canal_from_below() -> None:
    found = fresh()
    before = quantile(found.canals.wide_mm[:, -1], found.weight, 0.1)
    found.passed(hand(15), END_MM)
    assert before < 0.12
    assert quantile(found.canals.wide_mm[:, -1], found.weight, 0.1) > 0.12
    assert found.canals.wide_mm[:, -1].max() == pytest.approx(quantile(found.canals.wide_mm[:, -1], found.weight, 1.0))


@pytest.mark.parametrize(("share", "value"), [(0.1, 1.0), (0.5, 2.0), (0.75, 2.0), (0.8, 3.0), (1.0, 3.0)])
def test_weighted_quantiles_by_hand(share: float, value: float) -> None:
    assert quantile(np.array([3.0, 1.0, 2.0]), np.array([0.25, 0.25, 0.5]), share) == value
