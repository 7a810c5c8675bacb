"""The description of the API: every operation may answer with problem details."""

from __future__ import annotations

from typing import Any, Literal

from drf_spectacular.openapi import AutoSchema
from drf_spectacular.plumbing import ComponentIdentity, ResolvedComponent
from rest_framework.permissions import SAFE_METHODS, AllowAny

from cases.api.needs import need_of
from cases.api.problems import MEDIA_TYPE, TYPE_PREFIX
from cases.api.security import requirements

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
    "required": ["type", "title", "status", "detail", "errors"],
    "properties": {
        "type": {
            "type": "string",
            "format": "uri-reference",
            "description": f"`{TYPE_PREFIX}` and a code, which is explained at that address.",
        },
        "title": {"type": "string"},
        "status": {"type": "integer"},
        "detail": {"type": "string", "description": "For people: what is wrong and what to do."},
        "errors": {"type": "array", "items": {"$ref": "#/components/schemas/ProblemError"}},
        "expected": {"type": "integer", "description": "The number to go on with, where one was left out."},
    },
}
EXAMPLE = {
    "type": TYPE_PREFIX + "plan-stale",
    "title": "Conflict",
    "status": 409,
    "detail": "The case has changed since version 2 was made. Have it planned again and submit the new version.",
    "errors": [],
}


IF_NONE_MATCH = {
    "in": "header",
    "name": "If-None-Match",
    "schema": {"type": "string"},
    "description": "The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2).",
}
IDEMPOTENCY_KEY = {
    "in": "header",
    "name": "Idempotency-Key",
    "schema": {"type": "string"},
    "description": "In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key "
    "within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; "
    "422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again.",
}
UNCHANGED = {"description": "What is shown is what the ETag of If-None-Match is of. No body."}
TEXT = {"schema": {"type": "string"}}
ETAG = {
    **TEXT,
    "description": "Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it.",
}
OF_REFUSALS = {
    "X-Request-Id": {
        **TEXT,
        "description": "Names the request, as every answer does. Tell it to whoever looks after the server.",
    },
    "Retry-After": {"schema": {"type": "integer"}, "description": "With 429 and 503: seconds to wait."},
    "WWW-Authenticate": {**TEXT, "description": "With 401, and 403 for want of a scope: how to sign in."},
}


class ProblemSchema(AutoSchema):
    """Adds to every operation what all have: the problem as the `default` answer, the tag and the condition of what is
    read, and what it asks of who asks.
    """

    def get_auth(self) -> list[dict[str, list[str]]]:
        changes = self.method not in SAFE_METHODS
        open_to_all = any(isinstance(each, AllowAny) for each in self.view.get_permissions())
        return requirements(need_of(self.method, self.path), changes=changes, open_to_all=open_to_all)

    def _get_parameters(self) -> list[dict[str, Any]]:
        parameters: list[dict[str, Any]] = super()._get_parameters()
        if self.method == "POST" and getattr(self.view, "keeps_answers", False):
            return [*parameters, IDEMPOTENCY_KEY]
        return [*parameters, IF_NONE_MATCH] if self.method == "GET" else parameters

    def _get_response_bodies(self, direction: Literal["request", "response"] = "response") -> dict[str, Any]:
        bodies: dict[str, Any] = super()._get_response_bodies(direction)
        for name, schema in (("ProblemError", ERROR), ("Problem", PROBLEM)):
            part = ResolvedComponent(name, ResolvedComponent.SCHEMA, schema, ComponentIdentity(name))
            self.registry.register_on_missing(part)
        if self.method == "GET":
            bodies["304"] = UNCHANGED
            bodies["200"] = {**bodies["200"], "headers": {"ETag": ETAG}}
        bodies["default"] = {
            "description": "Refused, with the reason and the way out.",
            "headers": OF_REFUSALS,
            "content": {
                MEDIA_TYPE: {
                    "schema": {"$ref": "#/components/schemas/Problem"},
                    "examples": {"StalePlan": {"value": EXAMPLE, "summary": "A plan of a case that has changed"}},
                }
            },
        }
        return bodies
