"""What a key may be used for, and which of it a service may be trusted with.

A scope opens operations; what they do in which case is still for the rights of whoever the key acts for.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from cases.domain.access.roles import Role


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

# What the rights of a role leave closed whoever asks: a client is not given it for a person of that role.
_CLOSED_TO: Mapping[Role, frozenset[Scope]] = {
    Role.STUDENT: frozenset({Scope.REVIEWS_WRITE, Scope.PEOPLE_READ, Scope.WEBHOOKS}),
    Role.SUPERVISOR: frozenset({Scope.PLANS_SUBMIT, Scope.WEBHOOKS}),
    Role.COORDINATOR: frozenset({Scope.PLANS_SUBMIT, Scope.EVENTS_WRITE, Scope.IMAGES_WRITE}),
}
OF_ROLE: Mapping[Role, tuple[Scope, ...]] = {
    role: tuple(scope for scope in Scope if scope not in closed) for role, closed in _CLOSED_TO.items()
}

SAYS: Mapping[Scope, str] = {
    Scope.CASES_READ: "See the cases you see, with their plans and records",
    Scope.CASES_WRITE: "Open cases and change what is charted in them",
    Scope.PLANS_SUBMIT: "Make plans and submit them for approval",
    Scope.REVIEWS_WRITE: "Approve, return and withdraw plans as you",
    Scope.EVENTS_WRITE: "Tell what is done at the chair, as you",
    Scope.IMAGES_READ: "See the images of those cases",
    Scope.IMAGES_WRITE: "Add images and marks on them",
    Scope.PEOPLE_READ: "See who belongs to the programme",
    Scope.EXPORT: "Take records away as files",
    Scope.WEBHOOKS: "Have other systems told of what changes in the programme",
}
"""To the person for whom a client would act."""
