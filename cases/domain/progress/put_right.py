"""Which images count in which canal, once some were struck or put to another canal.

What is put right holds whenever the image was told of: a phone may tell of it after it was struck. The phone says the
same; both hold to `tests/shared/lacking.json`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from cases.domain.events.event import CourseEvent
from cases.domain.events.kinds import EventKind


@dataclass(slots=True)
class PutRight:
    """Everything that was put right with the images of a case."""

    struck: set[str] = field(default_factory=set)
    moved_away: set[tuple[str, str]] = field(default_factory=set)
    """Image and canal it does not belong to."""

    def counts(self, image_id: object, canal: str) -> bool:
        """Whether the image counts in the canal, where it was told of there."""
        return bool(image_id) and image_id not in self.struck and (image_id, canal) not in self.moved_away


def put_right(events: Iterable[CourseEvent]) -> PutRight:
    found = PutRight()
    for event in events:
        if not concerns_image(event):
            continue
        image_id, to = str(event.body["struck"]), event.body.get("moved_to")
        if to is None:
            found.struck.add(image_id)
        else:
            found.moved_away.add((image_id, event.canal))
            found.moved_away.discard((image_id, to))
    return found


def concerns_image(event: CourseEvent) -> bool:
    """Whether it says that an image was struck or put to another canal."""
    return event.kind is EventKind.STRUCK and event.body.get("what") == "image"
