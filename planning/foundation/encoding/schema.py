"""JSON Schema (2020-12, as in OpenAPI 3.1) of the types that `decode` reads and `encode` writes."""

from __future__ import annotations

import inspect
import json
import re
from collections.abc import Iterable
from dataclasses import is_dataclass
from functools import cache
from threading import RLock
from typing import Any

from pydantic.json_schema import GenerateJsonSchema

from planning.foundation.bounds import noted
from planning.foundation.encoding.shapes import MOST_NUMBER, Mode, shape_of_list, tag_value
from planning.foundation.facts import Fact

_COMPONENTS = "#/components/schemas/"
# What fields and members say of themselves is read from their source, and Python 3.11 fails where two threads parse
# source at once ("AST constructor recursion depth mismatch").
_READING_SOURCE = RLock()


def json_schema(type_: Any, mode: Mode = Mode.GIVEN) -> dict[str, Any]:
    """A schema that stands alone, its named parts under `$defs`."""
    whole, named = _described(type_, mode, "#/$defs/")
    return {**whole, "$defs": named}


def kept_schema(type_: Any, mode: Mode) -> dict[str, Any]:
    """The schema of a value as it is kept: without the limits of rows, as nothing that was kept once is refused. Parts
    that would have limits get names of their own.
    """
    bounded = json_schema(type_, mode)
    parts = bounded["$defs"]
    free = {name: _without_limits(part) for name, part in parts.items()}
    moved = {name for name in parts if free[name] != parts[name]}
    # Whatever refers to a part of another name needs another name itself.
    while more := {name for name in parts if name not in moved and _refers(parts[name]) & moved}:
        moved |= more
    text = json.dumps({**bounded, "$defs": {f"{name}Kept" if name in moved else name: free[name] for name in parts}})
    renamed: dict[str, Any] = json.loads(
        re.sub(r'(?<="#/\$defs/)[^"]+', lambda match: f"{match[0]}Kept" if match[0] in moved else match[0], text)
    )
    return renamed


def _refers(part: Any) -> set[str]:
    return set(re.findall(r'"#/\$defs/([^"]+)"', json.dumps(part)))


def _without_limits(part: Any) -> Any:
    if isinstance(part, list):
        return [_without_limits(each) for each in part]
    if not isinstance(part, dict):
        return part
    limits = [name for name in ("minimum", "maximum") if abs(part.get(name, MOST_NUMBER)) < MOST_NUMBER]
    return {name: _without_limits(each) for name, each in part.items() if name not in limits}


def components(types: Iterable[tuple[Any, Mode]], prefix: str = _COMPONENTS) -> dict[str, Any]:
    """The named parts of all these types, each once, referring to each other below `prefix`."""
    parts: dict[str, Any] = {}
    for type_, mode in types:
        parts.update(_described(type_, mode, prefix)[1])
    return dict(sorted(parts.items()))


@cache
def component_name(type_: Any, mode: Mode) -> str:
    """The component's name. An object that is sent has a name of its own: fields may be left out of it, and none may be
    added, while an answer gains fields in time.
    """
    reference: str = _described(type_, mode, _COMPONENTS)[0]["$ref"]
    return reference.removeprefix(_COMPONENTS)


def _described(type_: Any, mode: Mode, prefix: str) -> tuple[Any, dict[str, Any]]:
    """The schema of a type, and its named parts."""
    with _READING_SOURCE:
        lists, parts = _Writer(mode, prefix).generate_definitions(
            [("all", "validation", shape_of_list(type_, mode, described=True))]
        )
    whole = lists["all", "validation"]["items"]
    named = {str(name): {key: part[key] for key in part if key != "title"} for name, part in parts.items()}
    if mode is Mode.ANSWERED:
        return whole, named
    sent = {name: f"{name.removesuffix('Request')}Request" for name in named if _holds_an_object(name, named, prefix)}
    text = json.dumps([whole, {sent.get(name, name): part for name, part in named.items()}])
    renamed = re.sub(f'(?<="{re.escape(prefix)})[^"]+', lambda match: sent.get(match[0], match[0]), text)
    whole, named = json.loads(renamed)
    return whole, named


def _holds_an_object(name: str, parts: dict[str, Any], prefix: str) -> bool:
    part = parts[name]
    inside = re.findall(f'"{re.escape(prefix)}([^"]+)"', json.dumps(part))
    return "properties" in part or any(_holds_an_object(each, parts, prefix) for each in inside)


class _Writer(GenerateJsonSchema):
    """Writes no titles made up from names, and what the members of an enum say of themselves."""

    def __init__(self, mode: Mode, prefix: str) -> None:
        super().__init__(ref_template=prefix + "{model}")
        self._read_as, self._answered = mode, mode is Mode.ANSWERED

    def field_title_should_be_set(self, schema: Any) -> bool:
        return False

    def field_is_required(self, field: Any, total: bool) -> bool:
        """A tag is always there, and in an answer everything is."""
        return self._answered or tag_value(field["schema"]) is not None or super().field_is_required(field, total)

    def default_schema(self, schema: Any) -> dict[str, Any]:
        if self._answered or tag_value(schema) is not None:
            return self.generate_inner(schema["schema"])
        return super().default_schema(schema)

    def get_default_value(self, schema: Any) -> Any:
        return schema["default_factory"]() if "default_factory" in schema else super().get_default_value(schema)

    def dataclass_schema(self, schema: Any) -> dict[str, Any]:
        """The schema of a dataclass, with what people call its fields as their titles.

        pydantic reads the texts under the fields of the class itself, not those under the ones it inherits.
        """
        described = super().dataclass_schema(schema)
        for name, fact in noted(schema["cls"], Fact).items():
            described["properties"][name]["title"] = fact.label
        bases: tuple[Any, ...] = tuple(filter(is_dataclass, schema["cls"].__mro__[1:]))
        for base in bases:
            inherited = components([(base, self._read_as)])[component_name(base, self._read_as)]["properties"]
            for name in inherited.keys() & described["properties"].keys():
                text = inherited[name].get("description")
                described["properties"][name] |= {"description": text} if text else {}
        return described

    def enum_schema(self, schema: Any) -> dict[str, Any]:
        """pydantic reads the texts under the fields of a dataclass, not those under the members of an enum."""
        described, enum = super().enum_schema(schema), schema["cls"]
        texts = re.findall(r'^ +(\w+) = .*\n +"""([^"]+)"""', inspect.getsource(enum), re.MULTILINE)
        lines = [f"* `{enum[name].value}`: {inspect.cleandoc(text)}" for name, text in texts]
        text = "\n".join([described.pop("description", ""), *lines]).strip()
        return {**described, "description": text} if text else described
