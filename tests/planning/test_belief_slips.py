"""Whether what is believed of a canal survives slips: one recorded depth in twenty wrong by two to five millimetres.

Bounds are the project's own: bands that hold four of five right depths, three of four at least where the taper is not
what was published; fewer than one false alarm in ten canals; never worse than without what was recorded.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np
import pytest
from numpy.typing import NDArray

from planning.contract.expected import against
from planning.depth.belief import Belief, every
from planning.depth.reading import Reading
from planning.depth.rows import Floats
from tests.draws import draws
from tests.planning.hidden_canals import (
    BY,
    END_MM,
    NARROW,
    READING,
    WORKED,
    Told,
    all_believed,
    drawn,
    rounded_mm,
    stood_mm,
    typed_mm,
)

CANALS = draws(240)
SHIFTS = (0.0, 0.01, -0.01)
SLIPS, LEAST_MM, MOST_MM = 0.05, 2.0, 5.0
FREE = 0.02  # where more reach the stop a band holds more than it says


@dataclass(frozen=True)
class World:
    stood: Floats
    slipped: NDArray[np.bool_]
    told: list[list[Told]]
    same: list[list[Told]]
    """Of bands that learn nothing."""

    def each(self, of: list[list[Told]], what: str) -> Floats:
        return np.array([[getattr(reading.band, what) for reading in canal] for canal in of])

    @property
    def read(self) -> Floats:
        return np.array([[reading.read_mm for reading in canal] for canal in self.told])

    def off(self, of: list[list[Told]]) -> Floats:
        return np.abs(self.each(of, "median_mm") - self.stood)

    @property
    def held(self) -> NDArray[np.bool_]:
        low, high = self.each(self.told, "low_mm"), self.each(self.told, "high_mm")
        return np.asarray((low <= self.read) & (self.read <= high))

    def alarms(self) -> NDArray[np.bool_]:
        def named(reading: Told) -> bool:
            limits = (reading.band.short_below_mm, reading.band.deep_above_mm)
            return against(reading.read_mm, limits) != "as_expected"

        return np.array([[named(reading) for reading in canal] for canal in self.told])


def world_of(stood: Floats, slipped: NDArray[np.bool_], off_mm: Floats) -> World:
    read = np.where(slipped, rounded_mm(stood + off_mm), typed_mm(stood))
    return World(stood, slipped, all_believed(read, learns=True), all_believed(read, learns=False))


@cache
def world(shift: float) -> World:
    """One depth in twenty is a slip, either way."""
    stood, chance = stood_mm(CANALS, shift), np.random.default_rng(7)
    slipped = chance.random((240, stood.shape[1]))[:CANALS] < SLIPS
    off_mm = chance.uniform(LEAST_MM, MOST_MM, (240, stood.shape[1]))[:CANALS]
    return world_of(stood, slipped, off_mm * chance.choice([-1, 1], (240, stood.shape[1]))[:CANALS])


@pytest.mark.parametrize("shift", SHIFTS)
def test_bands_hold_four_of_five_right_depths_in_spite_of_slips(shift: float) -> None:
    population = world(shift)
    right, free = ~population.slipped, population.each(population.told, "reach_share") < FREE
    least = 0.78 if shift else 0.75
    assert least <= population.held[right].mean() <= 0.85
    assert least <= population.held[right & free].mean() <= 0.85


@pytest.mark.parametrize("shift", SHIFTS)
def test_right_depths_are_called_unusual_in_fewer_than_one_canal_of_ten(shift: float) -> None:
    population = world(shift)
    assert population.alarms()[~population.slipped].sum() < 0.1 * CANALS


@pytest.mark.parametrize("shift", SHIFTS)
def test_what_was_recorded_never_makes_it_worse_slips_and_all(shift: float) -> None:
    population = world(shift)
    learned, not_learned = population.off(population.told).mean(axis=0), population.off(population.same).mean(axis=0)
    assert (learned <= not_learned).all()
    assert (learned[2:] < 0.6 * not_learned[2:]).all()


ONCE = draws(48)
STEPS_AFTER = 2


@pytest.mark.parametrize("off_mm", [-5.0, 5.0])
@pytest.mark.parametrize("step", [0, 2])
def test_one_slip_costs_less_than_not_learning_and_right_depths_bring_the_belief_back(step: int, off_mm: float) -> None:
    """One depth of every canal is off by five millimetres; it is called unusual, and once."""
    stood = stood_mm(CANALS)[:ONCE]
    slipped = np.zeros(stood.shape, dtype=bool)
    slipped[:, step] = True
    population = world_of(stood, slipped, np.full(stood.shape, off_mm))
    without = world_of(stood, np.zeros_like(slipped), np.zeros_like(stood))
    later = population.off(population.told)[:, step + 1 :].mean()
    assert later < population.off(population.same)[:, step + 1 :].mean()
    back = population.off(population.told)[:, step + STEPS_AFTER :].mean()
    assert back < 1.25 * without.off(without.told)[:, step + STEPS_AFTER :].mean()
    assert population.held[:, step + 1 :].mean() > 0.75
    # Before the first depth nobody knows how wide the canal is: five millimetres deeper may just be wider.
    if step:
        assert population.alarms()[:, step].mean() > 0.75
    assert population.alarms()[~slipped].sum() < 0.1 * ONCE + without.alarms().sum()


# --- what a depth says, by hand -------------------------------------------------------------------------------------

BY_HAND = Reading(step_mm=0.5, more_sd_mm=0.2, wrong_share=0.05, unusual_share=0.02)
AT_12_1, STOP = np.array([12.1]), np.array([17.0])


def test_a_depth_typed_to_the_half_millimetre_is_all_that_is_rounded_to_it() -> None:
    """12.0 is what lies between 11.75 and 12.25; of 12.1 ± 0.2 those are -1.75 and +0.75 standard deviations off.

    Table of the normal distribution: 0.7734 - 0.0401 = 0.7333 lie between, in half a millimetre.
    """
    likely = BY_HAND.likely(12.0, AT_12_1, STOP, from_mm=0.0)
    assert likely.right[0] == pytest.approx(0.95 * 0.7333 / 0.5, abs=1e-3)


def test_a_depth_read_finer_is_no_more_than_near() -> None:
    """One standard deviation off: 0.2420 in units of it (table of the normal distribution)."""
    likely = BY_HAND.likely(12.3, AT_12_1, STOP, from_mm=0.0)
    assert likely.right[0] == pytest.approx(0.95 * 0.2420 / 0.2, abs=1e-3)


def test_a_slip_lies_anywhere_from_the_orifice_to_the_stop() -> None:
    """0.05 over the 12 mm from 5 to 17."""
    for read_mm in (6.0, 12.0, 12.3):
        assert BY_HAND.likely(read_mm, AT_12_1, STOP, from_mm=5.0).slip == pytest.approx(0.05 / 12)


def test_a_stop_reached_is_all_that_is_rounded_to_it_or_lies_deeper() -> None:
    """16.75 and deeper is rounded to 17.0: 1.25 standard deviations past 16.5 ± 0.2, 0.1056 by the same table."""
    likely = BY_HAND.likely(17.0, np.array([16.5, 17.0]), np.full(2, 17.0), from_mm=0.0)
    assert likely.right == pytest.approx([0.95 * 0.1056, 0.95], abs=1e-3)
    assert likely.slip == pytest.approx(0.05 * 0.5 / 17)


def test_where_a_canal_takes_a_depth_for_a_slip_nothing_in_it_changes() -> None:
    """5 mm past all that was expected: nearly every canal keeps the depth it had."""
    belief, stops = Belief(drawn(400, seed=3), NARROW, BY, READING), every(END_MM, 400)
    to_resistance = belief.to_resistance(WORKED[0], stops)
    stood = belief.learn("step", 0.5, to_resistance, stops)
    assert np.mean(np.isin(stood, to_resistance)) > 0.95
