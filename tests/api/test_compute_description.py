"""The API's description of computing: valid, with examples that fit it, and the same as what is done."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from drf_spectacular.drainage import GENERATOR_STATS
from drf_spectacular.generators import SchemaGenerator
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]
from openapi_spec_validator import validate

from planning.api.urls import urlpatterns
from tests.api.compute import ROOT, get, post

ADDRESSES = [f"{ROOT}{pattern.pattern}".replace("<str:iso>", "{iso}") for pattern in urlpatterns]
COMPUTED = [address for address in ADDRESSES if "/compute/" in address]


@cache
def description() -> dict[str, Any]:
    generator: Any = SchemaGenerator
    schema: dict[str, Any] = generator().get_schema(request=None, public=True)
    return schema


def operation(address: str) -> dict[str, Any]:
    path = description()["paths"][address]
    method: dict[str, Any] = path["post" if address in COMPUTED else "get"]
    return method


def examples(part: dict[str, Any]) -> list[Any]:
    return [example["value"] for example in part["content"]["application/json"]["examples"].values()]


def fits(part: dict[str, Any], value: object) -> None:
    """Judge: the jsonschema package, on the description as a whole."""
    schema = part["content"]["application/json"]["schema"]
    Draft202012Validator({**schema, "components": description()["components"]}).validate(value)


def test_the_description_is_valid() -> None:
    """Judge: the openapi-spec-validator package."""
    assert description()["openapi"].startswith("3.1")
    validate(description())


def test_it_is_made_without_a_warning() -> None:
    GENERATOR_STATS.reset()
    generator: Any = SchemaGenerator
    generator(patterns=urlpatterns).get_schema(request=None, public=True)
    assert not GENERATOR_STATS


@pytest.mark.parametrize("address", ADDRESSES)
def test_every_answer_has_an_example_that_fits(address: str) -> None:
    answer = operation(address)["responses"]["200"]
    assert examples(answer)
    for example in examples(answer):
        fits(answer, example)


@pytest.mark.parametrize("address", COMPUTED)
def test_what_the_example_asks_is_answered_as_the_example_says(address: str) -> None:
    asked, answered = operation(address)["requestBody"], operation(address)["responses"]["200"]
    for question, expected in zip(examples(asked), examples(answered), strict=True):
        fits(asked, question)
        assert post(address.removeprefix(ROOT), question).json() == expected


@pytest.mark.parametrize("address", [address for address in ADDRESSES if address not in COMPUTED])
def test_what_is_published_fits_its_description(address: str) -> None:
    answer = get(address.removeprefix(ROOT).replace("{iso}", "36"))
    fits(operation(address)["responses"]["200"], answer.json())


def test_fields_are_told_in_words() -> None:
    parts = description()["components"]["schemas"]
    assert "notation" in parts["ToothNameRequest"]["properties"]
    assert parts["CanalPlan"]["properties"]["end_mm"]["description"].startswith("Deepest stop")
    assert "from the reference point" in parts["CanalPlan"]["properties"]["junction_mm"]["description"]


def test_readings_are_told_apart_by_their_method() -> None:
    readings = description()["components"]["schemas"]["CanalInputRequest"]["properties"]["readings"]["items"]
    assert readings["discriminator"]["propertyName"] == "method"
    assert len(readings["oneOf"]) == 5
