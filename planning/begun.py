"""How far the work on a canal had come when its plan was made anew."""

from __future__ import annotations

from dataclasses import dataclass

from planning.graph import Behind


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """One insertion of an instrument that goes into the canal to work there."""

    step: str
    """In the order of work it was made by."""
    phase: str
    instrument: str
    """Key in the kit."""
    depth_mm: float
    """Where the tip stopped, from the reference point."""
    stop_mm: float | None = None
    """The stop it was worked to."""
    led: bool = False
    """Led in to resistance: then its depth tells how wide the canal is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Begun:
    """Where the work stands, in the order of work that was walked so far."""

    at: str
    """The step that is due."""
    phase: str
    """The phase of that step; where there is none any more, the last that was worked."""
    over: bool = False
    """That phase is over: the next one is due."""
    behind: Behind
    length_mm: float | None
    """The working length that was worked by and signed off; another one is signed off before the work goes on."""
    made: tuple[Made, ...] = ()
    """All that has been in the canal, in order."""
