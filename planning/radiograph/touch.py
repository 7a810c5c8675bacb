"""How far off a mark is: that follows from how large the image was shown when the finger set it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from planning.foundation.tables import Figures
from planning.radiograph.line import Marks
from planning.radiograph.values import Pixel


@dataclass(frozen=True, slots=True, kw_only=True)
class Touch:
    """What tells how far marks are off on one image."""

    assumed_px: float
    """One standard deviation along each axis of a mark that does not tell its zoom."""
    screen_px: float
    """One standard deviation of a finger on the screen."""
    pixel_px: float
    """One standard deviation of a place within a pixel: however large it is shown, a pixel is a square."""
    row_per_column: float

    def slip_px(self, mark: Pixel) -> tuple[float, float]:
        """How far the mark is off: one standard deviation across and down, in pixels. The screen shows a tall pixel
        tall, so that a finger is off by a smaller part of it.
        """
        zoom = mark.screen_px_per_px
        if zoom is None:
            return self.assumed_px, self.assumed_px
        by_finger = self.screen_px / zoom
        return math.hypot(by_finger, self.pixel_px), math.hypot(by_finger / self.row_per_column, self.pixel_px)

    def slips(self, marks: Sequence[Pixel], unit: Marks) -> Marks:
        """The slips of all these marks, in the unit in which `unit` has the sides of a pixel. Shape (n, 2)."""
        slips: Marks = np.array([self.slip_px(mark) for mark in marks]) * unit
        return slips


def touch_of(tapped_px: float, row_per_column: float, figures: Figures) -> Touch:
    return Touch(
        assumed_px=tapped_px,
        screen_px=figures["tapping.screen_spread"],
        pixel_px=figures["tapping.pixel_spread"],
        row_per_column=row_per_column,
    )


def says_of(marks: Sequence[Pixel], assumed_px: float) -> str:
    """What the intervals of these marks rest on, for people."""
    silent = sum(mark.screen_px_per_px is None for mark in marks)
    if not silent:
        return "How far a mark is off follows from how large the image was shown at its touch."
    which = "No mark tells" if silent == len(marks) else f"{silent} of {len(marks)} marks do not tell"
    return (
        f"{which} how large the image was shown at its touch: {assumed_px:g} px is assumed, too little for marks that "
        "were set on a whole photo."
    )
