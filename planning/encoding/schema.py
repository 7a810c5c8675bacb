"""JSON Schema (2020-12, as in OpenAPI 3.1) of the types that `decode` reads and `encode` writes."""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum
from functools import cache
from typing import Any, get_args, get_origin

from planning.encoding.shapes import (
    MOST_NUMBER,
    MOST_TEXT,
    MOST_WHOLE,
    FieldOf,
    fields_of,
    is_dataclass,
    is_tag,
    literals,
    members,
    tagged,
)
from planning.encoding.told import class_doc, field_docs
from planning.encoding.writing import encode


class Mode(StrEnum):
    GIVEN = "given"
    """What is sent in: fields with a default may be left out, unknown keys are refused."""
    ANSWERED = "answered"
    """What comes back: every field is there, and a later version may add more."""


def json_schema(type_: Any, mode: Mode = Mode.GIVEN) -> dict[str, Any]:
    """A schema that stands alone, its named parts under `$defs`."""
    builder = _Builder(mode, "#/$defs/")
    return {**builder.schema(type_), "$defs": builder.named}


def components(types: Iterable[tuple[Any, Mode]], prefix: str = "#/components/schemas/") -> dict[str, Any]:
    """The named parts of all these types, each once, referring to each other below `prefix`."""
    found: dict[str, Any] = {}
    for type_, mode in types:
        builder = _Builder(mode, prefix)
        builder.schema(type_)
        found.update(builder.named)
    return dict(sorted(found.items()))


class _Builder:
    def __init__(self, mode: Mode, prefix: str) -> None:
        self.mode, self.prefix = mode, prefix
        self.named: dict[str, Any] = {}

    def schema(self, type_: Any) -> dict[str, Any]:
        among = members(type_)
        if len(among) > 1:
            return self.one_of(among)
        if is_dataclass(type_) or (isinstance(type_, type) and issubclass(type_, StrEnum)):
            return self.refer(type_)
        if literals(type_):
            return _of_values(literals(type_))
        if get_origin(type_) is tuple:
            return {"type": "array", "items": self.schema(get_args(type_)[0])}
        if get_origin(type_) is dict:
            of_key, of_value = get_args(type_)
            keys = {} if of_key is str else {"propertyNames": self.schema(of_key)}
            return {"type": "object", **keys, "additionalProperties": self.schema(of_value)}
        bounds = _BOUNDS.get(type_, {}) if self.mode is Mode.GIVEN else {}
        return {"type": _PLAIN[type_], **bounds}

    def one_of(self, among: tuple[Any, ...]) -> dict[str, Any]:
        classes = tuple(each for each in among if is_dataclass(each))
        others = [self.schema(each) for each in among if not is_dataclass(each) and each is not type(None)]
        nothing = [{"type": "null"}] if type(None) in among else []
        if not classes and len(others) == 1 and isinstance(others[0].get("type"), str) and "enum" not in others[0]:
            return {**others[0], "type": [others[0]["type"], "null"]}
        choices = [*(self.refer(cls) for cls in classes), *others, *nothing]
        if len(classes) < 2:
            return {"anyOf": choices}
        tag, by_value = tagged(classes)
        mapping = {value: self.prefix + component_name(cls, self.mode) for value, cls in by_value.items()}
        alone = not others and not nothing
        return {
            "oneOf": choices,
            **({"discriminator": {"propertyName": tag, "mapping": mapping}} if alone else {}),
        }

    def refer(self, type_: Any) -> dict[str, Any]:
        name = component_name(type_, self.mode)
        if name not in self.named:
            self.named[name] = {}  # holds the place while the parts below are described
            self.named[name] = self.object_(type_) if is_dataclass(type_) else _of_enum(type_)
        return {"$ref": self.prefix + name}

    def object_(self, cls: Any) -> dict[str, Any]:
        told = field_docs(cls)
        described = {
            field.name: {
                **self.schema(field.type_),
                **_describing(told.get(field.name, "")),
                **self.default(field),
            }
            for field in fields_of(cls)
        }
        required = [f.name for f in fields_of(cls) if f.required or is_tag(f) or self.mode is Mode.ANSWERED]
        return {
            "type": "object",
            **_describing(class_doc(cls)),
            "properties": described,
            **({"required": required} if required else {}),
            **({"additionalProperties": False} if self.mode is Mode.GIVEN else {}),
        }

    def default(self, field: FieldOf) -> dict[str, Any]:
        optional = self.mode is Mode.GIVEN and not field.required and not is_tag(field)
        return {"default": encode(field.default)} if optional else {}


_PLAIN = {str: "string", int: "integer", float: "number", bool: "boolean", type(None): "null"}
_BOUNDS: dict[Any, dict[str, float]] = {
    str: {"maxLength": MOST_TEXT},
    int: {"minimum": -MOST_WHOLE, "maximum": MOST_WHOLE},
    float: {"minimum": -MOST_NUMBER, "maximum": MOST_NUMBER},
}


def _of_values(values: tuple[Any, ...]) -> dict[str, Any]:
    kind = "string" if all(isinstance(value, str) for value in values) else "integer"
    return {"type": kind, "const": values[0]} if len(values) == 1 else {"type": kind, "enum": list(values)}


def _of_enum(enum: type[StrEnum]) -> dict[str, Any]:
    told = field_docs(enum)
    lines = [f"* `{member.value}`: {told[member.name]}" for member in enum if member.name in told]
    says = "\n".join([class_doc(enum), *lines]).strip()
    return {
        "type": "string",
        "enum": [member.value for member in enum],
        **_describing(says),
    }


def _describing(text: str) -> dict[str, str]:
    return {"description": text} if text else {}


@cache
def component_name(type_: Any, mode: Mode) -> str:
    """The component's name. What is sent and what comes back need two where a field may be left out of one only."""
    name: str = type_.__name__
    return f"{name.removesuffix('Request')}Request" if mode is Mode.GIVEN and _may_leave_out(type_) else name


def _may_leave_out(type_: Any) -> bool:
    """True where some field of the type, or of what it holds, has a default."""
    if is_dataclass(type_):
        return any(
            (not field.required and not is_tag(field)) or _may_leave_out(field.type_) for field in fields_of(type_)
        )
    inside = [member for member in members(type_) if member is not type_]
    if get_origin(type_) in (tuple, dict):
        inside += [each for each in get_args(type_) if each is not ...]
    return any(_may_leave_out(each) for each in inside)
