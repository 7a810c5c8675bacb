"""The contact-depth estimate for many canals at once, one canal a row. Tests hold it against the exact one of
`planning.depth.contact_depth`.
"""

from __future__ import annotations

import numpy as np

from planning.depth import kernel
from planning.depth.rows import APART_MM, Floats, Rows, Tools

LOOKS = 64  # places tried where the load may fall with depth: a few hundredths of a millimetre apart


def rest_mm(tools: Tools, canals: Rows, stop_mm: Floats, limit_mm2: Floats) -> Floats:
    """Depth of the tip in every row, to two thousandths of a millimetre; to a few hundredths where the canal narrows
    upwards.

    There the load may fall with depth, and bisection could miss the first place where it passes the limit. So the rest
    is bracketed: a canal nowhere wider than it is above stops the instrument no deeper, one nowhere narrower than it is
    below stops it no higher. Between those two rests many places are tried.
    """
    no_wider = Rows(canals.depth_mm, np.minimum.accumulate(canals.wide_mm, axis=1))
    rests_mm = _halved(tools, no_wider, stop_mm, limit_mm2)
    # Above the first place from which the canal widens, both are the same canal, and what lies deeper adds no load.
    widens = np.diff(canals.wide_mm, axis=1) > 0
    narrow_mm = np.where(widens, canals.depth_mm[:, :-1], np.inf).min(axis=1)
    unsure = (rests_mm > narrow_mm) & (rests_mm < stop_mm)
    if unsure.any():
        some, here = tools.picked(unsure), canals.picked(unsure)
        limits = limit_mm2[unsure]
        no_narrower = Rows(here.depth_mm, np.maximum.accumulate(here.wide_mm[:, ::-1], axis=1)[:, ::-1])
        deepest = _halved(some, no_narrower, stop_mm[unsure], limits)
        rests_mm[unsure] = _looked(some, here, rests_mm[unsure], deepest, limits)
    return rests_mm


def face_mm(tools: Tools, canals: Rows, limit_mm2: Floats) -> Floats:
    """How deep [mm] the tip's face gets by itself in every row; infinite where nothing stops it."""
    narrowest = np.sqrt(np.maximum(tools.wide_mm[:, 0] ** 2 - 2 * limit_mm2, 0.0))
    too_narrow = canals.wide_mm < narrowest[:, None]
    first = too_narrow.argmax(axis=1)
    rows, before = np.arange(len(first)), np.maximum(first - 1, 0)
    above, below = canals.wide_mm[rows, before], canals.wide_mm[rows, first]
    share = (above - narrowest) / np.where(above > below, above - below, 1.0)
    along = canals.depth_mm[rows, first] - canals.depth_mm[rows, before]
    held = canals.depth_mm[rows, before] + np.where(first > 0, share, 0.0) * along
    return np.where(too_narrow.any(axis=1), held, np.inf)


def _halved(tools: Tools, canals: Rows, stop_mm: Floats, limit_mm2: Floats) -> Floats:
    """Where the load reaches its limit, by bisection; the stop where it never does. It is right only where the load
    never falls with depth.
    """
    rests_mm = stop_mm.copy()
    held = kernel.running.load_mm2(tools, canals, stop_mm - APART_MM) > limit_mm2
    if held.any():
        rests_mm[held] = kernel.running.halved_mm(
            tools.picked(held), canals.picked(held), stop_mm[held], limit_mm2[held]
        )
    return rests_mm


def _looked(tools: Tools, canals: Rows, from_mm: Floats, to_mm: Floats, limit_mm2: Floats) -> Floats:
    """Tries many places between two depths: returns the last one before the load passes its limit, else the deeper
    depth.
    """
    each = np.repeat(np.arange(len(from_mm)), LOOKS)
    places = np.linspace(from_mm, to_mm, LOOKS, axis=1)
    load = kernel.running.load_mm2(tools.picked(each), canals.picked(each), places.ravel()).reshape(places.shape)
    over = load > limit_mm2[:, None]
    before = np.maximum(over.argmax(axis=1) - 1, 0)
    return np.where(over.any(axis=1), np.take_along_axis(places, before[:, None], 1)[:, 0], to_mm)
