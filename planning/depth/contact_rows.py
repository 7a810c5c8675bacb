"""The contact-depth estimate for many canals at once, one canal a row. Tests hold it against the exact one of
`planning.depth.contact_depth`.

Canals are two arrays of the shape (rows, corners): the depth of each corner, growing along the row, and the diameter
there. A row with fewer corners repeats its last one. A step is a ramp of a nanometre, so that every corner has just one
diameter.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Picked = NDArray[np.bool_] | NDArray[np.intp] | slice

STEP_MM = 1e-6  # ramp in place of a step
APART_MM = 1e-9  # corners closer together than this are one
STRAIGHT_MM2 = 1e-12  # rounding error of doubles over a canal's length
LEVEL = 1e-30  # in place of no difference between two slopes
HALVINGS = 14  # of at most thirty millimetres: to two thousandths of a millimetre
LOOKS = 64  # places tried where the load may fall with depth: a few hundredths of a millimetre apart


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
    held = load_mm2(tools, canals, stop_mm - APART_MM) > limit_mm2
    if not held.any():
        return rests_mm
    tools, canals, limit_mm2 = tools.picked(held), canals.picked(held), limit_mm2[held]
    loads = _Loads(tools, canals)
    within, over = canals.depth_mm[:, 0], rests_mm[held]
    for _ in range(HALVINGS):
        middle = (within + over) / 2
        stays = loads.at(middle) <= limit_mm2
        within, over = np.where(stays, middle, within), np.where(stays, over, middle)
    rests_mm[held] = within
    return rests_mm


def _looked(tools: Tools, canals: Rows, from_mm: Floats, to_mm: Floats, limit_mm2: Floats) -> Floats:
    """Tries many places between two depths: returns the last one before the load passes its limit, else the deeper
    depth.
    """
    each = np.repeat(np.arange(len(from_mm)), LOOKS)
    places = np.linspace(from_mm, to_mm, LOOKS, axis=1)
    load = load_mm2(tools.picked(each), canals.picked(each), places.ravel()).reshape(places.shape)
    over = load > limit_mm2[:, None]
    before = np.maximum(over.argmax(axis=1) - 1, 0)
    return np.where(over.any(axis=1), np.take_along_axis(places, before[:, None], 1)[:, 0], to_mm)


def load_mm2(tools: Tools, canals: Rows, tip_mm: Floats) -> Floats:
    """The load [mm²] of every row with the tip at a depth."""
    return _Loads(tools, canals).at(tip_mm)


class _Loads:
    """The load [mm²] of every row by the depth of its tip, with all worked out before that does not depend on it.

    At a distance z from the tip a flank is `begins + grows · z` thick, and a wall `wide + widens · (tip - z - above)`
    wide: what the one is over the other is `k + steeper · z`. So they meet at one place, and touch on one side of it.
    """

    def __init__(self, tools: Tools, canals: Rows) -> None:
        self._above, self._below, self._wide = canals.depth_mm[:, :-1], canals.depth_mm[:, 1:], canals.wide_mm[:, :-1]
        self._widens, self._face_mm = _walls(canals), tools.wide_mm[:, 0]
        # Where no canal is anywhere narrower than the tip, the face adds nothing and need not be looked at.
        self._cuts_ahead = bool((self._face_mm[:, None] > canals.wide_mm).any())
        level = self._wide - self._widens * self._above
        self._flanks = []
        for (z0, z1), (d0, d1) in zip(pairwise(tools.from_tip_mm), pairwise(tools.wide_mm.T), strict=True):
            grows = (d1 - d0) / (z1 - z0)
            if grows.any():
                begins, steeper = d0 - grows * z0, grows[:, None] + self._widens
                # Where both are parallel they meet nowhere: their meeting is put so far away that the whole stretch
                # touches, or none of it.
                steeper = np.where(steeper == 0, -LEVEL, steeper)
                self._flanks.append((z0, z1, begins, grows, begins[:, None] - level, steeper, steeper > 0))

    def at(self, tip_mm: Floats) -> Floats:
        tip = tip_mm[:, None]
        from_below, from_above, deeper = tip - self._below, tip - self._above, self._widens * tip
        doubled = self._face(tip_mm) if self._cuts_ahead else np.zeros(len(tip_mm))
        for z0, z1, begins, grows, over, steeper, touch_above in self._flanks:
            low = np.maximum(from_below, z0)
            high = np.maximum(np.minimum(from_above, z1), low)
            meet = np.minimum(np.maximum((deeper - over) / steeper, low), high)
            from_, to = np.where(touch_above, meet, low), np.where(touch_above, high, meet)
            squares = (to - from_) * (2 * begins[:, None] + grows[:, None] * (from_ + to))
            doubled = doubled + grows * squares.sum(axis=1)
        return doubled / 2

    def _face(self, tip_mm: Floats) -> Floats:
        """Twice what the tip's face adds."""
        wall = (self._above < tip_mm[:, None]).sum(axis=1) - 1
        at = np.arange(len(wall)), np.maximum(wall, 0)
        inside = (wall >= 0) & (tip_mm <= self._below[:, -1])
        canal = self._wide[at] + self._widens[at] * (tip_mm - self._above[at])
        return np.where(inside, np.maximum(self._face_mm * self._face_mm - canal * canal, 0.0), 0.0)


def _walls(canals: Rows) -> Floats:
    """How the diameter grows with depth between neighbouring corners; 0 where there is nothing between."""
    along = np.diff(canals.depth_mm, axis=1)
    return np.diff(canals.wide_mm, axis=1) / np.where(along > 0, along, 1.0)


def stood(tools: Tools, canals: Rows, tip_mm: Floats, overcut_mm: Floats) -> Rows:
    """The canals after the instrument has stood with its tip at a depth: the upper envelope of the two."""
    start, end = canals.depth_mm[:, :1], canals.depth_mm[:, -1:]
    tip = tip_mm[:, None]
    # The step at the tip is a ramp, and needs a corner at both of its ends.
    corners = np.concatenate([tip + STEP_MM, tip - tools.from_tip_mm], axis=1)
    corners = np.clip(corners, start, end)
    depth = np.concatenate([canals.depth_mm, corners], axis=1)
    wide = np.concatenate([canals.wide_mm, wide_at(canals, corners)], axis=1)
    order = np.argsort(depth, axis=1, kind="stable")
    depth, wide = np.take_along_axis(depth, order, 1), np.take_along_axis(wide, order, 1)
    stands = _shape(tools, tip - depth, overcut_mm[:, None])
    return _kept(*_crossed(depth, wide, stands))


def wide_at(canals: Rows, depth_mm: Floats) -> Floats:
    """Diameters at depths inside the canal, (rows, depths)."""
    before = (canals.depth_mm[:, None, :] <= depth_mm[:, :, None]).sum(axis=2) - 1
    before = np.clip(before, 0, canals.depth_mm.shape[1] - 2)
    widens = np.take_along_axis(_walls(canals), before, 1)
    along = depth_mm - np.take_along_axis(canals.depth_mm, before, 1)
    return np.asarray(np.take_along_axis(canals.wide_mm, before, 1) + widens * along, dtype=np.float64)


def _shape(tools: Tools, from_tip_mm: Floats, overcut_mm: Floats) -> Floats:
    """The diameter that the instrument leaves at a distance from its tip; 0 beyond the tip, after the ramp."""
    wide = tools.wide_mm[:, :1] + overcut_mm
    for flank in range(len(tools.from_tip_mm) - 1):
        z0, z1 = tools.from_tip_mm[flank], tools.from_tip_mm[flank + 1]
        share = np.clip((from_tip_mm - z0) / (z1 - z0), 0.0, 1.0)
        wide = wide + share * (tools.wide_mm[:, flank + 1, None] - tools.wide_mm[:, flank, None])
    beyond = np.clip(1.0 + from_tip_mm / STEP_MM, 0.0, 1.0)
    return np.asarray(wide * beyond, dtype=np.float64)


def _crossed(depth: Floats, first: Floats, second: Floats) -> tuple[Floats, Floats]:
    """The wider of two outlines over the same depths. Between every two corners there is a new one: where the outlines
    cross, or half way."""
    apart = first - second
    span = apart[:, :-1] - apart[:, 1:]
    crosses = apart[:, :-1] * apart[:, 1:] < 0
    share = np.where(crosses, apart[:, :-1] / np.where(crosses, span, 1.0), 1 / 2)
    rows, corners = depth.shape
    both = np.empty((rows, 2 * corners - 1)), np.empty((rows, 2 * corners - 1))
    both[0][:, ::2], both[1][:, ::2] = depth, np.maximum(first, second)
    both[0][:, 1::2] = depth[:, :-1] + share * np.diff(depth, axis=1)
    both[1][:, 1::2] = np.maximum(
        first[:, :-1] + share * np.diff(first, axis=1), second[:, :-1] + share * np.diff(second, axis=1)
    )
    return both


def _kept(depth: Floats, wide: Floats) -> Rows:
    """The same canals without corners that lie on the corner before or on the line between their neighbours."""
    distinct = np.ones(depth.shape, dtype=bool)
    distinct[:, 1:] = np.diff(depth, axis=1) > APART_MM
    depth, wide, used = _packed(depth, wide, distinct)
    bent = np.ones(depth.shape, dtype=bool)
    x, d = np.diff(depth, axis=1), np.diff(wide, axis=1)
    bent[:, 1:-1] = np.abs(d[:, :-1] * x[:, 1:] - d[:, 1:] * x[:, :-1]) >= STRAIGHT_MM2
    last = np.arange(depth.shape[1]) == used[:, None] - 1
    inside = np.arange(depth.shape[1]) < used[:, None]
    depth, wide, _ = _packed(depth, wide, (bent | last) & inside)
    return Rows(depth, wide)


def _packed(depth: Floats, wide: Floats, keep: NDArray[np.bool_]) -> tuple[Floats, Floats, NDArray[np.int64]]:
    """Only the corners to keep, in order, and how many each row has. A row with fewer than others repeats its last."""
    used = keep.sum(axis=1)
    there = np.arange(used.max()) < used[:, None]

    def packed(values: Floats) -> Floats:
        kept = values[keep]
        filled = np.repeat(kept[np.cumsum(used) - 1, None], there.shape[1], axis=1)
        filled[there] = kept
        return filled

    return packed(depth), packed(wide), used
