"""Who does it, in which programme, and whether they may."""

from __future__ import annotations

from typing import Any

from cases.domain.access.permissions import Actor, May, refuse_unless
from cases.domain.errors import NotHere
from cases.models import Case, Membership, Person


def actor_in(person: Person, programme_id: Any) -> Actor:
    """The person as an actor of the programme. Raises NotHere for somebody of another programme."""
    role = Membership.objects.role_of(person, programme_id)
    if role is None or not person.is_active:
        raise NotHere(what="programme")
    return Actor(person_id=person.pk, role=role)


def guard(what: May, person: Person, case: Case) -> Actor:
    """The person as an actor who may do this in the case. Raises NotHere and NotAllowed."""
    actor = actor_in(person, case.programme_id)
    refuse_unless(what, actor, student_id=case.student_id)
    return actor
