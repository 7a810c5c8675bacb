"""What to expect in a tooth: canals, what else to look for, lengths from two reference sets that are never averaged.

A tooth stands for its like on the other side: the tables have the upper right and the lower left.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Literal

from planning.anatomy.notation import ToothName, glyph_of, iso_of
from planning.foundation import tables


@dataclass(frozen=True, slots=True, kw_only=True)
class Prevalence:
    """What one study says of how often a canal is there."""

    share: float | None
    """Share of teeth, 0 to 1."""
    low_share: float | None
    """Lower end of the confidence interval or of the range, as the text says."""
    high_share: float | None
    says: str
    source: str
    year: int | None
    know: str
    """How the figure is known: read, read second-hand, from memory, derived."""


class LookForKind(StrEnum):
    CANAL = "canal"
    ROOT = "root"
    """A further root with its own canal."""
    FORM = "form"
    """A form of the whole canal system, charted and not planned."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalOnOffer:
    """A canal that a new case starts from, or that it tells the user to look for."""

    name: str
    root: str
    kind: LookForKind
    reference_point: str | None
    """Where lengths are measured from by default; none must be chosen by a person."""
    other_reference_points: tuple[str, ...]
    studies: tuple[Prevalence, ...]
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthReference:
    """A published length of a tooth or a root."""

    reference_set: Literal["A", "B"]
    root: str | None
    """None: the whole tooth."""
    mean_mm: float
    low_mm: float | None
    high_mm: float | None
    band: str
    """What low and high are: least and greatest, or one standard deviation."""
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MainCanal:
    """Which canal of a root is proposed to go to the common terminus where two join; a person decides."""

    root: str
    canal: str
    reason: str
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tooth:
    iso: str
    """ISO 3950."""
    universal: str
    palmer: str
    """As typed: UL6."""
    palmer_glyph: str
    """With the corner of its quadrant: ⎿6."""
    name: str
    primary: bool
    """Primary teeth are charted, not planned."""
    canals: tuple[CanalOnOffer, ...]
    """Usual canals. Empty: charted one by one."""
    look_for: tuple[CanalOnOffer, ...]
    notes: tuple[Prevalence, ...]
    """What studies say of the whole tooth."""
    lengths: tuple[LengthReference, ...]
    crown_mm: float | None
    """Mean length of the crown."""
    main_canals: tuple[MainCanal, ...]


def find(name: ToothName) -> Tooth:
    """The tooth of that name. Raises UnknownTooth and NotationMissing."""
    return tooth(iso_of(name))


@cache
def tooth(iso: str) -> Tooth:
    """The tooth with this ISO 3950 designation. Raises KeyError."""
    named = _named()[iso]
    primary = named["primary"] == "yes"
    # No table but that of the names has primary teeth: None matches no row.
    kept = None if primary else like(iso)
    canals = [row for row in tables.rows("canals") if row["tooth"] == kept]
    return Tooth(
        iso=iso,
        universal=named["universal"],
        palmer=named["palmer"],
        palmer_glyph=glyph_of(named["palmer"]),
        name=named["name"],
        primary=primary,
        canals=tuple(_canal(row) for row in canals if row["usual"] == "yes"),
        look_for=tuple(_canal(row) for row in canals if row["usual"] == "no"),
        notes=_studies(kept, ""),
        lengths=tuple(_length(row) for row in tables.rows("tooth_lengths") if row["tooth"] == kept),
        crown_mm=next((float(row["crown_mm"]) for row in tables.rows("crowns") if row["tooth"] == kept), None),
        main_canals=tuple(_main(row) for row in tables.rows("main_canals") if row["tooth"] == kept),
    )


def all_teeth() -> tuple[Tooth, ...]:
    """The 52 teeth, permanent ones first, quadrant by quadrant."""
    return tuple(tooth(iso) for iso in _named())


def usual_range(of: Tooth) -> LengthReference | None:
    """Least and greatest length in the reference set that states them; None for primary teeth."""
    return next((length for length in of.lengths if length.reference_set == "A"), None)


@cache
def _named() -> Mapping[str, Mapping[str, str]]:
    return {row["iso"]: row for row in tables.rows("teeth")}


_LIKE_QUADRANT = {"1": "1", "2": "1", "3": "3", "4": "3"}
"""Left and right are alike: the tables have the upper right and the lower left (ISO 3950 quadrants)."""


def like(iso: str) -> str:
    """The permanent tooth that the tables have for this one: 16 for 26. Raises KeyError for a primary tooth."""
    return _LIKE_QUADRANT[iso[0]] + iso[1]


def _canal(row: Mapping[str, str]) -> CanalOnOffer:
    return CanalOnOffer(
        name=row["canal"],
        root=row["root"],
        kind=LookForKind(row["kind"]),
        reference_point=row["reference_point"] or None,
        other_reference_points=tuple(filter(None, row["other_reference_points"].split(";"))),
        studies=_studies(row["tooth"], row["canal"]),
        source=row["source"],
        know=row["know"],
    )


def _studies(kept: str | None, canal: str) -> tuple[Prevalence, ...]:
    return tuple(
        Prevalence(
            share=_number(row["share"]),
            low_share=_number(row["low_share"]),
            high_share=_number(row["high_share"]),
            says=row["says"],
            source=row["source"],
            year=int(row["year"]) if row["year"] else None,
            know=row["know"],
        )
        for row in tables.rows("prevalence")
        if row["tooth"] == kept and row["canal"] == canal
    )


def _length(row: Mapping[str, str]) -> LengthReference:
    return LengthReference(
        reference_set="A" if row["set"] == "A" else "B",
        root=row["root"] or None,
        mean_mm=float(row["mean_mm"]),
        low_mm=_number(row["low_mm"]),
        high_mm=_number(row["high_mm"]),
        band=row["band"],
        source=row["source"],
        know=row["know"],
    )


def _main(row: Mapping[str, str]) -> MainCanal:
    return MainCanal(
        root=row["root"], canal=row["main_canal"], reason=row["reason"], source=row["source"], know=row["know"]
    )


def _number(text: str) -> float | None:
    return float(text) if text else None
