"""A programme and what it keeps."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID

from django.db.models import QuerySet

from cases.domain.access.roles import Role
from cases.domain.errors import NotHere
from cases.mapping.kits import kit_of, techniques_of, thresholds_of
from cases.mapping.uses import counted
from cases.models import Kit, Membership, Person, Programme, Service
from cases.queries.external_ids import known
from cases.queries.one_time_codes import with_one_time_codes
from cases.queries.seen import Asker
from planning.contract.plan_input import Kit as KitValue
from planning.foundation.pages import Page
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Technique


@dataclass(frozen=True, slots=True)
class ProgrammeShown:
    row: Programme
    role: Role | None
    """Of whoever asks; None for a service."""
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
class TechniquesShown(Page):
    results: tuple[TechniqueShown, ...]


def memberships(person: Person) -> list[Membership]:
    """What the person is where."""
    return list(person.memberships.select_related("programme").order_by("programme__name"))


def shown(asker: Asker, programme: Programme) -> ProgrammeShown:
    supervisors = Person.objects.filter(
        memberships__programme=programme, memberships__role=Role.SUPERVISOR, is_active=True
    )
    role = None if isinstance(asker, Service) else Membership.objects.role_of(asker, programme.pk)
    return ProgrammeShown(
        row=programme,
        role=role,
        supervisors=list(with_one_time_codes(supervisors).order_by("display_name")),
        thresholds=thresholds_of(programme.pk),
    )


def kits(asker: Asker, programme_id: UUID) -> QuerySet[Kit]:
    """Those of the programme, with what a list shows."""
    rows = Kit.objects.filter(programme_id=programme_id).order_by("name")
    return known(asker, rows.prefetch_related("instruments", "needles", "filling"))


def kit_shown(asker: Asker, row: Kit) -> KitShown:
    value = kit_of(row)
    # No service works with a set of its own: what the programme stated is all there is.
    mine = (value if isinstance(asker, Service) else counted(row, asker)).instruments
    yours = (
        InstrumentCount(instrument=instrument.key, uses=instrument.uses, most_uses=instrument.most_uses)
        for instrument in mine
    )
    return KitShown(row, value, tuple(yours))


def technique(programme_id: UUID, key: str) -> TechniqueShown:
    """One that is provided, or one of the programme's own. Raises NotHere."""
    value = techniques_of(programme_id).get(key)
    if value is None:
        raise NotHere(what="technique")
    return TechniqueShown(provided=key in provided_techniques(), technique=value)


def techniques(programme_id: UUID) -> TechniquesShown:
    provided = provided_techniques()
    by_key = techniques_of(programme_id)
    return TechniquesShown(
        results=tuple(TechniqueShown(provided=key in provided, technique=value) for key, value in by_key.items())
    )
