"""How large the end of a canal is made: a range with its reasons, never a bare number.

For a student the range is the cautious one: up from a floor that also covers the narrow foramen, to the lower of
two published upper bounds, capped in a curve. What the wider school prepares is told, not proposed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Literal

from planning import tables
from planning.instruments import HUNDREDTH_MM, size_above, sizes
from planning.plan_value import SizeRange, SizeReason
from planning.tables import Figures
from planning.techniques import Setting
from planning.teeth import like


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bound:
    code: str
    size: int
    says: str
    row: str
    source: str
    know: str

    def reason(self, bound: Literal["least", "most"]) -> SizeReason:
        return SizeReason(
            code=self.code,
            bound=bound,
            size=self.size,
            says=self.says,
            row=self.row,
            source=self.source,
            know=self.know,
        )


def advise(tooth_iso: str, canal: str, setting: Setting, curvature_deg: float | None, figures: Figures) -> SizeRange:
    """The range of final sizes for a student, the least of it proposed.

    Where a curve's cap lies below what the foramen asks for, the cap wins, both bounds are the cap, and the
    reasons say so.
    """
    if setting == Setting.BLOCK:
        least, most = _of_block(figures)
    else:
        least, most = _of_tooth(tooth_iso, canal, figures)
    cap = _cap(curvature_deg, figures)
    reasons = [least.reason("least"), most.reason("most")]
    if cap is not None and cap.size < most.size:
        most = cap
        reasons.append(cap.reason("most"))
    if most.size < least.size:
        says = (
            f"The upper bound of {most.size} lies below the {least.size} that the lower one asks for: "
            f"{most.size} stands, and your supervisor decides whether it is enough."
        )
        reasons.append(replace(most, code="bounds-cross", says=says).reason("most"))
        least = most
    return SizeRange(least=least.size, most=most.size, proposed=least.size, reasons=tuple(reasons))


def _of_block(figures: Figures) -> tuple[_Bound, _Bound]:
    tip, up = figures.count("final.block_tip"), figures.count("final.above_first_binder")
    size = size_above(tip, up) or tip
    says = f"At least {size}: {up} sizes above the block's own end of {tip} (common practice)."
    least = _by_figure("block-end", size, says, figures, "final.above_first_binder")
    return least, _unpublished(size, "a training block has no anatomy to go by", figures)


def _of_tooth(tooth_iso: str, canal: str, figures: Figures) -> tuple[_Bound, _Bound]:
    least = _least(tooth_iso, canal, figures)
    published = [row for row in _rows("final_sizes", tooth_iso) if canal in row["canals"].split()]
    if not published:
        return least, _unpublished(least.size, f"no range is published for canal {canal} of this tooth", figures)
    lower, wider = sorted(published, key=lambda row: int(row["most_size"]))
    why = (
        f"At most {lower['most_size']}: the lower of two published upper bounds ({_cited(lower)}). "
        f"The wider school prepares {wider['least_size']} to {wider['most_size']} ({_cited(wider)})."
    )
    return least, _by_row("published-upper", int(lower["most_size"]), why, "final_sizes", lower)


def _least(tooth_iso: str, canal: str, figures: Figures) -> _Bound:
    floor = figures.count("final.floor")
    measured = next((row for row in _rows("foramina", tooth_iso) if canal in row["canals"].split()), None)
    if measured is None:
        says = f"At least {floor}: the floor (final.floor). The foramen of this canal has no measurement here."
        return _by_figure("floor", floor, says, figures, "final.floor")
    narrow_mm = float(measured["narrow_mm"])
    covering = next(size for size in sizes() if size * HUNDREDTH_MM >= narrow_mm)
    told = f"the narrow foramen measures {narrow_mm:.2f} mm on average ({_cited(measured)})"
    if covering > floor:
        return _by_row("narrow-foramen", covering, f"At least {covering}: {told}.", "foramina", measured)
    return _by_figure("floor", floor, f"At least {floor}: the floor (final.floor); {told}.", figures, "final.floor")


def _unpublished(least: int, reason: str, figures: Figures) -> _Bound:
    up = figures.count("final.unpublished_up")
    size = size_above(least, up) or least
    says = f"At most {size}: {up} sizes above the least, as {reason} (common practice)."
    return _by_figure("unpublished", size, says, figures, "final.unpublished_up")


def _cap(curvature_deg: float | None, figures: Figures) -> _Bound | None:
    if curvature_deg is None:
        return None
    for kind in ("severe", "moderate"):
        limit_deg = figures[f"final.{kind}_deg"]
        over = curvature_deg > limit_deg if kind == "severe" else curvature_deg >= limit_deg
        if over:
            cap = figures.count(f"final.{kind}_cap")
            curve = f"the canal curves by {curvature_deg:g}°"
            says = f"Not above {cap} with a taper of .04 or less: {curve} (final.{kind}_cap)."
            return _by_figure("curvature-cap", cap, says, figures, f"final.{kind}_cap")
    return None


def _by_figure(code: str, size: int, says: str, figures: Figures, key: str) -> _Bound:
    figure = figures.row(key)
    return _Bound(code=code, size=size, says=says, row=key, source=figure.source, know=figure.know)


def _by_row(code: str, size: int, says: str, table: str, row: Mapping[str, str]) -> _Bound:
    return _Bound(code=code, size=size, says=says, row=table, source=row["source"], know=row["know"])


def _rows(table: str, tooth_iso: str) -> list[Mapping[str, str]]:
    return [row for row in tables.rows(table) if row["tooth"] == like(tooth_iso)]


def _cited(row: Mapping[str, str]) -> str:
    return f"{row['source']}, {row['know']}"
