"""Frozen values to JSON data, and to the one text that is stored and hashed."""

from __future__ import annotations

import dataclasses
import hashlib
import json
from collections.abc import Mapping
from enum import StrEnum
from functools import cache
from typing import Any

from pydantic_core import SchemaSerializer
from pydantic_core.core_schema import CoreConfig

from planning.foundation.encoding.shapes import Mode, shape_of_list

# Most of what comes here, in whatever is gone through piece by piece.
_PLAIN_DATA = frozenset({str, int, float, bool, type(None)})
_CANONICAL = json.JSONEncoder(sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False)


def encode(value: object) -> Any:
    """JSON data of a value: objects, lists, texts, numbers."""
    if type(value) in _PLAIN_DATA:
        return value
    if dataclasses.is_dataclass(value):
        kind: Any = type(value)
        return _writer(kind).to_python([value], mode="json")[0]
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, Mapping):
        return {str(key): each if type(each) in _PLAIN_DATA else encode(each) for key, each in value.items()}
    return [encode(each) for each in value] if isinstance(value, tuple | list) else value


def canonical_text(value: object) -> str:
    """The one text of a value: keys sorted, no blanks. Equal values of one type have the same text.

    Raises ValueError for a number that JSON cannot hold.
    """
    return _CANONICAL.encode(encode(value))


def kept_text(value: object) -> str:
    """The text of a dataclass whose mappings keep their order: for what is written and read back here alone."""
    kind: Any = type(value)
    # Without the brackets of the list of one that `shape_of_list` asks for.
    return _writer(kind).to_json([value])[1:-1].decode()


def digest(text: str) -> str:
    """SHA-256 of a text in UTF-8, hexadecimal."""
    return hashlib.sha256(text.encode()).hexdigest()


def prepare_writing(type_: Any) -> None:
    """The same as `prepare_reading` for writing the dataclass."""
    _writer(type_)


@cache
def _writer(type_: Any) -> SchemaSerializer:
    # A number that JSON cannot hold must not become null without a word.
    return SchemaSerializer(shape_of_list(type_, Mode.GIVEN), CoreConfig(ser_json_inf_nan="constants"))
