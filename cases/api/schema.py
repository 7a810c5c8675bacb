"""The description of the API: what all operations have in common. Their refusals are in `refusals`."""

from __future__ import annotations

from typing import Any, Literal

from drf_spectacular.openapi import AutoSchema
from rest_framework.permissions import SAFE_METHODS, AllowAny

from cases.api.chosen_fields import parameters
from cases.api.needs import need_of
from cases.api.security import requirements
from cases.api.short_lists import PARAMETERS, names_of

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


class OperationSchema(AutoSchema):
    """Adds what all operations have: the tag and the condition of what is read, and what is asked of who asks."""

    def get_auth(self) -> list[dict[str, list[str]]]:
        changes = self.method not in SAFE_METHODS
        open_to_all = any(isinstance(each, AllowAny) for each in self.view.get_permissions())
        return requirements(need_of(self.method, self.path), changes=changes, open_to_all=open_to_all)

    def _get_parameters(self) -> list[dict[str, Any]]:
        every: list[dict[str, Any]] = [*super()._get_parameters(), *parameters(self.view, self.method)]
        if names_of(type(self.view), self.method):
            every += PARAMETERS
        if self.method == "POST" and getattr(self.view, "keeps_answers", False):
            return [*every, IDEMPOTENCY_KEY]
        return [*every, IF_NONE_MATCH] if self.method == "GET" else every

    def _get_response_bodies(self, direction: Literal["request", "response"] = "response") -> dict[str, Any]:
        bodies: dict[str, Any] = super()._get_response_bodies(direction)
        if self.method == "GET":
            bodies["304"] = UNCHANGED
            bodies["200"] = {**bodies["200"], "headers": {"ETag": ETAG}}
        return bodies
