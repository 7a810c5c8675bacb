"""Columns of exported tables."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any


class ColumnType(StrEnum):
    ID = "id"
    TEXT = "text"
    MOMENT = "moment"
    WHOLE = "whole"
    NUMBER = "number"
    YES_NO = "yes_no"
    JSON = "json"
    """A list, an object, or any other; in CSV its JSON text."""


UNITS: Mapping[str, str] = {"mm": "mm", "ml": "ml", "s": "s", "deg": "°", "px": "px", "bytes": "bytes"}
"""What the last part of a column's name says that it is in."""


@dataclass(frozen=True, slots=True)
class Column:
    name: str
    type: ColumnType
    meaning: str
    """Empty where the name says it all."""
    value: Callable[[Any], Any]
    """Of what a table shows of a row: null, a text, a number, yes or no, or for JSON a list or an object."""

    @property
    def unit(self) -> str | None:
        """None for what is no quantity, and for a count."""
        is_quantity = self.type in (ColumnType.WHOLE, ColumnType.NUMBER)
        return UNITS.get(self.name.rpartition("_")[2]) if is_quantity else None
