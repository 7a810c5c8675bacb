"""Whether the bands can be believed: canals whose truth is known are worked by the exact estimate, and read."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

import numpy as np
import pytest

from planning.depth import belief, contact_depth, samples
from planning.depth.belief import Band, Belief, every, quantile
from planning.depth.contact_depth import Touch
from planning.depth.contact_rows import Floats
from planning.depth.samples import Samples
from planning.instruments import DiameterAt, Instrument, Use
from planning.natural import Widths, widths_of
from planning.profile import Line
from planning.tables import Figures
from tests.draws import draws
from tests.planning.given import block, hand, rotary

END_MM = 17.0
NARROW: Line = ((0.0, 0.49), (END_MM, 0.15))
BY = contact_depth.touch(Figures())
READING = belief.reading(Figures())
TRUTHS = draws(240)
SAMPLES = 1200
HAND = [hand(15), hand(20)]
WORKED = [
    *(rotary(25, taper, Use.CORONAL, largest_flute_mm=1.1) for taper in (10, 8)),
    *(rotary(size, 4) for size in (40, 35, 30, 25)),
]


def drawn(count: int, seed: int) -> Samples:
    """Canals that differ as natural ones do, in a straight practice canal."""
    widths = widths_of(block(), 0, Figures())
    assert isinstance(widths, Widths)
    return Samples(count=count, seed=(seed,), spread=samples.spread(widths, block=False, figures=Figures()))


@cache
def truths() -> list[list[float]]:
    """Depths read in every true canal: each worked by the exact estimate, each depth read with its uncertainty."""
    world = drawn(TRUTHS, seed=11)
    canals, limits, overcuts = world.canals(NARROW), world.limits_mm2(BY), world.overcuts_mm(BY)
    found = []
    for row in range(TRUTHS):
        by = Touch(limit_mm2=limits[row], overcut_mm=overcuts[row], strokes=BY.strokes)
        canal: Line = tuple(zip(canals.depth_mm[row].tolist(), canals.wide_mm[row].tolist(), strict=True))
        for one in HAND:
            canal = contact_depth.stand(true(world, one, row), canal, END_MM, by).canal
        depths = []
        for number, one in enumerate(WORKED):
            done = contact_depth.insert(true(world, one, row), canal, END_MM, by)
            canal = done.canal
            read_mm = done.depth_mm + READ_OFF[number, row]
            depths.append(END_MM if done.depth_mm >= END_MM else min(END_MM, read_mm))
        found.append(depths)
    return found


READ_OFF: Floats = np.random.default_rng(5).normal(0, READING.sd_mm, (len(WORKED), TRUTHS))


def true(world: Samples, one: Instrument, row: int) -> Instrument:
    """The instrument as it is in this canal, within its tolerances."""
    tools = world.tools(one)
    at = zip(tools.from_tip_mm.tolist(), tools.wide_mm[row].tolist(), strict=True)
    return replace(one, diameters=tuple(DiameterAt(from_tip_mm=z, diameter_mm=d) for z, d in at))


@dataclass
class Told:
    band: Band
    read_mm: float


def believed(depths: list[float], *, learns: bool) -> list[Told]:
    """The band of every step, told before it was read."""
    found, told = Belief(drawn(SAMPLES, seed=12), NARROW, BY, READING), []
    stops = every(END_MM, SAMPLES)
    for one in HAND:
        found.stands(one.key, one, stops)
    for one, read_mm in zip(WORKED, depths, strict=True):
        came = found.led(one, stops)
        told.append(Told(found.band(one.key, came, stops), read_mm))
        if learns:
            came = found.learn(one.key, read_mm, came, stops)
        found.stands(one.key, one, came)
    return told


@cache
def bands(learns: bool) -> list[list[Told]]:
    if learns:
        return [believed(depths, learns=True) for depths in truths()]
    # Nothing learned: the same bands for every canal.
    same = believed(truths()[0], learns=False)
    return [[Told(told.band, read_mm) for told, read_mm in zip(same, depths, strict=True)] for depths in truths()]


def held(told: Told) -> bool:
    return told.band.low_mm <= told.read_mm <= told.band.high_mm


# A band from the first to the ninth tenth holds eight of ten readings; of 240, within three standard errors of a
# binomial share: 3 √(0.8 · 0.2 / 240) = 0.077, of fewer within as much more.
# Steps at whose stop many arrive hold more, and are left out.
@pytest.mark.parametrize(("step", "learns"), [*((n, False) for n in range(4)), *((n, True) for n in range(5))])
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


# Twice 0.5/√12 and 0.2 in one: √(0.1443² + 0.2²) = 0.2467.
def test_a_reading_is_uncertain_by_its_step_and_more() -> None:
    assert READING.sd_mm == pytest.approx(0.2467, abs=1e-4)


def test_readings_that_no_sample_explains_are_named() -> None:
    found, stops = fresh(), every(END_MM, SAMPLES)
    for read_mm, few in ((8.5, False), (9.0, False), (2.0, True)):
        found.learn("step", read_mm, found.led(WORKED[2], stops), stops)
        assert found.few_agree is few


# A depth past the stop says no more than that the stop was reached.
def test_reached_is_a_bound_and_no_depth() -> None:
    one, stops = WORKED[5], every(14.0, SAMPLES)
    at_stop, past = fresh(), fresh()
    before = at_stop.band("x", at_stop.led(one, stops), stops).reach_share
    for found, read_mm in ((at_stop, 14.0), (past, 16.0)):
        assert (found.learn("step", read_mm, found.led(one, stops), stops) == read_mm).all()
    shares = [found.band("x", found.led(one, stops), stops).reach_share for found in (at_stop, past)]
    assert min(shares) > before + 0.2


def test_samples_that_count_for_little_are_drawn_anew() -> None:
    found, stops = fresh(), every(END_MM, SAMPLES)
    depths = found.led(WORKED[2], stops)
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
