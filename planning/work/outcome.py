"""The outcome of the expected walk through a canal's order of work: its shape, how the end gauges, what fills it.

The path, the gauging, the final size and the cone are all read off this one walk, so that they cannot contradict.
"""

from __future__ import annotations

from dataclasses import dataclass

from planning.canal import filling, profile
from planning.canal.canal import Canal
from planning.canal.filling import Filled, Filling
from planning.canal.prepared_shape import CanalFrame
from planning.canal.profile import Line, Stand, wider_mm
from planning.depth.forecast import Forecast
from planning.foundation.quantities import mm
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument
from planning.run_sheet.graph import RunSheet, Step
from planning.techniques.technique import PhaseKind
from planning.tray.selection import Selection
from planning.work import canal_work

APART_MM = 1e-6  # rounding error of widths and depths


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What a canal is like after its final size, in an order of work that has one."""

    final: Instrument
    initial_shape: Line
    """The canal before anything was in it; empty where its widths are not known."""
    prepared: Line | None
    """The canal afterwards; None where the walk does not take the final size to the end."""
    cuts: bool | None
    """Whether the final size is anywhere wider than the canal was; None where that is not known."""
    wider: bool
    """The end is wider than the final size: a hand instrument that should be held there is not."""

    def filling(self, canal: Canal, figures: Figures) -> Filling | None:
        """How far the kit's cones, pluggers and spreaders go; None where the walk does not take the final size to the
        end. An end that is wider than the final size holds no cone of that size."""
        if self.prepared is None:
            return None
        filled = Filled(
            initial_shape=self.initial_shape,
            prepared=self.prepared,
            size=self.final.size,
            taper=self.final.taper,
            oval=canal.initial_shape,
            held=not self.wider,
        )
        return filling.filling(canal.plan_input.kit.filling, filled, figures)


def outcome(
    canal: Canal, selected: Selection, final: Instrument | None, way: Forecast, sheet: RunSheet, place: CanalFrame
) -> Outcome | None:
    """The outcome of the walk `way`; None where the order of work has no final size in it, or would end above the
    orifice."""
    if final is None or place.orifice_mm >= place.end_mm or not _goes_to_end(final, way, sheet, place):
        return None
    whole = place.initial_shape
    initial_shape = () if whole is None else profile.upto(profile.narrow_line(whole), place.end_mm)
    # A hand size that went to the end without being held shows how wide this canal is at least, whatever the tables
    # say.
    known = profile.upper(initial_shape, canal_work.passed(canal, selected))
    stood = profile.upper(known, profile.outline(way.stood, from_mm=place.orifice_mm))
    line = Stand(instrument=final, tip_mm=place.end_mm).line(place.orifice_mm)
    at_end = any(stand.instrument.key == final.key and _is_at(stand.tip_mm, place.end_mm) for stand in way.stood)
    return Outcome(
        final=final,
        initial_shape=initial_shape,
        prepared=profile.upto(stood, place.end_mm) if at_end else None,
        cuts=wider_mm(line, known) > APART_MM if known else None,
        wider=_wider(canal, selected, final, way, sheet),
    )


def _goes_to_end(final: Instrument, way: Forecast, sheet: RunSheet, place: CanalFrame) -> bool:
    """Whether the final size has stood at the end, or has a step that takes it there."""
    key = final.key
    stops = (n.stop_um for n in sheet.nodes.values() if isinstance(n, Step) and n.instrument == key)
    stood = (stand.tip_mm for stand in way.stood if stand.instrument.key == key)
    return any(_is_at(at_mm, place.end_mm) for at_mm in (*(mm(stop or 0) for stop in stops), *stood))


def _is_at(tip_mm: float, end_mm: float) -> bool:
    return tip_mm >= end_mm - APART_MM


def _wider(canal: Canal, selected: Selection, final: Instrument, way: Forecast, sheet: RunSheet) -> bool:
    """Whether a hand instrument goes to the end that should be held: one above the final size, or the final size itself
    where the canal is gauged before it is shaped. After shaping the final size has to seat."""
    kinds = {phase.key: phase.kind for phase in canal.plan_input.technique.phases}
    for step, goes in way.gauged.items():
        node = sheet.nodes[step]
        if goes and isinstance(node, Step):
            size = selected.kit[node.instrument or ""].size
            if size > final.size or (size == final.size and kinds.get(node.phase) is PhaseKind.GAUGE):
                return True
    return False
