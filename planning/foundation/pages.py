"""What every list has that is answered: one envelope, so that each can be read in pages one day."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """Part of a list, in its order; the rows stand under `results`."""

    next: str | None = None
    """Address of the next page; null: this is the last."""
    previous: str | None = None
    """Address of the page before; null: this is the first."""
