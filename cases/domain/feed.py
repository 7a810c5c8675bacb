"""What other systems are told of a programme's changes, and how far somebody has read them."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Self


class FeedKind(StrEnum):
    CASE_OPENED = "case_opened"
    CASE_CHANGED = "case_changed"
    """Its facts, its supervisor, or the patient's alias."""
    CANAL_ADDED = "canal_added"
    CANAL_CHANGED = "canal_changed"
    CANAL_REMOVED = "canal_removed"
    ROOT_CHANGED = "root_changed"
    READING_TAKEN = "reading_taken"
    """A length, or where the canal joins another."""
    READING_STRUCK = "reading_struck"
    BEND_COMBINED = "bend_combined"
    IMAGE_ANNOUNCED = "image_announced"
    IMAGE_STORED = "image_stored"
    IMAGE_REFUSED = "image_refused"
    IMAGE_CHECKED = "image_checked"
    """Somebody looked, and it names nobody."""
    IMAGE_MARKED = "image_marked"
    IMAGE_STRUCK = "image_struck"
    IMAGE_MOVED = "image_moved"
    """To the canal it is of."""
    IMAGE_REMOVED = "image_removed"
    VERSION_MADE = "version_made"
    VERSION_SUBMITTED = "version_submitted"
    VERSION_WITHDRAWN = "version_withdrawn"
    """The student takes the asking back."""
    VERSION_APPROVED = "version_approved"
    VERSION_RETURNED = "version_returned"
    VERSION_REVOKED = "version_revoked"
    """The approval was withdrawn."""
    VERSION_RELEASED = "version_released"
    """More of its canals may be worked."""
    VERSION_CARRIED_OVER = "version_carried_over"
    """The approval of the one before holds for it."""
    VERSION_SUPERSEDED = "version_superseded"
    VERSION_TAKEN_UP_AGAIN = "version_taken_up_again"
    """The same content was proposed once more."""
    OVERRIDE_GIVEN = "override_given"
    OVERRIDE_WITHDRAWN = "override_withdrawn"
    EVENT = "event"
    """Something was done at the chair; `event` says what."""
    PERSON_CHANGED = "person_changed"
    """Somebody joined or left the programme, or their name, role or group is another."""
    KIT_CHANGED = "kit_changed"
    TECHNIQUE_ADDED = "technique_added"
    FIGURES_CHANGED = "figures_changed"
    WIDTHS_CHANGED = "widths_changed"


class Resource(StrEnum):
    """What shows a change, and is read anew after it."""

    CASE = "case"
    CANAL = "canal"
    BENDS = "bends"
    IMAGE = "image"
    MARKINGS = "markings"
    VERSION = "version"
    OVERRIDES = "overrides"
    EVENTS = "events"
    PEOPLE = "people"
    KITS = "kits"
    TECHNIQUES = "techniques"
    FIGURES = "figures"
    WIDTHS = "widths"


_K, _R = FeedKind, Resource
READ_ANEW: Mapping[FeedKind, Resource] = {
    **dict.fromkeys((_K.CASE_OPENED, _K.CASE_CHANGED, _K.CANAL_REMOVED, _K.ROOT_CHANGED), _R.CASE),
    **dict.fromkeys((_K.CANAL_ADDED, _K.CANAL_CHANGED, _K.READING_TAKEN, _K.READING_STRUCK), _R.CANAL),
    _K.BEND_COMBINED: _R.BENDS,
    **dict.fromkeys((kind for kind in FeedKind if kind.startswith("image_")), _R.IMAGE),
    _K.IMAGE_MARKED: _R.MARKINGS,
    **dict.fromkeys((kind for kind in FeedKind if kind.startswith("version_")), _R.VERSION),
    **dict.fromkeys((_K.OVERRIDE_GIVEN, _K.OVERRIDE_WITHDRAWN), _R.OVERRIDES),
    _K.EVENT: _R.EVENTS,
    _K.PERSON_CHANGED: _R.PEOPLE,
    _K.KIT_CHANGED: _R.KITS,
    _K.TECHNIQUE_ADDED: _R.TECHNIQUES,
    _K.FIGURES_CHANGED: _R.FIGURES,
    _K.WIDTHS_CHANGED: _R.WIDTHS,
}
"""What is read anew after a change."""


_WRITTEN = re.compile(r"(0|[1-9][0-9]{0,17})(?:-([0-9a-f]{8}))?")


@dataclass(frozen=True, slots=True)
class Bookmark:
    """How far somebody has read: a position, and a stamp of the change that stands there.

    By the stamp a database that was restored and went on differently is told from the one that was read.
    """

    position: int
    stamp: str

    def __str__(self) -> str:
        return f"{self.position}-{self.stamp}" if self.position else "0"

    @classmethod
    def read(cls, text: str) -> Self | None:
        """The bookmark as it was written; None for what is none."""
        written = _WRITTEN.fullmatch(text)
        if written is None or (written[1] == "0") is not (written[2] is None):
            return None
        return cls(int(written[1]), written[2] or "")


STAMP_DIGITS = 8
START = Bookmark(0, "")
"""Before the first change."""
