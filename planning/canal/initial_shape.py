"""How wide a canal is before anything has been in it: measured, else by the tooth's published widths."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from planning.anatomy import like
from planning.contract.canal_facts import WidthInput
from planning.contract.expected import CanalWidth, InitialShape
from planning.contract.plan_input import PlanInput
from planning.foundation import tables
from planning.foundation.bounds import refuse_outside
from planning.foundation.errors import CanalsDoNotFit, PlanningError
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import HUNDREDTH_MM
from planning.techniques.technique import Setting

_Level = tuple[float, float, float]
"""(height above the end of the preparation mm, narrow mm, wide mm)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Widths:
    """Widths of a canal by distance from the end of its preparation, from there upwards."""

    levels: tuple[WidthInput, ...]
    source: str
    know: str
    widening: float
    """How its narrow side widens from the last level up to the orifice [mm/mm]."""
    wide_widening: float
    """The same of its wide side."""
    end_sd_mm: float | None = None
    """Published spread of the width at its end; none where none is known."""
    rows: tuple[str, ...] = ()
    """Keys of the figures used; none for widths that were entered."""
    end_rows: tuple[str, str] = ("", "")
    """Those of the lowest level, narrow and wide side; empty for widths that were entered."""


def widths_of(plan_input: PlanInput, number: int, figures: Figures, *, beyond_mm: float) -> Widths | None:
    """The widths of canal `number`: its own, a training block's, or published; None where none are known.

    Its own are told from the end of the preparation; published ones are counted from the apex, which lies `beyond_mm`
    beyond that. Raises CanalsDoNotFit for widths that cannot be right.
    """
    canal = plan_input.canals[number]
    block = plan_input.setting is Setting.BLOCK
    if canal.widths:
        try:
            refuse_widths(canal.widths, canal.name)
        except PlanningError as refusal:
            raise refusal.below("canals", number, "widths") from None
        widening = figures["canal.block_widening" if block else "canal.widening"]
        # A canal that was entered as round stays round up to the orifice.
        flares = not block and canal.widths[-1].wide_mm is not None
        return Widths(
            levels=canal.widths,
            source="entered for this canal",
            know="programme rule",
            widening=widening,
            wide_widening=figures["canal.wide_widening"] if flares else widening,
        )
    if block:
        tip, widens = figures.row("final.block_tip"), figures.row("canal.block_widening")
        end = WidthInput(from_end_mm=0.0, narrow_mm=tip.value * HUNDREDTH_MM)
        return Widths(
            levels=(end,),
            source=widens.source,
            know=widens.know,
            widening=widens.value,
            wide_widening=widens.value,
            end_rows=(tip.key, tip.key),
        )
    return _published(plan_input, canal.name, beyond_mm, figures)


def initial_shape_of(widths: Widths, orifice_mm: float, end_mm: float) -> InitialShape | None:
    """The canal in depths from the reference point, orifice first; None where its orifice is no higher than its end."""
    if orifice_mm >= end_mm:
        return None
    height = end_mm - orifice_mm
    levels = [(w.from_end_mm, w.narrow_mm, w.narrow_mm if w.wide_mm is None else w.wide_mm) for w in widths.levels]
    if levels[0][0] > 0:
        # Below the lowest level nothing is known: as wide as there.
        levels.insert(0, (0.0, *levels[0][1:]))
    # What lies higher than the orifice is outside the canal.
    inside = [level for level in levels if level[0] < height]
    inside.append(_at_orifice(levels, height, widths))
    points = tuple(
        CanalWidth(from_reference_mm=round(end_mm - up, 2), narrow_mm=round(narrow, 3), wide_mm=round(wide, 3))
        # Levels go from the end upwards, a shape from the orifice down.
        for up, narrow, wide in reversed(inside)
    )
    return InitialShape(points=points, source=widths.source, know=widths.know)


def _at_orifice(levels: Sequence[_Level], height: float, widths: Widths) -> _Level:
    """The widths at the orifice: between the two levels around it, else widened on from the highest level."""
    last, narrow, wide = levels[-1]
    if height <= last:
        return _between(levels, height)
    return height, narrow + widths.widening * (height - last), wide + widths.wide_widening * (height - last)


def _between(levels: Sequence[_Level], height: float) -> _Level:
    """The widths at a height that lies between two levels, by straight line."""
    for (below, n0, w0), (above, n1, w1) in pairwise(levels):
        if height <= above:
            share = (height - below) / (above - below)
            return height, n0 + share * (n1 - n0), w0 + share * (w1 - w0)
    return levels[-1]


def _published(plan_input: PlanInput, name: str, beyond_mm: float, figures: Figures) -> Widths | None:
    charted = {canal.name for canal in plan_input.canals}
    tooth = like(plan_input.tooth)
    row = next(
        (
            row
            for row in tables.rows("canal_widths")
            if tooth in row["teeth"].split() and name in row["canals"].split() and row["without"] not in charted
        ),
        None,
    )
    if row is None:
        return None
    mm = [column.split("_")[1] for column in row if column.startswith("bl_")]
    widening, wide_widening = figures.row("canal.widening"), figures.row("canal.wide_widening")
    used = [widening, wide_widening]

    def across(up: float, table: str, from_row: Mapping[str, str], *columns: str) -> tuple[_Level, tuple[str, str]]:
        cells = [figures.cell(table, from_row, column, tooth, from_row["canals"]) for column in columns]
        used.extend(cells)
        # Which of the two directions is the narrow one differs from level to level.
        narrow, wide = sorted(cells, key=lambda cell: cell.value)
        return (round(up, 3), narrow.value, wide.value), (narrow.key, wide.key)

    # Published from the apex, which lies beyond the end of the preparation: from that end they are so much nearer.
    counted = [across(float(up) - beyond_mm, "canal_widths", row, f"bl_{up}_mm", f"md_{up}_mm") for up in mm]
    # What lies past the end tells of it only where nothing is published of the end itself.
    past = [each for each in counted if each[0][0] <= 0]
    levels, end_rows = [level for level, _ in counted if level[0] > 0], counted[max(0, len(past) - 1)][1]
    end = tables.row_for("foramina", tooth, name)
    source, sd = row["source"], None
    if end is not None:
        at_end, end_rows = across(0.0, "foramina", end, "narrow_mm", "wide_mm")
        levels.insert(0, at_end)
        source, sd = f"{source}; at the end {end['source']}", float(end["narrow_sd_mm"])
    elif past:
        _, narrow, wide = _between([past[-1][0], *levels], 0.0)
        levels.insert(0, (0.0, narrow, wide))
    return Widths(
        levels=tuple(WidthInput(from_end_mm=up, narrow_mm=narrow, wide_mm=wide) for up, narrow, wide in levels),
        source=source,
        know=row["know"],
        widening=widening.value,
        wide_widening=wide_widening.value,
        end_sd_mm=sd,
        rows=tuple(cell.key for cell in used),
        end_rows=end_rows,
    )


def refuse_widths(widths: Sequence[WidthInput], canal: str) -> None:
    """Raises OutOfBounds and CanalsDoNotFit, the path at the first of the widths that cannot be right."""
    refuse_outside(tuple(widths), of=canal)
    # Below every height, so that the first level may lie at the end itself, which is 0.
    before = -1.0
    for place, width in enumerate(widths):
        wide = width.narrow_mm if width.wide_mm is None else width.wide_mm
        wrong: Mapping[str, bool] = {
            "from_end_mm": width.from_end_mm <= before,
            "wide_mm": wide < width.narrow_mm,
        }
        for field, is_wrong in wrong.items():
            if is_wrong:
                reason = f"{canal}: widths are listed from the end upwards, the wide one not below the narrow one."
                raise CanalsDoNotFit(reason=reason, at=(place, field))
        before = width.from_end_mm
