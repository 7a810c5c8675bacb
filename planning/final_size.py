"""What the final size of one canal hangs on, gathered from what was charted."""

from __future__ import annotations

from dataclasses import dataclass

from planning import gauging, shaped
from planning.apical_size import Asked, End, WallAbove
from planning.joins import Join
from planning.natural import Widths, natural_canal
from planning.plan_input import CanalInput, PlanInput
from planning.quantities import mm, um
from planning.readings import Length
from planning.shaped import Place
from planning.tables import Figures
from planning.teeth import Tooth


@dataclass(frozen=True, slots=True, kw_only=True)
class Charted:
    """One canal of a tooth to be planned, as far as it has been worked out."""

    given: PlanInput
    number: int
    tooth: Tooth
    length: Length
    join: Join | None
    widths: Widths | None

    @property
    def canal(self) -> CanalInput:
        return self.given.canals[self.number]


def asked(charted: Charted, taper: int, figures: Figures) -> Asked:
    """Raises ChoiceNotPossible for a first binder that is no ISO size."""
    given, number, canal, tooth = charted.given, charted.number, charted.canal, charted.tooth
    end_um = _end_um(charted.length, charted.join)
    return Asked(
        tooth_iso=tooth.iso,
        canal=canal.name,
        setting=given.setting,
        taper=taper,
        curvature_deg=canal.curvature_deg,
        first_binder=gauging.first_binder(given, number, end_um),
        loose=gauging.loosened(given),
        measured=_measured(canal),
        wall=None if end_um is None else _wall(charted, mm(end_um), figures),
    )


def _wall(charted: Charted, end_mm: float, figures: Figures) -> WallAbove | None:
    canal, setting = charted.canal, charted.given.setting
    orifice = shaped.orifice_mm(canal, setting, charted.tooth.crown_mm or 0.0)
    length = charted.length.working_length_mm
    natural = None
    if charted.widths is not None and length is not None:
        natural = natural_canal(charted.widths, orifice, length)
    place = Place(orifice_mm=orifice, end_mm=end_mm, natural=natural)
    return shaped.wall_above(shaped.thin_wall(canal, charted.tooth.iso, setting, place, figures), place)


def _end_um(length: Length, join: Join | None) -> int | None:
    """Deepest stop of a shaping instrument; None before there is a length."""
    if length.stop_mm is None:
        return None
    full = um(length.stop_mm)
    return full if join is None or join.end_um is None else min(full, join.end_um)


def _measured(canal: CanalInput) -> End | None:
    """The lowest level where widths were entered for this canal."""
    if not canal.widths:
        return None
    lowest = canal.widths[0]
    wide = lowest.narrow_mm if lowest.wide_mm is None else lowest.wide_mm
    return End(narrow_mm=lowest.narrow_mm, wide_mm=wide)
