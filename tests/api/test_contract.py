"""The description tells the truth of every operation alike: bodies take no other keys, answers may gain some."""

from __future__ import annotations

import json
import re
from typing import Any

from tests.api.test_cases_description import description

METHODS = ("get", "post", "put", "patch", "delete")


def operations() -> list[tuple[str, dict[str, Any]]]:
    return [
        (f"{method} {address}", operation)
        for address, path in description()["paths"].items()
        for method, operation in path.items()
        if method in METHODS
    ]


def reached(part: Any) -> set[str]:
    """Names of the schemas that something refers to, by others too."""
    names: set[str] = set()
    more = _named(part)
    while more:
        names |= more
        more = {name for each in more for name in _named(description()["components"]["schemas"][each])} - names
    return names


def _named(part: Any) -> set[str]:
    return set(re.findall(r'"#/components/schemas/([^"]+)"', json.dumps(part)))


def test_a_body_takes_no_other_keys_and_an_answer_may_gain_some() -> None:
    schemas = description()["components"]["schemas"]
    sent = reached([operation.get("requestBody") for _, operation in operations()])
    answered = reached([operation["responses"] for _, operation in operations()])
    objects = {name for name, schema in schemas.items() if "properties" in schema}
    assert len(objects & sent) > 100
    assert not objects & sent & answered
    assert {name for name in objects & sent if schemas[name].get("additionalProperties") is not False} == set()
    assert {name for name in objects & answered if schemas[name].get("additionalProperties") is False} == set()


def test_what_is_read_is_described_with_its_tag_and_its_304() -> None:
    for name, operation in operations():
        conditions = {each["name"] for each in operation.get("parameters", []) if each["in"] == "header"}
        reads = name.startswith("get ")
        assert ("304" in operation["responses"], "If-None-Match" in conditions) == (reads, reads), name
        if reads:
            assert "ETag" in operation["responses"]["200"]["headers"], name
