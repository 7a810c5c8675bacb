"""The depth board as vectors on paper: planned as an outline, done filled with grey."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from cases.exports.board import NOTE_PX, DrawnCanal, Layout, lay_out, lines, side_of
from cases.exports.sheet import BASELINE, Sheet

MM_PER_PX = 25.4 / 96
PT_PER_PX = 0.75
NAME_PX, NUMBER_PX, AXIS_PX = 16, 15, 12
NAME_AT, REFERENCE_AT, NUMBER_BELOW, LINE_PX, FIRST_NOTE_PX = 15, 29, 17, 13, 14
FIFTH = 5
DONE_GREY, GRID_GREY, INK = 205, 200, 0
HAIR_MM, LINE_MM, END_MM = 0.15, 0.3, 0.9
DASH_MM = 0.9
END_SHARE, MOST_END_PX = 0.38, 40


def draw(sheet: Sheet, canals: Sequence[DrawnCanal], *, width_mm: float, height_mm: float) -> Layout:
    """Draws from where the sheet stands, and leaves it below the board; the scales that were used."""
    layout = lay_out(width_mm / MM_PER_PX, height_mm / MM_PER_PX, canals)
    pen = _Pen(sheet, sheet.l_margin, sheet.y)
    _axis(pen, layout, len(canals))
    for index, canal in enumerate(canals):
        _shape(pen, layout, canals, index)
        _head(pen, layout, canal, index)
    sheet.set_draw_color(INK)
    sheet.set_line_width(HAIR_MM)
    sheet.set_xy(sheet.l_margin, pen.y_mm + height_mm)
    return layout


@dataclass(frozen=True, slots=True)
class _Pen:
    """Draws in pixels from a corner on."""

    sheet: Sheet
    x_mm: float
    y_mm: float

    def point(self, x: float, y: float) -> tuple[float, float]:
        return self.x_mm + x * MM_PER_PX, self.y_mm + y * MM_PER_PX

    def line(
        self, x1: float, x2: float, y1: float, y2: float, *, thick_mm: float = HAIR_MM, dash: bool = False
    ) -> None:
        self.sheet.set_line_width(thick_mm)
        if dash:
            self.sheet.set_dash_pattern(dash=DASH_MM, gap=DASH_MM)
        self.sheet.line(*self.point(x1, y1), *self.point(x2, y2))
        if dash:
            self.sheet.set_dash_pattern()

    def polygon(self, points: Sequence[tuple[float, float]], *, filled: bool) -> None:
        self.sheet.set_line_width(LINE_MM)
        if filled:
            self.sheet.set_fill_color(DONE_GREY)
        else:
            self.sheet.set_dash_pattern(dash=DASH_MM, gap=DASH_MM)
        self.sheet.polygon([self.point(x, y) for x, y in points], style="DF" if filled else "D")
        self.sheet.set_dash_pattern()
        self.sheet.set_fill_color(INK)

    def text(self, x: float, y: float, text: str, size_px: float, *, bold: bool = False, end: bool = False) -> None:
        """A line with its middle, or its end, at `x` and its foot at `y`, on white."""
        sheet, height_mm = self.sheet, size_px * MM_PER_PX
        spelt = sheet.faces.spelt(text)
        sheet.use(size_px * PT_PER_PX, "B" if bold else "")
        width_mm = sheet.width_mm(spelt)
        x_mm, foot_mm = self.point(x, y)
        left_mm = x_mm - (width_mm if end else width_mm / 2)
        sheet.set_fill_color(255)
        sheet.rect(left_mm, foot_mm - height_mm * BASELINE, width_mm, height_mm, style="F")
        sheet.set_fill_color(INK)
        sheet.put(left_mm, foot_mm - height_mm * BASELINE, spelt, height_mm)


def _axis(pen: _Pen, layout: Layout, columns: int) -> None:
    right = layout.gutter + layout.column * columns
    for depth_mm in range(int(layout.deepest_mm) + 1):
        y, fifth = layout.y(depth_mm), depth_mm % FIFTH == 0
        if fifth:
            pen.sheet.set_draw_color(GRID_GREY if depth_mm else INK)
            pen.line(layout.gutter, right, y, y, thick_mm=HAIR_MM if depth_mm else LINE_MM)
            pen.sheet.set_draw_color(INK)
            pen.text(layout.gutter - 11, y + 4, str(depth_mm), AXIS_PX, end=True)
        pen.line(layout.gutter - (8 if fifth else 4), layout.gutter, y, y)


def _shape(pen: _Pen, layout: Layout, canals: Sequence[DrawnCanal], index: int) -> None:
    canal, side = canals[index], side_of(canals, index)
    done = layout.profile(index, canal.done, canal.end_mm, side)
    planned = layout.profile(index, canal.planned, canal.planned_end_mm, side)
    if done:
        pen.polygon(done, filled=True)
    if planned:
        pen.polygon(planned, filled=False)
    centre, half = layout.centre(index), min(layout.column * END_SHARE, MOST_END_PX)
    if canal.planned_end_mm is not None and canal.planned_end_mm != canal.end_mm:
        y = layout.y(canal.planned_end_mm)
        pen.line(centre - half, centre + half, y, y, thick_mm=LINE_MM, dash=True)
    if canal.end_mm is None:
        return
    middle, y = centre + layout.lean(canal.end_mm, canal.end_mm, side), layout.y(canal.end_mm)
    pen.line(middle - half, middle + half, y, y, thick_mm=END_MM, dash=canal.joins is not None)


def _head(pen: _Pen, layout: Layout, canal: DrawnCanal, index: int) -> None:
    """The canal's name and reference point above it, its number and notes under its end."""
    x, room = layout.centre(index), layout.column - 2
    pen.text(x, NAME_AT, canal.name, NAME_PX, bold=True)
    for number, line in enumerate(lines(canal.reference_point, NOTE_PX, room)):
        pen.text(x, REFERENCE_AT + number * LINE_PX, line, NOTE_PX)
    if canal.end_mm is None:
        pen.text(x, layout.y(0) + 28, "no length yet", NOTE_PX)
        return
    y = layout.y(canal.end_mm) + NUMBER_BELOW
    pen.text(x, y, f"{canal.end_mm:.1f}", NUMBER_PX, bold=True)
    notes = (*canal.notes, *([f"joins {canal.joins}"] if canal.joins else []))
    for number, line in enumerate(each for note in notes for each in lines(note, NOTE_PX, room)):
        pen.text(x, y + FIRST_NOTE_PX + number * LINE_PX, line, NOTE_PX)
