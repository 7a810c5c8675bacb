"""What an image's file said of its scale."""

from __future__ import annotations

import json
from collections.abc import Mapping

from cases.domain import images
from cases.models.images import Image
from planning.foundation.encoding import Mode, decode
from planning.radiograph.values import Calibration, PixelSpacing, SpacingFacts


def spacing_facts(row: Image) -> SpacingFacts | None:
    """What the image's file said of its scale; None where it said nothing."""
    if not row.spacing_text:
        return None
    said = decode(images.Spacing, json.loads(row.spacing_text), Mode.KEPT)
    return SpacingFacts(
        in_patient=_spacing(said.pixel_spacing_mm),
        at_detector=_spacing(said.imager_pixel_spacing_mm),
        scanned=_spacing(said.nominal_scanned_pixel_spacing_mm),
        calibration=CALIBRATION.get(said.pixel_spacing_calibration_type or ""),
        magnification=said.estimated_magnification,
    )


CALIBRATION: Mapping[str, Calibration] = {"GEOMETRY": "geometry", "FIDUCIAL": "fiducial"}


def _spacing(pair: images.Pair | None) -> PixelSpacing | None:
    return None if pair is None else PixelSpacing(row_mm=pair[0], column_mm=pair[1])
