"""In whose name a command acts."""

from __future__ import annotations

from django.core.management.base import CommandError

from cases.domain.access.roles import Role
from cases.models import Membership


def keeper_of(username: str, programme: str | None) -> Membership:
    """The coordinator with this user name in the programme of this name, or in the only one. Raises CommandError."""
    rows = Membership.objects.filter(person__username=username, role=Role.COORDINATOR).select_related("person")
    if programme:
        rows = rows.filter(programme__name=programme)
    if len(rows) != 1:
        raise CommandError(f"{username} keeps {len(rows)} such programmes: name one of theirs with --programme.")
    return rows[0]
