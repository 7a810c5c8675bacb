"""What is the same throughout the description: names of ids."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from tests.api.judged import description


def fields() -> Iterator[tuple[str, str, dict[str, Any]]]:
    """Where it stands, its name and its schema: every property, and every parameter of an operation."""
    for of, schema in description()["components"]["schemas"].items():
        for name, field in schema.get("properties", {}).items():
            yield of, name, field
    for address, path in description()["paths"].items():
        for operation in path.values():
            for parameter in operation.get("parameters", ()):
                if "name" in parameter:
                    yield address, parameter["name"], parameter["schema"]


def holds(schema: dict[str, Any]) -> set[str]:
    """`id` for one id, `ids` for a list of them; empty for anything else."""
    several = [each for key in ("allOf", "anyOf", "oneOf") for each in schema.get(key, ())]
    held = {"id"} if schema.get("format") == "uuid" else set()
    if "items" in schema and holds(schema["items"]):
        held.add("ids")
    return held.union(*(holds(each) for each in several))


def faults(of: str, name: str, schema: dict[str, Any]) -> Iterator[str]:
    held = holds(schema)
    if "id" in held and name != "id" and not name.endswith("_id"):
        yield f"{of}: {name} holds the id of another thing and does not end in _id"
    if "ids" in held and not name.endswith("_ids"):
        yield f"{of}: {name} holds ids of other things and does not end in _ids"


def test_what_holds_the_id_of_another_thing_ends_so() -> None:
    every = list(fields())
    assert sum(bool(holds(schema)) for _, _, schema in every) > 100
    assert [fault for field in every for fault in faults(*field)] == []


@pytest.mark.parametrize(
    ("name", "schema", "is_right"),
    [
        ("case", {"type": "string", "format": "uuid"}, False),
        ("case_id", {"type": "string", "format": "uuid"}, True),
        ("events", {"items": {"format": "uuid"}}, False),
        ("event_ids", {"items": {"format": "uuid"}}, True),
        ("kit", {"anyOf": [{"format": "uuid"}, {"type": "null"}]}, False),
        ("alias", {"type": "string"}, True),
    ],
)
def test_the_rule_tells_the_two_apart(name: str, schema: dict[str, Any], *, is_right: bool) -> None:
    assert (not list(faults("Something", name, schema))) is is_right
