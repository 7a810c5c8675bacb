"""How a canal bends on an image: Schneider's angle, and the circle through the marks of the bend."""

from __future__ import annotations

import math
from typing import Final

import numpy as np
from numpy.typing import NDArray

from planning.radiograph.line import Marks

_STEPS: Final = 40  # more than any fit needs that finds an end
_TRIED: Final = 1e-7  # step of a parameter to see its slope: the root of what a double resolves
_STILL: Final = 1e-12  # change of a parameter below which the fit stands


def to_side_rad(axis: Marks, leaves: Marks, end: Marks) -> float:
    """Schneider's angle: between the straight line through the marks of the axis and the way from `leaves` to `end`.

    Above 0 to the one side and below to the other.
    """
    along = _direction(axis)
    way = end - leaves
    cross = along[0] * way[1] - along[1] * way[0]
    return float(math.atan2(cross, along @ way))


def curvature(marks: Marks, slips: Marks) -> tuple[float, float]:
    """One over the radius of the circle nearest to the marks, at least three, and one standard deviation of it.

    0 for marks on a line. Nearest by the squares of the distances to the circle itself, in Gauss-Newton steps. Its
    equation k(x² + y²)/2 + Bx + Cy + D = 0 with B² + C² = 1 + 2kD (Pratt 1987) is free of the centre, which runs away
    as a curve straightens. `slips` are one standard deviation of every coordinate; only the part across the circle
    counts.
    """
    middle = marks.mean(axis=0)
    reach = float(np.abs(marks - middle).max())
    # Centred and scaled to about 1, so that one step and one tolerance serve for every image.
    x, y = ((marks - middle) / reach).T
    along = _direction(marks)
    # The fit begins with the straight line through the marks: no curvature, and its normal.
    circle = np.array([0.0, math.atan2(along[0], -along[1]), 0.0])
    for _ in range(_STEPS):
        change = np.linalg.lstsq(_slope(circle, x, y), -_off(circle, x, y), rcond=None)[0]
        circle = circle + change
        if np.abs(change).max() < _STILL:
            break
    k, phi, d = circle
    size = math.sqrt(max(0.0, 1 + 2 * k * d))
    across = np.column_stack((k * x + size * math.cos(phi), k * y + size * math.sin(phi)))
    across /= np.hypot(*across.T)[:, None]
    by_mark = np.linalg.pinv(_slope(circle, x, y))[0] * np.hypot(*(across * slips / reach).T)
    return abs(float(k)) / reach, float(np.hypot.reduce(by_mark)) / reach


def turn_rad(marks: Marks, of_curvature: float) -> float:
    """How far an arc of that curvature turns between the first and the last mark; half a turn at most."""
    chord = math.dist(marks[0], marks[-1])
    return 2 * math.asin(min(1.0, of_curvature * chord / 2))


def _off(equation: NDArray[np.float64], x: NDArray[np.float64], y: NDArray[np.float64]) -> NDArray[np.float64]:
    """Signed distances from the circle."""
    k, phi, d = equation
    size = math.sqrt(max(0.0, 1 + 2 * k * d))
    power = k * (x * x + y * y) / 2 + size * (math.cos(phi) * x + math.sin(phi) * y) + d
    off: NDArray[np.float64] = 2 * power / (1 + np.sqrt(np.maximum(0.0, 1 + 2 * k * power)))
    return off


def _slope(equation: NDArray[np.float64], x: NDArray[np.float64], y: NDArray[np.float64]) -> NDArray[np.float64]:
    """How every distance changes with every parameter. Shape (marks, parameters)."""
    off, steps = _off(equation, x, y), np.eye(len(equation)) * _TRIED
    return np.column_stack([(_off(equation + step, x, y) - off) / _TRIED for step in steps])


def _direction(marks: Marks) -> NDArray[np.float64]:
    """The direction of the line nearest to the marks, from the first towards the last; length 1."""
    from_middle = marks - marks.mean(axis=0)
    along: NDArray[np.float64] = np.linalg.svd(from_middle)[2][0]
    return along if along @ (marks[-1] - marks[0]) >= 0 else -along
