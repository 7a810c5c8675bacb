"""Figures that the plans of a programme rest on."""

from __future__ import annotations

import json
from dataclasses import dataclass
from uuid import UUID

from cases.domain.errors import NotHere
from cases.mapping.kits import thresholds_of, widths_key
from cases.models import ProgrammeWidths
from planning.contract.canal_facts import WidthInput
from planning.foundation.encoding import Mode, decode
from planning.foundation.pages import Page
from planning.foundation.tables import Figure, published
from planning.whole_tooth.limits import limits


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureShown:
    """A figure the planner rests on, and what the programme may set in its place."""

    key: str
    says: str
    value: float
    """The programme's own, or else the published one."""
    own: bool
    """Set by the programme."""
    published: float
    unit: str
    least: float
    """Least value that a programme may set."""
    most: float
    source: str
    """Of the published value."""
    know: str
    """How the published value is known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FiguresShown(Page):
    results: tuple[FigureShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WidthsShown:
    """How wide a canal is taken to be in the programme, in place of the published widths."""

    tooth: str
    """ISO 3950; stands for the same tooth of the other side too."""
    canal: str
    widths: tuple[WidthInput, ...]
    """From the end upwards."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WidthsListed(Page):
    results: tuple[WidthsShown, ...]


def figures(programme_id: UUID) -> FiguresShown:
    """Every figure by key, the programme's own values in place of the published ones."""
    own = thresholds_of(programme_id)
    return FiguresShown(results=tuple(_figure(row, own.get(row.key)) for row in published().values()))


def figure(programme_id: UUID, key: str) -> FigureShown:
    """One figure. Raises NotHere."""
    row = published().get(key)
    if row is None:
        raise NotHere(what=f"figure as '{key}'")
    return _figure(row, thresholds_of(programme_id).get(key))


def _figure(row: Figure, own: float | None) -> FigureShown:
    least, most = limits(row)
    return FigureShown(
        key=row.key,
        says=row.says,
        value=row.value if own is None else own,
        own=own is not None,
        published=row.value,
        unit=row.unit,
        least=least,
        most=most,
        source=row.source,
        know=row.know,
    )


def widths(programme_id: UUID) -> WidthsListed:
    """The canals that the programme has widths of its own for."""
    rows = ProgrammeWidths.objects.filter(programme_id=programme_id).order_by("tooth", "canal")
    return WidthsListed(results=tuple(_widths(row) for row in rows))


def widths_of(programme_id: UUID, tooth: str, canal: str) -> WidthsShown:
    """The programme's own widths of one canal. Raises NotHere."""
    key = widths_key(tooth)
    row = ProgrammeWidths.objects.filter(programme_id=programme_id, tooth=key, canal=canal).first()
    if row is None:
        raise NotHere(what=f"canal as {canal} of tooth {tooth}")
    return _widths(row)


def _widths(row: ProgrammeWidths) -> WidthsShown:
    read = decode(tuple[WidthInput, ...], json.loads(row.text), Mode.KEPT)
    return WidthsShown(tooth=row.tooth, canal=row.canal, widths=read)
