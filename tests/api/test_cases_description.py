"""The description of the stored API: examples that fit it, problems everywhere, nothing unsaid."""

from __future__ import annotations

from functools import cache
from typing import Any

from drf_spectacular.generators import SchemaGenerator
from jsonschema import Draft202012Validator  # type: ignore[import-untyped]

from cases.api.v1.urls import urlpatterns


@cache
def description() -> dict[str, Any]:
    generator: Any = SchemaGenerator
    schema: dict[str, Any] = generator().get_schema(request=None, public=True)
    return schema


def operations() -> list[tuple[str, dict[str, Any]]]:
    names = (
        "problems",
        "guide",
        "session",
        "join",
        "one-time-code",
        "push",
        "key",
        "programmes",
        "cases",
        "canals",
        "readings",
        "junctions",
        "overrides",
        "consents",
        "practice-exercises",
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


def test_examples_fit_and_refusals_are_problems() -> None:
    """Judge: the jsonschema package, on the description as a whole."""
    every = {"components": description()["components"]}
    judged = 0
    for name, operation in operations():
        assert operation["responses"]["default"] == {"$ref": "#/components/responses/any-other"}, name
        assert operation["summary"], name
        for content in bodies(operation):
            judge = Draft202012Validator({**content["schema"], **every})
            for example in content["examples"].values():
                faults = [fault.message for fault in judge.iter_errors(example["value"])]
                assert faults == [], name
                judged += 1
    assert judged > 50


def test_whatever_is_sent_has_an_example() -> None:
    sent = [(name, operation["requestBody"]) for name, operation in operations() if "requestBody" in operation]
    # Of an image the example would be an image.
    as_json = [
        (name, body["content"]["application/json"]) for name, body in sent if "application/json" in body["content"]
    ]
    without = [name for name, content in as_json if not content.get("examples")]
    assert len(sent) > 12
    assert not without
