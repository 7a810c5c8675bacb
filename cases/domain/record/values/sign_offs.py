"""What was asked of supervisors, and what they answered."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from cases.domain.plans.lifecycle import Decision
from cases.domain.record.values.timeline import RecordPerson


@dataclass(frozen=True, slots=True, kw_only=True)
class SignOffRecord:
    """A supervisor's sign-off at a hold point."""

    position: int
    canal: str
    hold_point: str
    said: Decision
    despite_missing: bool
    """Approved although what the hold point asks for was not there."""
    on_site: bool
    """Given on the student's own phone, by a code of the supervisor's."""
    reason: str
    who: RecordPerson
    at: datetime
    in_course: bool
    image_gone: bool
    """An image that it rested on was struck since, or put to another canal."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskCounts:
    """How often a supervisor and an image were asked for, and how often the plan in force expects it: None where it was
    not counted."""

    sign_offs: int
    """Decisions on plans, and sign-offs at hold points; those given for several canals at once count once."""
    exposures: int
    """Images, also on film or kept elsewhere; one that shows several canals counts once."""
    planned_sign_offs: int | None
    planned_exposures: int | None
