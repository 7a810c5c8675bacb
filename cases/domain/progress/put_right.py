"""Which images count in which canal, once some were struck or put to another canal.

What is put right holds whenever the image was told of: a phone may tell of it after it was struck. The phone says the
same; both hold to `tests/shared/lacking.json`.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import EventPayload, StruckPayload


@dataclass(slots=True)
class PutRight:
    """Everything that was put right with the images of a case."""

    struck: set[str] = field(default_factory=set)
    moved_away: set[tuple[str, str]] = field(default_factory=set)
    """Image and canal it does not belong to."""

    def counts(self, image_id: str | None, canal: str) -> bool:
        """Whether the image counts in the canal, where it was told of there."""
        return bool(image_id) and image_id not in self.struck and (image_id, canal) not in self.moved_away


def put_right(events: Iterable[CourseEvent]) -> PutRight:
    images = PutRight()
    for event in events:
        image = of_an_image(event.payload)
        if image is None:
            continue
        if image.moved_to is None:
            images.struck.add(image.struck)
        else:
            images.moved_away.add((image.struck, event.canal))
            images.moved_away.discard((image.struck, image.moved_to))
    return images


def of_an_image(payload: EventPayload) -> StruckPayload | None:
    """What says that an image was struck or put to another canal; None of anything else."""
    return payload if isinstance(payload, StruckPayload) and payload.what == "image" else None
