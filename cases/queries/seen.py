"""What a person or a service can see. What belongs to another programme does not exist for them.

Students see their own cases; supervisors, coordinators and services those of the whole programme. A service that acts
for a student sees no less for that.
"""

from __future__ import annotations

from typing import TypeVar
from uuid import UUID

from django.db.models import Model, Q, QuerySet

from cases.domain.access.permissions import Actor, May, refuse_unless
from cases.domain.access.roles import Role
from cases.domain.errors import NotHere
from cases.models import (
    Canal,
    Case,
    CautionOverride,
    Change,
    ClientToken,
    Image,
    JunctionReading,
    Kit,
    LengthReading,
    Membership,
    Person,
    Programme,
    Review,
    Service,
    ToothPlanVersion,
)
from cases.models.prepared import Prepared

Row = TypeVar("Row", bound=Model)
Asker = Person | Service
WHOLE_PROGRAMME = (Role.SUPERVISOR, Role.COORDINATOR)


def service_of(asker: Asker) -> Service | None:
    """The service that asks, for a student or for itself; None for a person."""
    if isinstance(asker, Service):
        return asker
    return asker.by_key.service if asker.by_key else None


def _programme_of_service(asker: Asker) -> UUID | None:
    service = service_of(asker)
    return service.programme_id if service else None


def _programme_of_client(asker: Asker) -> UUID | None:
    """The one programme in which a client acts for the person who asks; None where they ask by themselves."""
    key = None if isinstance(asker, Service) else asker.by_key
    return key.client.service.programme_id if isinstance(key, ClientToken) else None


def refuse_unless_may(what: May, asker: Asker, programme_id: UUID) -> None:
    """Raises NotHere for somebody of another programme, and NotAllowed; of a service its scopes were asked before."""
    if isinstance(asker, Service):
        programme(asker, programme_id)
        return
    role = Membership.objects.role_of(asker, programme_id)
    if role is None:
        raise NotHere(what="programme")
    refuse_unless(what, Actor(person_id=asker.pk, role=role))


def programmes(asker: Asker) -> QuerySet[Programme]:
    if programme_id := _programme_of_service(asker):
        return Programme.objects.filter(pk=programme_id)
    rows = Programme.objects.filter(memberships__person=asker.pk)
    only = _programme_of_client(asker)
    return rows.filter(pk=only) if only else rows


def cases(asker: Asker) -> QuerySet[Case]:
    if programme_id := _programme_of_service(asker):
        return Case.objects.filter(programme=programme_id)
    member = Membership.objects.filter(person=asker.pk)
    if only := _programme_of_client(asker):
        member = member.filter(programme=only)
    whole = member.filter(role__in=WHOLE_PROGRAMME).values("programme")
    # Their own cases too only in programmes of theirs: who has left one sees nothing of it any more.
    return Case.objects.filter(Q(programme__in=whole) | Q(student=asker.pk, programme__in=member.values("programme")))


def changes(asker: Asker, programme_id: UUID) -> QuerySet[Change]:
    """What changed in a programme of the asker's, for a student in their own cases."""
    rows: QuerySet[Change] = Change.objects.filter(programme=programme_id)
    whole = Membership.objects.filter(programme=programme_id, person=asker.pk, role__in=WHOLE_PROGRAMME)
    if _programme_of_service(asker) or whole.exists():
        return rows
    return rows.filter(case__student=asker.pk)


_CASE = Prepared(lambda person_id, id_: cases(Person(pk=person_id)).filter(pk=id_))
_CASE_OF_PROGRAMME = Prepared(lambda programme_id, id_: Case.objects.filter(programme=programme_id, pk=id_))


def canals(asker: Asker) -> QuerySet[Canal]:
    return Canal.objects.filter(tooth__case__in=cases(asker)).select_related("tooth__case", "root")


def versions(asker: Asker) -> QuerySet[ToothPlanVersion]:
    return ToothPlanVersion.objects.filter(case__in=cases(asker)).select_related("case", "author")


def programme(asker: Asker, id_: UUID) -> Programme:
    """Raises NotHere."""
    return row_of(programmes(asker), id_, "programme")


def case(asker: Asker, id_: UUID) -> Case:
    """Raises NotHere."""
    programme_id = _programme_of_service(asker)
    row = _CASE_OF_PROGRAMME.first(programme_id, id_) if programme_id else _CASE.first(asker.pk, id_)
    only = _programme_of_client(asker)
    if row is None or (only and row.programme_id != only):
        raise NotHere(what="case")
    return row


def person(asker: Asker, programme_id: UUID, id_: UUID) -> Person:
    """Somebody who belongs to the programme. Raises NotHere."""
    rows = Person.objects.filter(memberships__programme=programme(asker, programme_id), is_active=True)
    return row_of(rows, id_, "person")


def kit(asker: Asker, programme_id: UUID, id_: UUID) -> Kit:
    """Raises NotHere."""
    rows: QuerySet[Kit] = Kit.objects.filter(programme=programme(asker, programme_id))
    return row_of(rows, id_, "kit")


def canal(asker: Asker, id_: UUID) -> Canal:
    """Raises NotHere."""
    return row_of(canals(asker), id_, "canal")


def version(asker: Asker, id_: UUID) -> ToothPlanVersion:
    """Raises NotHere."""
    return row_of(versions(asker), id_, "plan version")


def review(asker: Asker, version_id: UUID, id_: UUID) -> Review:
    """Raises NotHere."""
    rows: QuerySet[Review] = Review.objects.filter(version__case__in=cases(asker), version=version_id)
    return row_of(rows.select_related("supervisor"), id_, "decision")


def override(asker: Asker, id_: UUID) -> CautionOverride:
    """Raises NotHere."""
    rows: QuerySet[CautionOverride] = CautionOverride.objects.filter(case__in=cases(asker)).select_related("case")
    return row_of(rows, id_, "override")


def length_reading(asker: Asker, id_: UUID) -> LengthReading:
    """Raises NotHere."""
    rows: QuerySet[LengthReading] = LengthReading.objects.filter(canal__in=canals(asker))
    return row_of(rows.select_related("canal__tooth__case", "canal__root"), id_, "reading")


def junction_reading(asker: Asker, id_: UUID) -> JunctionReading:
    """Raises NotHere."""
    rows: QuerySet[JunctionReading] = JunctionReading.objects.filter(canal__in=canals(asker))
    return row_of(rows.select_related("canal__tooth__case", "canal__root"), id_, "reading")


def image(asker: Asker, case_id: UUID, id_: UUID) -> Image:
    """Raises NotHere."""
    rows: QuerySet[Image] = Image.objects.filter(case__in=cases(asker), case_id=case_id)
    return row_of(rows.select_related("case", "taken_by", "checked_by", "removed_by"), id_, "image")


def row_of(rows: QuerySet[Row], id_: UUID, what: str) -> Row:
    """Raises NotHere."""
    row = rows.filter(pk=id_).first()
    if row is None:
        raise NotHere(what=what)
    return row
