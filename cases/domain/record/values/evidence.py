"""Readings and images as the record has them: entered by services, counting, put right, or removed."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from cases.domain.images import RemovalReason
from cases.domain.record.values.timeline import RecordPerson
from cases.domain.struck import StruckWhy


@dataclass(frozen=True, slots=True, kw_only=True)
class Entered:
    """Something that another system did for a person: a service for a student, or a client for whoever let it."""

    service: str
    person: RecordPerson
    says: str
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class StruckReading:
    """A reading that was a mistake. It stays, and counts for nothing."""

    canal: str
    says: str
    """What was read."""
    taken_by: RecordPerson
    taken_at: datetime
    why: StruckWhy
    who: RecordPerson
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ImagePutRight:
    """One correction of an image: it was struck, or put to another canal. Earlier ones stay."""

    image_id: str
    purpose: str
    canal: str
    """Where it was; empty for the whole tooth."""
    moved_to: str | None
    """Where it counts instead, empty for the whole tooth; None where it was struck and counts for nothing."""
    taken_by: RecordPerson
    taken_at: datetime
    why: StruckWhy
    who: RecordPerson
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ImageRemoval:
    """An image was removed; nothing of its picture is left."""

    who: RecordPerson
    at: datetime
    reason: RemovalReason


@dataclass(frozen=True, slots=True, kw_only=True)
class ImageListed:
    position: int
    image_id: str
    purpose: str
    canal: str
    who: RecordPerson
    at: datetime
    counts: bool = True
    """False where it was struck, or put to another canal."""
    removed: ImageRemoval | None = None
