"""Examples of answers for the API's description, as the program gave them in its tests (`tests/api/recorder.py`)."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator
from copy import deepcopy
from functools import cache
from http import HTTPStatus
from pathlib import Path
from typing import Any

from cases.api.problem_codes import problem_codes

RECORDED = Path(__file__).with_name("recorded.json")
SAYS = "Recorded from the running program; of a list the first entry."
MEANS = "What it means; the running program names what it is about."
ANY_OTHER = "/api/v1/problems/method-not-allowed"


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
    answers = [shared, *(operation["responses"] for path in result["paths"].values() for operation in path.values())]
    refusals = [content for responses in answers for _, content in _of_json(responses)]
    often = Counter(type_ for content in refusals for type_ in _types(content))
    for responses in answers:
        _explain(responses, often)
    result["components"]["responses"] = {name: response for name, response in shared.items() if name in used}
    return result


def _give(name: str, responses: dict[str, Any]) -> None:
    for status, content in _without(responses):
        if (key := f"{name} {status}") in recorded():
            content["examples"] = {"Recorded": {"summary": SAYS, "value": recorded()[key]}}


def _explain(responses: dict[str, Any], often: Counter[str]) -> None:
    """A refusal that no test of the API is answered is shown by what the rarest of its codes means."""
    for name, content in _without(responses):
        if name.startswith("2"):
            continue
        type_ = min(_types(content) or [ANY_OTHER], key=lambda each: often[each])
        code = problem_codes()[type_.rpartition("/")[2]]
        number = name.partition(".")[0]
        status = HTTPStatus(int(number) if number.isdigit() else code.statuses[0])
        value = {"type": type_, "title": status.phrase, "status": status, "detail": code.meaning, "errors": []}
        content["examples"] = {"Meaning": {"summary": MEANS, "value": value}}


def _types(content: dict[str, Any]) -> list[str]:
    """What the `type` of a refusal can be; none where it may be any."""
    parts = content["schema"].get("allOf", ())
    return [type_ for part in parts for type_ in part.get("properties", {}).get("type", {}).get("enum", ())]


def _without(responses: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    return ((name, content) for name, content in _of_json(responses) if "examples" not in content)


def _of_json(responses: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    for name, response in responses.items():
        for kind, content in response.get("content", {}).items():
            if kind.endswith(("/json", "+json")):
                yield name, content
