"""Examples of answers for the API's description, as the program gave them in its tests (`tests/api/recorder.py`)."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from pathlib import Path
from typing import Any

RECORDED = Path(__file__).with_name("recorded.json")
SAYS = "Recorded from the running program; of a list the first entry."


@cache
def recorded() -> dict[str, Any]:
    """By operation and status, with a blank between."""
    answers: dict[str, Any] = json.loads(RECORDED.read_text(encoding="utf-8")) if RECORDED.exists() else {}
    return answers


def shown(result: dict[str, Any], **_: object) -> dict[str, Any]:
    """The generator's hook: gives an example to every answer that has none of its own.

    A refusal that was recorded of an operation is described in its place, also where others say the same by a name;
    a name that nobody uses any more goes.
    """
    shared, used = result["components"].get("responses", {}), set()
    for operation in (each for path in result["paths"].values() for each in path.values()):
        responses = operation["responses"]
        for status, response in responses.items():
            if "$ref" in response and f"{operation['operationId']} {status}" in recorded():
                responses[status] = deepcopy(shared[response["$ref"].rpartition("/")[2]])
        used |= {response["$ref"].rpartition("/")[2] for response in responses.values() if "$ref" in response}
        _give(operation["operationId"], responses)
    _give("any", shared)
    result["components"]["responses"] = {name: response for name, response in shared.items() if name in used}
    return result


def _give(name: str, responses: dict[str, Any]) -> None:
    for status, content in _without(responses):
        if (key := f"{name} {status}") in recorded():
            content["examples"] = {"Recorded": {"summary": SAYS, "value": recorded()[key]}}


def _without(responses: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    for status, response in responses.items():
        for kind, content in response.get("content", {}).items():
            if kind.endswith(("/json", "+json")) and "examples" not in content:
                yield status, content
