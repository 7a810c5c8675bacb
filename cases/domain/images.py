"""Words of images: what they show, where they stand, what a file said of its scale."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

Pair = tuple[float, float]


class ImageState(StrEnum):
    AWAITED = "awaited"
    """Told of, and not here yet, or only in part."""
    STORED = "stored"
    REFUSED = "refused"
    """Could not be kept; the reason says why."""


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Spacing:
    """What a DICOM file said of its scale, as read: nothing is computed, nothing put right.

    Pairs are row spacing, then column spacing [mm]. A value of zero or below is kept as it was said.
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
