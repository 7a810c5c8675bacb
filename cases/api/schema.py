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
        "code": {"type": "string"},
        "detail": {"type": "string", "description": "What is wrong and what to do."},
        "line": {"type": "integer", "description": "Of a text that was sent, the first being 1."},
    },
}
PROBLEM = {
    "type": "object",
    "description": "Problem details (RFC 9457).",
    "required": ["type", "title", "status", "detail", "errors"],
    "properties": {
        "type": {"type": "string", "format": "uri", "description": f"`{TYPE_PREFIX}` and a code."},
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


class ProblemSchema(AutoSchema):
    """Adds the problem as the `default` answer of every operation, and what it asks of who asks."""

    def get_auth(self) -> list[dict[str, list[str]]]:
        changes = self.method not in SAFE_METHODS
        open_to_all = any(isinstance(each, AllowAny) for each in self.view.get_permissions())
        return requirements(need_of(self.method, self.path), changes=changes, open_to_all=open_to_all)

    def _get_response_bodies(self, direction: Literal["request", "response"] = "response") -> dict[str, Any]:
        bodies: dict[str, Any] = super()._get_response_bodies(direction)
        for name, schema in (("ProblemError", ERROR), ("Problem", PROBLEM)):
            part = ResolvedComponent(name, ResolvedComponent.SCHEMA, schema, ComponentIdentity(name))
            self.registry.register_on_missing(part)
        bodies["default"] = {
            "description": "Refused, with the reason and the way out.",
            "content": {
                MEDIA_TYPE: {
                    "schema": {"$ref": "#/components/schemas/Problem"},
                    "examples": {"StalePlan": {"value": EXAMPLE, "summary": "A plan of a case that has changed"}},
                }
            },
        }
        return bodies
