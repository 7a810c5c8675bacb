"""The same as `planning.depth.numpy_rows`, canal by canal and compiled. Needs the extra `fast`.

Every number is made by the same operations in the same order as there, so it is the same to the last bit: no fast
mathematics, no product and sum in one. It is compiled when this is imported, and kept on disk where there is a folder
for it; whether what was kept still holds is told by the age of this file alone, so constants of others are handed in.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

import numba
import numpy as np

from planning.depth import numpy_rows
from planning.depth.rows import APART_MM, HALVINGS, LEVEL, STEP_MM, STRAIGHT_MM2, Floats, Rows, Tools

LANES = 8  # numpy adds up as many sums side by side
BLOCK = 128  # more terms than these it adds up in halves

Function = TypeVar("Function", bound=Callable[..., object])
Canal = tuple[Floats, Floats, Floats]
"""Depths and diameters of the corners of one canal, and how the diameter grows along each wall."""
Outline = tuple[Floats, Floats]
"""Depths and diameters of corners."""


def load_mm2(tools: Tools, canals: Rows, tip_mm: Floats) -> Floats:
    if _many_corners(canals):
        return numpy_rows.load_mm2(tools, canals, tip_mm)
    return _loads(*_arrays(tools, canals), tip_mm, LEVEL)


def halved_mm(tools: Tools, canals: Rows, over_mm: Floats, limit_mm2: Floats) -> Floats:
    if _many_corners(canals):
        return numpy_rows.halved_mm(tools, canals, over_mm, limit_mm2)
    return _halved(*_arrays(tools, canals), over_mm, limit_mm2, LEVEL, HALVINGS)


def stood(tools: Tools, canals: Rows, tip_mm: Floats, overcut_mm: Floats) -> Rows:
    return Rows(*_stood(*_arrays(tools, canals), tip_mm, overcut_mm, STEP_MM, APART_MM, STRAIGHT_MM2))


def _arrays(tools: Tools, canals: Rows) -> tuple[Floats, Floats, Floats, Floats]:
    """Their arrays, row after row in memory."""
    wide = np.ascontiguousarray(canals.wide_mm)
    return tools.from_tip_mm, np.ascontiguousarray(tools.wide_mm), np.ascontiguousarray(canals.depth_mm), wide


def _many_corners(canals: Rows) -> bool:
    """More walls than are added up here as numpy does."""
    return bool(canals.depth_mm.shape[1] - 1 > BLOCK)


def _compiled(signature: str) -> Callable[[Function], Function]:
    def compiled(function: Function) -> Function:
        try:
            made: Function = numba.njit(signature, error_model="numpy", cache=True)(function)
        except RuntimeError:
            # There is no folder to keep it in.
            made = numba.njit(signature, error_model="numpy")(function)
        return made

    return compiled


@_compiled("f8(f8[::1])")
def _sum(terms: Floats) -> float:
    """The sum of at most a block of terms, rounded as numpy rounds it: lanes, these two and two, then what is left
    over. Writes over the terms.
    """
    count, total = len(terms), 0.0
    whole = count - count % LANES
    for at in range(LANES, whole):
        terms[at % LANES] += terms[at]
    if whole > 0:
        total = ((terms[0] + terms[1]) + (terms[2] + terms[3])) + ((terms[4] + terms[5]) + (terms[6] + terms[7]))
    for at in range(whole, count):
        total += terms[at]
    return total


@_compiled("void(f8[::1], f8[::1], f8[::1])")
def _into_walls(widens: Floats, depth: Floats, wide: Floats) -> None:
    for wall in range(len(widens)):
        along = depth[wall + 1] - depth[wall]
        widens[wall] = (wide[wall + 1] - wide[wall]) / (along if along > 0 else 1.0)


@_compiled("b1(f8[:,::1], f8[:,::1])")
def _cut_ahead(thick: Floats, wide: Floats) -> bool:
    """Whether any tip has a face that might cut."""
    for row in range(len(wide)):
        for corner in range(wide.shape[1]):
            if thick[row, 0] > wide[row, corner]:
                return True
    return False


@_compiled("f8(f8, UniTuple(f8[::1], 3), f8)")
def _face(face_mm: float, canal: Canal, tip_mm: float) -> float:
    """Twice what the tip's face adds."""
    depth, wide, widens = canal
    if tip_mm <= depth[0] or tip_mm > depth[-1]:
        return 0.0
    wall = 0
    while wall + 1 < len(widens) and depth[wall + 1] < tip_mm:
        wall += 1
    canal_mm = wide[wall] + widens[wall] * (tip_mm - depth[wall])
    return float(max(face_mm * face_mm - canal_mm * canal_mm, 0.0))


@_compiled("f8(f8[::1], f8[::1], UniTuple(f8[::1], 3), b1, f8, f8, f8[::1])")
def _load(
    from_tip: Floats, thick: Floats, canal: Canal, cuts_ahead: bool, tip_mm: float, level: float, squares: Floats
) -> float:
    """The load of one canal; in `squares` there is room for what each wall adds."""
    depth, wide, widens = canal
    doubled = _face(thick[0], canal, tip_mm) if cuts_ahead else 0.0
    for flank in range(len(from_tip) - 1):
        z0, z1 = from_tip[flank], from_tip[flank + 1]
        grows = (thick[flank + 1] - thick[flank]) / (z1 - z0)
        if grows == 0:
            continue
        begins = thick[flank] - grows * z0
        for wall in range(len(widens)):
            squares[wall] = 0.0
            low, high = max(tip_mm - depth[wall + 1], z0), min(tip_mm - depth[wall], z1)
            if high <= low:
                continue
            over, steeper = begins - (wide[wall] - widens[wall] * depth[wall]), grows + widens[wall]
            meet = (widens[wall] * tip_mm - over) / (steeper if steeper != 0 else -level)
            meet = min(max(meet, low), high)
            low, high = (meet, high) if steeper > 0 else (low, meet)
            squares[wall] = (high - low) * (2 * begins + grows * (low + high))
        doubled += grows * _sum(squares)
    return doubled / 2


@_compiled("f8[::1](f8[::1], f8[:,::1], f8[:,::1], f8[:,::1], f8[::1], f8)")
def _loads(from_tip: Floats, thick: Floats, depth: Floats, wide: Floats, tip_mm: Floats, level: float) -> Floats:
    cuts_ahead, loads = _cut_ahead(thick, wide), np.empty(len(tip_mm))
    widens, squares = np.empty(depth.shape[1] - 1), np.empty(depth.shape[1] - 1)
    for row in range(len(tip_mm)):
        _into_walls(widens, depth[row], wide[row])
        canal = depth[row], wide[row], widens
        loads[row] = _load(from_tip, thick[row], canal, cuts_ahead, tip_mm[row], level, squares)
    return loads


@_compiled("f8[::1](f8[::1], f8[:,::1], f8[:,::1], f8[:,::1], f8[::1], f8[::1], f8, i8)")
def _halved(
    from_tip: Floats,
    thick: Floats,
    depth: Floats,
    wide: Floats,
    over_mm: Floats,
    limit_mm2: Floats,
    level: float,
    halvings: int,
) -> Floats:
    cuts_ahead, rests = _cut_ahead(thick, wide), np.empty(len(over_mm))
    widens, squares = np.empty(depth.shape[1] - 1), np.empty(depth.shape[1] - 1)
    for row in range(len(over_mm)):
        _into_walls(widens, depth[row], wide[row])
        canal = depth[row], wide[row], widens
        within, over = depth[row, 0], over_mm[row]
        for _ in range(halvings):
            middle = (within + over) / 2
            stays = _load(from_tip, thick[row], canal, cuts_ahead, middle, level, squares) <= limit_mm2[row]
            within, over = (middle, over) if stays else (within, middle)
        rests[row] = within
    return rests


@_compiled("void(UniTuple(f8[::1], 2), f8[::1], UniTuple(f8[::1], 3), f8, f8)")
def _into_corners(into: Outline, from_tip: Floats, canal: Canal, tip_mm: float, step_mm: float) -> None:
    """The canal with a corner wherever the instrument has one, in order of depth."""
    depth, wide, widens = canal
    all_depth, all_wide = into
    all_depth[: len(depth)], all_wide[: len(depth)] = depth, wide
    for number in range(-1, len(from_tip)):
        corner = tip_mm - from_tip[number] if number >= 0 else tip_mm + step_mm
        corner = min(max(corner, depth[0]), depth[-1])
        wall = 0
        while wall + 1 < len(widens) and depth[wall + 1] <= corner:
            wall += 1
        at = len(depth) + number + 1
        # After all that lie as deep.
        while all_depth[at - 1] > corner:
            all_depth[at], all_wide[at] = all_depth[at - 1], all_wide[at - 1]
            at -= 1
        all_depth[at], all_wide[at] = corner, wide[wall] + widens[wall] * (corner - depth[wall])


@_compiled("f8(f8[::1], f8[::1], f8, f8, f8)")
def _left(from_tip: Floats, thick: Floats, at_mm: float, overcut_mm: float, step_mm: float) -> float:
    """The diameter that the instrument leaves at a distance from its tip."""
    left = thick[0] + overcut_mm
    for flank in range(len(from_tip) - 1):
        share = (at_mm - from_tip[flank]) / (from_tip[flank + 1] - from_tip[flank])
        left += min(max(share, 0.0), 1.0) * (thick[flank + 1] - thick[flank])
    return float(left * min(max(1.0 + at_mm / step_mm, 0.0), 1.0))


@_compiled("void(UniTuple(f8[::1], 2), f8[::1], f8[::1], f8[::1])")
def _into_crossed(into: Outline, depth: Floats, first: Floats, second: Floats) -> None:
    """The wider of two outlines, with a corner between every two: where they cross, or half way."""
    both_depth, both_wide = into
    for a in range(len(depth)):
        both_depth[2 * a], both_wide[2 * a] = depth[a], max(first[a], second[a])
        b = a + 1
        if b < len(depth):
            before, after = first[a] - second[a], first[b] - second[b]
            share = before / (before - after) if before * after < 0 else 1 / 2
            both_depth[a + b] = depth[a] + share * (depth[b] - depth[a])
            both_wide[a + b] = max(
                first[a] + share * (first[b] - first[a]), second[a] + share * (second[b] - second[a])
            )


@_compiled("i8(UniTuple(f8[::1], 2), UniTuple(f8[::1], 2), f8, f8)")
def _into_kept(into: Outline, outline: Outline, apart_mm: float, straight_mm2: float) -> int:
    """Without the corners that lie on the one before or on the line between their neighbours; how many are kept."""
    depth, wide = outline
    kept_depth, kept_wide = into
    distinct, before = 1, depth[0]
    for corner in range(1, len(depth)):
        deeper, before = depth[corner] - before > apart_mm, depth[corner]
        if deeper:
            depth[distinct], wide[distinct] = depth[corner], wide[corner]
            distinct += 1
    kept = 0
    for corner in range(distinct):
        if 0 < corner < distinct - 1:
            x0, x1 = depth[corner] - depth[corner - 1], depth[corner + 1] - depth[corner]
            d0, d1 = wide[corner] - wide[corner - 1], wide[corner + 1] - wide[corner]
            if abs(d0 * x1 - d1 * x0) < straight_mm2:
                continue
        kept_depth[kept], kept_wide[kept] = depth[corner], wide[corner]
        kept += 1
    kept_depth[kept:], kept_wide[kept:] = kept_depth[kept - 1], kept_wide[kept - 1]
    return kept


@_compiled("UniTuple(f8[:,::1], 2)(f8[::1], f8[:,::1], f8[:,::1], f8[:,::1], f8[::1], f8[::1], f8, f8, f8)")
def _stood(
    from_tip: Floats,
    thick: Floats,
    depth: Floats,
    wide: Floats,
    tip_mm: Floats,
    overcut_mm: Floats,
    step_mm: float,
    apart_mm: float,
    straight_mm2: float,
) -> Outline:
    rows, corners = len(tip_mm), depth.shape[1] + len(from_tip) + 1
    at_mm, before, left, widens = np.empty(corners), np.empty(corners), np.empty(corners), np.empty(depth.shape[1] - 1)
    crossed = np.empty(2 * corners - 1), np.empty(2 * corners - 1)
    after_depth, after_wide, most = np.empty((rows, 2 * corners - 1)), np.empty((rows, 2 * corners - 1)), 0
    for row in range(rows):
        _into_walls(widens, depth[row], wide[row])
        _into_corners((at_mm, before), from_tip, (depth[row], wide[row], widens), tip_mm[row], step_mm)
        for corner in range(corners):
            left[corner] = _left(from_tip, thick[row], tip_mm[row] - at_mm[corner], overcut_mm[row], step_mm)
        _into_crossed(crossed, at_mm, before, left)
        most = max(most, _into_kept((after_depth[row], after_wide[row]), crossed, apart_mm, straight_mm2))
    return after_depth[:, :most].copy(), after_wide[:, :most].copy()
