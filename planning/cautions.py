"""Cautions: what a plan warns of, from a catalogue in the data files."""

from __future__ import annotations

from typing import Any

from planning import tables
from planning.plan_value import Caution, Severity


def caution(
    code: str,
    *,
    canal: str | None = None,
    value: float | None = None,
    limit: float | None = None,
    unit: str | None = None,
    **fields: Any,
) -> Caution:
    """One caution from the catalogue. Raises KeyError for a code that is not in it."""
    row = {r["code"]: r for r in tables.rows("cautions")}[code]
    shown = {"canal": canal, "value": _plain(value), **fields}
    return Caution(
        code=code,
        severity=Severity(row["severity"]),
        canal=canal,
        says=row["says"].format(**shown),
        do=row["do"].format(**shown),
        row=row["row"] or row["source"],
        value=value,
        limit=limit,
        unit=unit,
    )


def by_severity(found: list[Caution]) -> tuple[Caution, ...]:
    """Stops first; otherwise in the order found."""
    rank = {Severity.STOP: 0, Severity.CAUTION: 1, Severity.NOTE: 2}
    return tuple(sorted(found, key=lambda c: rank[c.severity]))


def _plain(value: float | None) -> str:
    return "" if value is None else f"{value:g}"
