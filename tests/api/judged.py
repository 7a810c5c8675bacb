"""Whatever the tests of the API are answered is held against its description: the status, and the code of a refusal."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any

import yaml
from drf_spectacular.generators import SchemaGenerator

from cases.api.chosen_fields import EXPAND, FIELDS
from cases.api.problem_codes import problem_codes
from cases.api.problems import MEDIA_TYPE, TYPE_PREFIX
from tests.api import recorder

# That the server tells this very description is tested apart; to make it anew takes long.
AGREED = Path(__file__).parents[1] / "architecture" / "openapi.yaml"
# Of no operation, of a client that takes no JSON, of a fault of ours: `default`.
OF_ANY = (405, 406, 500)
# What follows from an address, a body and who may ask, that first which says most of where it stands.
COMMON = [
    TYPE_PREFIX + code
    for code in (
        *("not-found", "key-opens-not", "scope-missing", "not-understood", "changed-since", "precondition-missing"),
        *("still-under-way", "idempotency-key-used-differently", "key-refused", "not-authenticated", "token-missing"),
        *("parse-error", "unsupported-media-type", "body-too-long", "body-too-slow", "too-often"),
        *("busy", "took-too-long"),
    )
]
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
    # The usual form of an answer is the example.
    usual = answer.status_code >= 400 or {FIELDS, EXPAND}.isdisjoint(answer.wsgi_request.GET)
    if recorder.ON and method != "HEAD" and usual:
        _record(operation, answer)
    what = f"{method} {route}: {answer.status_code}"
    assert str(answer.status_code) in operation["responses"], what
    headers = operation["responses"][str(answer.status_code)].get("headers", {})
    assert ("Location" in headers) == ("Location" in answer), what
    if answer.get("Content-Type") == MEDIA_TYPE:
        problem = answer.json()
        assert problem["type"] in codes(operation["responses"][str(answer.status_code)]), f"{what} {problem['type']}"
        assert {error["code"] for error in problem["errors"]} <= problem_codes().keys(), f"{what} {problem['errors']}"


def _record(operation: dict[str, Any], answer: Any) -> None:
    kind, status = answer.get("Content-Type", ""), str(answer.status_code)
    if not kind.endswith(("/json", "+json")) or answer.has_header("Content-Encoding"):
        return
    if kind != MEDIA_TYPE:
        recorder.keep(operation["operationId"], status, answer.content)
        return
    of_status = codes(operation["responses"][status]) if status in operation["responses"] else []
    name = ".".join((status, *(each.removeprefix(TYPE_PREFIX) for each in of_status)))
    if name in description()["components"]["responses"]:
        recorder.keep("any", name, answer.content)
    if answer.json()["type"] in telling(operation).get(status, ()):
        recorder.keep(operation["operationId"], status, answer.content)


def telling(operation: dict[str, Any]) -> dict[str, list[str]]:
    """By status, the types of refusal that say most of an operation: those of its own rules, or else a common one."""
    types = {status: codes(each) for status, each in operation["responses"].items() if "400" <= status < "600"}
    own = {status: [each for each in of_status if each not in COMMON] for status, of_status in types.items()}
    if any(own.values()):
        return {status: of_status for status, of_status in own.items() if of_status}
    return next({status: [each]} for each in COMMON for status, of_status in types.items() if each in of_status)


def codes(response: dict[str, Any]) -> list[str]:
    """What the `type` of this refusal can be."""
    if "$ref" in response:
        response = description()["components"]["responses"][response["$ref"].rpartition("/")[2]]
    _, of_codes = response["content"][MEDIA_TYPE]["schema"]["allOf"]
    types: list[str] = of_codes["properties"]["type"]["enum"]
    return types
