"""Who did what when: an entry of the record."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from cases.domain.access.roles import Role
from cases.domain.events.kinds import EventKind
from cases.domain.progress.out_of_course import OutOfCourse


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordPerson:
    """Somebody as the record names them."""

    id: str
    name: str
    role: Role | None
    """In the programme; none for somebody who is not in it any more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TimelineEntry:
    """One event, said plainly. What was taken back stays, marked."""

    position: int
    event_id: str
    at: datetime
    """When the server had it."""
    device_time: datetime
    """By the device's own clock, which may be wrong."""
    who: RecordPerson
    canal: str
    """Empty where it concerns the whole tooth."""
    kind: EventKind
    says: str
    version: int
    """Number of the plan that was on the screen."""
    out_of_course: OutOfCourse | None = None
    """Why it moved nothing."""
    out_of_course_says: str = ""
    undone: bool = False
    not_checked_says: str = ""
    """What of it could not be checked when it came in; empty where nothing."""
