"""Whatever the tests of the API are answered is held against its description: the status, and the code of a refusal."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from drf_spectacular.generators import SchemaGenerator

from cases.api.problem_codes import problem_codes
from tests.api import recorder

# That the server tells this very description is tested apart; to make it anew takes long.
AGREED = Path(__file__).parents[1] / "architecture" / "openapi.yaml"
# Of no operation, of a client that takes no JSON, of a fault of ours: `default`.
OF_ANY = (405, 406, 500)
PARAMETER = re.compile(r"<(?:\w+:)?(\w+)>")


@cache
def description() -> dict[str, Any]:
    """The one that was agreed to; where answers are recorded the program's own, to which nobody can have agreed yet."""
    if recorder.ON:
        return dict(SchemaGenerator().get_schema(request=None, public=True))
    described: dict[str, Any] = yaml.load(AGREED.read_text(encoding="utf-8"), yaml.CSafeLoader)
    return described


def judge(method: str, route: str, answer: Any) -> None:
    """`route` is as in a URL conf. What is not described, as the description itself, is not judged."""
    path = description()["paths"].get("/" + PARAMETER.sub(r"{\1}", route), {})
    operation = path.get("get" if method == "HEAD" else method.lower())
    if operation is None or answer.status_code in OF_ANY:
        return
    if recorder.ON and method != "HEAD":
        _record(operation, answer)
    what = f"{method} {route}: {answer.status_code}"
    assert str(answer.status_code) in operation["responses"], what
    headers = operation["responses"][str(answer.status_code)].get("headers", {})
    assert ("Location" in headers) == ("Location" in answer), what
    if answer.get("Content-Type") == "application/problem+json":
        problem = answer.json()
        assert problem["type"] in codes(operation["responses"][str(answer.status_code)]), f"{what} {problem['type']}"
        assert {error["code"] for error in problem["errors"]} <= problem_codes().keys(), f"{what} {problem['errors']}"


def _record(operation: dict[str, Any], answer: Any) -> None:
    response = operation["responses"].get(str(answer.status_code), {})
    if answer.get("Content-Type", "").endswith(("/json", "+json")) and not answer.has_header("Content-Encoding"):
        of = ("any", response["$ref"].rpartition("/")[2]) if "$ref" in response else (operation["operationId"], "")
        name, status = of if of[1] else (of[0], str(answer.status_code))
        recorder.keep(name, status, answer.content)


def codes(response: dict[str, Any]) -> list[str]:
    """What the `type` of this refusal can be."""
    if "$ref" in response:
        response = description()["components"]["responses"][response["$ref"].rpartition("/")[2]]
    _, of_codes = response["content"]["application/problem+json"]["schema"]["allOf"]
    types: list[str] = of_codes["properties"]["type"]["enum"]
    return types
