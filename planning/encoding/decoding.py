"""JSON data to frozen values. Nothing is guessed: a text is no number, an unknown key is a mistake worth naming."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from enum import StrEnum
from typing import Any, TypeVar, get_args, get_origin, overload

from planning.encoding.shapes import (
    MOST_NUMBER,
    MOST_TEXT,
    MOST_WHOLE,
    fields_of,
    is_dataclass,
    literals,
    members,
    tagged,
)
from planning.errors import NotUnderstood, PlanningError, Pointer

T = TypeVar("T")


class _Unread:
    """Stands where a value could not be read, so that the reading goes on and finds the other problems."""


_UNREAD = _Unread()
_LINE_ENDS = "\n\r\t"


@overload
def decode(type_: type[T], data: object) -> T: ...
@overload
def decode(type_: Any, data: object) -> Any: ...
def decode(type_: Any, data: object) -> Any:
    """A value of `type_` from parsed JSON.

    Raises NotUnderstood with every problem found, each with its path; a PlanningError of the value's own checks
    passes with its path completed.
    """
    reader = _Reader()
    value = reader.read(type_, data, ())
    if reader.problems:
        raise NotUnderstood(reader.problems)
    if reader.refusal is not None:
        raise reader.refusal
    return value


class _Reader:
    def __init__(self) -> None:
        self.problems: list[tuple[Pointer, str]] = []
        self.refusal: PlanningError | None = None

    def problem(self, at: Pointer, sentence: str) -> _Unread:
        self.problems.append((at, sentence))
        return _UNREAD

    def read(self, type_: Any, data: object, at: Pointer) -> Any:
        among = members(type_)
        if len(among) > 1:
            return self.one_of(among, data, at)
        if is_dataclass(type_):
            return self.object_(type_, data, at)
        if literals(type_):
            return self.among(literals(type_), data, at)
        if isinstance(type_, type) and issubclass(type_, StrEnum):
            chosen = self.among(tuple(member.value for member in type_), data, at)
            return chosen if isinstance(chosen, _Unread) else type_(chosen)
        if get_origin(type_) is tuple:
            return self.list_(type_, data, at)
        if get_origin(type_) is dict:
            return self.map_(type_, data, at)
        return self.plain(type_, data, at)

    def plain(self, type_: Any, data: object, at: Pointer) -> Any:
        if type_ is str:
            return self.text(data, at)
        if type_ is bool:
            return data if isinstance(data, bool) else self.problem(at, "must be true or false")
        if type_ is int:
            return self.whole(data, at)
        if type_ is float:
            return self.number(data, at)
        if type_ is type(None):
            return None if data is None else self.problem(at, "must be null")
        raise TypeError(f"No reading is written for {type_!r}.")

    def text(self, data: object, at: Pointer) -> str | _Unread:
        if not isinstance(data, str):
            return self.problem(at, "must be text")
        if len(data) > MOST_TEXT:
            return self.problem(at, f"must not be longer than {MOST_TEXT} characters")
        if any(unicodedata.category(sign) in ("Cc", "Cs") and sign not in _LINE_ENDS for sign in data):
            return self.problem(at, "must not hold control characters")
        return data

    def whole(self, data: object, at: Pointer) -> int | _Unread:
        whole = int(data) if isinstance(data, float) and data.is_integer() else data
        if not isinstance(whole, int) or isinstance(whole, bool) or abs(whole) > MOST_WHOLE:
            return self.problem(at, "must be a whole number")
        return whole

    def number(self, data: object, at: Pointer) -> float | _Unread:
        if not isinstance(data, int | float) or isinstance(data, bool):
            return self.problem(at, "must be a number")
        if not abs(data) <= MOST_NUMBER:  # worded so that NaN, which compares to nothing, is refused too
            return self.problem(at, f"must be a finite number of at most {MOST_NUMBER:.0f}")
        return float(data) + 0.0  # minus zero becomes zero: the two are equal and must be written alike

    def among(self, values: tuple[Any, ...], data: object, at: Pointer) -> Any:
        for value in values:
            if data == value and type(data) is type(value):
                return value
        return self.problem(at, f"must be {_or(values)}")

    def list_(self, type_: Any, data: object, at: Pointer) -> tuple[Any, ...] | _Unread:
        if not isinstance(data, list | tuple):
            return self.problem(at, "must be a list")
        item = get_args(type_)[0]
        return tuple(self.read(item, each, (*at, number)) for number, each in enumerate(data))

    def map_(self, type_: Any, data: object, at: Pointer) -> dict[Any, Any] | _Unread:
        if not isinstance(data, Mapping):
            return self.problem(at, "must be an object")
        of_key, of_value = get_args(type_)
        read = {
            self.read(of_key, key, (*at, str(key))): self.read(of_value, value, (*at, str(key)))
            for key, value in data.items()
        }
        return read

    def one_of(self, among: tuple[Any, ...], data: object, at: Pointer) -> Any:
        if data is None and type(None) in among:
            return None
        classes = tuple(each for each in among if is_dataclass(each))
        others = tuple(each for each in among if not is_dataclass(each) and each is not type(None))
        if len(others) > 1:
            raise TypeError(f"Nothing tells {others!r} apart.")
        if not classes or (others and not isinstance(data, Mapping)):
            return self.read(others[0], data, at)
        if len(classes) == 1:
            return self.object_(classes[0], data, at)
        if not isinstance(data, Mapping):
            return self.problem(at, "must be an object")
        tag, by_value = tagged(classes)
        if tag not in data:
            return self.problem((*at, tag), f"is missing; it must be {_or(tuple(by_value))}")
        value = self.among(tuple(by_value), data[tag], (*at, tag))
        return value if isinstance(value, _Unread) else self.object_(by_value[value], data, at)

    def object_(self, cls: Any, data: object, at: Pointer) -> Any:
        if not isinstance(data, Mapping):
            return self.problem(at, "must be an object")
        before = len(self.problems)
        given: dict[str, Any] = {}
        for field in fields_of(cls):
            if field.name in data:
                given[field.name] = self.read(field.type_, data[field.name], (*at, field.name))
            elif field.required:
                self.problem((*at, field.name), "is missing")
        known = {field.name for field in fields_of(cls)}
        for key in data:
            if key not in known:
                self.problem((*at, str(key)), "is not known here")
        if len(self.problems) > before:
            return _UNREAD
        try:
            return cls(**given)
        except PlanningError as refusal:
            self.refusal = self.refusal or refusal.below(*at)
            return _UNREAD


def _or(values: tuple[Any, ...]) -> str:
    said = [f"'{value}'" if isinstance(value, str) else str(value) for value in values]
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} or {said[-1]}"
