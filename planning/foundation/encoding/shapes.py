"""What pydantic makes of a type, with this project's bounds on plain values and its unions told apart by a tag.

The values stay plain dataclasses without a word of pydantic. So the bounds are put into the core schema that pydantic
makes of them; the same schema then reads, writes and describes.
"""

from __future__ import annotations

import dataclasses
import math
import re
from enum import StrEnum
from functools import cache
from typing import Annotated, Any

from pydantic import AfterValidator, BeforeValidator, ConfigDict, Field, PlainSerializer, Strict, TypeAdapter
from pydantic_core import PydanticCustomError, ValidationError, core_schema

from planning.foundation.bounds import Bound, bounds

MOST_TEXT = 2000  # characters: a long remark, and far from what could fill a disk
MOST_NUMBER = 1e9  # no length, angle or volume comes near it, and arithmetic with it cannot overflow
MOST_WHOLE = 2**53 - 1  # the largest whole number that JSON readers everywhere agree on
TAGS = ("method", "kind", "test")  # fields by whose one text the members of a union are told apart
OBJECT, PLAIN = "(object)", "(plain)"  # the members of a union of one dataclass and one plain type
_BEYOND = frozenset({"greater_than_equal", "less_than_equal", "finite_number"})
_CONTROL_CHARACTER = re.compile(r"[^\n\r\t\x20-\x7e\xa0-\U0010ffff]")


class Mode(StrEnum):
    GIVEN = "given"
    """What is sent in: fields with a default may be left out, unknown keys and what no row holds are refused."""
    KEPT = "kept"
    """What was sent in once and is read again: the same, by the rows of its own day."""
    ANSWERED = "answered"
    """What comes back: every field is there, and a later version may add more."""


@cache
def shape_of_list(type_: Any, mode: Mode, described: bool = False) -> Any:
    """The core schema of a list of `type_`: on its own, a dataclass would take no configuration from outside.

    `described`, it has what fields say of themselves: for that the source of every class is read, which takes longer
    than all the rest.
    """
    config = ConfigDict(use_attribute_docstrings=described, extra="ignore" if mode is Mode.ANSWERED else "forbid")
    shape: Any = TypeAdapter(list[type_], config=config).core_schema
    bounded = {} if mode is Mode.ANSWERED else _bounded()
    by_ref = {each["ref"]: each for each in shape.get("definitions", ())}

    def shaped(node: Any) -> Any:
        match node:
            case {"type": "union", "choices": choices}:
                return _told_apart([by_ref.get(each.get("schema_ref"), each) for each in choices], shaped(choices))
            case {"type": "literal", "expected": [int(), *_]}:
                return core_schema.no_info_before_validator_function(_whole, node)  # else true would pass for 1
            case {"type": "enum"}:  # its metadata would overwrite what the schema says of the members
                return {key: each for key, each in node.items() if key != "metadata"}
            case {"type": "str", "max_length": int(longest)} if bounded:
                return _text_schema(longest)
            case {"type": str(kind), "metadata": {"bound": str(key)}} if mode is Mode.GIVEN:
                return _within(bounds()[key], bounded[kind])
            case {"type": str(kind), "metadata": {"bound": _}} if mode is Mode.KEPT:
                return bounded[kind]
            case {"type": str(kind)} if kind in bounded:
                return bounded[kind]
            case dict():
                return {key: each if key == "metadata" else shaped(each) for key, each in node.items()}
            case list():
                return [shaped(each) for each in node]
        return node

    return shaped(shape)


def tag_value(schema: Any) -> str | None:
    """The one text that a field can hold; None where it can hold something else."""
    match schema:
        case {"type": "default", "schema": inner}:
            return tag_value(inner)
        case {"type": "literal", "expected": [str(text)]}:
            return text
    return None


def _told_apart(members: list[Any], choices: list[Any]) -> Any:
    """A union whose member is known before it is read: by a tag, or an object from something plain."""
    fields = [
        {each["name"]: each["schema"] for each in member.get("schema", {}).get("fields", ())} for member in members
    ]
    for tag in TAGS:
        by_text = {tag_value(each.get(tag)): choice for each, choice in zip(fields, choices, strict=True)}
        if None not in by_text and len(by_text) == len(choices):
            *but_last, last = map(repr, by_text)
            context: dict[str, Any] = {"tag": tag, "expected": f"{', '.join(but_last)} or {last}"}
            return core_schema.tagged_union_schema(
                by_text, tag, custom_error_type="tag", custom_error_message="tag", custom_error_context=context
            )
    by_kind = {OBJECT if each else PLAIN: choice for each, choice in zip(fields, choices, strict=True)}
    if len(by_kind) < len(choices):
        raise TypeError(f"Nothing tells {members!r} apart.")
    return core_schema.tagged_union_schema(by_kind, _kind)


def _kind(data: object) -> str:
    return OBJECT if isinstance(data, dict) or dataclasses.is_dataclass(data) else PLAIN


def _text(text: str) -> str:
    if _CONTROL_CHARACTER.search(text):
        raise PydanticCustomError("string_unicode", "control character")
    return text


def _whole(data: object) -> int:
    """A whole number as int; 25.0 is one too."""
    # Not by isinstance, as True would pass for 1; and without calls, as there may be very many numbers.
    whole = int(data) if type(data) is float and data.is_integer() else data
    if type(whole) is not int or not -MOST_WHOLE <= whole <= MOST_WHOLE:
        raise PydanticCustomError("whole_number", "no whole number")
    return whole


def _number(data: Any) -> Any:
    """20 and 20.0 are equal, and so are 0.0 and -0.0: they are read and written alike."""
    try:
        # -0.0 + 0.0 is 0.0.
        return data + 0.0 if type(data) in (int, float) else data
    except OverflowError:  # a whole number beyond every float
        return math.inf


@cache
def _bounded() -> dict[str, Any]:
    """Plain values as they may be sent, by pydantic's name for them."""
    types: dict[str, Any] = {
        "bool": Annotated[bool, Strict()],
        "int": Annotated[int, Field(ge=-MOST_WHOLE, le=MOST_WHOLE), BeforeValidator(_whole)],
        "float": Annotated[
            float,
            Strict(),
            Field(ge=-MOST_NUMBER, le=MOST_NUMBER, allow_inf_nan=False),
            BeforeValidator(_number),
            PlainSerializer(_number),
        ],
    }
    return {"str": _text_schema(MOST_TEXT), **{kind: TypeAdapter(each).core_schema for kind, each in types.items()}}


def _within(bound: Bound, plain: Any) -> Any:
    """A number as it may be sent, described by its row's limits; outside them the row refuses it itself."""
    limits = {"ge": bound.least, "le": bound.most}

    def held(data: Any, read: Any) -> Any:
        try:
            return read(data)
        except ValidationError as wrong:
            if wrong.errors(include_url=False)[0]["type"] in _BEYOND:
                raise bound.refusal() from None
            raise

    return core_schema.no_info_wrap_validator_function(held, {**plain, "schema": {**plain["schema"], **limits}})


def _text_schema(longest: int) -> Any:
    """Text; one that says itself how long it may be is a file, not a remark."""
    bounded: Any = Annotated[str, Strict(), Field(max_length=longest), AfterValidator(_text)]
    return TypeAdapter(bounded).core_schema
