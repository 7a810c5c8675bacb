"""Tooth designations: ISO 3950 is what is kept; Universal and Palmer are understood and shown.

A designation without its notation is never guessed: 14 is one tooth in ISO 3950 and another in Universal.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from planning.foundation import tables
from planning.foundation.errors import UnknownTooth

MOST_SHOWN = 12  # characters of an unknown designation that a message repeats: longer than any designation
_GLYPHS = {"UR": "⏌", "UL": "⎿", "LL": "⎾", "LR": "⏋"}
"""Palmer's corner of each quadrant: the dentistry symbols U+23CC, U+23BF, U+23BE, U+23CB."""
_LIKE_GLYPHS = {"┘": "⏌", "└": "⎿", "┌": "⎾", "┐": "⏋"}
"""Box drawings that look the same and are on more keyboards."""


class Notation(StrEnum):
    ISO_3950 = "iso_3950"
    """Two digits, quadrant and position: 26."""
    UNIVERSAL = "universal"
    """1 to 32, A to T for primary teeth: 14."""
    PALMER = "palmer"
    """Quadrant and position, typed or with the corner: UL6, ⎿6."""


TITLES = {Notation.ISO_3950: "ISO 3950", Notation.UNIVERSAL: "Universal", Notation.PALMER: "Palmer"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ToothName:
    """A tooth as somebody writes it."""

    designation: str
    notation: Notation | None = None
    """Must be given: a designation alone is refused, with the teeth it could be."""


class NotationMissing(UnknownTooth):
    """A designation that does not say its notation.

    Send its notation; the sentence lists the teeth that it could be.
    """

    code = "notation-missing"
    sentence = "'{designation}' needs its notation. {hint}"


def iso_of(name: ToothName) -> str:
    """The ISO 3950 designation of a tooth. Raises UnknownTooth and NotationMissing, with what it could be."""
    if name.notation is None:
        raise NotationMissing(
            designation=name.designation[:MOST_SHOWN],
            notation="no notation",
            hint=_could_be(name.designation) or "Say which notation it is in.",
            at=("notation",),
        )
    iso = _by_designation()[name.notation].get(_plain(name.designation))
    if iso is None:
        raise UnknownTooth(
            designation=name.designation[:MOST_SHOWN],
            notation=TITLES[name.notation],
            hint=_could_be(name.designation) or _HINTS[name.notation],
            at=("designation",),
        )
    return iso


def glyph_of(palmer: str) -> str:
    """Palmer with its corner: ⎿6 for UL6. On the patient's right the corner follows the position."""
    corner, position = _GLYPHS[palmer[:2]], palmer[2:]
    return position + corner if palmer[1] == "R" else corner + position


_HINTS = {
    Notation.ISO_3950: "ISO 3950 has quadrants 1 to 4 with positions 1 to 8; primary teeth 5 to 8 with 1 to 5.",
    Notation.UNIVERSAL: "Universal has 1 to 32; primary teeth A to T. Supernumerary teeth are not planned here.",
    Notation.PALMER: "Palmer has UR, UL, LL or LR with 1 to 8; primary teeth with A to E: UL6 or ⎿6.",
}


@cache
def _by_designation() -> Mapping[Notation, Mapping[str, str]]:
    rows = tables.rows("teeth")
    palmer = {row["palmer"]: row["iso"] for row in rows}
    return {
        Notation.ISO_3950: {row["iso"]: row["iso"] for row in rows},
        Notation.UNIVERSAL: {row["universal"]: row["iso"] for row in rows},
        # Read as it is typed and with its corner.
        Notation.PALMER: palmer | {glyph_of(typed): iso for typed, iso in palmer.items()},
    }


def _plain(designation: str) -> str:
    """The designation without blanks, in capitals, with Palmer's corners in their own signs."""
    joined = "".join(designation.split()).upper()
    return "".join(_LIKE_GLYPHS.get(sign, sign) for sign in joined)


def _could_be(designation: str) -> str:
    names = {row["iso"]: row["name"] for row in tables.rows("teeth")}
    readings = [
        f"in {TITLES[notation]} it is the {_lower_first(names[known[_plain(designation)]])}"
        for notation, known in _by_designation().items()
        if _plain(designation) in known
    ]
    sentence = ", ".join(readings)
    return sentence[0].upper() + sentence[1:] + "." if readings else ""


def _lower_first(text: str) -> str:
    return text[0].lower() + text[1:]
