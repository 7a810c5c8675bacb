"""Millimetres per pixel, and what they rest on: a ladder from an object of known length down to nothing.

DICOM PS3.3: Pixel Spacing (0028,0030) is meant in the patient, Imager Pixel Spacing (0018,1164) at the detector and
never corrected, Nominal Scanned Pixel Spacing (0018,2010) on a film that was scanned; Pixel Spacing Calibration Type
(0028,0A02); Estimated Radiographic Magnification Factor (0018,1114). Rows come first in all of them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np

from planning.foundation.errors import Pointer, ScaleNotUsable
from planning.foundation.tables import Figures
from planning.radiograph import line, spread
from planning.radiograph.touch import Touch, touch_of
from planning.radiograph.values import KnownObject, PixelSpacing, Scale, ScaleState, SpacingFacts

DIGITS = 6  # a nanometre a pixel: finer than any detector
_SAME: Final = 1e-3  # share by which two spacings of one file may differ and be the same: decimal strings are rounded
_MARK = "Mark something of known length on the image: an instrument at its stop, a ruler, a ball."


def scale_of(facts: SpacingFacts | None, known: KnownObject | None, tapped_px: float, figures: Figures) -> Scale:
    """The best scale there is. Raises ScaleNotUsable for one that no detector and no film has."""
    facts = facts or SpacingFacts()
    # A known object goes before whatever the file says: it was measured on this very image.
    if known is not None:
        return _by_object(known, _aspect(facts, figures), tapped_px, figures)
    for name in ("in_patient", "at_detector", "scanned"):
        if (spacing := getattr(facts, name)) is not None:
            _refuse_implausible(spacing, figures, ("facts", name))
    rung = _rung(facts, figures)
    return Scale(
        state=rung.state,
        row_mm=None if rung.spacing is None else round(rung.spacing.row_mm, DIGITS),
        column_mm=None if rung.spacing is None else round(rung.spacing.column_mm, DIGITS),
        # Known even of a spacing that cannot be relied on, so that angles are right without a scale.
        row_per_column=_aspect(facts, figures),
        spread_share=None if rung.figure is None else figures[rung.figure],
        rests_on=rung.rests_on,
        says=rung.says,
        do="" if rung.state is ScaleState.CALIBRATED else _MARK,
    )


@dataclass(frozen=True, slots=True)
class _Rung:
    state: ScaleState
    rests_on: str
    says: str
    spacing: PixelSpacing | None = None
    figure: str | None = None
    """The row that holds its spread."""


def _rung(facts: SpacingFacts, figures: Figures) -> _Rung:
    """The best scale that the file alone gives: the standard's attributes, the most reliable first."""
    # A film that was scanned stands for a detector: its spacing is not corrected for the magnification either.
    patient, detector = facts.in_patient, facts.at_detector or facts.scanned
    if patient is not None and facts.calibration == "fiducial":
        says = "Calibrated on an object of known size: right at that object's depth, near the middle of the beam."
        return _Rung(ScaleState.CALIBRATED, "fiducial", says, patient, "scale.fiducial_share")
    if patient is not None and facts.calibration == "geometry":
        says = "The file corrects for a magnification that was assumed or known, at no stated depth."
        return _Rung(ScaleState.ESTIMATED, "geometry", says, patient, "scale.geometry_share")
    if detector is not None and facts.magnification is not None:
        says = f"Detector spacing, taken down by the file's estimated magnification of {facts.magnification:g}."
        smaller = _shrunk(detector, facts.magnification, figures)
        return _Rung(ScaleState.ESTIMATED, "magnification", says, smaller, "scale.geometry_share")
    if patient is not None and detector is not None and not _alike(patient, detector):
        says = "The file's spacing differs from its detector's and does not say why: it cannot be relied on."
        return _Rung(ScaleState.UNCALIBRATED, "unknown_correction", says)
    if detector is not None:
        what = "detector" if facts.at_detector else "film"
        says = f"Spacing at the {what}, not corrected: lengths come out too long by the magnification."
        return _Rung(ScaleState.AT_DETECTOR, what, says, detector, "scale.detector_share")
    if patient is not None:
        says = "The file has a spacing and does not say whether it was corrected: it cannot be relied on."
        return _Rung(ScaleState.UNCALIBRATED, "unknown_spacing", says)
    return _Rung(ScaleState.UNCALIBRATED, "nothing", "The image has no scale: only ratios and angles can be had.")


def _by_object(known: KnownObject, row_per_column: float, tapped_px: float, figures: Figures) -> Scale:
    least, most = figures["scale.object_least"], figures["scale.object_most"]
    if not least <= known.length_mm <= most:
        reason = f"an object of {known.length_mm:g} mm cannot be: {least:g} to {most:g} mm. Type its length again."
        raise ScaleNotUsable(reason=reason, at=("known", "length_mm"))
    _refuse_marks(known)
    columns, off = _in_columns(known, touch_of(tapped_px, row_per_column, figures))
    if columns * figures["scale.object_off_share"] <= off:
        reason = "its marks lie too close together to measure by. Zoom in, and mark both ends again."
        raise ScaleNotUsable(reason=reason, at=("known", "points"))
    column_mm = known.length_mm / columns
    spacing = PixelSpacing(row_mm=column_mm * row_per_column, column_mm=column_mm)
    _refuse_implausible(spacing, figures, ("known", "length_mm"))
    spread = math.hypot(off / columns, figures[f"scale.{known.what}_spread"] / known.length_mm)
    return Scale(
        state=ScaleState.CALIBRATED,
        row_mm=round(spacing.row_mm, DIGITS),
        column_mm=round(spacing.column_mm, DIGITS),
        row_per_column=row_per_column,
        spread_share=spread,
        rests_on=known.what,
        says=f"Marked: {known.what}, {known.length_mm:g} mm. Right at its depth in the beam.",
        do="",
    )


def _in_columns(known: KnownObject, touch: Touch) -> tuple[float, float]:
    """How long the object is on the image, in widths of a pixel and less what slips add, and its standard deviation."""
    unit = np.array([1.0, touch.row_per_column])
    marks = np.array([(point.x_px, point.y_px) for point in known.points]) * unit
    off = spread.by_slips(line.length, marks, touch.slips(known.points, unit))
    return line.length(marks) - off.more, off.sd


def _refuse_marks(known: KnownObject) -> None:
    apart = [math.hypot(b.x_px - a.x_px, b.y_px - a.y_px) for a, b in pairwise(known.points)]
    if not apart or min(apart) < 1:
        reason = "it needs a mark at both ends, no two on one pixel."
        raise ScaleNotUsable(reason=reason, at=("known", "points"))


def _aspect(facts: SpacingFacts, figures: Figures) -> float:
    """How much taller than wide a pixel is, by the first spacing that can be right; 1 where there is none."""
    for spacing in (facts.in_patient, facts.at_detector, facts.scanned):
        if spacing is not None and not why_not(spacing, figures):
            return spacing.row_mm / spacing.column_mm
    return 1.0


def _alike(first: PixelSpacing, second: PixelSpacing) -> bool:
    pairs = ((first.row_mm, second.row_mm), (first.column_mm, second.column_mm))
    return all(math.isclose(a, b, rel_tol=_SAME) for a, b in pairs)


def _shrunk(spacing: PixelSpacing, magnification: float, figures: Figures) -> PixelSpacing:
    most = figures["scale.magnification_most"]
    if not 1 <= magnification <= most:
        reason = f"a magnification of {magnification:g} cannot be: 1 to {most:g}. {_MARK}"
        raise ScaleNotUsable(reason=reason, at=("facts", "magnification"))
    return PixelSpacing(row_mm=spacing.row_mm / magnification, column_mm=spacing.column_mm / magnification)


def _refuse_implausible(spacing: PixelSpacing, figures: Figures, at: Pointer) -> None:
    if why := why_not(spacing, figures):
        raise ScaleNotUsable(reason=f"{why} {_MARK}", at=at)


def why_not(spacing: PixelSpacing, figures: Figures) -> str:
    """Why no detector and no film has such pixels; empty for pixels that can be."""
    least, most, aspect = figures["scale.least"], figures["scale.most"], figures["scale.aspect_most"]
    for value in (spacing.row_mm, spacing.column_mm):
        if not least <= value <= most:
            return f"{value:g} mm a pixel cannot be right: {least:g} to {most:g} mm can."
    if not 1 / aspect <= spacing.row_mm / spacing.column_mm <= aspect:
        return f"pixels of {spacing.row_mm:g} by {spacing.column_mm:g} mm cannot be right."
    return ""
