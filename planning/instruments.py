"""Root-canal instruments: ISO 3630-1 sizes, colours and the diameter anywhere along the cutting part.

A size is the tip in hundredths of a millimetre, a taper hundredths of a millimetre per millimetre
(ISO 3630-1), both whole numbers: 25/.04 is size 25, taper 4.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Motion(StrEnum):
    HAND = "hand"
    CONTINUOUS = "continuous"
    RECIPROCATING = "reciprocating"


class Use(StrEnum):
    """What the programme keeps the instrument for."""

    HAND = "hand"
    """Exploring, glide path, recapitulating, gauging, step-back."""
    CORONAL = "coronal"
    """Opening the coronal third, to its own stop."""
    SHAPING = "shaping"
    """The series of one taper that is taken to length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Instrument:
    """One instrument of a kit, as its maker and the programme describe it."""

    size: int
    """Tip in hundredths of a millimetre (ISO 3630-1)."""
    taper: int
    """Hundredths of a millimetre per millimetre: 4 is written .04."""
    motion: Motion
    use: Use
    length_mm: float
    """Operative length from tip to handle."""
    cutting_part_mm: float
    largest_flute_mm: float | None = None
    """Largest diameter of the flutes; needed for steep tapers, whose flutes end before the cutting part does."""
    speed_rpm: int | None = None
    torque_ncm: float | None = None

    @property
    def name(self) -> str:
        """The trade's designation: 25/.04."""
        return f"{self.size:02d}/.{self.taper:02d}"

    @property
    def key(self) -> str:
        """Distinguishes instruments of one size and taper by motion: 25/.04 continuous."""
        return f"{self.name} {self.motion}"
