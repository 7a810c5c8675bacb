"""Bending strain of instruments in a curve: a class for ranking, never a prediction of life.

How long an instrument lasts differs between set-ups by more than a hundred times (Huelsmann, Donnermeyer & Schaefer
2019); what bends more is worse off in all of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, diameter_mm

PER_CENT = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Strain:
    """One instrument bent at the canal's curve."""

    instrument: str
    diameter_mm: float
    """Where the bend is when the tip stands at its stop."""
    strain_pct: float
    strain_class: Literal["low", "medium", "high"]
    radius_mm: float | None = None
    """Of the curve that it is bent in; None in older plans."""
    taken: bool = False
    """Radius or place of the curve were not charted and are taken from the data tables."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bend:
    """Where a canal curves, from the reference point, and how sharply."""

    at_mm: float
    radius_mm: float
    taken: bool = False
    """Radius or place are not this canal's own."""


def strain(instrument: Instrument, tip_mm: float, bend: Bend, figures: Figures) -> Strain | None:
    """How far the instrument's surface is stretched with its tip at `tip_mm`; None where it does not get to the bend.

    Beam theory: diameter / (2 x radius), the radius to the middle of the instrument.
    """
    from_tip = tip_mm - bend.at_mm
    if from_tip <= 0:
        return None
    thick = diameter_mm(instrument, from_tip)
    stretched = strain_pct(thick, bend.radius_mm)
    return Strain(
        instrument=instrument.name,
        diameter_mm=round(thick, 3),
        strain_pct=stretched,
        strain_class=_class(stretched, figures),
        radius_mm=bend.radius_mm,
        taken=bend.taken,
    )


def strain_pct(thick_mm: float, radius_mm: float) -> float:
    """Strain [%] of an instrument that is so thick in a curve of that radius, to a hundredth of a per cent."""
    return round(PER_CENT * thick_mm / (2 * radius_mm), 2)


def _class(stretched: float, figures: Figures) -> Literal["low", "medium", "high"]:
    """The class of a strain, by bands of this program's own: a teaching aid."""
    if stretched < figures["strain.medium_pct"]:
        return "low"
    return "medium" if stretched <= figures["strain.high_pct"] else "high"
