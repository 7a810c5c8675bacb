"""Fields of what is sent and shown. Nothing is guessed: a text is no number, an unknown key is a mistake to name."""

from __future__ import annotations

import json
from collections.abc import Iterator
from math import isfinite
from types import NoneType
from typing import Any, ClassVar, NoReturn, get_args, get_type_hints

from django.core.validators import BaseValidator
from drf_spectacular.extensions import OpenApiSerializerExtension, OpenApiSerializerFieldExtension
from drf_spectacular.plumbing import ComponentIdentity, ResolvedComponent
from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers
from rest_framework.exceptions import ErrorDetail

from planning.foundation.bounds import within
from planning.foundation.encoding import (
    SENTENCES,
    Mode,
    component_name,
    decode,
    encode,
    json_schema,
    kept_schema,
    sentence_of,
)
from planning.foundation.errors import NotUnderstood, PlanningError

MOST_TEXT = 2000  # characters: a long remark
MOST_COUNT = 100_000_000  # events, versions: no case comes near it, and every column of whole numbers holds it
PRESENCE = ("required", "null")  # of any field; `problems` has our sentence


# What is sent. Read by hand, not as a value: a text has a limit and a sentence of its own, an id may be left out, and a
# part of the value may lie in the address. No docstring: the generator would give it to every body as its description.
class Strict(serializers.Serializer[Any]):
    def to_internal_value(self, data: Any) -> Any:
        if not isinstance(data, dict):
            raise serializers.ValidationError({"non_field_errors": [_fault("not-an-object")]})
        unknown = [key for key in data if key not in self.fields or self.fields[key].read_only]
        if unknown:
            raise serializers.ValidationError({key: [_fault("unknown-key")] for key in unknown})
        return super().to_internal_value(data)


def _fault(code: str) -> ErrorDetail:
    return ErrorDetail(sentence_of(code), code=code)


# A list within an object: the object can gain fields later, a bare list could not. No docstring, as above.
class Listing(serializers.Serializer[Any]):
    # Whole, unless a page is asked for: `cases.api.short_lists`.
    next = serializers.SerializerMethodField(help_text="Address of the next page; null: this is the last.")
    previous = serializers.SerializerMethodField(help_text="Address of the page before; null: this is the first.")

    @extend_schema_field(serializers.CharField(allow_null=True))
    def get_next(self, _listed: Any) -> None:
        return None

    @extend_schema_field(serializers.CharField(allow_null=True))
    def get_previous(self, _listed: Any) -> None:
        return None


class Text(serializers.CharField):
    """Text, and nothing that could be read as text."""

    default_error_messages: ClassVar[dict[str, Any]] = {
        "not_text": SENTENCES["not-text"],
        "max_length": SENTENCES["too-long"],
    }

    def __init__(self, *, max_length: int = MOST_TEXT, **more: Any) -> None:
        super().__init__(max_length=max_length, **more)

    def run_validation(self, data: Any = serializers.empty) -> Any:
        # Of a number the base class would first ask whether it is blank text.
        if data is not serializers.empty and data is not None and not isinstance(data, str):
            self.fail("not_text")
        return super().run_validation(data)


class Number(serializers.FloatField):
    """A number, and nothing that could be read as one."""

    default_error_messages: ClassVar[dict[str, Any]] = {"not_a_number": SENTENCES["not-a-number"]}

    def to_internal_value(self, data: Any) -> Any:
        if isinstance(data, bool) or not isinstance(data, int | float):
            self.fail("not_a_number")
        return super().to_internal_value(data)


class Whole(serializers.IntegerField):
    """A whole number; written with a point and noughts it is one too (RFC 8259, 6)."""

    default_error_messages: ClassVar[dict[str, Any]] = {
        "not_whole": SENTENCES["not-whole"],
        "min_value": "Must be {min_value} or more.",
        "max_value": "Must be {max_value} or less.",
    }

    def to_internal_value(self, data: Any) -> Any:
        if isinstance(data, bool) or not isinstance(data, int | float) or data != data // 1:
            self.fail("not_whole")
        return int(data)


class Moment(serializers.DateTimeField):
    """A date and a time of day."""

    default_error_messages: ClassVar[dict[str, Any]] = {
        "not_a_moment": "Must be a date and a time (RFC 3339), such as 2026-11-30T10:00:00Z.",
    }

    def fail(self, key: str, **more: Any) -> NoReturn:
        super().fail(key if key in PRESENCE else "not_a_moment", **more)


class Day(serializers.DateField):
    """A day."""

    default_error_messages: ClassVar[dict[str, Any]] = {"not_a_day": "Must be a day (RFC 3339), such as 2026-11-30."}

    def fail(self, key: str, **more: Any) -> NoReturn:
        super().fail(key if key in PRESENCE else "not_a_day", **more)


class Upload(serializers.FileField):
    """A file in a form."""

    default_error_messages: ClassVar[dict[str, Any]] = {"not_a_file": "Send a file, with its name and not empty."}

    def fail(self, key: str, **more: Any) -> NoReturn:
        super().fail(key if key in PRESENCE else "not_a_file", **more)


class Bounded(Number):
    """A number of a quantity that has a row of bounds; outside them it is refused with the row's sentence."""

    def __init__(self, quantity: str, **more: Any) -> None:
        bound = within(quantity)
        super().__init__(min_value=bound.least, max_value=bound.most, **more)
        self.error_messages |= {"min_value": bound.sentence, "max_value": bound.sentence}
        for validator in self.validators:
            if isinstance(validator, BaseValidator):
                validator.message = bound.sentence

    def to_internal_value(self, data: Any) -> Any:
        value = super().to_internal_value(data)
        if not isfinite(value):  # a number beyond every float, which no comparison would find
            raise serializers.ValidationError(self.error_messages["max_value"], code="max_value")
        # -0.0 + 0.0 is 0.0: the two are equal and are kept alike.
        return value + 0.0


class Id(serializers.UUIDField):
    """An identifier as text."""

    default_error_messages: ClassVar[dict[str, Any]] = {
        "not_an_id": "Must be an identifier (UUID), as the API gave it or as the sender made it.",
    }

    def to_internal_value(self, data: Any) -> Any:
        if not isinstance(data, str):
            self.fail("not_an_id")
        return super().to_internal_value(data)

    def fail(self, key: str, **more: Any) -> NoReturn:
        super().fail(key if key in PRESENCE else "not_an_id", **more)


class Value(serializers.Field[Any, Any, Any, Any]):
    """A value of the planner or of the rules, read and written by the one encoder."""

    value_type: ClassVar[Any] = None

    def __init__(self, type_: Any, *, mode: Mode = Mode.GIVEN, **more: Any) -> None:
        self.type_, self.mode = type_, mode
        super().__init__(**more)

    def to_internal_value(self, data: Any) -> Any:
        """Raises ValidationError for what is not understood, and whatever the value itself refuses."""
        try:
            return decode(self.type_, data, self.mode)
        except NotUnderstood as wrong:
            raise serializers.ValidationError(_nested(wrong)) from None
        except PlanningError as refusal:
            raise refusal.below(self.field_name or "") from None

    def to_representation(self, value: Any) -> Any:
        return encode(value)


# No docstring, as above.
class FieldsOf(serializers.Serializer[Any]):
    # A field for each of a value's, so that nothing of it is told twice. In a body each may be left out.
    value_type: ClassVar[Any]
    shown_at: ClassVar[str] = ""  # where the value lies in what is shown

    def get_fields(self) -> dict[str, Any]:
        return {**super().get_fields(), **dict(self._of_value())}

    def _of_value(self) -> Iterator[tuple[str, Value]]:
        described = json_schema(self.value_type)["$defs"][component_name(self.value_type, Mode.GIVEN)]["properties"]
        for name, hint in get_type_hints(self.value_type, include_extras=True).items():
            may_be_null = NoneType in get_args(hint)
            more: dict[str, Any] = {"source": f"{self.shown_at}.{name}"} if self.shown_at else {"required": False}
            yield (
                name,
                Value(
                    get_args(hint)[0] if may_be_null else hint,
                    allow_null=may_be_null,
                    help_text=described[name].get("description"),
                    **more,
                ),
            )


class Each(serializers.ListField):
    """A list in which what a value refuses by itself names its place, as other mistakes do."""

    default_error_messages: ClassVar[dict[str, Any]] = {
        "not_a_list": SENTENCES["not-a-list"],
        "too_few": "At least {min_length} of them.",
        "too_many": SENTENCES["too-many"],
    }

    def to_internal_value(self, data: Any) -> Any:
        # Before each is looked at: to look at each of too many would already be too much work.
        if isinstance(data, list):
            if self.max_length is not None and len(data) > self.max_length:
                self.fail("too_many", max_length=self.max_length)
            if self.min_length is not None and len(data) < self.min_length:
                self.fail("too_few", min_length=self.min_length)
        return super().to_internal_value(data)

    def run_child_validation(self, data: Any) -> Any:
        read: list[Any] = []
        wrong: dict[Any, Any] = {}
        for number, item in enumerate(data):
            try:
                read.append(self.child.run_validation(item))
            except serializers.ValidationError as error:
                wrong[number] = error.detail
            except PlanningError as refusal:
                raise refusal.below(self.field_name or "", number) from None
        if wrong:
            raise serializers.ValidationError(wrong)
        return read


def _nested(wrong: NotUnderstood) -> Any:
    """The faults as the REST framework nests errors."""
    root: dict[Any, Any] = {}
    for fault in wrong.faults:
        place = root
        for part in fault.at:
            place = place.setdefault(part, {})
        place.setdefault("non_field_errors", []).append(ErrorDetail(fault.sentence, code=fault.code))
    return root


class _ValueExtension(OpenApiSerializerFieldExtension):
    """Describes a value by its own schema, each part of it under its name."""

    target_class = Value
    match_subclasses = True

    def map_serializer_field(self, auto_schema: Any, direction: Any) -> dict[str, Any]:
        mode = Mode.GIVEN if direction == "request" else Mode.ANSWERED
        describe = kept_schema if self.target.mode is Mode.KEPT else json_schema
        text = json.dumps(describe(self.target.type_, mode)).replace("#/$defs/", "#/components/schemas/")
        schema: dict[str, Any] = json.loads(text)
        for name, part in schema.pop("$defs").items():
            component = ResolvedComponent(name, ResolvedComponent.SCHEMA, part, ComponentIdentity(name))
            known = auto_schema.registry[component].schema if component in auto_schema.registry else part
            if known.get("properties", {}).keys() != part.get("properties", {}).keys():
                raise TypeError(f"Two values are named {name}: each needs a name of its own.")
            auto_schema.registry.register_on_missing(component)
        return schema


class _StrictExtension(OpenApiSerializerExtension):
    """Says of a body that it takes no other keys than its own."""

    target_class = Strict
    match_subclasses = True

    def map_serializer(self, auto_schema: Any, direction: Any) -> dict[str, Any]:
        described: dict[str, Any] = auto_schema._map_serializer(self.target, direction, bypass_extensions=True)
        return {**described, "additionalProperties": False}
