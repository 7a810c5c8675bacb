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


def held(reading: Told) -> bool:
    return reading.band.low_mm <= reading.read_mm <= reading.band.high_mm


# A band from the first to the ninth tenth holds eight of ten readings; of 240, within three standard errors of a
# binomial share: 3 √(0.8 · 0.2 / 240) = 0.077, of fewer within as much more.
# Steps at whose stop many arrive hold more, and are left out.
@pytest.mark.parametrize(("step", "learns"), [*((n, False) for n in range(3)), *((n, True) for n in range(5))])
def test_four_of_five_readings_lie_in_their_band(step: int, learns: bool) -> None:
    readings = [canal[step] for canal in bands(learns) if canal[step].band.reach_share < 0.02]
    assert len(readings) > TRUTHS / 2
    error = 3 * (0.8 * 0.2 / len(readings)) ** 0.5
    assert np.mean([held(reading) for reading in readings]) == pytest.approx(0.8, abs=error)


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
    belief, stops = fresh(), every(END_MM, SAMPLES)
    for read_mm, few in (
        (8.5, False),
        (9.0, False),
        (15.0, False),
        (9.0, False),
        (15.0, False),
        (4.0, True),
        (9.0, False),
    ):
        belief.learn("step", read_mm, belief.to_resistance(WORKED[2], stops), stops)
        assert belief.few_agree is few


# A depth past the stop says no more than that the stop was reached.
def test_reached_is_a_bound_and_no_depth() -> None:
    instrument, stops = WORKED[5], every(14.0, SAMPLES)
    at_stop, past = fresh(), fresh()
    before = at_stop.band("x", at_stop.to_resistance(instrument, stops), stops).reach_share
    for belief, read_mm in ((at_stop, 14.0), (past, 16.0)):
        to_resistance = belief.to_resistance(instrument, stops)
        stood = belief.learn("step", read_mm, to_resistance, stops)
        assert np.mean(stood == read_mm) > 0.9
        assert set(stood[stood != read_mm]) <= set(to_resistance)
    shares = [
        belief.band("x", belief.to_resistance(instrument, stops), stops).reach_share for belief in (at_stop, past)
    ]
    assert min(shares) > before + 0.2


def test_samples_that_count_for_little_are_drawn_anew() -> None:
    belief, stops = fresh(), every(END_MM, SAMPLES)
    depths = belief.to_resistance(WORKED[2], stops)
    belief.learn("step", float(np.quantile(depths, 0.05)), depths, stops)
    assert belief.worth == pytest.approx(SAMPLES)
    assert len({tuple(row) for row in belief.canals.wide_mm}) < SAMPLES / 2


# A hand size that passes without cutting: the canal there is at least that wide, and nothing more.
def test_a_gauge_that_passes_bounds_the_canal_from_below() -> None:
    belief = fresh()
    before = quantile(belief.canals.wide_mm[:, -1], belief.weight, 0.1)
    belief.passed(hand(15), END_MM)
    assert before < 0.12
    assert quantile(belief.canals.wide_mm[:, -1], belief.weight, 0.1) > 0.12
    assert belief.canals.wide_mm[:, -1].max() == pytest.approx(
        quantile(belief.canals.wide_mm[:, -1], belief.weight, 1.0)
    )


@pytest.mark.parametrize(("share", "value"), [(0.1, 1.0), (0.5, 2.0), (0.75, 2.0), (0.8, 3.0), (1.0, 3.0)])
def test_weighted_quantiles_by_hand(share: float, value: float) -> None:
    assert quantile(np.array([3.0, 1.0, 2.0]), np.array([0.25, 0.25, 0.5]), share) == value
