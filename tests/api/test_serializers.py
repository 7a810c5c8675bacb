"""What is shown is said once: a serializer by hand only where a value does not say the same already."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pkgutil
from collections.abc import Iterator
from types import ModuleType
from typing import Any

from rest_framework.serializers import Serializer

import cases.api.v1
import cases.queries
from cases.api.fields import FieldsOf, Strict
from planning.foundation.encoding import Mode, components

ENVELOPES = {frozenset({"results"})}
"""Around a list: each is there for its own list."""


def _modules(package: ModuleType) -> Iterator[ModuleType]:
    for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
        yield importlib.import_module(module.name)


def _classes(package: ModuleType) -> Iterator[type[Any]]:
    for module in _modules(package):
        classes = (each for each in vars(module).values() if inspect.isclass(each))
        yield from (each for each in classes if each.__module__ == module.__name__)


def _is_encoded(value: type[Any]) -> bool:
    """Whether the one encoder can write it: one that holds rows of the database it cannot."""
    try:
        components([(value, Mode.ANSWERED)])
    except Exception:
        return False
    return True


def test_no_serializer_by_hand_says_what_a_value_says_already() -> None:
    values = {
        frozenset(field.name for field in dataclasses.fields(each)): each.__name__
        for each in _classes(cases.queries)
        if dataclasses.is_dataclass(each) and _is_encoded(each)
    }
    by_hand = {
        each.__name__: frozenset(each().fields)
        for each in _classes(cases.api.v1)
        if issubclass(each, Serializer) and not issubclass(each, FieldsOf | Strict)
    }
    assert len(values) > 8
    assert len(by_hand) > 20
    twice = {name: values[fields] for name, fields in by_hand.items() if fields in values and fields not in ENVELOPES}
    assert not twice
