"""Many canals as arrays, one canal a row, and the instrument that is in each.

Canals are two arrays of the shape (rows, corners): the depth of each corner, growing along the row, and the diameter
there. A row with fewer corners repeats its last one. A step is a ramp of a nanometre, so that every corner has just one
diameter.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Picked = NDArray[np.bool_] | NDArray[np.intp] | slice

STEP_MM = 1e-6  # ramp in place of a step
APART_MM = 1e-9  # corners closer together than this are one
STRAIGHT_MM2 = 1e-12  # rounding error of doubles over a canal's length
LEVEL = 1e-30  # in place of no difference between two slopes
HALVINGS = 14  # of at most thirty millimetres: to two thousandths of a millimetre


@dataclass(frozen=True, slots=True)
class Rows:
    """Many canals."""

    depth_mm: Floats
    wide_mm: Floats

    def picked(self, rows: Picked) -> Rows:
        return Rows(self.depth_mm[rows], self.wide_mm[rows])


@dataclass(frozen=True, slots=True)
class Tools:
    """One instrument, a little different in every row."""

    from_tip_mm: Floats
    """(corners,)"""
    wide_mm: Floats
    """(rows, corners)"""

    def picked(self, rows: Picked) -> Tools:
        return Tools(self.from_tip_mm, self.wide_mm[rows])


def walls_of(canals: Rows) -> Floats:
    """How the diameter grows with depth between neighbouring corners; 0 where there is nothing between."""
    along = np.diff(canals.depth_mm, axis=1)
    return np.diff(canals.wide_mm, axis=1) / np.where(along > 0, along, 1.0)


def wide_at(canals: Rows, depth_mm: Floats) -> Floats:
    """Diameters at depths inside the canal, (rows, depths)."""
    before = (canals.depth_mm[:, None, :] <= depth_mm[:, :, None]).sum(axis=2) - 1
    before = np.clip(before, 0, canals.depth_mm.shape[1] - 2)
    widens = np.take_along_axis(walls_of(canals), before, 1)
    along = depth_mm - np.take_along_axis(canals.depth_mm, before, 1)
    return np.asarray(np.take_along_axis(canals.wide_mm, before, 1) + widens * along, dtype=np.float64)
