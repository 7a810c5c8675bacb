"""Typefaces for any script, cut down to the letters that a text needs.

Noto (SIL Open Font License) covers what people write names in, Chinese, Japanese and Korean where the extra `cjk` is
installed; a character that no typeface has is named by its number, so that nothing is left out without a word.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from importlib.util import find_spec
from io import BytesIO
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont
from fontTools.varLib import instancer

REGULAR, BOLD = 400, 700  # weight classes of OpenType's `wght` axis
# Letters of most records: a typeface cut down to these is cut once and remembered.
_USUAL = frozenset(map(chr, (*range(0x20, 0x7F), *range(0xA0, 0x17F), *range(0x2010, 0x2027))))
_REMEMBERED = 64  # cut typefaces: some 20 kB each
EAST_ASIAN = "manimgx_fonts_cjk"
_FIRST = ("NotoSans[wght].ttf", "NotoSansSymbols[wght].ttf")


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One typeface, as two files that hold only what is needed."""

    family: str
    regular: Path
    bold: Path


@dataclass(frozen=True, slots=True, kw_only=True)
class Faces:
    """The first face is the text's own; the others stand in where it lacks a letter."""

    faces: tuple[Face, ...]
    lacking: frozenset[str]
    """Characters that none of them has."""

    @property
    def joins(self) -> bool:
        """Whether there may be letters that join, or are written from right to left."""
        return len(self.faces) > 1

    def spelt(self, text: str) -> str:
        """The text with every character that cannot be drawn named by its number."""
        return "".join(f"[U+{ord(each):04X}]" if each in self.lacking else each for each in text)


def faces(text: str, folder: Path) -> Faces:
    """Faces for all characters of the text, written into the folder."""
    left = (set(text) - {"\n"}) | set("[]+U0123456789ABCDEF")
    chosen: list[Face] = []
    for path in _files():
        if own := {each for each in left if ord(each) in _covers(path)}:
            left -= own
            family = f"face{len(chosen)}"
            letters = frozenset(own | {each for each in _USUAL if ord(each) in _covers(path)} if not chosen else own)
            joins = bool(chosen or left)
            regular, bold = (_written(path, letters, weight, joins, folder / family) for weight in (REGULAR, BOLD))
            chosen.append(Face(family=family, regular=regular, bold=bold))
        if not left:
            break
    return Faces(faces=tuple(chosen), lacking=frozenset(left))


@cache
def _files() -> tuple[Path, ...]:
    """Typefaces in the order they are asked: the plain one, signs, single scripts, and the large one of East Asia."""
    folder = Path(str(files("manimgx_fonts")))
    single = sorted(path for path in folder.glob("*.ttf") if "Italic" not in path.name and path.name not in _FIRST)
    east_asian = sorted(Path(str(files(EAST_ASIAN))).glob("*.ttc")) if find_spec(EAST_ASIAN) else ()
    return (*(folder / name for name in _FIRST), *single, *east_asian)


@cache
def _covers(path: Path) -> frozenset[int]:
    """Code points that the typeface has."""
    with TTFont(path, fontNumber=0, lazy=True) as font:
        return frozenset(font.getBestCmap())


def _written(path: Path, letters: frozenset[str], weight: int, joins: bool, to: Path) -> Path:
    file = to.with_name(f"{to.name}-{weight}").with_suffix(".otf" if path.suffix == ".ttc" else ".ttf")
    file.write_bytes(_cut(path, letters, weight, joins))
    return file


@lru_cache(_REMEMBERED)
def _cut(path: Path, letters: frozenset[str], weight: int, joins: bool) -> bytes:
    """The typeface with these characters alone, at one weight. The same asked is the same written."""
    with TTFont(path, fontNumber=0, lazy=True, recalcTimestamp=False) as font:
        options = subset.Options(notdef_outline=True)
        # In small print kerning is not seen, and it takes most of the time; only where letters join is there a rule.
        options.layout_features = [each for each in options.layout_features if each != "kern"] if joins else []
        cutter = subset.Subsetter(options)
        cutter.populate(text="".join(sorted(letters)))
        cutter.subset(font)
        axes = {axis.axisTag: axis.defaultValue for axis in font["fvar"].axes} | {"wght": weight}
        fixed = instancer.instantiateVariableFont(font, axes, inplace=True)
        cut = BytesIO()
        fixed.save(cut)
    return cut.getvalue()
