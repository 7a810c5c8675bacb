"""How difficult a case is, counted from recorded factors."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Level = Literal["low", "moderate", "high"]


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
    """Those above low, the ones that make it so first."""
    rule: str
    """The counting rule in one sentence, with the counts of this case."""
    source: str
    know: str
