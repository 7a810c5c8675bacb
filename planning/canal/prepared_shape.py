"""What follows from a canal's shape once it is prepared: bending of instruments, the thinnest wall, choices of size."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from planning.anatomy import ovals, walls
from planning.anatomy.curvature import BendShape
from planning.anatomy.walls import ThinWall, WallLeft
from planning.canal import apical_size
from planning.canal.apical_size import SizeRequest, WallAbove
from planning.canal.profile import Line, narrow_line
from planning.contract.expected import InitialShape
from planning.contract.plan_input import CanalInput
from planning.contract.plan_value import SizeOption, SizeRange
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import HUNDREDTH_MM, Instrument, size_above, sizes
from planning.instruments.strain import Bend, Strain, strain, strain_pct
from planning.techniques.technique import Setting


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalFrame:
    """Where a canal lies, from the reference point."""

    orifice_mm: float
    end_mm: float
    initial_shape: InitialShape | None
    """None where its widths are not known."""


def orifice_mm(canal: CanalInput, setting: Setting, crown_mm: float) -> float:
    """From the reference point to the orifice: measured, else at the crown's mean length."""
    if canal.orifice_mm is not None:
        return canal.orifice_mm
    return 0.0 if setting is Setting.BLOCK else crown_mm


def is_bent(canal: CanalInput, figures: Figures) -> bool:
    """Whether the canal is worked as a bent one: its charted angle is large enough. One without an angle is not; one
    that bends to both sides, or may, always is, as an S can have a small angle from its axis to its end.
    """
    return both_ways(canal) or (canal.curvature_deg or 0.0) >= figures["depth.bend_from"]


def both_ways(canal: CanalInput) -> bool:
    """Whether the canal bends to both sides, or may."""
    return canal.bend_shape in (BendShape.DOUBLE, BendShape.UNCLEAR)


def bend_of(canal: CanalInput, place: CanalFrame, figures: Figures) -> Bend | None:
    """Where the canal bends: the middle of its curve, else where the curve begins; what is not charted of a bend is
    taken from the data tables. None for a canal without one."""
    radius_mm, from_end_mm, start_mm = canal.curve_radius_mm, canal.curve_from_end_mm, canal.curve_start_mm
    # A radius that was charted is a bend, however small its angle.
    if radius_mm is None and not is_bent(canal, figures):
        return None
    placed = from_end_mm is not None or start_mm is not None
    if from_end_mm is None:
        from_end_mm = figures["strain.from_end"] if start_mm is None else place.end_mm - start_mm
    return Bend(
        at_mm=place.end_mm - from_end_mm,
        radius_mm=figures["strain.radius"] if radius_mm is None else radius_mm,
        taken=radius_mm is None or not placed,
    )


def bent(deepest_mm: Mapping[Instrument, float], bend: Bend | None) -> Mapping[Instrument, float]:
    """Which instruments are bent, with their deepest stops: engine instruments that get to the bend, hand instruments
    where there is no other."""
    if bend is None:
        return {}
    engine = {instrument: tip for instrument, tip in deepest_mm.items() if instrument.motion != "hand"}
    return {instrument: tip for instrument, tip in (engine or deepest_mm).items() if tip > bend.at_mm}


def strains(bent_mm: Mapping[Instrument, float], bend: Bend | None, figures: Figures) -> tuple[Strain, ...]:
    """Bending of every instrument at its deepest stop."""
    if bend is None:
        return ()
    strained = (strain(instrument, tip, bend, figures) for instrument, tip in bent_mm.items())
    return tuple(each for each in strained if each is not None)


def thin_wall(
    canal: CanalInput, tooth_iso: str, setting: Setting, place: CanalFrame, figures: Figures
) -> ThinWall | None:
    """The wall measured on this tooth, else the published cautious one; None where neither is there."""
    if canal.wall is not None:
        return ThinWall(
            thickness_mm=canal.wall.thickness_mm,
            at_mm=place.end_mm - canal.wall.from_end_mm,
            measured=True,
            source="measured on this tooth",
            know="read",
            rows=(),
        )
    if setting is Setting.BLOCK:
        return None
    return walls.published(tooth_iso, canal.name, place.orifice_mm, figures)


def wall_above(wall: ThinWall | None, place: CanalFrame) -> WallAbove | None:
    """The wall with the canal's width there; None where one of the two is not known."""
    canal_mm = None if wall is None else natural_mm(place, wall.at_mm)
    if wall is None or canal_mm is None:
        return None
    return WallAbove(wall=wall, canal_mm=canal_mm, from_end_mm=round(place.end_mm - wall.at_mm, 2))


def wall_left(above: WallAbove | None, prepared: Line, place: CanalFrame) -> WallLeft | None:
    if above is None:
        return None
    prepared_mm = width_at(prepared, above.wall.at_mm) or 0.0
    return walls.left(above.wall, above.canal_mm, prepared_mm, place.end_mm)


def with_options(
    advised: SizeRange, asked: SizeRequest, bend: Bend | None, place: CanalFrame, figures: Figures
) -> SizeRange:
    """The range with every size from one below it to two above, and what each would mean."""
    series = sizes()
    # In a wide canal the most lies below the least.
    first = max(0, series.index(min(advised.least, advised.most)) - 1)
    last = size_above(max(advised.least, advised.most), 2) or series[-1]
    end = apical_size.end_of(asked, figures)

    def option(size: int) -> SizeOption:
        share = None
        if end is not None:
            share = round(ovals.reached_share(end.narrow_mm, end.wide_mm, size * HUNDREDTH_MM), 3)
        left = None if asked.wall is None else asked.wall.worst_mm(size, asked.taper)
        bent = None
        # An instrument that ends above the bend is not bent by it.
        if bend is not None and place.end_mm > bend.at_mm:
            thick = (size + asked.taper * (place.end_mm - bend.at_mm)) * HUNDREDTH_MM
            bent = strain_pct(thick, bend.radius_mm)
        inside = advised.least <= size <= advised.most
        return SizeOption(size=size, inside=inside, wall_share=share, wall_left_mm=left, strain_pct=bent)

    return replace(advised, options=tuple(option(size) for size in series[first:] if size <= last))


def natural_mm(place: CanalFrame, at_mm: float) -> float | None:
    """Narrow width of the canal at a depth before anything has been in it; None where it is not known."""
    if place.initial_shape is None:
        return None
    return width_at(narrow_line(place.initial_shape), at_mm)


def width_at(line: Line, at_mm: float) -> float | None:
    """Width by straight line between the points around a depth, the wider side at a step; None outside the line."""
    widths = [
        wide_a if b == a else wide_a + (wide_b - wide_a) * (at_mm - a) / (b - a)
        for (a, wide_a), (b, wide_b) in pairwise(line)
        if a <= at_mm <= b
    ]
    return max(widths, default=None)
