"""Who works a case beside its student: a supervisor who said so, named until it ends.

It ends when the supervisor gives the case back, when another supervisor takes over, and when anybody closes the visit.
A take-over that outlived its visit would stand between the student and the next patient.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from cases.domain.events.kinds import EventKind


@dataclass(slots=True)
class TakenOver:
    """Followed event by event."""

    by: str = ""
    """Id of the supervisor who works the case now; empty while its student works alone."""
    ended: set[str] = field(default_factory=set)
    """Ids of supervisors who took over once and no longer work the case."""

    def happened(self, kind: EventKind, actor: str) -> bool:
        """Follows one event, and says whether it changed anything."""
        match kind:
            case EventKind.TAKE_OVER:
                return self._take(actor)
            case EventKind.GIVE_BACK:
                return self._end(actor)
            case EventKind.CLOSE:
                return self._end(self.by)
            case _:
                return False

    def _take(self, actor: str) -> bool:
        if self.by == actor:
            return False
        self._end(self.by)
        self.by = actor
        self.ended.discard(actor)
        return True

    def _end(self, actor: str) -> bool:
        if not actor or self.by != actor:
            return False
        self.ended.add(actor)
        self.by = ""
        return True
