"""An oval canal with a round preparation in its middle: how much of its wall that reaches, how large both are."""

from __future__ import annotations

import math
from functools import cache

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ends = tuple[float, float]
"""Diameters [mm] at both ends of a stretch."""
APART_MM = 1e-12  # rounding error of doubles
FRUSTUM = math.pi / 24  # of an oval one, as every cross-section is π/4 · narrow · wide: textbook integration
NODES = 64  # Gauss points: exact to 1e-9 for an oval seven times as wide as narrow, far flatter than any canal's end


def reached_share(narrow_mm: float, wide_mm: float, round_mm: float) -> float:
    """Share (0 to 1) of the perimeter of an elliptic canal that lies within a round preparation of `round_mm` centred
    in it.

    With half axes a <= b a point of the ellipse lies a² + (b² - a²) sin² t from the centre, squared, t counted from
    the narrow side: within the circle up to sin t = sqrt((r² - a²) / (b² - a²)). Its perimeter up to there is an
    elliptic integral of the second kind.
    """
    narrow, wide = sorted((narrow_mm, wide_mm))
    if round_mm >= wide:
        return 1.0
    if round_mm <= narrow:
        return 0.0
    within = math.asin(math.sqrt((round_mm**2 - narrow**2) / (wide**2 - narrow**2)))
    return _arc(within, narrow, wide) / _arc(math.pi / 2, narrow, wide)


def area_mm2(narrow_mm: Floats, wide_mm: Floats, round_mm: Floats) -> Floats:
    """Cross-sections [mm²] of elliptic canals with a round preparation centred in each: what either covers, since what
    neither has reached is dentine still.

    The circle covers its sector, from the narrow side to where both cross, the ellipse the rest of the quarter. Where
    they do not cross one of the two is all of it.
    """
    # Where both cross the sine and the cosine of the ellipse's parameter are to each other as these.
    sine = np.sqrt(np.maximum(round_mm**2 - narrow_mm**2, 0.0))
    cosine = np.sqrt(np.maximum(wide_mm**2 - round_mm**2, 0.0))
    within = np.arctan2(sine, cosine)
    # Seen from the centre the same point lies at this angle.
    sector = np.arctan2(wide_mm * sine, narrow_mm * cosine)
    return np.asarray((round_mm**2 * sector + narrow_mm * wide_mm * (math.pi / 2 - within)) / 2, dtype=np.float64)


def volume_mm3(along_mm: float, narrow_mm: Ends, wide_mm: Ends, round_mm: Ends) -> float:
    """Volume [mm³] of a stretch of such a canal, `along_mm` long, along which the round preparation comes out on no
    side that it lies within at one end."""
    if _no_wider(round_mm, narrow_mm):
        return frustum_mm3(along_mm, narrow_mm, wide_mm)
    if _no_wider(wide_mm, round_mm):
        return frustum_mm3(along_mm, round_mm, round_mm)
    nodes, weights = _gauss()
    # Gauss points lie between -1 and 1.
    share = (nodes + 1) / 2
    narrow, wide, across = (a + (b - a) * share for a, b in (narrow_mm, wide_mm, round_mm))
    return float(area_mm2(narrow, wide, across) @ weights * along_mm / 2)


def frustum_mm3(along_mm: float, narrow_mm: Ends, wide_mm: Ends) -> float:
    """Volume [mm³] of a stretch of an elliptic canal by the diameters at both its ends, which change evenly."""
    (narrow_a, narrow_b), (wide_a, wide_b) = narrow_mm, wide_mm
    alike, across = narrow_a * wide_a + narrow_b * wide_b, narrow_a * wide_b + narrow_b * wide_a
    return FRUSTUM * along_mm * (2 * alike + across)


def _no_wider(first_mm: Ends, second_mm: Ends) -> bool:
    return all(first <= second + APART_MM for first, second in zip(first_mm, second_mm, strict=True))


def _arc(upto: float, narrow: float, wide: float) -> float:
    """Arc of the ellipse of full axes `narrow` and `wide`, from the narrow side to `upto` radians, times two."""
    nodes, weights = _gauss()
    t = upto * (nodes + 1) / 2
    return float(upto * np.sum(weights * np.hypot(wide * np.cos(t), narrow * np.sin(t))) / 2)


@cache
def _gauss() -> tuple[np.ndarray, np.ndarray]:
    return np.polynomial.legendre.leggauss(NODES)
