"""A4 pages in black and white: headings, paragraphs, tables whose heads are repeated, a line on top and one below."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from fpdf import FPDF, FontFace
from fpdf.enums import TableBordersLayout, XPos, YPos

from cases.exports.typefaces import Faces

MARGIN_MM = 15
FOOT_MM = 14
SMALL_PT, TEXT_PT, HEAD_PT, TITLE_PT = 7.5, 9, 12, 17
LINE = 1.35  # line height over letter height: reads well in narrow columns
MM_PER_PT = 25.4 / 72
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


class Paper(FPDF):
    """Pages with one line on top and one below.

    `at` is when they say they were made, `seal` the hash of what they say.
    """

    def __init__(self, *, top: str, below: str, seal: str, at: datetime, faces: Faces) -> None:
        super().__init__(orientation="portrait", unit="mm", format="A4")
        self.top, self.below, self.faces = faces.spelt(top), faces.spelt(below), faces
        # Stands for the number of pages until they are counted; nobody can have written the hash of what they wrote.
        self.pages_counted = f"{{{seal[:8]}}}"
        self.alias_nb_pages(self.pages_counted)
        # The same content is the same file, whenever it is asked for.
        self.set_creation_date(at)
        self.set_producer("Fourth Canal")
        self.set_margins(MARGIN_MM, MARGIN_MM)
        self.set_auto_page_break(True, MARGIN_MM + FOOT_MM)
        for face in faces.faces:
            self.add_font(face.family, "", face.regular)
            self.add_font(face.family, "B", face.bold)
        self.set_fallback_fonts([face.family for face in faces.faces[1:]], exact_match=True)
        self.set_text_shaping(faces.joins)

    def header(self) -> None:
        self._set(SMALL_PT)
        self.cell(0, 4, self.top, new_x=XPos.LMARGIN, new_y=YPos.NEXT)
        self.line(MARGIN_MM, self.get_y() + 1, self.w - MARGIN_MM, self.get_y() + 1)
        self.ln(4)

    def footer(self) -> None:
        self.set_y(-FOOT_MM - 2)
        self.line(MARGIN_MM, self.get_y(), self.w - MARGIN_MM, self.get_y())
        self.ln(1)
        self._set(SMALL_PT)
        self.multi_cell(self.epw - 22, 3.4, self.below, align="L", new_x=XPos.RIGHT, new_y=YPos.TOP)
        self.cell(22, 3.4, f"page {self.page_no()} of {self.pages_counted}")

    def headline(self, text: str) -> None:
        self._set(TITLE_PT, "B")
        self._says(text, TITLE_PT)

    def heading(self, text: str, *, needs_mm: float = 30) -> None:
        """A heading with room below it for the beginning of what it heads."""
        if self.will_page_break(needs_mm):
            self.add_page()
        self.ln(3)
        self._set(HEAD_PT, "B")
        self._says(text, HEAD_PT)
        self.ln(1)

    def paragraph(self, text: str, *, bold: bool = False, boxed: bool = False) -> None:
        self._set(TEXT_PT, "B" if bold else "")
        self._says(text, TEXT_PT, boxed=boxed)

    def table_of(self, columns: Sequence[Column], rows: Iterable[Row]) -> None:
        """Heads are repeated on every page; nothing is told by colour."""
        self._set(SMALL_PT)
        head = FontFace(family=self._family, emphasis="BOLD", size_pt=SMALL_PT, fill_color=GREY)
        with self.table(
            col_widths=[column.width for column in columns],
            text_align=["RIGHT" if column.right else "LEFT" for column in columns],
            headings_style=head,
            borders_layout=TableBordersLayout.HORIZONTAL_LINES,
            line_height=SMALL_PT * MM_PER_PT * LINE,
            padding=(0.7, 1.4),
            align="LEFT",
        ) as table:
            table.row([column.head for column in columns])
            for row in rows:
                style = FontFace(emphasis="STRIKETHROUGH") if row.struck else None
                table.row([self.faces.spelt(cell) for cell in row.cells], style=style)
        self.ln(2)

    @property
    def _family(self) -> str:
        return self.faces.faces[0].family

    def _set(self, size_pt: float, style: str = "") -> None:
        self.set_font(self._family, style, size_pt)

    def _says(self, text: str, size_pt: float, *, boxed: bool = False) -> None:
        height = size_pt * MM_PER_PT * LINE
        spelt = "\n".join(self.faces.spelt(line) for line in text.splitlines())
        self.multi_cell(
            0,
            height,
            spelt,
            align="L",
            border=1 if boxed else 0,
            padding=2 if boxed else 0,
            new_x=XPos.LMARGIN,
            new_y=YPos.NEXT,
        )
