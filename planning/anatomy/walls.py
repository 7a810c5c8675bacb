"""Dentine left towards the thinnest wall: the danger zone of mesial roots of lower molars, and roots like them."""

from __future__ import annotations

from dataclasses import dataclass

from planning.anatomy import like
from planning.foundation.quantities import hundredth_below
from planning.foundation.tables import Figures, row_for

DIGITS = 2  # a hundredth of a millimetre: as finely as walls are published


@dataclass(frozen=True, slots=True, kw_only=True)
class WallLeft:
    """The thinnest wall of a canal before and after preparation."""

    from_end_mm: float
    """Level at which it is judged."""
    before_mm: float
    canal_mm: float
    prepared_mm: float
    centred_mm: float
    """What is left if the preparation stays centred."""
    worst_mm: float
    """What is left if it drifts to this side all the way."""
    measured: bool
    """Measured on this tooth; otherwise the published cautious value."""
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ThinWall:
    """The wall as it was, and where it is judged."""

    thickness_mm: float
    at_mm: float
    """From the reference point."""
    measured: bool
    source: str
    know: str
    rows: tuple[str, ...]
    """Keys of the rows used."""


def published(tooth_iso: str, canal: str, orifice_mm: float, figures: Figures) -> ThinWall | None:
    """The cautious value for a canal that nobody measured; None where its walls are not known to be thin."""
    row = row_for("walls", like(tooth_iso), canal)
    if row is None:
        return None
    thickness, below = (figures.cell("walls", row, column) for column in ("wall_mm", "below_orifice_mm"))
    return ThinWall(
        thickness_mm=thickness.value,
        at_mm=orifice_mm + below.value,
        measured=False,
        source=thickness.source,
        know=thickness.know,
        rows=(thickness.key, below.key),
    )


def left(wall: ThinWall, canal_mm: float, prepared_mm: float, end_mm: float) -> WallLeft:
    """What is left of the wall where the canal was `canal_mm` wide and is `prepared_mm` wide now.

    Centred, a wall gives half of what the canal grows by; at worst all of it, as twice the half does.
    """
    grown = max(0.0, prepared_mm - canal_mm)
    return WallLeft(
        from_end_mm=round(end_mm - wall.at_mm, 2),
        before_mm=round(wall.thickness_mm, DIGITS),
        canal_mm=round(canal_mm, DIGITS),
        prepared_mm=round(max(prepared_mm, canal_mm), DIGITS),
        centred_mm=hundredth_below(wall.thickness_mm - grown / 2),
        worst_mm=hundredth_below(wall.thickness_mm - grown),
        measured=wall.measured,
        source=wall.source,
        know=wall.know,
    )
