"""Frozen values to JSON data, and to the one text that is stored and hashed."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from enum import StrEnum
from typing import Any, get_args, get_origin

from planning.encoding.shapes import fields_of, is_dataclass, members


def encode(value: object) -> Any:
    """JSON data of a value: objects, lists, texts, numbers."""
    return _written(value, Any)


def canonical_text(value: object) -> str:
    """The one text of a value: keys sorted, no blanks. Equal values of one type have the same text.

    Raises ValueError for a number that JSON cannot hold.
    """
    return json.dumps(encode(value), sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)


def digest(text: str) -> str:
    """SHA-256 of a text in UTF-8, hexadecimal."""
    return hashlib.sha256(text.encode()).hexdigest()


def _written(value: Any, type_: Any) -> Any:
    kind: Any = type(value)
    if is_dataclass(kind):
        return {field.name: _written(getattr(value, field.name), field.type_) for field in fields_of(kind)}
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, Mapping):
        of_value = _inside(type_, dict, 1)
        return {str(key): _written(each, of_value) for key, each in value.items()}
    if isinstance(value, tuple | list):
        item = _inside(type_, tuple, 0)
        return [_written(each, item) for each in value]
    if isinstance(value, int | float) and not isinstance(value, bool) and float in members(type_):
        # 20 and 20.0 are equal, so where a number is meant they are written alike; so are 0.0 and -0.0.
        return float(value) + 0.0
    return value


def _inside(type_: Any, container: type, position: int) -> Any:
    """The type of what a container holds, or Any where that is not known."""
    for member in members(type_):
        if get_origin(member) is container:
            return get_args(member)[position]
    return Any
