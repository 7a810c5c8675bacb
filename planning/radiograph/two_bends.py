"""How a canal bends after its axis: all pairs of arcs that fit its marks, each with its weight.

The canal is taken as straight along its axis, then one arc, then another one with no corner between. The second may go
on as the first does; or run straight; or bend more or less to the same side; or bend to the other side. For every place
where the first may pass into the second, the arcs nearest to the marks are found, and around them those that the slips
of the marks leave possible.

Each is weighted by how well it fits (Bayes). Beforehand a usual radius is half the length of the curve, a second bend
to the other side is as rare as published, and the other kinds are equally likely.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from statistics import NormalDist
from typing import Final

import numpy as np
from numpy.typing import NDArray

from planning.foundation.tables import Figures
from planning.radiograph.bend import to_side_rad
from planning.radiograph.line import Marks

Floats = NDArray[np.float64]

_PLACES: Final = 18  # where the first bend may pass into the second: tried over the whole curve, then once more closely
_ROUNDS: Final = 8  # of a fit; it settles sooner
_TRIED: Final = 1e-6  # step of a parameter to see its slope
_LIKELY: Final = 1e-3  # weight against the best below which a place is not looked at closely
_DRAWN: Final = 64  # pairs of curvatures that stand for what a fit leaves possible
_SPREADS: Final = 1.324717957244746  # root of x³ = x + 1: its powers fill a square evenly (Roberts 2018, from memory)
_STRAIGHT: Final = 1e4  # a second arc held so many times closer to none is straight as far as any mark can tell
_ACROSS, _HEADING, _CORNER, _FIRST, _SECOND = range(5)  # parameters of a fit


@dataclass(frozen=True, slots=True)
class _Drawn:
    """Pairs of curvatures, where the one passes into the other, and how likely each is (logarithm)."""

    first: Floats
    second: Floats
    passes: Floats
    likely: Floats


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
        """Share of the pairs whose arcs turn to different sides, each by more than `least_rad`."""
        first, second = self.turns()
        opposite = (first * second < 0) & (np.minimum(abs(first), abs(second)) > least_rad)
        return float(self.weight[opposite].sum())

    def tightest(self, least_rad: float) -> Floats:
        """For every pair the curvature of its tighter arc, among arcs that turn by `least_rad` or more; above 0 to the
        likelier side."""
        curves, turns = np.abs([self.first, self.second]), np.abs(self.turns())
        counts = turns >= np.minimum(turns.max(axis=0), least_rad)
        to_side: Floats = np.sign(self.first) * np.where(counts, curves, 0.0).max(axis=0)
        return to_side * float(np.sign(self.weight @ to_side))

    def mean_passes(self) -> float:
        return float(self.weight @ self.passes)

    def one_way(self) -> Arcs:
        """The pairs that bend to one side only."""
        return self._those(self.first * self.second >= 0)

    def straight_on(self, least_rad: float, sure_share: float) -> Arcs | None:
        """The pairs that turn by more than `least_rad` and then run straight; None where they are not so much likelier
        than one arc to the end."""
        to_end = self.passes >= self.length
        straight = (self.second == 0) & ~to_end & (abs(self.turns()[0]) > least_rad)
        before, at_end = self.weight[straight].sum(), self.weight[to_end].sum()
        return self._those(straight) if before > sure_share * (before + at_end) else None

    def _those(self, which: NDArray[np.bool_]) -> Arcs:
        weight = self.weight[which]
        return replace(
            self,
            first=self.first[which],
            second=self.second[which],
            passes=self.passes[which],
            weight=weight / weight.sum(),
        )

    def quantiles(self, of: Floats, shares: tuple[float, ...]) -> list[float]:
        order = np.argsort(of)
        below = np.cumsum(self.weight[order])
        sorted_ = of[order]
        return [float(sorted_[min(int(np.searchsorted(below, share)), len(of) - 1)]) for share in shares]


def possible(marks: Marks, slips: Marks, distances: Floats, leaves: int, figures: Figures) -> Arcs:
    """The pairs of arcs that fit the marks from the orifice on. At the mark `leaves` the canal leaves its axis."""
    fit = _Fit(marks, slips, distances - distances[leaves], leaves, math.radians(figures["bends.corner_deg"]))
    to_other = figures["bends.double_before"]
    kinds = (
        _passing(fit, straight=False),
        _passing(fit, straight=True),
        _drawn(fit, np.array([fit.length]), straight=True),
    )
    like = (1 - to_other) / len(kinds)
    # The first kind is drawn to both sides alike, so half of it bends to both: each half gets its share twice.
    either = np.where(kinds[0].first * kinds[0].second < 0, 2 * to_other, 2 * like)
    return _together(kinds, (either, like, like), fit.length)


def _passing(fit: _Fit, *, straight: bool) -> _Drawn:
    """Pairs for every place where the first arc may pass into the second, or into a straight line."""
    wide = fit.length * (np.arange(_PLACES) + 0.5) / _PLACES
    likely = fit.at(wide, straight=straight)[2]
    near = wide[likely > likely.max() + math.log(_LIKELY)]
    apart = fit.length / _PLACES
    # One place more on either side, as the best may lie between two that were tried; but never an end of the curve.
    least, most = max(near[0] - apart, apart / 2), min(near[-1] + apart, fit.length - apart / 2)
    return _drawn(fit, np.linspace(least, most, _PLACES), straight=straight, share=(most - least) / fit.length)


def _drawn(fit: _Fit, passes: Floats, *, straight: bool, share: float = 1.0) -> _Drawn:
    """Pairs of curvatures for every place. `share` is the part of the curve over which these places lie."""
    middle, spread, likely = fit.at(passes, straight=straight)
    drawn = np.einsum("pij,dj->pdi", np.linalg.cholesky(spread), _normal_pairs()) + middle[:, None, :]
    # Each place stands for its part of the curve and each draw for its part of that place: a closer look must not count
    # for more.
    likely = np.repeat(likely + math.log(share / (len(passes) * _DRAWN)), _DRAWN)
    first, second = drawn[..., 0].ravel(), drawn[..., 1].ravel()
    return _Drawn(first, 0 * second if straight else second, np.repeat(passes, _DRAWN), likely)


def _together(kinds: tuple[_Drawn, ...], shares: tuple[Floats | float, ...], length: float) -> Arcs:
    """All kinds of pairs in one, each kind weighted by the share that it has beforehand."""
    likely = np.concatenate([each.likely + np.log(share) for each, share in zip(kinds, shares, strict=True)])
    weight = np.exp(likely - likely.max())
    first, second, passes = (
        np.concatenate([getattr(each, name) for each in kinds]) for name in ("first", "second", "passes")
    )
    return Arcs(first=first, second=second, passes=passes, length=length, weight=weight / weight.sum())


def _normal_pairs() -> Floats:
    """Pairs spread like two independent normal numbers, always the same ones. Shape (drawn, 2)."""
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
        # A fit that starts from a straight line does not find a large bend: this one starts from one arc to the end.
        self._one_arc = self._start.copy()
        self._one_arc[_FIRST] = 2 * to_side_rad(marks[: leaves + 1], marks[leaves], marks[-1]) / self.length
        # One over each parameter's usual size; 0 where nothing is known beforehand, as of the axis.
        usual = self.length / 2
        self._known = np.array([0.0, 0.0, 1 / corner_rad, usual, usual])

    def at(self, passes: Floats, *, straight: bool) -> tuple[Floats, Floats, Floats]:
        """Both curvatures, how they are spread (covariance), and how likely it is (logarithm), for each place.

        The best fit in Gauss-Newton steps, and around it a normal distribution (Laplace's
        approximation: Tierney & Kadane 1986, from memory).
        """
        known = self._known * np.array([1.0, 1.0, 1.0, 1.0, _STRAIGHT if straight else 1.0])
        curves = np.tile(self._one_arc if straight else self._start, (len(passes), 1))
        along = np.tile(self._along, (len(passes), 1))
        for _ in range(_ROUNDS):
            off, slope, along = self._off(curves, passes, along)
            normal = np.einsum("pni,pnj->pij", slope, slope) + np.diag(known**2)
            # Each parameter is drawn to its usual value as well, the more so the better that is known.
            pull = np.einsum("pni,pn->pi", slope, off) + known**2 * (curves - self._start)
            curves = curves - np.linalg.solve(normal, pull[..., None])[..., 0]
        off, slope, along = self._off(curves, passes, along)
        spread = np.linalg.inv(np.einsum("pni,pnj->pij", slope, slope) + np.diag(known**2))
        misfit = (off**2).sum(axis=1) + ((known * (curves - self._start)) ** 2).sum(axis=1)
        # With the norm of what was known beforehand: a fit whose second arc is held straight differs in it from one
        # whose arc is free.
        likely = (np.linalg.slogdet(spread)[1] - misfit) / 2 + np.log(known[_CORNER:]).sum()
        return curves[:, _FIRST:], spread[:, _FIRST:, _FIRST:], likely

    def _off(self, curves: Floats, passes: Floats, along: Floats) -> tuple[Floats, Floats, Floats]:
        """How far every mark lies across the curve in its own slips, how that changes, and how far along it lies."""
        places, heading = self._curve(curves, passes, along)
        gap = self._marks - places
        along = along + gap[..., 0] * np.cos(heading) + gap[..., 1] * np.sin(heading)
        # All steps in one call, the first of them none: with so few marks the calls would take most of the time.
        steps = np.vstack((np.zeros(len(self._start)), np.eye(len(self._start)) * _TRIED))
        off, *stepped = self._across(curves + steps[:, None, :], passes, along)
        return off, np.stack([(each - off) / _TRIED for each in stepped], axis=-1), along

    def _across(self, curves: Floats, passes: Floats, along: Floats) -> Floats:
        places, heading = self._curve(curves, passes, along)
        gap = self._marks - places
        side = np.stack((-np.sin(heading), np.cos(heading)), axis=-1)
        off: Floats = (gap * side).sum(axis=-1) / np.hypot(*np.moveaxis(side * self._slips, -1, 0))
        return off

    def _curve(self, curves: Floats, passes: Floats, along: Floats) -> tuple[Floats, Floats]:
        """Where distances along the curve lie, and which way it runs there.

        Shape of `curves` (..., places, parameters), of `along` (places, marks).
        """
        axis = curves[..., _HEADING, None]
        side = np.stack((-np.sin(axis), np.cos(axis)), axis=-1)
        begins = self._leaves + curves[..., _ACROSS, None, None] * side
        first = np.clip(along, 0.0, passes[:, None])
        second = np.maximum(along - passes[:, None], 0.0)
        first_curve, second_curve = curves[..., _FIRST, None], curves[..., _SECOND, None]
        bends = curves[..., _CORNER, None] + axis
        passed = bends + first_curve * passes[:, None]
        places = begins + _arc(axis, 0.0 * axis, np.minimum(along, 0.0))
        places = places + _arc(bends, first_curve, first) + _arc(passed, second_curve, second)
        beyond = np.where(second > 0, passed + second_curve * second, bends + first_curve * first)
        return places, np.where(along <= 0, axis, beyond)


def _arc(heading: Floats, curvature: Floats, length: Floats) -> Floats:
    """The way from the beginning of an arc to its end, across and down in the last axis."""
    half = curvature * length / 2
    chord = length * np.sinc(half / np.pi)
    way: Floats = np.stack((chord * np.cos(heading + half), chord * np.sin(heading + half)), axis=-1)
    return way
