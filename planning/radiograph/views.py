"""Two views of one root: which of two lines lies towards the tongue, and a bend's angle in space."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Annotated, Literal

import numpy as np
from numpy.typing import NDArray

from planning.foundation.bounds import within
from planning.foundation.errors import ViewsDoNotFit
from planning.foundation.tables import Figures
from planning.radiograph import spread
from planning.radiograph.values import Between

HALF_TURN_DEG = 180  # two views from opposite sides show the same

Way = Literal["mesial", "distal"]
Side = Literal["buccal", "lingual", "cannot_tell"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """How two lines that lie over each other came apart when the tube moved."""

    tube: Way
    """Where the tube moved from the first view to the second."""
    first_mm: Annotated[float, within("shift")]
    """How far mesial the one line lies of the other in the first view; below 0 it lies distal."""
    second_mm: Annotated[float, within("shift")]
    """The same in the second view."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bends:
    """Schneider's angle of one bend in two views."""

    first_deg: Annotated[float, within("bend_in_view")]
    second_deg: Annotated[float, within("bend_in_view")]
    """Below 0 where it bends to the other side than in the first view."""
    apart_deg: Annotated[float, within("bend_in_view")]
    """How far the tube turned about the tooth's long axis between the views."""
    first_within: Between | None = None
    """The angle with its interval as it was measured, without its sign; None: not known. Then the angle in space has no
    interval either."""
    second_within: Between | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Views:
    """What two views of one root have in common."""

    shift: Shift | None = None
    bends: Bends | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TwoViewsRead:
    one_is: Side | None
    """Where the one line lies against the other; None where no shift was given."""
    why: str
    in_space_deg: float | None
    """None where no bends were given."""
    in_space: Between | None = None
    """The same with its interval; None where an angle came without one."""


def read(views: Views, figures: Figures) -> TwoViewsRead:
    """Which line lies towards the tongue, and the bend's angle in space. Raises ViewsDoNotFit."""
    side, why = (None, "") if views.shift is None else _side(views.shift, figures)
    if views.bends is None:
        return TwoViewsRead(one_is=side, why=why, in_space_deg=None)
    _refuse_unfit(views.bends, figures)
    seen = np.array([views.bends.first_deg, views.bends.second_deg, views.bends.apart_deg])
    space = _in_space_deg(seen)
    within = _within(space, seen, views.bends, figures)
    return TwoViewsRead(one_is=side, why=why, in_space_deg=round(space, spread.DIGITS), in_space=within)


def _side(shift: Shift, figures: Figures) -> tuple[Side, str]:
    """What moves with the tube lies towards the tongue, what moves against it lies towards the cheek."""
    moved = shift.second_mm - shift.first_mm
    if abs(moved) < figures["views.moved_least"]:
        return "cannot_tell", "The lines hardly moved against each other: turn the tube further, and take it again."
    way: Way = "mesial" if moved > 0 else "distal"
    if way == shift.tube:
        return "lingual", f"The tube moved to the {shift.tube} and the line moved with it."
    return "buccal", f"The tube moved to the {shift.tube} and the line moved the other way."


def _refuse_unfit(bends: Bends, figures: Figures) -> None:
    least = figures["views.apart_least"]
    most = HALF_TURN_DEG - least
    if not least <= bends.apart_deg <= most:
        reason = f"views {bends.apart_deg:g}° apart show too nearly the same: {least:g} to {most:g}° can be used."
        raise ViewsDoNotFit(reason=reason, at=("bends", "apart_deg"))
    for name in ("first_deg", "second_deg"):
        if abs(getattr(bends, name)) >= figures["curvature.most_deg"]:
            reason = f"an angle of {getattr(bends, name):g}° cannot be: below {figures['curvature.most_deg']:g}°."
            raise ViewsDoNotFit(reason=reason, at=("bends", name))


def _in_space_deg(seen: NDArray[np.float64]) -> float:
    """Angle [degrees] of a bend seen from two directions about the long axis: both angles and the turn between them.

    Derived: a bend leans tan(angle) sideways for every unit it runs down; a view shows the part of the lean that
    lies in its plane, and two such parts give the whole. At a right angle it is the known sum of the squared tangents.
    """
    first, second, apart = np.radians(seen)
    across = (math.tan(second) - math.tan(first) * math.cos(apart)) / math.sin(apart)
    return math.degrees(math.atan(math.hypot(math.tan(first), across)))


def _within(space: float, seen: NDArray[np.float64], bends: Bends, figures: Figures) -> Between | None:
    """The interval of the angle in space, to first order; None where one of the two angles has none. Raises
    ViewsDoNotFit."""
    offs = []
    for name in ("first_within", "second_within"):
        within: Between | None = getattr(bends, name)
        if within is None or within.most is None:
            return None
        # By the upper half, as the lower one may have been cut off at 0.
        off = (within.most - within.value) / spread.reach_of(figures)
        if not 0 <= off <= figures["views.off_most"]:
            reason = f"an angle that is {off:g}° off says nothing: 0 to {figures['views.off_most']:g}°."
            raise ViewsDoNotFit(reason=reason, at=("bends", name))
        offs.append(off)
    off = spread.from_tapping(_in_space_deg, seen, np.array([*offs, figures["views.apart_spread"]]))
    return spread.rounded(spread.between(space, off, figures), least=0.0)
