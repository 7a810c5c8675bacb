"""Why a number is what it is: the rule, what went in, and the rows it rests on."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class WhyInput:
    name: str
    value: float
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Why:
    """The reason of one number of a canal's plan."""

    of: str
    """Which number: the field's path in the canal's plan, `needle.ceiling_mm` for instance; `.0` for a place of a
    list, none for all of them; stops by the name that the stop table gives them."""
    rule: str
    """One sentence."""
    inputs: tuple[WhyInput, ...]
    rows: tuple[str, ...]
    """Keys of `rows_used`."""
