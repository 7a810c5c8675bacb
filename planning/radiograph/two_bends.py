"""Whether a canal bends to one side and then to the other, and how tightly: what its marks leave possible.

The canal is taken as straight along its axis, then one arc, then another without a corner between; the second may go on
as the first, so that a single bend is a case of it. For every place where the one may pass into the other the arcs
nearest to the marks are found, and what the marks leave possible around them. Places count by how well they fit (Bayes;
beforehand a radius of half the curve's own length is usual, and a second bend to the other side as rare as published).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from statistics import NormalDist
from typing import Final

import numpy as np
from numpy.typing import NDArray

from planning.radiograph.line import Marks
from planning.tables import Figures

Floats = NDArray[np.float64]

_PLACES: Final = 18  # where the first bend may pass into the second, looked at twice: over the curve, then closely
_ROUNDS: Final = 8  # of a fit; it stands sooner
_TRIED: Final = 1e-6  # step of a parameter to see its slope
_LIKELY: Final = 1e-3  # weight against the best below which a place is not looked at closely
_DRAWN: Final = 64  # pairs of curvatures that stand for what a fit leaves possible
_SPREADS: Final = 1.324717957244746  # root of x³ = x + 1: fills a square evenly (Roberts 2018, from memory)
_ACROSS, _HEADING, _CORNER, _FIRST, _SECOND = range(5)  # parameters of a fit


@dataclass(frozen=True, slots=True)
class Arcs:
    """Pairs of arcs that the marks leave possible, each with its weight; the weights sum to 1."""

    first: Floats
    """Curvature of the first arc, signed, in one over the unit of the marks."""
    second: Floats
    passes: Floats
    """How far after the canal leaves its axis the first arc passes into the second."""
    length: float
    """From where it leaves its axis to its end."""
    weight: Floats

    def turns(self) -> tuple[Floats, Floats]:
        """How far each arc turns [radians], to one side or the other."""
        return self.first * self.passes, self.second * (self.length - self.passes)

    def both_ways(self, least_rad: float) -> float:
        """Share in which the arcs turn to different sides, each by more than that."""
        one, other = self.turns()
        opposite = (one * other < 0) & (np.minimum(abs(one), abs(other)) > least_rad)
        return float(self.weight[opposite].sum())

    def quantiles(self, of: Floats, shares: tuple[float, ...]) -> list[float]:
        order = np.argsort(of)
        below = np.cumsum(self.weight[order])
        sorted_ = of[order]
        return [float(sorted_[min(int(np.searchsorted(below, share)), len(of) - 1)]) for share in shares]


def possible(marks: Marks, slips: Marks, distances: Floats, leaves: int, figures: Figures) -> Arcs:
    """What marks from the orifice on leave possible; `leaves` is the one where the canal leaves its axis."""
    fit = _Fit(marks, slips, distances - distances[leaves], leaves, math.radians(figures["bends.corner_deg"]))
    wide = fit.length * (np.arange(_PLACES) + 0.5) / _PLACES
    weight = fit.at(wide)[2]
    near = wide[weight > _LIKELY * weight.max()]
    apart = fit.length / _PLACES
    least, most = max(near[0] - apart, apart / 2), min(near[-1] + apart, fit.length - apart / 2)
    close = np.linspace(least, most, _PLACES)
    middle, spread, weight = fit.at(close)
    drawn = np.einsum("pij,dj->pdi", np.linalg.cholesky(spread), _normal_pairs()) + middle[:, None, :]
    first, second = drawn[..., 0].ravel(), drawn[..., 1].ravel()
    double = figures["bends.double_before"]
    # Drawn to either side, one half of them bend to both.
    weight = np.repeat(weight, _DRAWN) * np.where(first * second < 0, double, 1 - double)
    return Arcs(
        first=first, second=second, passes=np.repeat(close, _DRAWN), length=fit.length, weight=weight / weight.sum()
    )


def _normal_pairs() -> Floats:
    """Pairs that are spread as two normal numbers are, always the same. Shape (drawn, 2)."""
    even = (0.5 + np.outer(np.arange(1, _DRAWN + 1), [1 / _SPREADS, 1 / _SPREADS**2])) % 1
    return np.vectorize(NormalDist().inv_cdf)(even)  # type: ignore[no-any-return]


class _Fit:
    """Arcs nearest to the marks, for many places of passing at once."""

    def __init__(self, marks: Marks, slips: Marks, along: Floats, leaves: int, corner_rad: float) -> None:
        self._marks, self._slips, self._along = marks, slips, along
        self.length = float(along[-1])
        way = marks[leaves] - marks[0]
        self._start = np.array([0.0, math.atan2(way[1], way[0]), 0.0, 0.0, 0.0])
        self._leaves = marks[leaves]
        # One over what is usual: nothing is known beforehand of where the axis lies.
        usual = self.length / 2
        self._known = np.array([0.0, 0.0, 1 / corner_rad, usual, usual])

    def at(self, passes: Floats) -> tuple[Floats, Floats, Floats]:
        """Both curvatures, how they are spread (covariance), and how well it fits, for each place of passing."""
        found = np.tile(self._start, (len(passes), 1))
        along = np.tile(self._along, (len(passes), 1))
        for _ in range(_ROUNDS):
            off, slope, along = self._off(found, passes, along)
            normal = np.einsum("pni,pnj->pij", slope, slope) + np.diag(self._known**2)
            pull = np.einsum("pni,pn->pi", slope, off) + self._known**2 * (found - self._start)
            found = found - np.linalg.solve(normal, pull[..., None])[..., 0]
        off, slope, along = self._off(found, passes, along)
        spread = np.linalg.inv(np.einsum("pni,pnj->pij", slope, slope) + np.diag(self._known**2))
        misfit = (off**2).sum(axis=1) + ((self._known * (found - self._start)) ** 2).sum(axis=1)
        weight = np.exp((misfit.min() - misfit) / 2) * np.sqrt(np.linalg.det(spread))
        return found[:, _FIRST:], spread[:, _FIRST:, _FIRST:], weight

    def _off(self, found: Floats, passes: Floats, along: Floats) -> tuple[Floats, Floats, Floats]:
        """How far every mark lies across the curve in its own slips, how that changes, and how far along it lies."""
        places, heading = self._curve(found, passes, along)
        gap = self._marks - places
        along = along + gap[..., 0] * np.cos(heading) + gap[..., 1] * np.sin(heading)
        off = self._across(found, passes, along)
        steps = np.eye(len(self._start)) * _TRIED
        slope = [(self._across(found + step, passes, along) - off) / _TRIED for step in steps]
        return off, np.stack(slope, axis=-1), along

    def _across(self, found: Floats, passes: Floats, along: Floats) -> Floats:
        places, heading = self._curve(found, passes, along)
        gap = self._marks - places
        side = np.stack((-np.sin(heading), np.cos(heading)), axis=-1)
        off: Floats = (gap * side).sum(axis=-1) / np.hypot(*np.moveaxis(side * self._slips, -1, 0))
        return off

    def _curve(self, found: Floats, passes: Floats, along: Floats) -> tuple[Floats, Floats]:
        """Where distances along the curve lie, and which way it runs there."""
        axis = found[:, _HEADING, None]
        side = np.stack((-np.sin(axis), np.cos(axis)), axis=-1)
        begins = self._leaves + found[:, _ACROSS, None, None] * side
        first = np.clip(along, 0.0, passes[:, None])
        second = np.maximum(along - passes[:, None], 0.0)
        bends = found[:, _CORNER, None] + axis
        passed = bends + found[:, _FIRST, None] * passes[:, None]
        places = begins + _arc(axis, 0.0 * axis, np.minimum(along, 0.0))
        places = places + _arc(bends, found[:, _FIRST, None], first) + _arc(passed, found[:, _SECOND, None], second)
        beyond = np.where(second > 0, passed + found[:, _SECOND, None] * second, bends + found[:, _FIRST, None] * first)
        return places, np.where(along <= 0, axis, beyond)


def _arc(heading: Floats, curvature: Floats, length: Floats) -> Floats:
    """From the beginning of an arc to its end. The last axis is across and down."""
    half = curvature * length / 2
    chord = length * np.sinc(half / np.pi)
    way: Floats = np.stack((chord * np.cos(heading + half), chord * np.sin(heading + half)), axis=-1)
    return way
