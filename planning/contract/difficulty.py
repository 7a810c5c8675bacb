"""How difficult a case is: the factors there are, and those that were found."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, get_args

from planning.foundation import tables

Level = Literal["low", "moderate", "high"]
LEVELS: tuple[Level, ...] = get_args(Level)
"""From easy to hard."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FactorLevel:
    code: str
    """As it is recorded: the factor's key, a colon, the level."""
    level: Level
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Factor:
    """Something that can make a case difficult."""

    key: str
    group: Literal["patient", "diagnosis", "tooth", "additional"]
    title: str
    levels: tuple[FactorLevel, ...]
    from_plan: bool
    """A plan works it out; a person may record it as well, and the higher level counts."""
    source: str
    know: str


@cache
def factors() -> Mapping[str, Factor]:
    """Every factor there is, by key, in the order they are asked for."""
    return {row["factor"]: _factor(row) for row in tables.rows("difficulty")}


def _factor(row: Mapping[str, str]) -> Factor:
    levels = tuple(
        FactorLevel(code=f"{row['factor']}:{level}", level=level, says=row[level]) for level in LEVELS if row[level]
    )
    group: Any = row["group"]
    return Factor(
        key=row["factor"],
        group=group,
        title=row["title"],
        levels=levels,
        from_plan=row["plan"] == "yes",
        source=row["source"],
        know=row["know"],
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class FactorFound:
    """One factor of this case."""

    code: str
    level: Level
    says: str
    from_plan: bool
    """Worked out from what the plan holds; otherwise recorded by a person."""
    source: str
    know: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Difficulty:
    level: Level
    factors: tuple[FactorFound, ...]
    """Factors above low, those that decide the level first."""
    rule: str
    """The counting rule in one sentence, with the counts of this case."""
    source: str
    know: str
