"""One event, as what folds it needs it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from cases.domain.events.kinds import EventKind, NotChecked


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseEvent:
    """One event, as the course needs it."""

    id: str
    kind: EventKind
    actor: str
    plan: str
    """Hash of the plan on the screen when it was recorded."""
    canal: str = ""
    """Empty where it concerns the whole tooth."""
    node: str = ""
    body: Mapping[str, Any] = field(default_factory=dict)
    not_checked: NotChecked | None = None
    """What of it the server could not check."""
