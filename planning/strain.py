"""Bending strain of instruments in a curve: a class for ranking, never a prediction of life."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class Strain:
    """One instrument bent at the canal's curve."""

    instrument: str
    diameter_mm: float
    """Where the bend is when the tip stands at its stop."""
    strain_pct: float
    strain_class: Literal["low", "medium", "high"]
