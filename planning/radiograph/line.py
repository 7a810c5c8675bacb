"""A smooth line through a few marks: between two of them a circle's arc that bends as the marks around it do.

On marks along one circle it is that circle, where straight pieces would cut every corner; a spline through
so few and so uneven marks swings out.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

Marks = NDArray[np.float64]
"""Shape (n, 2): x to the right, y down, both in one unit."""

_MOST_SINE: Final = 0.9  # sine of half a piece's turn; one that turned further would be a slip, not an arc


def length(marks: Marks, straight_to: int = 0) -> float:
    """Along the line, in the unit of the marks; straight up to the mark `straight_to`."""
    return float(_pieces(marks, straight_to)[1].sum())


def distances(marks: Marks, straight_to: int = 0) -> NDArray[np.float64]:
    """How far each mark lies from the first one, along the line. Shape (n,)."""
    return np.concatenate(([0.0], np.cumsum(_pieces(marks, straight_to)[1])))


def places(marks: Marks, along: NDArray[np.float64], straight_to: int = 0) -> Marks:
    """The places at these distances along the line, from its first mark. Shape (m, 2); NaN off the line's ends."""
    turns, lengths = _pieces(marks, straight_to)
    ends = np.cumsum(lengths)
    piece = np.clip(np.searchsorted(ends, along), 0, len(lengths) - 1)
    share = (along - (ends - lengths)[piece]) / lengths[piece]
    step = np.diff(marks, axis=0)[piece]
    heading = np.arctan2(step[:, 1], step[:, 0]) + turns[piece] * (share - 1) / 2
    # sin(x)/x from numpy, whose sinc has pi inside.
    chord = lengths[piece] * share * np.sinc(turns[piece] * share / (2 * np.pi))
    spots: Marks = marks[piece] + chord[:, None] * np.column_stack((np.cos(heading), np.sin(heading)))
    spots[(along < 0) | ((share > 1) & ~np.isclose(share, 1))] = np.nan
    return spots


def turn_rad(before: Marks, here: Marks, after: Marks) -> float:
    """The angle by which the line turns at a mark; above 0 to the one side, below 0 to the other."""
    (ax, ay), (bx, by) = here - before, after - here
    return float(np.arctan2(ax * by - ay * bx, ax * bx + ay * by))


def _pieces(marks: Marks, straight_to: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """For each piece: how far it turns [rad, signed], and how long it is."""
    chords = np.hypot(*np.diff(marks, axis=0).T)
    bows = np.zeros(len(marks))
    curved = marks[straight_to:]
    if len(curved) > 2:
        inner = _bows(curved)
        # The first and the last mark have a neighbour on one side only, and so no circle of their own: they bend as
        # that one does.
        bows[straight_to:] = np.concatenate((inner[:1], inner, inner[-1:]))
    mean = (bows[:-1] + bows[1:]) / 2
    mean[:straight_to] = 0.0
    half = np.arcsin(np.clip(mean * chords / 2, -_MOST_SINE, _MOST_SINE))
    # An arc is its chord over sin(x)/x, with x half of what it turns.
    return 2 * half, chords / np.sinc(half / np.pi)


def _bows(marks: Marks) -> NDArray[np.float64]:
    """Signed curvature at every inner mark: of the circle through it and its neighbours."""
    before, after, over = marks[1:-1] - marks[:-2], marks[2:] - marks[1:-1], marks[2:] - marks[:-2]
    cross = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    bows: NDArray[np.float64] = 2 * cross / (np.hypot(*before.T) * np.hypot(*after.T) * np.hypot(*over.T))
    return bows
