"""A4 sheets that single lines are put on, in typefaces for any script."""

from __future__ import annotations

from fpdf import FPDF
from fpdf.enums import TextEmphasis

from cases.exports.typefaces import Faces

BASELINE = 0.75  # of a line's height, from its top


class Sheet(FPDF):
    """Knows how wide a line is, and writes it where it is told."""

    def __init__(self, faces: Faces) -> None:
        super().__init__(orientation="portrait", unit="mm", format="A4")
        self.faces = faces
        self._measured_mm: dict[tuple[str, float], dict[str, float]] = {}
        self._words_mm: dict[str, float] = {}
        for face in faces.faces:
            self.add_font(face.family, "", face.regular)
            self.add_font(face.family, "B", face.bold)
        self.set_fallback_fonts([face.family for face in faces.faces[1:]], exact_match=True)
        self.set_text_shaping(faces.joins)

    def use(self, size_pt: float, style: str = "") -> None:
        """The text's own typeface from here on: "B" bold, "S" struck through."""
        self.set_font(self._family, style, size_pt)

    def set_font(self, family: str | None = None, style: str | TextEmphasis = "", size: float = 0) -> None:
        """The library calls it too, when a page begins."""
        super().set_font(family, style, size)
        self._words_mm = self._measured_mm.setdefault((self.font_style, self.font_size_pt), {})

    def width_mm(self, text: str) -> float:
        """How wide a line is in the present typeface."""
        words = text.split(" ")
        return sum(map(self.word_mm, words)) + (len(words) - 1) * self.word_mm(" ")

    def word_mm(self, word: str) -> float:
        """How wide a word is; each is measured once."""
        width_mm = self._words_mm.get(word)
        if width_mm is None:
            width_mm = self._words_mm[word] = self._measured(word)
        return width_mm

    def _measured(self, word: str) -> float:
        if self.faces.joins or self.current_font is None:
            return self.get_string_width(word)
        # Without what the library does for each piece of text that may be styled within.
        _, width = self.current_font.get_text_width(word, self.font_size_pt, None)
        return width / self.k

    def put(self, x_mm: float, y_mm: float, line: str, height_mm: float) -> None:
        """Writes one line with its left top there."""
        if self.faces.joins:
            self.set_xy(x_mm - self.c_margin, y_mm)
            self.cell(None, height_mm, line, align="L")
        else:
            self.text(x_mm, y_mm + height_mm * BASELINE, line)

    @property
    def _family(self) -> str:
        return self.faces.faces[0].family
