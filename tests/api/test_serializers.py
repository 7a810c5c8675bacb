"""What is shown is said once: a serializer by hand only where a value does not say the same, and then with a reason."""

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
import cases.domain
import cases.queries
import cases.services
from cases.api.fields import FieldsOf, Listing, Strict
from planning.foundation.encoding import Mode, components


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


def _fields(value: type[Any]) -> frozenset[str]:
    return frozenset(field.name for field in dataclasses.fields(value))


BY_HAND = [
    each
    for each in _classes(cases.api.v1)
    if issubclass(each, Serializer) and not issubclass(each, FieldsOf | Strict | Listing)
]
BODIES = [each for each in _classes(cases.api.v1) if issubclass(each, Strict) and not issubclass(each, FieldsOf)]


def test_no_serializer_by_hand_says_what_a_value_says_already() -> None:
    values = {
        _fields(each): each.__name__
        for each in _classes(cases.queries)
        if dataclasses.is_dataclass(each) and _is_encoded(each)
    }
    assert len(values) > 8
    assert len(BY_HAND) > 20
    twice = {each.__name__: values[fields] for each in BY_HAND if (fields := frozenset(each().fields)) in values}
    assert not twice


def test_a_serializer_by_hand_says_in_its_docstring_what_no_value_says() -> None:
    assert [each.__name__ for each in BY_HAND if not each.__doc__] == []


def test_a_body_that_has_the_fields_of_a_value_says_why_it_is_read_by_hand() -> None:
    values = {
        _fields(each)
        for part in (cases.domain, cases.services)
        for each in _classes(part)
        if dataclasses.is_dataclass(each)
    }
    alike = [each for each in BODIES if frozenset(each().fields) in values]
    assert alike
    assert [each.__name__ for each in alike if not each.__doc__] == []
