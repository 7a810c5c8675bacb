"""Root-canal instruments: ISO 3630-1 sizes, colours and the diameter anywhere along the cutting part.

A size is the tip in hundredths of a millimetre, a taper hundredths of a millimetre per millimetre
(ISO 3630-1), both whole numbers: 25/.04 is size 25, taper 4.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache, lru_cache
from itertools import pairwise
from typing import Annotated

from planning.foundation import tables
from planning.foundation.bounds import within
from planning.foundation.counts import at_most
from planning.foundation.errors import InstrumentNotDescribed
from planning.foundation.facts import Bears, Fact
from planning.foundation.tables import Figures

HUNDREDTH_MM = 0.01  # ISO 3630-1 gives sizes and tapers in hundredths
MOST_KEPT = 1_000  # outlines kept in memory: a few kits' worth


Size = Annotated[int, within("instrument_size")]
Taper = Annotated[int, within("instrument_taper")]
LengthMm = Annotated[float, within("instrument_length")]
Diameter = Annotated[float, within("instrument_diameter")]


class Motion(StrEnum):
    """How an instrument is moved."""

    HAND = "hand"
    CONTINUOUS = "continuous"
    RECIPROCATING = "reciprocating"


class Use(StrEnum):
    """What the programme keeps the instrument for."""

    HAND = "hand"
    """Exploring, glide path, recapitulating, gauging, step-back."""
    CORONAL = "coronal"
    """Opening the coronal third, to its own stop."""
    SHAPING = "shaping"
    """The series of one taper that is taken to length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DiameterAt:
    """How thick an instrument is at a distance from its tip."""

    from_tip_mm: Annotated[float, within("instrument_part"), Fact("from the tip", Bears.SHAPE)]
    diameter_mm: Annotated[Diameter, Fact("diameter", Bears.SHAPE)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Instrument:
    """One instrument of a kit, as its maker and the programme describe it."""

    size: Annotated[Size, Fact("size", Bears.MEANS)]
    """Tip in hundredths of a millimetre (ISO 3630-1)."""
    taper: Annotated[Taper, Fact("taper", Bears.MEANS)]
    """Hundredths of a millimetre per millimetre: 4 is written .04."""
    motion: Annotated[Motion, Fact("motion", Bears.MEANS)]
    use: Annotated[Use, Fact("kept for", Bears.MEANS)]
    length_mm: Annotated[LengthMm, Fact("length", Bears.DEPTH)]
    """Operative length from tip to handle."""
    cutting_part_mm: Annotated[LengthMm, Fact("cutting part", Bears.SHAPE)]
    largest_flute_mm: Annotated[Diameter, Fact("largest flute", Bears.SHAPE)] | None = None
    """Largest diameter of the flutes; needed for steep tapers, whose flutes end before the cutting part does."""
    speed_rpm: Annotated[int, within("instrument_speed"), Fact("speed", Bears.SAFETY)] | None = None
    torque_ncm: Annotated[float, within("instrument_torque"), Fact("torque", Bears.SAFETY)] | None = None
    diameters: Annotated[tuple[DiameterAt, ...], at_most("diameters"), Fact("diameter", Bears.SHAPE)] = ()
    """A variable taper: diameters from the tip upwards, in place of size and taper for the geometry."""
    uses: Annotated[int, within("uses"), Fact("times used", Bears.PROGRESS)] = 0
    """Canals it has been used in."""
    most_uses: Annotated[int, within("most_uses"), Fact("uses at most", Bears.SAFETY)] | None = None
    """As the maker's instructions or the programme allow."""

    @property
    def name(self) -> str:
        """The trade's designation: 25/.04."""
        return f"{self.size:02d}/.{self.taper:02d}"

    @property
    def key(self) -> str:
        """Distinguishes instruments of one size and taper by motion: 25/.04 continuous."""
        return f"{self.name} {self.motion}"


@cache
def _colours() -> Mapping[int, str]:
    return {int(row["size"]): row["colour"] for row in tables.rows("sizes")}


def sizes() -> tuple[int, ...]:
    """The ISO 3630-1 series, smallest first."""
    return tuple(_colours())


def colour(size: int) -> str | None:
    """ISO 3630-1 colour of a size; None where the series has no such size."""
    return _colours().get(size)


def size_above(size: int, steps: int = 1) -> int | None:
    """The size `steps` further up the series; None past its end or from a size that is not in it."""
    series = sizes()
    if size not in series or series.index(size) + steps >= len(series):
        return None
    return series[series.index(size) + steps]


def sizes_between(lower: int, higher: int) -> int:
    """How many sizes of the series lie above the one up to the other; 0 where the other is no larger."""
    series = sizes()
    return max(0, bisect_right(series, higher) - bisect_right(series, lower))


Corners = tuple[tuple[float, float], ...]
"""(distance from the tip mm, diameter mm) where an instrument's outline bends, from the tip upwards."""


@lru_cache(maxsize=MOST_KEPT)
def corners(instrument: Instrument) -> Corners:
    """The outline from the tip to the end of the cutting part; past the largest flute it grows no more.

    Of a variable taper the stated diameters, else size and taper (ISO 3630-1).
    """
    size, taper, end = instrument.size * HUNDREDTH_MM, instrument.taper * HUNDREDTH_MM, instrument.cutting_part_mm
    stated = tuple((at.from_tip_mm, at.diameter_mm) for at in instrument.diameters)
    # The outline ends where the flutes come to their largest diameter or where the cutting part ends, whichever is
    # first.
    points = stated or ((0.0, size), (end, size + taper * end))
    most = instrument.largest_flute_mm
    if most is not None:
        points = _up_to(points, most, across=True)
    return _up_to(points, end, across=False)


def _up_to(points: Corners, most: float, *, across: bool) -> Corners:
    """The outline up to a distance from the tip, or with `across` up to a diameter; it ends there."""
    kept = [points[0]]
    for (z0, d0), (z1, d1) in pairwise(points):
        over, before = (d1, d0) if across else (z1, z0)
        if over > most:
            # Where even the first point lies beyond, the outline ends there.
            share = max(0.0, (most - before) / (over - before))
            kept.append((z0 + share * (z1 - z0), d0 + share * (d1 - d0)))
            break
        kept.append((z1, d1))
    return tuple(kept)


def diameter_mm(instrument: Instrument, from_tip_mm: float) -> float:
    """Diameter [mm] at a distance [mm] from the tip, up to the end of the cutting part (ISO 3630-1).

    Past the cutting part, or past the largest flute, the diameter grows no more.
    """
    outline = corners(instrument)
    for (z0, d0), (z1, d1) in pairwise(outline):
        if from_tip_mm < z1:
            return d0 + (d1 - d0) * (from_tip_mm - z0) / (z1 - z0)
    return outline[-1][1]


@lru_cache(maxsize=MOST_KEPT)
def outline(instrument: Instrument) -> tuple[DiameterAt, ...]:
    """The instrument as it is drawn: its diameters [mm] from the tip to the end of the cutting part, with a point
    wherever the taper changes, to hundredths of a millimetre.
    """
    if instrument.diameters:
        return instrument.diameters
    # A taper without stated diameters changes in one place only, where the flutes have come to their largest diameter.
    bends = {0.0, instrument.cutting_part_mm}
    if instrument.largest_flute_mm is not None and instrument.taper > 0:
        flutes_mm = (instrument.largest_flute_mm / HUNDREDTH_MM - instrument.size) / instrument.taper
        bends.add(min(max(flutes_mm, 0.0), instrument.cutting_part_mm))
    return tuple(
        DiameterAt(from_tip_mm=round(at_mm, 2), diameter_mm=round(diameter_mm(instrument, at_mm), 2))
        for at_mm in sorted(bends)
    )


def reach_mm(instrument: Instrument, figures: Figures) -> float:
    """How far [mm] the tip can go with a stop on the shaft and its setting still in view."""
    return instrument.length_mm - figures["instrument.stop_and_grip"]


def refuse_undescribed(instrument: Instrument, figures: Figures) -> None:
    """Raises InstrumentNotDescribed where what the geometry needs is not stated."""
    problems = (
        (instrument.size <= 0 or instrument.taper < 0, "size", "size must be above 0 and taper not below 0."),
        (
            not 0 < instrument.cutting_part_mm <= instrument.length_mm,
            "cutting_part_mm",
            "the cutting part must be longer than 0 and not longer than the instrument.",
        ),
        (
            instrument.taper >= figures["coronal.steep_taper"] and instrument.largest_flute_mm is None,
            "largest_flute_mm",
            "a taper this steep needs the largest diameter of its flutes: see the maker's instructions.",
        ),
        (
            instrument.largest_flute_mm is not None and instrument.largest_flute_mm <= _tip_mm(instrument),
            "largest_flute_mm",
            "the largest flute must be wider than the tip.",
        ),
    )
    for wrong, where, reason in problems:
        if wrong:
            raise InstrumentNotDescribed(instrument=instrument.key, reason=reason, at=(where,))
    _refuse_diameters(instrument)


def _tip_mm(instrument: Instrument) -> float:
    return instrument.diameters[0].diameter_mm if instrument.diameters else instrument.size * HUNDREDTH_MM


def _refuse_diameters(instrument: Instrument) -> None:
    """Raises InstrumentNotDescribed for a variable taper that is no outline from the tip upwards."""
    stated = instrument.diameters
    if not stated:
        return
    reason = ""
    if len(stated) == 1 or stated[0].from_tip_mm != 0:
        reason = "a variable taper needs the diameter at the tip, 0 mm from it, and at least one more."
    elif any(b.from_tip_mm <= a.from_tip_mm for a, b in pairwise(stated)):
        reason = "the diameters must be listed from the tip upwards, each place once."
    elif stated[0].diameter_mm <= 0 or any(b.diameter_mm < a.diameter_mm for a, b in pairwise(stated)):
        reason = "the diameters must be above 0 and must not fall from the tip upwards."
    elif max(stated[-1].diameter_mm, stated[-1].from_tip_mm) > instrument.length_mm:
        reason = "a diameter or its distance from the tip is greater than the instrument is long."
    if reason:
        raise InstrumentNotDescribed(instrument=instrument.key, reason=reason, at=("diameters",))
