"""When the work went on and when it stood still: visits and halts."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from cases.domain.record.values.timeline import RecordPerson


@dataclass(frozen=True, slots=True, kw_only=True)
class HaltEnd:
    position: int
    who: RecordPerson
    at: datetime
    reason: str


class HaltKind(StrEnum):
    PAUSE = "pause"
    """Work on one canal was paused."""
    PAST_STOP = "past_stop"
    """An instrument went past its stop: its canal stands still."""
    EMERGENCY = "emergency"
    """The whole tooth stands still."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HaltRecord:
    """Why work stood still, and what let it go on."""

    position: int
    kind: HaltKind
    canal: str
    says: str
    cause: str
    """For an instrument past its stop: the answer to why."""
    who: RecordPerson
    at: datetime
    ended: HaltEnd | None
    review_by: datetime | None = None
    """After an emergency the patient has to be seen again by this time; None where no patient has to."""
    seen_again: datetime | None = None
    """When the next visit was opened."""


@dataclass(frozen=True, slots=True, kw_only=True)
class VisitRecord:
    number: int
    opened_at: datetime
    opened_by: RecordPerson
    on_site: tuple[RecordPerson, ...]
    """Licensed clinicians who were named as in the room."""
    closed_at: datetime | None
    closed_by: RecordPerson | None
    access_sealed: bool | None
    note: str
