"""The contact-depth estimate, slow and obvious: a fine grid, a sum over cells, every place on the way in tried.

Written from the definition alone: with its tip at a depth an instrument removes, per millimetre of advance, the
integral of diameter times its growth over the flanks that are wider than the canal, and with the face of its tip half
the difference of the squares. It rests where that first exceeds the limit.
"""

from __future__ import annotations

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

STEP_MM = 0.01
Points = list[tuple[float, float]]
Floats = NDArray[np.float64]


def rest_mm(instrument: Points, canal: Points, stop_mm: float, limit_mm2: float) -> float:
    """Depth where the load first exceeds the limit, to half a step; the stop where it never does."""
    tips, loads = loads_mm2(instrument, canal, stop_mm)
    over = np.flatnonzero(loads > limit_mm2)
    return float(tips[over[0]]) - STEP_MM / 2 if over.size else stop_mm


def loads_mm2(instrument: Points, canal: Points, stop_mm: float) -> tuple[Floats, Floats]:
    """Every depth tried on the way in, and the load there. Depths in `canal` grow towards the end."""
    orifice = canal[0][0]
    z = np.arange(round(instrument[-1][0] / STEP_MM) + 1) * STEP_MM
    d = np.interp(z, *_columns(instrument))
    tips = np.asarray(orifice + np.arange(round((stop_mm - orifice) / STEP_MM) + 1) * STEP_MM, dtype=np.float64)
    wall = np.interp(tips, *_columns(canal))
    # Above the orifice nothing touches. Row k holds the canal along the instrument whose tip is at tips[k].
    open_above = np.full(len(z), 1e6)
    along = sliding_window_view(np.concatenate([open_above, wall]), len(z))[1:, ::-1]
    wider = d - along
    before, after = wider[:, :-1], wider[:, 1:]
    share = np.clip(np.maximum(before, after) / np.maximum(np.abs(after - before), 1e-12), 0, 1)
    touching = np.where((before > 0) & (after > 0), 1.0, np.where((before > 0) | (after > 0), share, 0.0))
    flank: Floats = (touching * (d[:-1] + d[1:]) / 2 * np.diff(d)).sum(axis=1)
    face: Floats = np.maximum(d[0] ** 2 - wall**2, 0) / 2
    return tips, flank + face


def _columns(points: Points) -> tuple[list[float], list[float]]:
    return [x for x, _ in points], [d for _, d in points]
