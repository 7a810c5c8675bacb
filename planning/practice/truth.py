"""The hidden truth of an exercise: canals, a hand and instruments, drawn from the spreads of a plan's bands."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

from planning.canal.canal import Canal, describe, tooth_of
from planning.canal.profile import Line, narrow_line
from planning.contract.plan_input import CanalInput
from planning.depth import samples
from planning.depth.contact_depth import LightTouch, light_touch
from planning.depth.samples import Samples
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import DiameterAt, Instrument
from planning.practice.levels import canals_of, case
from planning.techniques.technique import Setting
from planning.tray import selection


@dataclass(frozen=True, slots=True, kw_only=True)
class Truth:
    """One canal as it is, before anything was in it."""

    asked: CanalInput
    """What the student knows of it."""
    shape: Line
    """The narrow side, from the orifice to the working length."""
    touch: LightTouch
    drawn: Samples

    def real(self, instrument: Instrument) -> Instrument:
        """The instrument as it is, within its tolerances."""
        tools = self.drawn.tools(instrument)
        at = zip(tools.from_tip_mm.tolist(), tools.wide_mm[0].tolist(), strict=True)
        return replace(instrument, diameters=tuple(DiameterAt(from_tip_mm=z, diameter_mm=d) for z, d in at))


def lengths_mm(level: str, seed: int) -> tuple[float, ...]:
    """The working lengths of an exercise, in half millimetres around its level's; the student is told them. Raises
    UnknownLevel."""
    middle_mm, within = _middle_mm(level), Figures().count("practice.length_steps")
    share = float(_drawn(_described(level, middle_mm)[0], seed).uniform("length")[0])
    # One step for all canals: those that join keep their common end.
    steps = int(share * (2 * within + 1)) - within
    return tuple(length_mm + steps / 2 for length_mm in middle_mm)


def truths(level: str, seed: int) -> tuple[Truth, ...]:
    """The canals of an exercise as they are, in the order in which they are worked. Raises UnknownLevel."""
    return tuple(_truth(canal, seed) for canal in _described(level, lengths_mm(level, seed)))


def _truth(canal: Canal, seed: int) -> Truth:
    if canal.initial_shape is None:
        raise ValueError(f"practice needs a canal of known widths: {canal.input.name}")
    drawn, light = _drawn(canal, seed), light_touch(Figures())
    row = drawn.canals(narrow_line(canal.initial_shape))
    return Truth(
        asked=canal.input,
        shape=tuple(zip(row.depth_mm[0].tolist(), row.wide_mm[0].tolist(), strict=True)),
        touch=replace(
            light, limit_mm2=float(drawn.limits_mm2(light)[0]), overcut_mm=float(drawn.overcuts_mm(light)[0])
        ),
        drawn=drawn,
    )


def _drawn(canal: Canal, seed: int) -> Samples:
    if canal.widths is None:
        raise ValueError(f"practice needs a canal of known widths: {canal.input.name}")
    spread = samples.spread(canal.widths, canal.plan_input.setting is Setting.BLOCK, Figures())
    return Samples(count=1, seed=(seed, canal.number), spread=spread)


def _middle_mm(level: str) -> tuple[float, ...]:
    return tuple(float(row["length_mm"]) for row in canals_of(level))


@cache
def _described(level: str, lengths: tuple[float, ...]) -> tuple[Canal, ...]:
    asked, figures = case(level, lengths), Figures()
    tooth, selected = tooth_of(asked), selection.select(asked, figures)
    return tuple(describe(asked, number, tooth, selected, figures) for number in range(len(asked.canals)))
