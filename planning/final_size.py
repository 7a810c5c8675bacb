"""What the final size of one canal hangs on, gathered from what was charted."""

from __future__ import annotations

from planning import gauging, shaped
from planning.apical_size import Asked, End
from planning.joins import Join
from planning.plan_input import CanalInput, PlanInput
from planning.quantities import mm, um
from planning.readings import Length
from planning.shaped import Place
from planning.tables import Figures
from planning.techniques import Setting
from planning.teeth import Tooth


def asked(given: PlanInput, number: int, tooth: Tooth, end_um: int | None, taper: int, figures: Figures) -> Asked:
    """Raises ChoiceNotPossible for a first binder that is no ISO size."""
    canal = given.canals[number]
    above = None
    if end_um is not None:
        crown = 0.0 if given.setting is Setting.BLOCK else tooth.crown_mm or 0.0
        orifice = crown if canal.orifice_mm is None else canal.orifice_mm
        place = Place(orifice_mm=orifice, end_mm=mm(end_um), natural=None)
        above = shaped.wall_above(shaped.thin_wall(canal, tooth.iso, given.setting, place, figures), place)
    return Asked(
        tooth_iso=tooth.iso,
        canal=canal.name,
        setting=given.setting,
        taper=taper,
        curvature_deg=canal.curvature_deg,
        first_binder=gauging.first_binder(given, number, end_um),
        loose=gauging.loosened(given),
        measured=_measured(canal),
        wall=above,
    )


def end_um(length: Length, join: Join | None) -> int | None:
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
