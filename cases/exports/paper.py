"""A4 pages in black and white: headings, paragraphs, tables whose heads are repeated, a line on top and one below.

What is printed ends above the foot of a letter sheet, so that it is whole on either.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime

from fpdf.enums import XPos, YPos

from cases.exports import table
from cases.exports.sheet import Sheet
from cases.exports.table import Column, Row
from cases.exports.typefaces import Faces
from planning.contract.plan_value import Severity

MARGIN_MM, TOP_MM = 15, 11
BOX_MM = 2  # between a box and what it holds
END_MM = 271  # ANSI letter is 279.4 mm high, and printers leave some 6 mm of it blank
FOOT_MM, FOOT_LINE_MM, PAGE_NUMBER_MM = 12, 3.4, 22
SMALL_PT, TEXT_PT, HEAD_PT, TITLE_PT = 7.5, 9, 11, 16
SIGN_MM = 2.4
LINE = 1.35  # line height over letter height: reads well in narrow columns
MM_PER_PT = 25.4 / 72


class Paper(Sheet):
    """Pages with one line on top and one below.

    `at` is when they say they were made, `seal` the hash of what they say.
    """

    def __init__(
        self, *, top: str, below: str, seal: str, at: datetime, faces: Faces, text_pt: float = TEXT_PT
    ) -> None:
        super().__init__(faces)
        self.text_pt = text_pt
        self._below_lines: list[str] = []
        self.top, self.below = faces.spelt(top), faces.spelt(below)
        # Stands for the number of pages until they are counted; nobody can have written the hash of what they wrote.
        self.pages_counted = f"{{{seal[:8]}}}"
        self.alias_nb_pages(self.pages_counted)
        # The same content is the same file, whenever it is asked for.
        self.set_creation_date(at)
        self.set_producer("Fourth Canal")
        self.set_margins(MARGIN_MM, TOP_MM)
        self.set_auto_page_break(True, self.h - END_MM + FOOT_MM + 1)

    def header(self) -> None:
        self.use(SMALL_PT)
        self.cell(0, 4, self.top, new_x=XPos.LMARGIN, new_y=YPos.NEXT)
        self.line(MARGIN_MM, self.get_y() + 1, self.w - MARGIN_MM, self.get_y() + 1)
        self.ln(3)

    def footer(self) -> None:
        self.set_y(END_MM - FOOT_MM)
        self.line(MARGIN_MM, self.get_y(), self.w - MARGIN_MM, self.get_y())
        self.ln(1)
        self.use(SMALL_PT)
        top_mm, room_mm = self.get_y(), self.epw - PAGE_NUMBER_MM
        # Parted into lines once, as it is the same on every page.
        self._below_lines = self._below_lines or list(table.wrapped(self, self.below, room_mm))
        for number, line in enumerate(self._below_lines):
            self.put(MARGIN_MM, top_mm + number * FOOT_LINE_MM, line, FOOT_LINE_MM)
        self.set_xy(MARGIN_MM + room_mm, top_mm)
        self.cell(PAGE_NUMBER_MM, FOOT_LINE_MM, f"page {self.page_no()} of {self.pages_counted}")

    def headline(self, text: str) -> None:
        self.use(TITLE_PT, "B")
        self._says(text, TITLE_PT)

    def heading(self, text: str, *, needs_mm: float = 30) -> None:
        """A heading with room below it for the beginning of what it heads."""
        if self.will_page_break(needs_mm):
            self.add_page()
        self.ln(2)
        self.use(HEAD_PT, "B")
        self._says(text, HEAD_PT)

    def paragraph(self, text: str, *, bold: bool = False, boxed: bool = False) -> None:
        self.use(self.text_pt, "B" if bold else "")
        self._says(text, self.text_pt, boxed=boxed)

    def signed(self, sign: Severity, text: str) -> None:
        """A line that begins with a sign: a square for what stops, a triangle for a caution, else a dot."""
        self.use(self.text_pt)
        line_mm = self.text_pt * MM_PER_PT * LINE
        beside_mm = SIGN_MM + 2 * BOX_MM
        lines = list(table.wrapped(self, self.faces.spelt(text), self.epw - beside_mm))
        if self.will_page_break(len(lines) * line_mm):
            self.add_page()
        left, top, size = self.l_margin + self.c_margin, self.y + (line_mm - SIGN_MM) / 2, SIGN_MM
        if sign is Severity.STOP:
            self.rect(left, top, size, size, style="F")
        elif sign is Severity.CAUTION:
            self.polygon([(left, top + size), (left + size, top + size), (left + size / 2, top)], style="F")
        else:
            self.circle(left + size / 2, top + size / 2, size / 4, style="F")
        for number, line in enumerate(lines):
            self.put(self.l_margin + beside_mm, self.y + number * line_mm, line, line_mm)
        self.set_xy(self.l_margin, self.y + len(lines) * line_mm)

    def caption(self, x_mm: float, y_mm: float, text: str) -> None:
        """A small line with its left top there."""
        self.use(SMALL_PT)
        self.put(x_mm, y_mm, self.faces.spelt(text), SMALL_PT * MM_PER_PT * LINE)

    def table_of(self, columns: Sequence[Column], rows: Iterable[Row]) -> None:
        """Heads are repeated on every page; nothing is told by colour."""
        spelt = (Row(cells=[self.faces.spelt(cell) for cell in row.cells], struck=row.struck) for row in rows)
        table.draw(self, columns, spelt, size_pt=SMALL_PT, line_mm=SMALL_PT * MM_PER_PT * LINE)
        self.ln(2)

    def _says(self, text: str, size_pt: float, *, boxed: bool = False) -> None:
        line_mm = size_pt * MM_PER_PT * LINE
        inside_mm, beside_mm = (BOX_MM, BOX_MM) if boxed else (0, self.c_margin)
        spelt = self.faces.spelt("\n".join(text.splitlines()))
        lines = list(table.wrapped(self, spelt, self.epw - 2 * beside_mm))
        if boxed:
            # A box is never parted: what is boxed fits on a page.
            height_mm = len(lines) * line_mm + 2 * inside_mm
            if self.will_page_break(height_mm):
                self.add_page()
            self.rect(self.l_margin, self.y, self.epw, height_mm)
        self.set_y(self.y + inside_mm)
        for line in lines:
            if self.will_page_break(line_mm):
                self.add_page()
            top_mm = self.y
            self.put(self.l_margin + beside_mm, top_mm, line, line_mm)
            self.set_xy(self.l_margin, top_mm + line_mm)
        self.set_y(self.y + inside_mm)
