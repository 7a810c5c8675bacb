"""Which images count in which canal, once some were struck or put to another canal.

A correction holds even where the image is recorded after it: a phone may tell of an image late. The phone counts the
same way; both hold to `tests/shared/lacking.json`.
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
    """Pairs of an image and a canal that it does not belong to."""

    def counts(self, image_id: str | None, canal: str) -> bool:
        """Whether an image that was recorded in the canal counts there."""
        return bool(image_id) and image_id not in self.struck and (image_id, canal) not in self.moved_away


def put_right(events: Iterable[CourseEvent]) -> PutRight:
    """The corrections of images by these events, in their order."""
    images = PutRight()
    for event in events:
        image = of_an_image(event.payload)
        if image is None:
            continue
        if image.moved_to is None:
            images.struck.add(image.struck)
        else:
            images.moved_away.add((image.struck, event.canal))
            # Put back to a canal that it had been taken from, it counts there again.
            images.moved_away.discard((image.struck, image.moved_to))
    return images


def of_an_image(payload: EventPayload) -> StruckPayload | None:
    """The payload, where it says that an image was struck or put to another canal; None for any other."""
    return payload if isinstance(payload, StruckPayload) and payload.what == "image" else None
