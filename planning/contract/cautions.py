"""Cautions: what a plan warns of, from a catalogue in the data files, and the overrides of a supervisor."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache
from typing import Any

from planning.contract.plan_input import WIDE_CANAL, Override, PlanInput
from planning.contract.plan_value import Caution, Severity
from planning.foundation import tables
from planning.foundation.errors import OverrideNotPossible
from planning.foundation.tables import Figure


class Withholds(StrEnum):
    """What stays closed while a caution stands."""

    TOOTH = "tooth"
    CANAL = "canal"
    AFTER_LENGTH = "after_length"
    """All that follows the hold point for length."""
    PAST_GLIDE_PATH = "past_glide_path"
    SIZING = "sizing"
    """Every step that depends on the final size."""
    SHAPING = "shaping"
    FILLING = "filling"


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One caution of the catalogue."""

    code: str
    severity: Severity
    withholds: Withholds | None
    may_override: bool
    says: str
    do: str
    row: str
    """Key of the figure that its value is compared with; empty where there is none."""
    source: str
    know: str


@cache
def catalogue() -> Mapping[str, Entry]:
    """Every caution there is, by code."""
    return {
        row["code"]: Entry(
            code=row["code"],
            severity=Severity(row["severity"]),
            withholds=Withholds(row["withholds"]) if row["withholds"] else None,
            may_override=row["override"] == "yes",
            says=row["says"],
            do=row["do"],
            row=row["row"],
            source=row["source"],
            know=row["know"],
        )
        for row in tables.rows("cautions")
    }


def caution(
    code: str,
    *,
    canal: str | None = None,
    value: float | None = None,
    limit: float | Figure | None = None,
    unit: str | None = None,
    step: str | None = None,
    **fields: Any,
) -> Caution:
    """One caution from the catalogue. A figure as limit brings its value, its unit and how it is known.

    Raises KeyError for a code that is not in the catalogue.
    """
    entry, know = catalogue()[code], catalogue()[code].know
    if isinstance(limit, Figure):
        know, unit, limit = limit.know, unit or limit.unit, limit.value
    shown = {"canal": canal, "value": _plain(value), "limit": _plain(limit), **fields}
    return Caution(
        code=code,
        severity=entry.severity,
        canal=canal,
        says=entry.says.format(**shown),
        do=entry.do.format(**shown),
        row=entry.row or entry.source,
        value=value,
        limit=limit,
        unit=unit,
        step=step,
        know=know,
        may_override=entry.may_override,
    )


def by_severity(cautions: Iterable[Caution]) -> tuple[Caution, ...]:
    """Stops first, then cautions, then notes; otherwise in the order found."""
    rank = {Severity.STOP: 0, Severity.CAUTION: 1, Severity.NOTE: 2}
    return tuple(sorted(cautions, key=lambda c: rank[c.severity]))


def _plain(value: float | None) -> str:
    return "" if value is None else f"{value:g}"


# --- overrides -----------------------------------------------------------------------------------------------------


def refuse_overrides(plan_input: PlanInput) -> None:
    """Raises OverrideNotPossible for an override that could never count; its path points at what is wrong."""
    canals = {canal.name for canal in plan_input.canals}
    for number, override in enumerate(plan_input.overrides):
        at = ("overrides", number)
        refuse_override(override, at=at)
        if override.canal is not None and override.canal not in canals:
            raise OverrideNotPossible(
                overridden=override.code, reason=f"there is no canal {override.canal}.", at=(*at, "canal")
            )
        if any((override.code, override.canal) == (other.code, other.canal) for other in plan_input.overrides[:number]):
            raise OverrideNotPossible(overridden=override.code, reason="it is there twice.", at=at)


def refuse_override(override: Override, *, at: tuple[str | int, ...] = ()) -> None:
    """Raises OverrideNotPossible where the caution cannot be overridden, a size is missing or does not belong, or no
    reason is given.
    """
    entry = catalogue().get(override.code)
    if entry is None:
        reason = "there is no such caution."
        raise OverrideNotPossible(overridden=override.code, reason=reason, at=(*at, "code"))
    if not entry.may_override:
        reason = "nobody may let the work go on in spite of it. Put right what it warns of."
        raise OverrideNotPossible(overridden=override.code, reason=reason, at=(*at, "code"))
    # A wide canal is let pass by choosing its size, and no other caution has a size: the one without the other is
    # refused.
    if (override.final_size is None) == (override.code == WIDE_CANAL):
        sized = "choose the size that the canal is made." if override.final_size is None else "no size goes with it."
        raise OverrideNotPossible(overridden=override.code, reason=sized, at=(*at, "final_size"))
    if not override.reason.strip():
        raise OverrideNotPossible(overridden=override.code, reason="write the reason.", at=(*at, "reason"))


def override_of(plan_input: PlanInput, code: str, canal: str | None) -> str | None:
    """The supervisor's reason for overriding this caution; None where nobody did."""
    return next(
        (override.reason for override in plan_input.overrides if (override.code, override.canal) == (code, canal)), None
    )


def overridden(plan_input: PlanInput, cautions: Iterable[Caution]) -> list[Caution]:
    """The same cautions; those that a supervisor overrode carry the reason."""
    return [replace(each, overridden=override_of(plan_input, each.code, each.canal)) for each in cautions]


def unused_overrides(plan_input: PlanInput, cautions: Sequence[Caution]) -> list[Caution]:
    """A note for each override whose caution this plan does not have."""
    had = {(each.code, each.canal) for each in cautions}
    return [
        caution("override-unused", canal=override.canal, overridden=override.code)
        for override in plan_input.overrides
        if (override.code, override.canal) not in had
    ]


def withholding(cautions: Iterable[Caution]) -> tuple[Caution, ...]:
    """The cautions that withhold steps: those that do so by the catalogue and are not overridden."""
    return tuple(each for each in cautions if catalogue()[each.code].withholds and each.overridden is None)
