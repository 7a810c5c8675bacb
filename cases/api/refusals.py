"""Which refusals the description names of an operation: those of its view, and those that follow from what it takes."""

from __future__ import annotations

from collections.abc import Iterator
from http import HTTPStatus
from itertools import groupby
from typing import Any

from rest_framework.permissions import SAFE_METHODS

from cases.api.needs import Without, need_of
from cases.api.problem_codes import problem_codes
from cases.api.problems import MEDIA_TYPE, TYPE_PREFIX
from cases.domain.access.scopes import Scope
from cases.domain.program_errors import KeyUsedDifferently, StillUnderWay
from planning.api.refusals import REFUSES

ERROR = {
    "type": "object",
    "description": "One thing that is wrong.",
    "required": ["pointer", "code", "detail"],
    "properties": {
        "pointer": {
            "type": "string",
            "description": "JSON pointer into what was sent, as a URI fragment. A plan refused for what is charted "
            "points into the planner's input.",
        },
        "code": {"type": "string", "description": f"Explained at `{TYPE_PREFIX}` and the code."},
        "detail": {"type": "string", "description": "What is wrong and what to do."},
        "line": {"type": "integer", "description": "Of a text that was sent, the first being 1."},
    },
}
PROBLEM = {
    "type": "object",
    "description": "Problem details (RFC 9457).",
    "examples": [
        {
            "type": TYPE_PREFIX + "plan-stale",
            "title": "Conflict",
            "status": 409,
            "detail": "The case has changed since plan 2 was made. Have it planned again and submit the new plan.",
            "errors": [],
        }
    ],
    "required": ["type", "title", "status", "detail", "errors"],
    "properties": {
        "type": {
            "type": "string",
            "format": "uri-reference",
            "description": f"`{TYPE_PREFIX}` and a code, which is explained at that address.",
        },
        "title": {"type": "string", "description": "What the status is called."},
        "status": {"type": "integer", "description": "The status of the answer."},
        "detail": {"type": "string", "description": "For people: what is wrong and what to do."},
        "errors": {
            "type": "array",
            "description": "Everything that is wrong, one by one; empty where it is nothing that was sent.",
            "items": {"$ref": "#/components/schemas/ProblemError"},
        },
        "expected": {"type": "integer", "description": "The number to go on with, where one was left out."},
    },
}
TEXT = {"schema": {"type": "string"}}
REQUEST_ID = {**TEXT, "description": "Names the request. Tell it to whoever looks after the server."}
RETRY_AFTER = {"schema": {"type": "integer"}, "description": "Seconds to wait."}
RATE_LIMIT = {**TEXT, "description": "What is left (`r`) of each rate, and the seconds until all of it is back (`t`)."}
POLICY = {**TEXT, "description": "Each rate by name: how many (`q`) in how many seconds (`w`)."}
WWW_AUTHENTICATE = {**TEXT, "description": "How to sign in, and with which scope."}
HEADERS: dict[int, dict[str, Any]] = {
    HTTPStatus.UNAUTHORIZED: {"WWW-Authenticate": WWW_AUTHENTICATE},
    HTTPStatus.FORBIDDEN: {"WWW-Authenticate": WWW_AUTHENTICATE},
    HTTPStatus.TOO_MANY_REQUESTS: {"Retry-After": RETRY_AFTER, "RateLimit": RATE_LIMIT, "RateLimit-Policy": POLICY},
    HTTPStatus.SERVICE_UNAVAILABLE: {"Retry-After": RETRY_AFTER},
}
MOST_IN_A_NAME = 3  # codes; what has more is described in its place
ANY = {
    "description": "Any other refusal, with the reason and the way out.",
    "headers": {"X-Request-Id": REQUEST_ID},
    "content": {MEDIA_TYPE: {"schema": {"$ref": "#/components/schemas/Problem"}}},
}


def described(result: dict[str, Any], **_: object) -> dict[str, Any]:
    """The generator's hook: every operation with its refusals, by status."""
    shared: dict[str, Any] = {"any-other": ANY}
    for address, path in result["paths"].items():
        for method, operation in path.items():
            codes = {*_of_what_it_takes(method.upper(), address, operation), *operation.pop(REFUSES, ())}
            by_status = groupby(sorted(codes, key=_status), key=_status)
            refusals = {str(status): _refusal(status, sorted(of_status), shared) for status, of_status in by_status}
            default = {"$ref": "#/components/responses/any-other"}
            operation["responses"] = {**operation["responses"], **refusals, "default": default}
    components = result["components"]
    components["responses"] = dict(sorted(shared.items()))
    components["schemas"] = dict(sorted({**components["schemas"], "Problem": PROBLEM, "ProblemError": ERROR}.items()))
    return result


def _of_what_it_takes(method: str, address: str, operation: dict[str, Any]) -> Iterator[str]:
    need = need_of(method, address)
    # A query that is not known, and a key that does not count, are refused wherever they are sent.
    yield from ("not-understood", "key-refused")
    if {} not in operation["security"]:
        yield "not-authenticated"
    if need is Without.KEY:
        yield "key-opens-not"
    if isinstance(need, Scope):
        yield "scope-missing"
    if method not in SAFE_METHODS:
        yield "token-missing"
    if "{" in address:
        yield "not-found"
    if "requestBody" in operation:
        yield from ("parse-error", "body-too-long", "unsupported-media-type")
    if any(each["name"] == "Idempotency-Key" for each in operation.get("parameters", ())):
        yield from (StillUnderWay.code, KeyUsedDifferently.code)
    conditions = [each for each in operation.get("parameters", ()) if each["name"] == "If-Match"]
    if conditions or method in SAFE_METHODS:
        yield "changed-since"
    if any(each.get("required") for each in conditions):
        yield "precondition-missing"


def _status(code: str) -> int:
    return max(problem_codes()[code].statuses)  # what is a fault of one place too stands there with a 400


def _refusal(status: int, codes: list[str], shared: dict[str, Any]) -> dict[str, Any]:
    """A problem of one of these codes; where they are few, by the name under which others say the same."""
    of_codes = {"properties": {"type": {"enum": [TYPE_PREFIX + code for code in codes]}}}
    problem = {
        "description": "\n".join(f"- `{code}`: {problem_codes()[code].meaning}" for code in codes),
        "headers": {"X-Request-Id": REQUEST_ID, **HEADERS.get(status, {})},
        "content": {MEDIA_TYPE: {"schema": {"allOf": [{"$ref": "#/components/schemas/Problem"}, of_codes]}}},
    }
    if len(codes) > MOST_IN_A_NAME:
        return problem
    name = ".".join((str(status), *codes))
    shared[name] = problem
    return {"$ref": f"#/components/responses/{name}"}
