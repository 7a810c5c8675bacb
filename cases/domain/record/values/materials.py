"""What was used: irrigants and instruments."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from cases.domain.record.values.timeline import RecordPerson


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalVolume:
    canal: str
    """Empty where the entry named none."""
    volume_ml: float


@dataclass(frozen=True, slots=True, kw_only=True)
class IrrigantUsed:
    """How much of one irrigant was used. What was recorded out of course counts too, what was taken back does not."""

    irrigant: str
    volume_ml: float
    canals: tuple[CanalVolume, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class InstrumentUsed:
    """What one instrument of the kit was used for in this case; one use is one canal."""

    key: str
    instrument: str
    """Size and taper."""
    canals: tuple[str, ...]
    """In the order in which it entered them; a canal stands twice where a new one of its kind entered it again."""
    discarded: int
    """How many of its kind were discarded."""
    uses: int
    """How often the one that is there now was used: in this case, and before it as the plan counted."""
    most_uses: int | None
    """How many uses the kit allows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Discarded:
    position: int
    instrument: str
    canal: str
    why: str
    who: RecordPerson
    at: datetime
