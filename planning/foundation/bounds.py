"""What may be entered of a quantity: one row each, read by forms, the API's description and the planner."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from typing import Any, ClassVar, Literal, TypeVar, get_args, get_type_hints

from annotated_types import Ge, Le

from planning.foundation import tables
from planning.foundation.errors import LengthOutOfBounds, OutOfBounds, Pointer

N = TypeVar("N")

UNITS = {"deg": "°", "size": "", "gauge": "", "times": "", "hundredths": "", "as the figure": "", "as the measure": ""}
"""As people write them, where that is not the row's own word."""
WHOLE = frozenset({"size", "gauge", "times", "hundredths", "/min"})
"""Units that are counted: halves are no answer."""
KEPT_DECIMALS = {"mm": 2, "deg": 1}
"""How finely what was measured is kept; no ruler and no protractor of the trade reads finer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """The row of one quantity."""

    key: str
    unit: str
    least: float
    most: float
    says: str
    """What it is, for people."""
    step: float | None
    """How far one press of a form's button goes; none where no form asks for it in steps."""
    begins: float | None
    """Where an empty field begins."""

    @property
    def whole(self) -> bool:
        return self.unit in WHOLE

    @property
    def unit_said(self) -> str:
        """The unit as people write it; empty where it needs none."""
        return UNITS.get(self.unit, self.unit)

    @property
    def sentence(self) -> str:
        """The sentence for whoever enters something outside, wherever that is."""
        unit = f" {self.unit_said}" if self.unit_said == self.unit else self.unit_said
        return f"{self.says} lies between {self.least:g} and {self.most:g}{unit}. Check the figure and its unit."

    def holds(self, value: float) -> bool:
        return self.least <= value <= self.most

    def kept(self, value: float) -> float:
        """The value as finely as it is kept."""
        return round(value, KEPT_DECIMALS[self.unit]) if self.unit in KEPT_DECIMALS else value

    def refusal(self, at: Pointer = (), of: str = "") -> OutOfBounds:
        """The refusal of a value outside; `of` names whose it is."""
        kind = LengthOutOfBounds if self.key == "length" else OutOfBounds
        return kind(reason=f"{of}: {self.sentence}" if of else self.sentence, at=at)

    __is_annotated_types_grouped_metadata__: ClassVar[Literal[True]] = True

    def __iter__(self) -> Iterator[Any]:
        """The limits as others read them from a field's type, and the row's name."""
        yield Ge(self.least)
        yield Le(self.most)
        yield _Named(self.key)


@dataclass(frozen=True, slots=True)
class _Named:
    """Keeps the row's name in the schema that the encoder is made from."""

    key: str

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> Any:
        return {**handler(source), "metadata": {"bound": self.key}}


@cache
def bounds() -> Mapping[str, Bound]:
    """All rows by key."""
    return {
        row["key"]: Bound(
            key=row["key"],
            unit=row["unit"],
            least=_number(row["least"]),
            most=_number(row["most"]),
            says=row["says"],
            step=_number(row["step"]) if row["step"] else None,
            begins=_number(row["begins"]) if row["begins"] else None,
        )
        for row in tables.rows("bounds")
    }


def _number(text: str) -> float:
    number = float(text)
    return int(number) if number.is_integer() else number


def within(key: str) -> Bound:
    """The row of a quantity; as a note on a field's type it bounds the field."""
    return bounds()[key]


@cache
def noted(type_: type, kind: type[N]) -> Mapping[str, N]:
    """The notes of one kind on the types of a dataclass's own fields, by the fields' names."""
    hints = get_type_hints(type_, include_extras=True)
    return {field.name: note for field in fields(type_) for note in _notes(hints[field.name], kind)}


def _notes(hint: Any, kind: type[N]) -> Iterator[N]:
    """The note on a type, or on the one beside None."""
    for part in (hint, *get_args(hint)):
        yield from (note for note in getattr(part, "__metadata__", ()) if isinstance(note, kind))


@cache
def composed(type_: type) -> frozenset[str]:
    """The fields of a dataclass that may hold other dataclasses, however deep."""
    hints = get_type_hints(type_, include_extras=True)
    return frozenset(field.name for field in fields(type_) if _composed(hints[field.name]))


def _composed(hint: Any) -> bool:
    return (isinstance(hint, type) and is_dataclass(hint)) or any(map(_composed, get_args(hint)))


def of_fields(type_: type) -> Mapping[str, Bound]:
    """The rows that a dataclass's own fields are bounded by, by their names."""
    return noted(type_, Bound)


def outside(value: Any, at: Pointer = ()) -> Iterator[tuple[Pointer, Bound]]:
    """Every number in a value, however deep, that its row does not hold, with its path."""
    if isinstance(value, tuple | list):
        for number, item in enumerate(value):
            yield from outside(item, (*at, number))
        return
    for name, bound in _bounded_parts(value.__class__):
        held = getattr(value, name)
        if bound is None:
            yield from outside(held, (*at, name))
        elif held is not None and not bound.holds(held):
            yield (*at, name), bound


@cache
def _bounded_parts(type_: type) -> tuple[tuple[str, Bound | None], ...]:
    """The fields of a dataclass that are bounded or composed of others, each with the row that bounds it; none of any
    other type."""
    if not is_dataclass(type_):
        return ()
    bounded, deep = of_fields(type_), composed(type_)
    return tuple((f.name, bounded.get(f.name)) for f in fields(type_) if f.name in bounded or f.name in deep)


def refuse_outside(value: Any, at: Pointer = (), of: str = "") -> None:
    """Raises OutOfBounds at the first number outside its row; `of` names whose it is."""
    for path, bound in outside(value, at):
        raise bound.refusal(path, of)
