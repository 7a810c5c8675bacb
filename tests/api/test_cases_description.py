"""The description of the stored API: examples that fit it, problems everywhere, nothing unsaid."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from drf_spectacular.generators import SchemaGenerator
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]

from cases.api.v1.urls import urlpatterns


@cache
def description() -> dict[str, Any]:
    generator: Any = SchemaGenerator
    found: dict[str, Any] = generator().get_schema(request=None, public=True)
    return found


def operations() -> list[tuple[str, dict[str, Any]]]:
    names = (
        "session",
        "one-time-code",
        "push",
        "programmes",
        "cases",
        "canals",
        "readings",
        "junctions",
        "overrides",
        "plan-versions",
    )
    roots = tuple(f"/api/v1/{name}" for name in (*names, "plan-versions"))
    return [
        (f"{method} {address}", operation)
        for address, path in description()["paths"].items()
        if address.startswith(roots)
        for method, operation in path.items()
    ]


def bodies(operation: dict[str, Any]) -> list[dict[str, Any]]:
    """Every body with examples: what is sent, what comes back, what is refused."""
    parts = [operation.get("requestBody", {}), *operation["responses"].values()]
    contents = [content for part in parts for content in part.get("content", {}).values()]
    return [content for content in contents if "examples" in content]


def test_every_address_is_described() -> None:
    assert len({name.split(" ")[1] for name, _ in operations()}) == len(urlpatterns)


@pytest.mark.parametrize(("name", "operation"), operations(), ids=[name for name, _ in operations()])
def test_examples_fit_and_refusals_are_problems(name: str, operation: dict[str, Any]) -> None:
    """Judge: the jsonschema package, on the description as a whole."""
    refused = operation["responses"]["default"]["content"]["application/problem+json"]
    assert refused["schema"] == {"$ref": "#/components/schemas/Problem"}
    assert operation["summary"]
    for content in bodies(operation):
        judge = Draft202012Validator({**content["schema"], "components": description()["components"]})
        for example in content["examples"].values():
            judge.validate(example["value"])


def test_whatever_is_sent_has_an_example() -> None:
    sent = [(name, operation["requestBody"]) for name, operation in operations() if "requestBody" in operation]
    # Of an image the example would be an image.
    as_json = [
        (name, body["content"]["application/json"]) for name, body in sent if "application/json" in body["content"]
    ]
    without = [name for name, content in as_json if not content.get("examples")]
    assert len(sent) > 12
    assert not without
