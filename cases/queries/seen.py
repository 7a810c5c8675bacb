"""What a person can see. What belongs to another programme does not exist for them.

Students see their own cases; supervisors and coordinators those of the whole programme.
"""

from __future__ import annotations

from typing import TypeVar
from uuid import UUID

from django.db.models import Model, Q, QuerySet

from cases.domain.access.roles import Role
from cases.domain.errors import NotHere
from cases.models import (
    Canal,
    Case,
    CautionOverride,
    Image,
    JunctionReading,
    LengthReading,
    Membership,
    Person,
    Programme,
    ToothPlanVersion,
)
from cases.models.prepared import Prepared

Row = TypeVar("Row", bound=Model)
WHOLE_PROGRAMME = (Role.SUPERVISOR, Role.COORDINATOR)


def programmes(person: Person) -> QuerySet[Programme]:
    return Programme.objects.filter(memberships__person=person)


def cases(person: Person) -> QuerySet[Case]:
    member = Membership.objects.filter(person=person)
    whole = member.filter(role__in=WHOLE_PROGRAMME).values("programme")
    # Their own cases too only in programmes of theirs: who has left one sees nothing of it any more.
    return Case.objects.filter(Q(programme__in=whole) | Q(student=person, programme__in=member.values("programme")))


_CASE = Prepared(lambda person_id, id_: cases(Person(pk=person_id)).filter(pk=id_))


def canals(person: Person) -> QuerySet[Canal]:
    return Canal.objects.filter(tooth__case__in=cases(person)).select_related("tooth__case", "root")


def versions(person: Person) -> QuerySet[ToothPlanVersion]:
    return ToothPlanVersion.objects.filter(case__in=cases(person)).select_related("case", "author")


def programme(person: Person, id_: UUID) -> Programme:
    """Raises NotHere."""
    return _one(programmes(person), id_, "programme")


def case(person: Person, id_: UUID) -> Case:
    """Raises NotHere."""
    row = _CASE.first(person.pk, id_)
    if row is None:
        raise NotHere(what="case")
    return row


def canal(person: Person, id_: UUID) -> Canal:
    """Raises NotHere."""
    return _one(canals(person), id_, "canal")


def version(person: Person, id_: UUID) -> ToothPlanVersion:
    """Raises NotHere."""
    return _one(versions(person), id_, "plan version")


def override(person: Person, id_: UUID) -> CautionOverride:
    """Raises NotHere."""
    rows: QuerySet[CautionOverride] = CautionOverride.objects.filter(case__in=cases(person)).select_related("case")
    return _one(rows, id_, "override")


def length_reading(person: Person, id_: UUID) -> LengthReading:
    """Raises NotHere."""
    rows: QuerySet[LengthReading] = LengthReading.objects.filter(canal__in=canals(person))
    return _one(rows.select_related("canal__tooth__case", "canal__root"), id_, "reading")


def junction_reading(person: Person, id_: UUID) -> JunctionReading:
    """Raises NotHere."""
    rows: QuerySet[JunctionReading] = JunctionReading.objects.filter(canal__in=canals(person))
    return _one(rows.select_related("canal__tooth__case", "canal__root"), id_, "reading")


def image(person: Person, case_id: UUID, id_: UUID) -> Image:
    """Raises NotHere."""
    rows: QuerySet[Image] = Image.objects.filter(case__in=cases(person), case_id=case_id)
    return _one(rows.select_related("case", "taken_by", "checked_by", "removed_by"), id_, "image")


def _one(rows: QuerySet[Row], id_: UUID, what: str) -> Row:
    row = rows.filter(pk=id_).first()
    if row is None:
        raise NotHere(what=what)
    return row
