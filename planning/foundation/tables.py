"""The data files: every figure of the trade, with its source and how it is known.

A row without a source is refused, so a figure cannot enter the program without one.
"""

from __future__ import annotations

import csv
import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

DATA = Path(__file__).parents[1] / "data"
KNOWN_HOW = frozenset({"read", "read second-hand", "from memory", "derived", "common practice", "programme rule"})
"""How a figure is known. 'read' means an abstract, table or opening page; no full paper was read."""


class RowRefused(ValueError):
    """A row of a data file that does not say where it comes from."""


@cache
def rows(table: str) -> tuple[Mapping[str, str], ...]:
    """The rows of `data/<table>.csv`, each a mapping of column to text. Raises RowRefused."""
    path = DATA / f"{table}.csv"
    with path.open(encoding="utf-8", newline="") as lines:
        # Lines that begin with # tell people what the columns mean.
        reader = csv.DictReader(line for line in lines if not line.startswith("#"))
        records = tuple(reader)
    for number, row in enumerate(records, start=1):
        # The csv module puts surplus cells under the key None, and None in place of missing ones.
        if None in row or None in row.values():
            raise RowRefused(f"{path.name}, row {number}: not as many cells as the heading")
        if not row.get("source"):
            raise RowRefused(f"{path.name}, row {number}: no source")
        if row.get("know") not in KNOWN_HOW:
            raise RowRefused(f"{path.name}, row {number}: 'know' is none of {sorted(KNOWN_HOW)}")
    return records


def row_for(table: str, tooth: str, canal: str) -> Mapping[str, str] | None:
    """The first row of a table of canals that holds for this one; None where the table has none."""
    return next((row for row in rows(table) if row["tooth"] == tooth and canal in row["canals"].split()), None)


@cache
def data_version() -> str:
    """Twelve hexadecimal digits that change when any data file does."""
    digest = hashlib.sha256()
    # Sorted, as file systems list a folder in different orders.
    for path in sorted(DATA.rglob("*")):
        if path.suffix in {".csv", ".toml"}:
            digest.update(path.relative_to(DATA).as_posix().encode())
            digest.update(path.read_bytes())
    return digest.hexdigest()[:12]


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One figure with where it comes from."""

    key: str
    value: float
    unit: str
    source: str
    know: str
    says: str
    programme: bool = False


@cache
def published() -> Mapping[str, Figure]:
    """All single figures by key, as the data file has them."""
    return {
        row["key"]: Figure(
            key=row["key"],
            value=float(row["value"]),
            unit=row["unit"],
            source=row["source"],
            know=row["know"],
            says=row["says"],
        )
        for row in rows("figures")
    }


class Figures:
    """Figures by key, the programme's own values in place of the published ones; remembers which were used."""

    def __init__(self, own: Mapping[str, float] | None = None) -> None:
        """Raises KeyError where `own` names a figure that does not exist."""
        self._table = dict(published())
        for key, value in (own or {}).items():
            figure = self._table[key]
            self._table[key] = Figure(
                key=key,
                value=value,
                unit=figure.unit,
                source=f"set by the programme in place of {figure.value:g} {figure.unit} ({figure.source})",
                know="programme rule",
                says=figure.says,
                programme=True,
            )
        self._used: set[str] = set()
        self._cells: dict[str, Figure] = {}

    def __getitem__(self, key: str) -> float:
        return self.row(key).value

    def count(self, key: str) -> int:
        """A figure that counts something, as a whole number."""
        return int(self[key])

    def row(self, key: str) -> Figure:
        """A figure with its source."""
        self._used.add(key)
        return self._table[key]

    def cell(self, table: str, row: Mapping[str, str], column: str, *named: str) -> Figure:
        """One value of a row of another table, under the key `table/named/column`: named after the row's tooth and
        canals where nothing else is given. Its unit stands at the end of the column's name."""
        key = "/".join((table, *(named or (row["tooth"], row["canals"])), column))
        figure = Figure(
            key=key,
            value=float(row[column]),
            unit=column.rpartition("_")[2],
            source=row["source"],
            know=row["know"],
            says="",
        )
        self._cells[key] = figure
        return figure

    def rest_on(self, figures: Iterable[Figure]) -> None:
        """Counts figures as used that another set of them was asked for."""
        self._cells.update((figure.key, figure) for figure in figures)

    def used(self) -> tuple[Figure, ...]:
        """Every figure asked for so far, by key."""
        figures = {key: self._table[key] for key in self._used} | self._cells
        return tuple(figures[key] for key in sorted(figures))
