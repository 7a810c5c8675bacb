"""Markings of an image as they are shown, and what the image's own scale is worth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from cases.mapping.images import spacing_facts
from cases.mapping.kits import thresholds_of
from cases.mapping.markings import marks_of, measured_of
from cases.models import Image, Marking
from planning.foundation.errors import ScaleNotUsable
from planning.foundation.tables import Figures
from planning.radiograph import ImageMarks, Measured, scale_of
from planning.radiograph.values import Scale, ScaleState


@dataclass(frozen=True, slots=True)
class MarkingShown:
    row: Marking
    marks: ImageMarks
    measured: Measured
    readings: Sequence[str]
    """Canals whose length was taken from it."""


@dataclass(frozen=True, slots=True)
class MarkingsShown:
    scale: Scale
    """Of the file alone, before anything is marked on it."""
    markings: Sequence[MarkingShown]


def markings_of_image(image: Image) -> MarkingsShown:
    """Every marking of the image, in order."""
    rows = image.markings.select_related("made_by").prefetch_related("readings__canal").order_by("number")
    return MarkingsShown(scale=file_scale(image), markings=[marking_shown(row) for row in rows])


def marking_shown(row: Marking) -> MarkingShown:
    return MarkingShown(
        row=row,
        marks=marks_of(row),
        measured=measured_of(row),
        readings=[reading.canal.name for reading in row.readings.all()],
    )


def file_scale(image: Image) -> Scale:
    """The scale that the file alone gives; one that cannot be right is none, and says so."""
    figures = Figures(thresholds_of(image.case.programme_id))
    try:
        return scale_of(spacing_facts(image), None, figures["tapping.spread"], figures)
    except ScaleNotUsable as refusal:
        return Scale(
            state=ScaleState.UNCALIBRATED,
            row_mm=None,
            column_mm=None,
            row_per_column=1.0,
            spread_share=None,
            rests_on="refused",
            says=str(refusal),
            do="Mark something of known length on the image.",
        )
