"""Examples of answers for the API's description, as the program gave them in its tests (`tests/api/recorder.py`)."""

from __future__ import annotations

import json
from collections.abc import Iterator
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
    """The generator's hook: gives an example to every answer that has none of its own."""
    for operation in (each for path in result["paths"].values() for each in path.values()):
        for status, content in _without(operation["responses"]):
            if (key := f"{operation['operationId']} {status}") in recorded():
                content["examples"] = {"Recorded": {"summary": SAYS, "value": recorded()[key]}}
    for name, response in result["components"].get("responses", {}).items():
        for _status, content in _without({name: response}):
            if (key := f"any {name}") in recorded():
                content["examples"] = {"Recorded": {"summary": SAYS, "value": recorded()[key]}}
    return result


def _without(responses: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    for status, response in responses.items():
        for kind, content in response.get("content", {}).items():
            if kind.endswith(("/json", "+json")) and "examples" not in content:
                yield status, content
