"""The numbers of a DICOM file that its scale rests on, written as they are read. A number that cannot be right counts
as not said.
"""

from __future__ import annotations

from typing import Any

from pydicom.dataset import Dataset
from pydicom.valuerep import DS

from cases.domain.images import Pair, Spacing

PAIRS = {
    "imager_pixel_spacing_mm": "ImagerPixelSpacing",
    "pixel_spacing_mm": "PixelSpacing",
    "nominal_scanned_pixel_spacing_mm": "NominalScannedPixelSpacing",
}
NUMBERS = {
    "estimated_magnification": "EstimatedRadiographicMagnificationFactor",
    "source_to_detector_mm": "DistanceSourceToDetector",
    "source_to_patient_mm": "DistanceSourceToPatient",
}
CALIBRATION = "PixelSpacingCalibrationType"
# A kilometre: beyond it nothing was measured, and no number of ours is so large. Of nothing and less nothing was
# measured either: devices write zero where they know nothing. What is no number is in neither.
MOST = 1_000_000
KNOWN_CALIBRATION = ("GEOMETRY", "FIDUCIAL")


def spacing_of(sent: Dataset) -> Spacing | None:
    """What the file says; None where it says nothing of it."""
    read: dict[str, Any] = {name: _pair(sent.get(keyword)) for name, keyword in PAIRS.items()}
    read |= {name: _number(sent.get(keyword)) for name, keyword in NUMBERS.items()}
    if calibration := sent.get(CALIBRATION):
        # A free word could be somebody's name: only that there was one is kept.
        read["pixel_spacing_calibration_type"] = calibration if calibration in KNOWN_CALIBRATION else "other"
    spacing = Spacing(**read)
    return None if spacing == Spacing() else spacing


def write_spacing(kept: Dataset, spacing: Spacing | None) -> None:
    if spacing is None:
        return
    for name, keyword in PAIRS.items():
        if pair := getattr(spacing, name):
            setattr(kept, keyword, [DS(value, auto_format=True) for value in pair])
    for name, keyword in NUMBERS.items():
        if (value := getattr(spacing, name)) is not None:
            setattr(kept, keyword, DS(value, auto_format=True))
    if spacing.pixel_spacing_calibration_type in KNOWN_CALIBRATION:
        kept.PixelSpacingCalibrationType = spacing.pixel_spacing_calibration_type
        # Required beside the type (PS3.3, 10.7.1.3); the file's own words are not kept.
        kept.PixelSpacingCalibrationDescription = "As stated by the file that was sent"


def _pair(said: Any) -> Pair | None:
    if said is None or isinstance(said, str) or len(values := list(_many(said))) != 2:
        return None
    first, second = (_number(value) for value in values)
    return None if first is None or second is None else (first, second)


def _many(said: Any) -> Any:
    return said if hasattr(said, "__iter__") else [said]


def _number(said: Any) -> float | None:
    try:
        value = float(said)
    except (TypeError, ValueError):
        return None
    return value if 0 < value <= MOST else None
