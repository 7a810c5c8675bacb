"""Where cones, pluggers and spreaders rest in a prepared canal, which cone is proposed, and what has to be filled."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from planning.canal.profile import Line, volume_mm3
from planning.contract.expected import InitialShape
from planning.contract.obturation import FillingItem, Obturation, Rest, Volumes
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import HUNDREDTH_MM

APART_MM = 1e-9  # rounding error of doubles
DIGITS = 2  # decimals of depths and volumes: a hundredth of a millimetre


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """A canal ready to be filled, depths from the reference point."""

    initial_shape: Line
    """Before anything was in it; empty where its widths are not known."""
    prepared: Line
    """Reference point side first, down to the end of the preparation."""
    size: int
    taper: int
    """Of the final instrument."""
    oval: InitialShape | None = None
    """The canal's widths to both sides; None where they are not known, or it is round."""
    held: bool = True
    """False where the end is wider than the final size: it then holds no cone of that size."""

    @property
    def end_mm(self) -> float:
        return self.prepared[-1][0]


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What first holds something that is led into a canal."""

    depth_mm: float
    """Of its tip; beyond the canal's end where it passes, without bound where nothing of it is as wide as the canal."""
    at_mm: float
    """The place that holds it."""
    wide_mm: float
    """How wide the canal is there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Filling:
    """A canal's filling, and what its numbers come from."""

    obturation: Obturation
    filled: Filled
    items: tuple[FillingItem, ...]
    """Those that the rests are of."""
    held: tuple[Held, ...]
    """What holds each of them by its name."""
    master: FillingItem | None
    prepared_mm3: float
    """Before it is rounded."""
    cone_mm3: float | None


def filling(items: Sequence[FillingItem], canal: Filled, figures: Figures) -> Filling:
    """Where every item of the kit rests, the proposed master cone, and volumes; cones first, then by size."""
    # By the alphabet cones come first.
    ordered = tuple(sorted(items, key=lambda item: (item.kind, item.size, item.taper)))
    held = tuple(_held(item, canal) for item in ordered)
    rests = tuple(rest(item, canal, figures, by_name) for item, by_name in zip(ordered, held, strict=True))
    master = _master(ordered, rests, canal)
    prepared_mm3 = volume_mm3(canal.prepared, canal.oval)
    cone_mm3 = None if master is None else _inside_mm3(master, canal)
    obturation = Obturation(
        master_cone=None if master is None else master.name,
        rests=rests,
        volumes=_volumes(canal, prepared_mm3, cone_mm3),
    )
    return Filling(
        obturation=obturation,
        filled=canal,
        items=ordered,
        held=held,
        master=master,
        prepared_mm3=prepared_mm3,
        cone_mm3=cone_mm3,
    )


def _held(item: FillingItem, canal: Filled, wider_mm: float = 0.0) -> Held:
    return held(item.size * HUNDREDTH_MM + wider_mm, item.taper * HUNDREDTH_MM, canal.prepared)


def longest_mm(canal: Filled, figures: Figures) -> float:
    """What is held nowhere goes no deeper than it is long, or, in a longer canal, than to the end."""
    return max(figures["filling.length"], canal.end_mm)


def rest(item: FillingItem, canal: Filled, figures: Figures, by_name: Held | None = None) -> Rest:
    """Where one item comes to rest: by its name, and as wide and as narrow as the standard lets it be."""
    within, longest = _tolerance_mm(item, figures), longest_mm(canal, figures)
    deepest, widest, narrowest = (
        min(longest, each.depth_mm)
        for each in (by_name or _held(item, canal), _held(item, canal, within), _held(item, canal, -within))
    )
    # A wider one is held higher up, so the widest that its name allows is the first to bind.
    short, earliest, latest = (canal.end_mm - at for at in (deepest, widest, narrowest))
    fits, says = _judged(item, short, earliest, latest, figures)
    return Rest(
        kind=item.kind,
        name=item.name,
        rests_mm=round(deepest, DIGITS),
        short_mm=round(short, DIGITS),
        earliest_short_mm=round(earliest, DIGITS),
        fits=fits,
        says=says,
    )


def rest_mm(tip_mm: float, taper: float, canal: Line) -> float:
    """Depth [mm] of the tip where something of this shape, led in from above, is first held."""
    return held(tip_mm, taper, canal).depth_mm


def held(tip_mm: float, taper: float, canal: Line) -> Held:
    """What first holds something of this shape, led in from above.

    At a place x, `wide` across, it is held with its tip (wide - tip)/taper deeper, or at x itself where the tip does
    not pass. The first place to hold it decides. Between two corners the deeper of the two is convex in x, so it is
    least at a corner or where the canal is as wide as the tip.
    """
    # From these places on the canal is narrower than the tip.
    narrower = [
        (a + (b - a) * (wide_a - tip_mm) / (wide_a - wide_b), wide_b)
        for (a, wide_a), (b, wide_b) in pairwise(canal)
        if wide_b < tip_mm <= wide_a
    ]
    places = (*canal, *narrower)
    if taper:
        holding = ((x + max(0.0, wide - tip_mm) / taper, x, wide) for x, wide in places)
    else:
        holding = ((x, x, wide) for x, wide in places if wide < tip_mm)
    depth, at, wide = min(holding, default=(math.inf, math.inf, 0.0))
    return Held(depth_mm=depth, at_mm=at, wide_mm=wide)


def _tolerance_mm(item: FillingItem, figures: Figures) -> float:
    """How much wider or narrower than its name an item may be."""
    if item.kind != "cone":
        return figures["filling.tolerance_tool"]
    small = item.size <= figures["filling.small_upto"]
    return figures["filling.tolerance_small" if small else "filling.tolerance_large"]


# --- what it means -----------------------------------------------------------------------------------------------


def _judged(item: FillingItem, short: float, earliest: float, latest: float, figures: Figures) -> tuple[bool, str]:
    match item.kind:
        case "cone":
            return _cone(item, short, earliest, latest, figures)
        case "plugger":
            return _plugger(short, figures)
        case "spreader":
            return _spreader(short, figures)


def _cone(item: FillingItem, short: float, earliest: float, latest: float, figures: Figures) -> tuple[bool, str]:
    """Whether a cone fits, and a sentence on it. It fits if by its name it rests near enough to the end, and the end
    lies within its tolerance.
    """
    near = figures["filling.seats_within"]
    # First what is true of every cone of this name within the tolerance, then what is true by its name alone.
    if latest > APART_MM:
        return False, f"Binds at least {_said(latest)} mm short: take a smaller one."
    if earliest < -APART_MM:
        if not item.taper:
            return False, "Loose: passes the end."
        return False, f"Loose: take a larger one, or cut {_said(-short)} mm off its tip and try again."
    if abs(short) <= near + APART_MM:
        return True, f"Rests at the end, within its tolerance up to {_said(max(0.0, earliest))} mm short: check by fit."
    if short > 0:
        return False, f"Binds {_said(short)} mm short by its name; a thin one may go to the end."
    return (
        False,
        f"Passes the end by {_said(-short)} mm by its name; a thick one may hold. Or cut that much off its tip.",
    )


def _plugger(short: float, figures: Figures) -> tuple[bool, str]:
    nearest, farthest = figures["filling.plugger_nearest"], figures["filling.plugger_farthest"]
    if short > farthest + APART_MM:
        return False, f"Binds {_said(short)} mm from the end: too far up."
    if short < nearest - APART_MM:
        return False, f"Binds nearer than {nearest:g} mm from the end: take a larger one."
    return True, f"Binds {_said(short)} mm from the end: set its stop short of that."


def _spreader(short: float, figures: Figures) -> tuple[bool, str]:
    nearest, farthest = figures["filling.spreader_nearest"], figures["filling.spreader_farthest"]
    if short > farthest + APART_MM:
        return False, f"Binds {_said(short)} mm from the end: take a finer one."
    return True, f"Goes as near as it should: set its stop {_said(max(short, nearest))} mm from the end."


def _said(mm: float) -> str:
    return f"{round(mm, DIGITS):g}"


def _master(items: Sequence[FillingItem], rests: Sequence[Rest], canal: Filled) -> FillingItem | None:
    """The cone of the final size and taper if it fits; else the one that rests nearest to the end, its taper nearest to
    the final one, the smaller of two."""
    if not canal.held:
        return None
    fitting = [(item, at) for item, at in zip(items, rests, strict=True) if item.kind == "cone" and at.fits]

    def rank(pair: tuple[FillingItem, Rest]) -> tuple[bool, float, int, int]:
        item, at = pair
        own = (item.size, item.taper) == (canal.size, canal.taper)
        return not own, abs(at.short_mm), abs(item.taper - canal.taper), item.size

    return min(fitting, key=rank)[0] if fitting else None


def _volumes(canal: Filled, prepared_mm3: float, cone_mm3: float | None) -> Volumes:
    return Volumes(
        before_mm3=round(volume_mm3(canal.initial_shape, canal.oval), DIGITS) if canal.initial_shape else None,
        prepared_mm3=round(prepared_mm3, DIGITS),
        cone_mm3=None if cone_mm3 is None else round(cone_mm3, DIGITS),
        to_fill_mm3=max(0.0, round(prepared_mm3 - (cone_mm3 or 0.0), DIGITS)),
    )


def _inside_mm3(cone: FillingItem, canal: Filled) -> float:
    """The cone's part between orifice and end, standing at the end."""
    tip, taper = cone.size * HUNDREDTH_MM, cone.taper * HUNDREDTH_MM
    at = min(canal.end_mm, rest_mm(tip, taper, canal.prepared))
    orifice = canal.prepared[0][0]
    return volume_mm3(((orifice, tip + taper * (at - orifice)), (at, tip)))
