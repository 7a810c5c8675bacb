"""How many of a thing one request may hold: one row each, as a note on the field that holds them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any, ClassVar, Literal

from annotated_types import MaxLen

from planning.foundation import tables
from planning.foundation.bounds import composed, noted
from planning.foundation.errors import Pointer, TooMuchWork


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """The row of one thing that is counted."""

    most: int
    says: str
    """What is counted, in the plural."""

    def refusal(self, count: int, at: Pointer) -> TooMuchWork:
        reason = f"{count} {self.says} are more than the {self.most} that one request may have."
        return TooMuchWork(reason=reason, at=at)

    __is_annotated_types_grouped_metadata__: ClassVar[Literal[True]] = True

    def __iter__(self) -> Iterator[Any]:
        """The limit as others read it from a field's type."""
        yield MaxLen(self.most)


@cache
def _counts() -> dict[str, Count]:
    return {row["key"]: Count(most=int(row["most"]), says=row["says"]) for row in tables.rows("counts")}


def at_most(key: str) -> Count:
    """The row of what a field holds; as a note on the field's type it bounds the field."""
    return _counts()[key]


def refuse_too_many(value: Any, at: Pointer = ()) -> None:
    """Raises TooMuchWork at the first field of a value, however deep, that holds more than its row."""
    if isinstance(value, tuple):
        for number, item in enumerate(value):
            refuse_too_many(item, (*at, number))
    for name, count, deeper in _parts(value.__class__):
        held = getattr(value, name)
        if count and held is not None and len(held) > count.most:
            raise count.refusal(len(held), (*at, name))
        if deeper:
            refuse_too_many(held, (*at, name))


@cache
def _parts(type_: type) -> tuple[tuple[str, Count | None, bool], ...]:
    """The fields of a dataclass that are counted or composed of others, each with its row if it has one and whether it
    is composed; none of any other type."""
    if not is_dataclass(type_):
        return ()
    counted, deep = noted(type_, Count), composed(type_)
    parts = ((field.name, counted.get(field.name), field.name in deep) for field in fields(type_))
    return tuple((name, count, deeper) for name, count, deeper in parts if count or deeper)
