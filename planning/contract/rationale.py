"""Why a number of a plan is what it is: the rule in a sentence, the arithmetic, and the figures it rests on."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


@dataclass(frozen=True, slots=True, kw_only=True)
class RationaleInput:
    name: str
    value: float
    unit: str


class Rounding(StrEnum):
    """How a number is rounded once it has been computed."""

    NONE = "none"
    HALF_MM_DOWN = "half_mm_down"
    HUNDREDTH = "hundredth"
    HUNDREDTH_DOWN = "hundredth_down"


@dataclass(frozen=True, slots=True, kw_only=True)
class Calculation:
    """How a number follows from others, as it can be written on one line."""

    formula: str
    """Names of its inputs in braces, numbers, `+ - * /`, brackets, `min` and `max`."""
    inputs: tuple[RationaleInput, ...]
    """Every number that the formula names."""
    exact: float
    """What the formula comes to, to a millionth, before it is rounded."""
    rounding: Rounding
    """Down to half a millimetre as a stop is set, to the nearest hundredth, down to one, or not at all."""
    result: float
    """The number as the plan has it."""
    unit: str
    """Of the number: millimetres, millilitres, per cent; `size` for an ISO size, empty for a count."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rationale:
    """The reason of one number of a plan."""

    of: str
    """Which number: the field's path in the canal's plan, `needle.ceiling_mm` for instance, or in the tooth's; `.0` for
    a place of a list, none for all of them; stops by the name that the stop table gives them."""
    rule: str
    """One sentence."""
    inputs: tuple[RationaleInput, ...]
    rows: tuple[str, ...]
    """Keys of `rows_used`."""
    calculations: tuple[Calculation, ...] = ()
    """One for each place of a list, or for each value that the number has; none where it was chosen, or searched for in
    more steps than a line holds."""
