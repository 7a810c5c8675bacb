"""What the estimate of many canals spends its time in, over all rows at once: the reference.

`compiled_rows` does the same operations in the same order: what changes here changes there, and tests compare the bits.
"""

from __future__ import annotations

from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from planning.depth.rows import APART_MM, HALVINGS, LEVEL, STEP_MM, STRAIGHT_MM2, Floats, Rows, Tools, walls_of, wide_at


def load_mm2(tools: Tools, canals: Rows, tip_mm: Floats) -> Floats:
    """The load [mm²] of every row with the tip at a depth."""
    return _Loads(tools, canals).at(tip_mm)


def halved_mm(tools: Tools, canals: Rows, over_mm: Floats, limit_mm2: Floats) -> Floats:
    """Where the load passes its limit in every row, by bisection from the orifice to a depth where it is over it."""
    loads, within = _Loads(tools, canals), canals.depth_mm[:, 0]
    for _ in range(HALVINGS):
        middle = (within + over_mm) / 2
        stays = loads.at(middle) <= limit_mm2
        within, over_mm = np.where(stays, middle, within), np.where(stays, over_mm, middle)
    return within


class _Loads:
    """The load [mm²] of every row by the depth of its tip, with all worked out before that does not depend on it.

    At a distance z from the tip a flank is `begins + grows · z` thick, and a wall `wide + widens · (tip - z - above)`
    wide: what the one is over the other is `k + steeper · z`. So they meet at one place, and touch on one side of it.
    """

    def __init__(self, tools: Tools, canals: Rows) -> None:
        self._above, self._below, self._wide = canals.depth_mm[:, :-1], canals.depth_mm[:, 1:], canals.wide_mm[:, :-1]
        self._widens, self._face_mm = walls_of(canals), tools.wide_mm[:, 0]
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
