"""One event, with what the fold needs to know of it."""

from __future__ import annotations

from dataclasses import dataclass

from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.events.payloads import EventPayload


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseEvent:
    """One event, with what the fold needs to know of it."""

    id: str
    actor: str
    plan: str
    """Hash of the plan on the screen when it was recorded."""
    payload: EventPayload
    canal: str = ""
    """Empty where it concerns the whole tooth."""
    node: str = ""
    not_checked: NotChecked | None = None
    """What of it the server could not check."""

    @property
    def kind(self) -> EventKind:
        return EventKind(self.payload.kind)
