"""Dentine left towards the thinnest wall."""

from __future__ import annotations

from dataclasses import dataclass


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
