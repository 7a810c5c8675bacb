"""Tables on paper: columns of shared width, cells that wrap, heads repeated on every page, a line under each row.

The PDF library's own table measures every letter of every cell twice; here each word is measured once for a document.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest

from cases.exports.sheet import Sheet

PAD_MM, BESIDE_MM = 0.7, 1.4
GREY = 232  # a tint that a copying machine keeps


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    head: str
    width: float
    """As a share of the other columns'."""
    right: bool = False
    """Numbers line up on the right."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    cells: Sequence[str]
    struck: bool = False
    """Was taken back."""


def draw(sheet: Sheet, columns: Sequence[Column], rows: Iterable[Row], *, size_pt: float, line_mm: float) -> None:
    """Draws from where the sheet stands, on as many pages as it takes; a row is parted only where no page holds it."""
    table = _Table(sheet, columns, size_pt, line_mm)
    table.head()
    for row in rows:
        table.row(row)


class _Table:
    def __init__(self, sheet: Sheet, columns: Sequence[Column], size_pt: float, line_mm: float) -> None:
        share_mm = sheet.epw / sum(column.width for column in columns)
        self.sheet, self.columns, self.size_pt, self.line_mm = sheet, columns, size_pt, line_mm
        self.widths_mm = [column.width * share_mm for column in columns]

    def head(self) -> None:
        self._set("B")
        self._part(self._lines([column.head for column in self.columns]), tint=True)

    def row(self, row: Row) -> None:
        style = "S" if row.struck else ""
        self._set(style)
        lines = self._lines(row.cells)
        if self.sheet.will_page_break(self._height_mm(len(lines))):
            self._next_page(style)
        while lines:
            # At least one line, so that a row that no page holds still ends.
            fit = max(1, int((self.sheet.page_break_trigger - self.sheet.y - 2 * PAD_MM) / self.line_mm))
            self._part(lines[:fit])
            lines = lines[fit:]
            if lines:
                self._next_page(style)

    def _next_page(self, style: str) -> None:
        self.sheet.add_page()
        self.head()
        self._set(style)

    def _set(self, style: str) -> None:
        self.sheet.use(self.size_pt, style)

    def _height_mm(self, lines: int) -> float:
        return lines * self.line_mm + 2 * PAD_MM

    def _lines(self, cells: Sequence[str]) -> list[tuple[str, ...]]:
        """The row line by line: one text a column."""
        rooms_mm = [width_mm - 2 * BESIDE_MM for width_mm in self.widths_mm]
        columns = [list(wrapped(self.sheet, cell, room_mm)) for cell, room_mm in zip(cells, rooms_mm, strict=True)]
        return list(zip_longest(*columns, fillvalue=""))

    def _part(self, lines: Sequence[tuple[str, ...]], *, tint: bool = False) -> None:
        """Lines of one row that stand on this page, and the rule below them."""
        sheet, top_mm, height_mm = self.sheet, self.sheet.y, self._height_mm(len(lines))
        if tint:
            sheet.set_fill_color(GREY)
            sheet.rect(sheet.l_margin, top_mm, sheet.epw, height_mm, style="F")
            sheet.set_fill_color(0)
        left_mm = sheet.l_margin
        for column, width_mm, texts in zip(self.columns, self.widths_mm, zip(*lines, strict=True), strict=True):
            for number, text in enumerate(texts):
                if not text:
                    continue
                room_mm = width_mm - 2 * BESIDE_MM - sheet.width_mm(text) if column.right else 0
                x_mm = left_mm + BESIDE_MM + room_mm
                sheet.put(x_mm, top_mm + PAD_MM + number * self.line_mm, text, self.line_mm)
            left_mm += width_mm
        bottom_mm = top_mm + height_mm
        sheet.line(sheet.l_margin, bottom_mm, sheet.l_margin + sheet.epw, bottom_mm)
        sheet.set_xy(sheet.l_margin, bottom_mm)


def wrapped(sheet: Sheet, text: str, room_mm: float) -> Iterator[str]:
    """Lines no wider than the room; a word that is wider is parted between letters."""
    blank_mm = sheet.word_mm(" ")
    for paragraph in text.split("\n"):
        line, long_mm = "", 0.0
        for word in paragraph.split(" "):
            word_mm = sheet.word_mm(word)
            if line and long_mm + blank_mm + word_mm <= room_mm:
                line, long_mm = f"{line} {word}", long_mm + blank_mm + word_mm
                continue
            if line:
                yield line
            *full, line = _parted(sheet, word, room_mm) if word_mm > room_mm else [word]
            long_mm = sheet.word_mm(line) if full else word_mm
            yield from full
        yield line


def _parted(sheet: Sheet, word: str, room_mm: float) -> list[str]:
    parts = [""]
    for letter in word:
        if parts[-1] and sheet.width_mm(parts[-1] + letter) > room_mm:
            parts.append("")
        parts[-1] += letter
    return parts
