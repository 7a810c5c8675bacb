"""Frozen values as the REST framework and the API's description see them: one encoder, no second list of fields."""

from __future__ import annotations

from functools import cache
from typing import Any, ClassVar

from drf_spectacular.extensions import OpenApiSerializerExtension
from drf_spectacular.plumbing import ComponentIdentity, ResolvedComponent
from rest_framework import serializers

from planning.foundation.encoding import Mode, component_name, components, decode, encode


class ValueSerializer(serializers.BaseSerializer[Any]):
    """Reads and writes one type of frozen value; see `serializer_of`."""

    value_type: ClassVar[Any]

    def to_internal_value(self, data: object) -> Any:
        """Raises NotUnderstood and whatever the value itself refuses."""
        return decode(self.value_type, data)

    def to_representation(self, instance: object) -> Any:
        return encode(instance)


@cache
def serializer_of(type_: type) -> type[ValueSerializer]:
    """The serializer of a dataclass, good as `request` and `responses` of a view and as a field of another one."""
    return type(f"{type_.__name__}Value", (ValueSerializer,), {"value_type": type_, "__doc__": type_.__doc__})


class _ValueExtension(OpenApiSerializerExtension):
    """Describes a value by its own schema and puts the values inside it beside it, each under its name."""

    target_class = ValueSerializer
    match_subclasses = True

    def get_name(self, auto_schema: Any, direction: Any) -> str:
        # The generator itself adds 'Request' to what is sent.
        return component_name(self.target.value_type, _mode(direction)).removesuffix("Request")

    def get_identity(self, auto_schema: Any, direction: Any) -> ComponentIdentity:
        name = self.get_name(auto_schema, direction)
        return _identity(f"{name}Request" if _mode(direction) is Mode.GIVEN else name)

    def map_serializer(self, auto_schema: Any, direction: Any) -> dict[str, Any]:
        type_, mode = self.target.value_type, _mode(direction)
        named = components([(type_, mode)])
        for name, schema in named.items():
            auto_schema.registry.register_on_missing(_part(name, schema))
        whole: dict[str, Any] = named[component_name(type_, mode)]
        return whole


def _identity(name: str) -> ComponentIdentity:
    """Two components of one name are the same one: names are unique among the values."""
    return ComponentIdentity(name)


def _part(name: str, schema: dict[str, Any]) -> ResolvedComponent:
    return ResolvedComponent(name, ResolvedComponent.SCHEMA, schema, _identity(name))


def _mode(direction: str) -> Mode:
    return Mode.GIVEN if direction == "request" else Mode.ANSWERED
