"""Advice that every plan carries for the time at the chair: first steps, what to look for, contact times.

The phone must have it without a connection, when nobody can be asked.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from planning.foundation import tables
from planning.foundation.tables import Figure, Figures
from planning.techniques.technique import Setting

S_PER_MIN = 60
CONTACTS = ("edta",)
"""Irrigants whose time in the canal is stated."""


class Guidance(StrEnum):
    EMERGENCY = "emergency"
    PAUSE = "pause"
    LOOK = "look"
    """What an instrument is looked at for."""
    DISCARD = "discard"
    """Why an instrument is not used again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """One sentence of advice. Sentences of one `key` stand in the order in which they are done."""

    about: Guidance
    key: str
    """The emergency, pause or finding it belongs to, by the name under which that is recorded; for `look`, whether it
    holds at every chair or with patients only."""
    says: str
    source: str
    know: str
    settings: tuple[Setting, ...] = ()
    """Settings in which it can happen; empty for all. Without a patient nothing is swallowed and nobody is hurt."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """How long an irrigant stays in the canal."""

    irrigant: str
    about_s: int
    most_s: int
    """The phone warns when it stays longer than this."""
    rows: tuple[Figure, ...]
    """The figures that the two times come from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AtTheChair:
    """Advice and contact times. Every plan carries them, so that they are on the phone before anything happens."""

    advice: tuple[Advice, ...]
    contacts: tuple[Contact, ...]


def at_the_chair(figures: Figures) -> AtTheChair:
    """Advice and contact times: the same for every tooth, except for times that the programme has set itself."""
    return AtTheChair(advice=_advice(), contacts=tuple(_contact(irrigant, figures) for irrigant in CONTACTS))


@cache
def _advice() -> tuple[Advice, ...]:
    return tuple(
        Advice(
            about=Guidance(row["about"]),
            key=row["key"],
            says=row["says"],
            source=row["source"],
            know=row["know"],
            settings=tuple(map(Setting, row["settings"].split())),
        )
        for row in tables.rows("at_the_chair")
    )


def _contact(irrigant: str, figures: Figures) -> Contact:
    about, most = (figures.row(f"rinse.{irrigant}_{bound}_min") for bound in ("about", "most"))
    return Contact(
        irrigant=irrigant,
        about_s=round(about.value * S_PER_MIN),
        most_s=round(most.value * S_PER_MIN),
        rows=(about, most),
    )
