"""What a key may be used for, and which of it a service may be trusted with.

A scope opens operations; what they do in which case is still for the rights of whoever the key acts for.
"""

from __future__ import annotations

from enum import StrEnum


class Scope(StrEnum):
    """What a key opens; each operation states the one it asks for."""

    CASES_READ = "cases:read"
    CASES_WRITE = "cases:write"
    PLANS_SUBMIT = "plans:submit"
    REVIEWS_WRITE = "reviews:write"
    EVENTS_WRITE = "events:write"
    IMAGES_READ = "images:read"
    IMAGES_WRITE = "images:write"
    PEOPLE_READ = "people:read"
    EXPORT = "export"
    WEBHOOKS = "webhooks"


# A decision and what was done at the chair are a person's own word.
NEVER_A_SERVICES = frozenset({Scope.REVIEWS_WRITE, Scope.EVENTS_WRITE})
FOR_SERVICES = tuple(scope for scope in Scope if scope not in NEVER_A_SERVICES)
