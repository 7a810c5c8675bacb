"""Who does it, in which programme, and whether they may."""

from __future__ import annotations

from typing import Any

from django.utils import timezone

from cases.domain.access.permissions import Actor, May, refuse_unless
from cases.domain.errors import NotAllowed, NotHere
from cases.models import Case, Membership, Person
from planning.techniques.technique import Setting


def actor_in(person: Person, programme_id: Any) -> Actor:
    """The person as an actor of the programme. Raises NotHere for somebody of another programme."""
    role = Membership.objects.role_of(person, programme_id)
    if role is None or not person.is_active:
        raise NotHere(what="programme")
    return Actor(person_id=person.pk, role=role)


def refuse_unless_treats(person: Person, programme_id: Any, setting: str) -> None:
    """Raises NotAllowed in the clinic, for a student whom no coordinator lets treat patients today."""
    if setting != Setting.CLINIC:
        return
    held = Membership.objects.filter(person=person, programme=programme_id)
    day = held.values_list("treats_patients_until", flat=True).first()
    if day is None or day < timezone.localdate():
        was = f"You could until {day:%Y-%m-%d}" if day else "Nobody has let you yet"
        raise NotAllowed(
            reason=f"In the clinic a student treats patients once the coordinator lets them, until a day. {was}: "
            "ask the coordinator.",
            at=("setting",),
        )


def guard(what: May, person: Person, case: Case) -> Actor:
    """The person as an actor who may do this in the case. Raises NotHere and NotAllowed."""
    actor = actor_in(person, case.programme_id)
    refuse_unless(what, actor, student_id=case.student_id)
    return actor
