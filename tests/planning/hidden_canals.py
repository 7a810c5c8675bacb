"""Canals whose truth is known, for the tests of what is believed of them: drawn, worked by the exact estimate, read."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

import numpy as np

from planning.canal.initial_shape import Widths, widths_of
from planning.canal.profile import Line
from planning.depth import contact_depth, reading, samples
from planning.depth.belief import Band, Belief, every
from planning.depth.contact_depth import LightTouch
from planning.depth.rows import Floats
from planning.depth.samples import Samples
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import DiameterAt, Instrument, Use
from tests.planning.given import block, hand, rotary

END_MM = 17.0
TIP_MM, TAPER = 0.15, 0.02
BY = contact_depth.light_touch(Figures())
READING = reading.reading(Figures())
SAMPLES = 800  # as a plan draws where depths were recorded
HAND = [hand(15), hand(20)]
WORKED = [
    *(rotary(25, taper, Use.CORONAL, largest_flute_mm=1.1) for taper in (10, 8)),
    *(rotary(size, 4) for size in (40, 35, 30, 25)),
]


def line(taper: float = TAPER) -> Line:
    """A straight practice canal."""
    return ((0.0, round(TIP_MM + END_MM * taper, 3)), (END_MM, TIP_MM))


NARROW = line()


def drawn(count: int, seed: int, *, widens_alike: bool = False) -> Samples:
    """Canals that differ as natural ones do; all with one taper where they widen alike."""
    widths = widths_of(block(), 0, Figures(), beyond_mm=0.0)
    assert isinstance(widths, Widths)
    spread = samples.spread(widths, block=False, figures=Figures())
    return Samples(count=count, seed=(seed,), spread=replace(spread, widening_share=0.0) if widens_alike else spread)


@cache
def stood_mm(count: int, shift: float = 0.0) -> Floats:
    """Where every instrument stopped in every canal, (canals, steps), each worked by the exact estimate.

    Drawn as they are believed to be, or with a taper that is off by as much in every one of them.
    """
    world = drawn(count, seed=11, widens_alike=shift != 0)
    canals, limits, overcuts = world.canals(line(TAPER + shift)), world.limits_mm2(BY), world.overcuts_mm(BY)
    depths_mm = np.empty((count, len(WORKED)))
    for row in range(count):
        by = LightTouch(limit_mm2=limits[row], overcut_mm=overcuts[row], strokes=BY.strokes)
        canal: Line = tuple(zip(canals.depth_mm[row].tolist(), canals.wide_mm[row].tolist(), strict=True))
        for instrument in HAND:
            canal = contact_depth.stand(_true(world, instrument, row), canal, END_MM, by).canal
        for number, instrument in enumerate(WORKED):
            done = contact_depth.insert(_true(world, instrument, row), canal, END_MM, by)
            canal, depths_mm[row, number] = done.canal, done.depth_mm
    return depths_mm


def _true(world: Samples, instrument: Instrument, row: int) -> Instrument:
    """The instrument as it is in this canal, within its tolerances."""
    tools = world.tools(instrument)
    at = zip(tools.from_tip_mm.tolist(), tools.wide_mm[row].tolist(), strict=True)
    return replace(instrument, diameters=tuple(DiameterAt(from_tip_mm=z, diameter_mm=d) for z, d in at))


def typed_mm(stood: Floats) -> Floats:
    """What is typed of it: off by more than the ruler's step, and rounded to that; the stop where it was reached."""
    off = np.random.default_rng(5).normal(0, READING.more_sd_mm, (10_000, stood.shape[1]))[: len(stood)]
    return np.where(stood >= END_MM, END_MM, rounded_mm(stood + off))


def rounded_mm(depth: Floats) -> Floats:
    return np.clip(np.round(depth / READING.step_mm) * READING.step_mm, 0.0, END_MM)


@dataclass(frozen=True)
class Told:
    band: Band
    read_mm: float


def believed(read_mm: list[float], *, learns: bool) -> list[Told]:
    """The band of every step, told before it was read."""
    belief, steps = Belief(drawn(SAMPLES, seed=12), NARROW, BY, READING), []
    stops = every(END_MM, SAMPLES)
    for instrument in HAND:
        belief.stands(instrument.key, instrument, stops)
    for instrument, depth_mm in zip(WORKED, read_mm, strict=True):
        came = belief.to_resistance(instrument, stops)
        steps.append(Told(belief.band(instrument.key, came, stops), depth_mm))
        if learns:
            came = belief.learn(instrument.key, depth_mm, came, stops)
        belief.stands(instrument.key, instrument, came)
    return steps


@cache
def _unlearned() -> tuple[Band, ...]:
    """The same for every canal."""
    return tuple(step.band for step in believed([END_MM] * len(WORKED), learns=False))


def all_believed(read_mm: Floats, *, learns: bool) -> list[list[Told]]:
    if learns:
        return [believed(row, learns=True) for row in read_mm.tolist()]
    return [[Told(band, mm) for band, mm in zip(_unlearned(), row, strict=True)] for row in read_mm.tolist()]
