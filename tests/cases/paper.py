"""A PDF read back by another program (pypdf): what stands on each page, and where."""

from __future__ import annotations

import re
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ContentStream

MM_PER_PT = 25.4 / 72
ASCENT, DESCENT = 0.72, 0.2  # of a letter's size: capitals above the line, tails below it


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """One line of text, in millimetres from the page's left bottom."""

    page: int
    text: str
    left_mm: float
    right_mm: float
    foot_mm: float
    top_mm: float

    def overlaps(self, other: Box) -> bool:
        return (
            self.page == other.page
            and self.left_mm < other.right_mm
            and other.left_mm < self.right_mm
            and self.foot_mm < other.top_mm
            and other.foot_mm < self.top_mm
        )


def pages(pdf: bytes) -> list[str]:
    """The text of each page, line breaks and blanks alike."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(BytesIO(pdf)).pages]


def whole_text(pdf: bytes) -> str:
    return " ".join(pages(pdf))


def boxes(pdf: bytes) -> list[Box]:
    """Every line of text by the operators that draw it (ISO 32000-1, 9.4), as wide as its typeface says."""
    reader = PdfReader(BytesIO(pdf))
    return [box for number, page in enumerate(reader.pages) for box in _of_page(reader, page, number)]


def _of_page(reader: PdfReader, page: Any, number: int) -> list[Box]:
    fonts = {name: _Font(font.get_object()) for name, font in page["/Resources"]["/Font"].items()}
    drawn, font, size, at = [], None, 0.0, (0.0, 0.0)
    for operands, operator in ContentStream(page.get_contents(), reader).operations:
        if operator == b"Tf":
            font, size = fonts[operands[0]], float(operands[1])
        elif operator == b"Td":
            at = (float(operands[0]), float(operands[1]))
        elif operator == b"Tj" and font:
            text, width = font.read(operands[0])
            (left, foot), right = at, at[0] + width * size
            at = (right, foot)
            if text.strip():
                drawn.append(
                    Box(
                        page=number,
                        text=text,
                        left_mm=left * MM_PER_PT,
                        right_mm=right * MM_PER_PT,
                        foot_mm=(foot - DESCENT * size) * MM_PER_PT,
                        top_mm=(foot + ASCENT * size) * MM_PER_PT,
                    )
                )
    return drawn


class _Font:
    """A typeface whose letters are named by two bytes each."""

    def __init__(self, font: Any) -> None:
        self.letters: dict[int, str] = {}
        named = font["/ToUnicode"].get_object().get_data().decode("latin-1")
        for code, letters in re.findall(r"^<([0-9A-F]{4})> <([0-9A-F]+)>$", named, re.MULTILINE):
            self.letters[int(code, 16)] = bytes.fromhex(letters).decode("utf-16-be")
        self.widths: dict[int, float] = {}
        listed = list(font["/DescendantFonts"][0].get_object()["/W"])
        while listed:
            first, second = int(listed.pop(0)), listed.pop(0)
            if isinstance(second, list):
                self.widths.update({first + number: float(width) for number, width in enumerate(second)})
            else:
                self.widths.update(dict.fromkeys(range(first, int(second) + 1), float(listed.pop(0))))

    def read(self, written: Any) -> tuple[str, float]:
        """The text, and how wide it is for letters of size 1."""
        raw = written.original_bytes
        codes = [int.from_bytes(raw[at : at + 2]) for at in range(0, len(raw), 2)]
        return "".join(self.letters.get(code, "?") for code in codes), sum(self.widths[code] for code in codes) / 1000
