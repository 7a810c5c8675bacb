"""What the encoder needs to know of a type: its fields, and how the members of a union are told apart."""

from __future__ import annotations

import dataclasses
import types
from collections.abc import Mapping
from dataclasses import MISSING, dataclass
from functools import cache
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

MOST_TEXT = 2000  # characters: a long remark, and far from what could fill a disk
MOST_NUMBER = 1e9  # no length, angle or volume comes near it, and arithmetic with it cannot overflow
MOST_WHOLE = 2**53 - 1  # the largest whole number that JSON readers everywhere agree on


@dataclass(frozen=True, slots=True)
class FieldOf:
    """One field of a dataclass with its resolved type."""

    name: str
    type_: Any
    required: bool
    default: Any


@cache
def fields_of(cls: type) -> tuple[FieldOf, ...]:
    """The fields of a dataclass in order."""
    hints = get_type_hints(cls)
    return tuple(
        FieldOf(
            name=field.name,
            type_=hints[field.name],
            required=field.default is MISSING and field.default_factory is MISSING,
            default=field.default_factory() if field.default_factory is not MISSING else field.default,
        )
        for field in dataclasses.fields(cls)
        if field.init
    )


def is_dataclass(type_: Any) -> bool:
    """True for a dataclass itself, not for a value of it."""
    return isinstance(type_, type) and dataclasses.is_dataclass(type_)


def members(type_: Any) -> tuple[Any, ...]:
    """The members of a union; a type that is none is its only member."""
    if get_origin(type_) in (Union, types.UnionType):
        return get_args(type_)
    return (type_,)


def literals(type_: Any) -> tuple[Any, ...]:
    """The values of a Literal; empty for any other type."""
    return get_args(type_) if get_origin(type_) is Literal else ()


def is_tag(field: FieldOf) -> bool:
    """True for a field that can hold one text only and so tells a value's kind."""
    values = literals(field.type_)
    return len(values) == 1 and isinstance(values[0], str)


@cache
def tagged(classes: tuple[type, ...]) -> tuple[str, Mapping[str, type]]:
    """The tag that tells these dataclasses apart, and the class for each of its values.

    Raises TypeError where no field does: such a union cannot be read back.
    """
    for name in (field.name for field in fields_of(classes[0]) if is_tag(field)):
        found = {
            literals(field.type_)[0]: cls
            for cls in classes
            for field in fields_of(cls)
            if field.name == name and is_tag(field)
        }
        if len(found) == len(classes):
            return name, found
    raise TypeError(f"No field tells {', '.join(cls.__name__ for cls in classes)} apart.")
