"""JSON data to frozen values. Nothing is guessed: a text is no number, an unknown key is a mistake worth naming."""

from __future__ import annotations

from functools import cache
from typing import Any, TypeVar, overload

from pydantic_core import ErrorDetails, SchemaValidator, ValidationError

from planning.foundation.encoding.faults import sentence_of
from planning.foundation.encoding.shapes import MOST_NUMBER, OBJECT, PLAIN, TAGS, Mode, shape_of_list
from planning.foundation.errors import Fault, NotUnderstood, PlanningError, Pointer

T = TypeVar("T")

MOST_TOLD = 1_000  # faults of one request: who has more has sent something else than was asked for
_CODES = {
    "bool_type": "not-true-or-false",
    "dataclass_type": "not-an-object",
    "dict_type": "not-an-object",
    "enum": "not-of-these",
    "finite_number": "too-large",
    "float_type": "not-a-number",
    "greater_than_equal": "too-large",
    "less_than_equal": "too-large",
    "invalid_key": "unknown-key",
    "literal_error": "not-of-these",
    "model_attributes_type": "not-an-object",
    "missing": "missing",
    "string_too_long": "too-long",
    "string_type": "not-text",
    "string_unicode": "control-characters",
    "too_long": "too-many",
    "tuple_type": "not-a-list",
    "unexpected_keyword_argument": "unknown-key",
    "whole_number": "not-whole",
}
"""What pydantic finds wrong, by our codes. What is not listed keeps its own message."""


@overload
def decode(type_: type[T], data: object, mode: Mode = ...) -> T: ...
@overload
def decode(type_: Any, data: object, mode: Mode = ...) -> Any: ...
def decode(type_: Any, data: object, mode: Mode = Mode.GIVEN) -> Any:
    """A value of `type_` from parsed JSON; what was kept is read as `Mode.KEPT`.

    Raises NotUnderstood with every fault found, each with its path, or with their number alone where nobody would
    read them all; a PlanningError of the value's own checks passes with its path completed.
    """
    try:
        # A list of one, as the reader is one of lists: see `shape_of_list`.
        return _reader(type_, mode).validate_python([data])[0]
    except ValidationError as wrong:
        count = wrong.error_count()
        if count > MOST_TOLD:
            too_many = Fault((), NotUnderstood.code, f"Has {count} faults: it is not what is asked for here.")
            raise NotUnderstood([too_many]) from None
        errors = wrong.errors(include_url=False)
    faults = [_fault(each, data) for each in errors if each["type"] != "value_error"]
    if faults:
        raise NotUnderstood(faults)
    # Only what values refuse themselves is left by now; the first of it is told.
    refusal: PlanningError = errors[0]["ctx"]["error"]
    raise refusal.below(*_path(errors[0], data))


def prepare_reading(type_: Any, mode: Mode) -> None:
    """Makes the reader of a type now. For large values that takes a tenth of a second, which the first request would
    have to wait for.
    """
    _reader(type_, mode)


def read_back(type_: type[T], text: str) -> T:
    """The value that `kept_text` wrote. Nothing is checked but its types: nobody else had it in between."""
    kind: Any = type_
    value: T = _reader(kind, Mode.ANSWERED).validate_json(f"[{text}]")[0]
    return value


@cache
def _reader(type_: Any, mode: Mode) -> SchemaValidator:
    return SchemaValidator(shape_of_list(type_, mode))


def _fault(error: ErrorDetails, data: object) -> Fault:
    path, ctx = _path(error, data), error.get("ctx", {})
    kind = error["type"]
    if kind == "tag":
        if not isinstance(error["input"], dict):
            return Fault(path, "not-an-object", sentence_of("not-an-object"))
        says = sentence_of("not-of-these", expected=ctx["expected"])
        if ctx["tag"] in error["input"]:
            return Fault((*path, ctx["tag"]), "not-of-these", says)
        return Fault((*path, ctx["tag"]), "missing", f"{sentence_of('missing')} {says}")
    code = _CODES.get(kind)
    if code is None:
        return Fault(path, NotUnderstood.code, f"{error['msg']}.")
    return Fault(path, code, sentence_of(code, most=f"{MOST_NUMBER:.0f}", **ctx))


def _path(error: ErrorDetails, data: Any) -> Pointer:
    """Where in the data it is. pydantic names more: the member of a union that was read, '[key]' after a wrong key."""
    path: list[str | int] = []
    unknown = error["type"] == "unexpected_keyword_argument"
    # The first step is the place in the list of one that `decode` reads.
    steps = error["loc"][1:] if unknown or error["loc"][-1] != "[key]" else error["loc"][1:-1]
    for number, step in enumerate(steps, start=1):
        if isinstance(data, dict):
            is_last_key = number == len(steps) and step in data
            is_member = step in (OBJECT, *map(data.get, TAGS)) and not is_last_key
        else:
            is_member = step == PLAIN
        if not is_member:
            path.append(step)
            data = data.get(step) if isinstance(data, dict) else data[step]
    return tuple(path)
