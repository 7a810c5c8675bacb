"""What is charted of a canal beside its name, its reference point and its readings.

A field here is the whole telling of a fact: its type, its row of bounds, what it means, what people call it and what a
change of it bears on. The stored chart, the API both ways, the phone's form, the comparison of plans and the record
read this.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, is_dataclass
from enum import StrEnum
from types import NoneType
from typing import Annotated, Any, get_args, get_type_hints

from planning.foundation.bounds import Bound, noted, of_fields, within
from planning.foundation.counts import at_most
from planning.foundation.facts import Bears, Fact
from planning.lengths.readings import Resorption


class Finding(StrEnum):
    """Whether the canal's orifice has been seen."""

    EXPECTED = "expected"
    FOUND = "found"
    SEARCHED_NOT_FOUND = "searched_not_found"


OrificeFinding = Annotated[Finding, Fact("orifice", Bears.SAFETY)]


@dataclass(frozen=True, slots=True, kw_only=True)
class WidthInput:
    """A canal's width at one level, measured or kept by the programme."""

    from_end_mm: Annotated[float, within("depth"), Fact("from the end", Bears.SHAPE)]
    """From where the preparation ends, at the working length."""
    narrow_mm: Annotated[float, within("width"), Fact("narrow diameter", Bears.SHAPE)]
    wide_mm: Annotated[float, within("width"), Fact("wide diameter", Bears.SHAPE)] | None = None
    """None where the canal is round there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallInput:
    """The thinnest wall, measured on this tooth."""

    thickness_mm: Annotated[float, within("wall"), Fact("thickness", Bears.SHAPE)]
    from_end_mm: Annotated[float, within("wall_from_end"), Fact("from the end", Bears.SHAPE)]


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalFacts:
    """Facts of one canal. None, or an empty list, means that nobody measured or saw it."""

    finding: OrificeFinding = Finding.EXPECTED
    resorption: Annotated[Resorption, Fact("resorption at the root's end", Bears.DEPTH)] = Resorption.NONE
    orifice_mm: Annotated[float, within("orifice"), Fact("depth of the orifice", Bears.DEPTH, usual=True)] | None = None
    """From the reference point to the orifice."""
    curvature_deg: Annotated[float, within("curvature"), Fact("curvature", Bears.SHAPE, usual=True)] | None = None
    curve_start_mm: (
        Annotated[float, within("curve_start"), Fact("depth at which the curve begins", Bears.SHAPE, usual=True)] | None
    ) = None
    """From the reference point to where the first curve begins."""
    apex_mm: Annotated[float, within("apex"), Fact("width of a wide apex", Bears.DEPTH, usual=True)] | None = None
    """Width of the apical opening where it was seen to be wide."""
    first_binder_size: (
        Annotated[
            int, within("hand_size"), Fact("first hand size to bind after coronal flaring", Bears.SHAPE, usual=True)
        ]
        | None
    ) = None
    """First hand size that bound at the end when it was gauged after coronal flaring."""
    curve_radius_mm: Annotated[float, within("curve_radius"), Fact("radius of the curve", Bears.SHAPE)] | None = None
    curve_from_end_mm: (
        Annotated[float, within("curve_from_end"), Fact("from the end to the middle of the curve", Bears.SHAPE)] | None
    ) = None
    """From the canal's end to the middle of its curve."""
    wall: Annotated[WallInput, Fact("thinnest wall", Bears.SHAPE)] | None = None
    """The thinnest wall, measured on this tooth."""
    widths: Annotated[tuple[WidthInput, ...], at_most("widths"), Fact("width measured", Bears.SHAPE)] = ()
    """Measured widths, used in place of the published ones; from the end upwards."""


@dataclass(frozen=True, slots=True)
class FactNumber:
    """One number that a form asks for."""

    path: tuple[str, ...]
    label: str
    bound: Bound
    usual: bool


def fact_numbers() -> Iterator[FactNumber]:
    """The numbers of a canal's facts, also those within a fact; not those of a list."""
    rows = of_fields(CanalFacts)
    for name, fact in noted(CanalFacts, Fact).items():
        if name in rows:
            yield FactNumber((name,), fact.label, rows[name], fact.usual)
        for inner in _within(get_type_hints(CanalFacts)[name]):
            parts = of_fields(inner)
            for part, said in noted(inner, Fact).items():
                yield FactNumber((name, part), f"{fact.label}, {said.label}", parts[part], fact.usual)


def _within(hint: Any) -> Iterator[type]:
    """The class of an optional fact that has parts of its own, as the thin wall has."""
    parts = get_args(hint)
    yield from (part for part in parts if NoneType in parts and isinstance(part, type) and is_dataclass(part))


def as_charted(facts: Mapping[str, Any]) -> dict[str, Any]:
    """Facts by name, their numbers rounded as they are stored."""
    rows = of_fields(CanalFacts)
    return {
        name: rows[name].kept(value) if name in rows and value is not None else value for name, value in facts.items()
    }
