"""A programme and what it keeps."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID

from cases.domain.access.roles import Role
from cases.mapping.kits import kit_of, techniques_of, thresholds_of
from cases.mapping.uses import counted
from cases.models import Kit, Membership, Person, Programme
from cases.queries.one_time_codes import with_one_time_codes
from planning.contract.plan_input import Kit as KitValue
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Technique


@dataclass(frozen=True, slots=True)
class ProgrammeShown:
    row: Programme
    role: Role
    supervisors: list[Person]
    thresholds: dict[str, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class InstrumentCount:
    """How often an instrument was used; one use is one canal."""

    instrument: str
    """Its key."""
    uses: int
    most_uses: int | None


@dataclass(frozen=True, slots=True)
class KitShown:
    row: Kit
    value: KitValue
    yours: tuple[InstrumentCount, ...]
    """Of the set that the asking person works with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TechniqueShown:
    """A technique to choose from."""

    provided: bool
    """Comes with the planner; otherwise it is the programme's own."""
    technique: Technique


@dataclass(frozen=True, slots=True, kw_only=True)
class TechniquesShown:
    results: tuple[TechniqueShown, ...]


def memberships(person: Person) -> list[Membership]:
    """What the person is where."""
    return list(person.memberships.select_related("programme").order_by("programme__name"))


def shown(person: Person, programme: Programme) -> ProgrammeShown:
    supervisors = Person.objects.filter(
        memberships__programme=programme, memberships__role=Role.SUPERVISOR, is_active=True
    )
    role = Membership.objects.role_of(person, programme.pk)
    return ProgrammeShown(
        row=programme,
        role=role or Role.STUDENT,
        supervisors=list(with_one_time_codes(supervisors).order_by("display_name")),
        thresholds=thresholds_of(programme.pk),
    )


def kits(person: Person, programme_id: UUID) -> list[KitShown]:
    rows = (
        Kit.objects.filter(programme_id=programme_id)
        .prefetch_related("instruments", "needles", "filling")
        .order_by("name")
    )
    return [kit_shown(person, row) for row in rows]


def kit_shown(person: Person, row: Kit) -> KitShown:
    mine = counted(row, person).instruments
    yours = (
        InstrumentCount(instrument=instrument.key, uses=instrument.uses, most_uses=instrument.most_uses)
        for instrument in mine
    )
    return KitShown(row, kit_of(row), tuple(yours))


def techniques(programme_id: UUID) -> TechniquesShown:
    provided = provided_techniques()
    by_key = techniques_of(programme_id)
    return TechniquesShown(
        results=tuple(TechniqueShown(provided=key in provided, technique=value) for key, value in by_key.items())
    )
