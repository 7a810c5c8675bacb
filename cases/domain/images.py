"""Words of images: where they stand, whether a name may be in them, what a file said of its scale."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal, Self
from uuid import UUID, uuid5

BYTES_PER_MB = 1_000_000
Pair = tuple[float, float]


class ImageState(StrEnum):
    AWAITED = "awaited"
    """Told of, and not here yet, or only in part."""
    STORED = "stored"
    REFUSED = "refused"
    """Could not be kept; the reason says why."""
    REMOVED = "removed"
    """Was here, or on its way, and somebody removed it: its files and the parts of its upload are deleted."""


class RemovalReason(StrEnum):
    """Why an image was removed. A closed set: with a free text somebody would write down the name that has to go."""

    NAMES_SOMEBODY = "names_somebody"
    NOT_OF_THIS_CASE = "not_of_this_case"
    NOT_USABLE = "not_usable"

    @property
    def says(self) -> str:
        return _WHY_REMOVED[self]


_WHY_REMOVED = {
    RemovalReason.NAMES_SOMEBODY: "a name or a number of a person is written in it",
    RemovalReason.NOT_OF_THIS_CASE: "it does not belong to this case",
    RemovalReason.NOT_USABLE: "nothing can be told from it",
}


class ImageKind(StrEnum):
    """What was sent, by its content."""

    JPEG = "jpeg"
    PNG = "png"
    WEBP = "webp"
    TIFF = "tiff"
    HEIC = "heic"
    DICOM = "dicom"


class BurntInText(StrEnum):
    """Whether words may be part of the picture itself: DICOM Burned In Annotation (0028,0301)."""

    STATED = "stated"
    DENIED = "denied"
    UNKNOWN = "unknown"
    """The file does not say: a person has to look."""


class NameCheck(StrEnum):
    """Whether a person has to look for a name or a number of somebody written in the picture."""

    NOT_ASKED = "not_asked"
    """The file denies it, or there is no picture."""
    OPEN = "open"
    NOBODY_NAMED = "nobody_named"
    """A person looked and found none."""


def name_check(*, state: ImageState, burnt_in_text: str, checked: bool) -> NameCheck:
    """Whether somebody has to look for a name. That is asked of every kind of file: a photo of a screen shows names
    too.
    """
    if state != ImageState.STORED:
        return NameCheck.NOT_ASKED
    if checked:
        return NameCheck.NOBODY_NAMED
    return NameCheck.NOT_ASKED if burnt_in_text == BurntInText.DENIED else NameCheck.OPEN


def study_uid(case_id: UUID) -> str:
    """The DICOM study of a case: all its images are of one. After PS3.5, B.2, which derives a UID from a UUID; the
    case's own cannot be told from it.
    """
    return _uid(case_id, "study")


def _uid(id_: UUID, of: str) -> str:
    return f"2.25.{uuid5(id_, of).int}"


@dataclass(frozen=True, slots=True, kw_only=True)
class DataSetUids:
    """Under which UIDs a data set is kept: each image of a case is a series of its own."""

    study: str
    series: str
    instance: str

    @classmethod
    def of(cls, *, case_id: UUID, image_id: UUID) -> Self:
        """The same whenever they are asked for; neither id can be told from them."""
        return cls(study=study_uid(case_id), series=_uid(image_id, "series"), instance=_uid(image_id, "instance"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Spacing:
    """What a DICOM file said of its scale, as read: nothing is computed, nothing put right.

    Pairs are row spacing, then column spacing [mm]. A value of zero or below was not said.
    """

    imager_pixel_spacing_mm: Pair | None = None
    """(0018,1164): at the front of the detector, never corrected for magnification."""
    pixel_spacing_mm: Pair | None = None
    """(0028,0030)"""
    pixel_spacing_calibration_type: Literal["GEOMETRY", "FIDUCIAL", "other"] | None = None
    """(0028,0A02)"""
    estimated_magnification: float | None = None
    """(0018,1114): distance source to detector by distance source to patient."""
    source_to_detector_mm: float | None = None
    """(0018,1110)"""
    source_to_patient_mm: float | None = None
    """(0018,1111)"""
    nominal_scanned_pixel_spacing_mm: Pair | None = None
    """(0018,2010): of a scanned film."""
