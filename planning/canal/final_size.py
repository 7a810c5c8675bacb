"""What decides the final size of one canal, gathered from what was charted."""

from __future__ import annotations

from dataclasses import dataclass

from planning.anatomy import Tooth
from planning.canal import gauging, prepared_shape
from planning.canal.apical_size import ApicalEnd, SizeRequest
from planning.canal.initial_shape import Widths, initial_shape_of
from planning.canal.joins import Join
from planning.canal.prepared_shape import CanalFrame
from planning.canal.profile import narrow_line, wide_line
from planning.contract.plan_input import CanalInput, PlanInput
from planning.foundation.quantities import mm, um
from planning.foundation.tables import Figures
from planning.lengths.readings import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Charted:
    """One canal of a tooth to be planned, as far as it has been worked out."""

    plan_input: PlanInput
    number: int
    tooth: Tooth
    length: Length
    join: Join | None
    widths: Widths | None

    @property
    def canal(self) -> CanalInput:
        return self.plan_input.canals[self.number]


def asked(charted: Charted, taper: int, figures: Figures) -> SizeRequest:
    """What decides the final size. Raises ChoiceNotPossible for a first binder that is no ISO size."""
    plan_input, number, canal, tooth = charted.plan_input, charted.number, charted.canal, charted.tooth
    deepest_um = end_um(charted.length, charted.join)
    place = None if deepest_um is None else _place(charted, mm(deepest_um))
    thin = None if place is None else prepared_shape.thin_wall(canal, tooth.iso, plan_input.setting, place, figures)
    return SizeRequest(
        tooth_iso=tooth.iso,
        canal=canal.name,
        setting=plan_input.setting,
        taper=taper,
        curvature_deg=canal.curvature_deg,
        first_binder=gauging.first_binder(plan_input, number, deepest_um),
        loose=gauging.loosened(plan_input),
        end=None if charted.widths is None else _end(charted.widths, place),
        wall=None if place is None else prepared_shape.wall_above(thin, place),
    )


def _place(charted: Charted, end_mm: float) -> CanalFrame:
    orifice = prepared_shape.orifice_mm(charted.canal, charted.plan_input.setting, charted.tooth.crown_mm or 0.0)
    length = charted.length.working_length_mm
    initial_shape = None
    if charted.widths is not None and length is not None:
        initial_shape = initial_shape_of(charted.widths, orifice, length)
    return CanalFrame(orifice_mm=orifice, end_mm=end_mm, initial_shape=initial_shape)


def end_um(length: Length, join: Join | None) -> int | None:
    """Deepest stop of a shaping instrument; None before there is a length."""
    if length.stop_mm is None:
        return None
    full = um(length.stop_mm)
    return full if join is None or join.end_um is None else min(full, join.end_um)


def _end(widths: Widths, place: CanalFrame | None) -> ApicalEnd:
    """How wide the canal is where its preparation ends; at the lowest level that is known while there is no length."""
    lowest = widths.levels[0]
    narrow_mm, wide_mm = lowest.narrow_mm, lowest.narrow_mm if lowest.wide_mm is None else lowest.wide_mm
    if place is not None and place.initial_shape is not None:
        narrow_mm = prepared_shape.width_at(narrow_line(place.initial_shape), place.end_mm) or narrow_mm
        wide_mm = prepared_shape.width_at(wide_line(place.initial_shape), place.end_mm) or wide_mm
    # Widths that were entered rest on no row of the tables: they count as measured.
    if not widths.end_rows[0]:
        return ApicalEnd(narrow_mm=narrow_mm, wide_mm=wide_mm)
    return ApicalEnd(narrow_mm=narrow_mm, wide_mm=wide_mm, source=widths.source, know=widths.know, rows=widths.end_rows)
