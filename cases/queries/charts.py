"""Cases as they are listed and shown."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Any
from uuid import UUID

from django.db.models import Exists, OuterRef, QuerySet, prefetch_related_objects

from cases.domain.plans.status import PlanStatus
from cases.mapping.chart_rows import chart
from cases.mapping.charts import facts_of, last_junction, length_of, root_input, tooth_facts_of
from cases.mapping.kits import thresholds_of
from cases.models import (
    Canal,
    Case,
    CautionOverride,
    ChangeLog,
    JunctionReading,
    LengthReading,
    Membership,
    RunningWork,
    ToothPlanVersion,
)
from cases.queries import plans, seen
from cases.queries.external_ids import known
from cases.queries.seen import Asker
from planning import anatomy
from planning.contract.canal_facts import CanalFacts
from planning.contract.plan_input import Junction, RootInput
from planning.contract.plan_value import ToothNames
from planning.contract.tooth_facts import ToothFacts
from planning.foundation.errors import PlanningError
from planning.foundation.tables import Figures
from planning.lengths.readings import Length


@dataclass(frozen=True, slots=True)
class CanalShown:
    """A canal with what its length comes to."""

    row: Canal
    length: Length | None
    problem: str
    """Why no length can be worked out from the readings as they are."""
    junction: Junction | None
    """The last one measured."""

    @property
    def facts(self) -> CanalFacts:
        return facts_of(self.row)

    @property
    def readings(self) -> list[LengthReading]:
        return list(self.row.readings.all())

    @property
    def junctions(self) -> list[JunctionReading]:
        return list(self.row.junctions.all())


@dataclass(frozen=True, slots=True)
class CaseShown:
    """A case with everything its screen shows."""

    row: Case
    names: ToothNames
    canals: list[CanalShown]
    roots: list[RootInput]
    overrides: list[CautionOverride]
    """What supervisors let pass, those taken back too."""
    status: PlanStatus
    version: ToothPlanVersion | None
    """The version that stands."""

    @property
    def facts(self) -> ToothFacts:
        return tooth_facts_of(self.row)


@dataclass(frozen=True, slots=True)
class CaseListed:
    row: Case
    names: ToothNames
    status: PlanStatus
    version: ToothPlanVersion | None


def names_of(iso: str) -> ToothNames:
    """What the tooth is called in each notation."""
    tooth = anatomy.tooth(iso)
    return ToothNames(
        iso=tooth.iso,
        universal=tooth.universal,
        palmer=tooth.palmer,
        palmer_glyph=tooth.palmer_glyph,
        name=tooth.name,
    )


def of_programme(asker: Asker, programme_id: UUID) -> QuerySet[Case]:
    """The cases of the programme that the asker can see, with what a list shows."""
    rows = seen.cases(asker).filter(programme_id=programme_id)
    shown_rows = rows.select_related("tooth", "patient", "student", "supervisor").prefetch_related(plans.with_status())
    return known(asker, shown_rows)


def of_group(cases: QuerySet[Case], group: str) -> QuerySet[Case]:
    """Those of the cases whose student is in the group now."""
    there = Membership.objects.filter(person=OuterRef("student"), programme=OuterRef("programme"), group=group)
    return cases.filter(Exists(there))


def changed_since(cases: QuerySet[Case], since: datetime) -> QuerySet[Case]:
    """Those of the cases of which something was logged, or recorded at the chair, then or later."""
    logged = ChangeLog.objects.filter(case=OuterRef("pk"), at__gte=since)
    recorded = RunningWork.objects.filter(case=OuterRef("pk"), changed_at__gte=since)
    return cases.filter(Exists(logged) | Exists(recorded))


def listed(row: Case) -> CaseListed:
    """One line of the list."""
    return CaseListed(row, names_of(row.tooth.iso), plans.plan_status(row), plans.current(row))


def shown(case_id: UUID, asker: Asker | None = None) -> CaseShown:
    """The case with its chart and what each length comes to; for a service with the key it knows the case by."""
    service = seen.service_of(asker) if asker else None
    row = chart(case_id, service.pk if service else None)
    prefetch_related_objects([row], plans.with_status())
    figures = Figures(thresholds_of(row.programme_id))
    return CaseShown(
        row=row,
        names=names_of(row.tooth.iso),
        canals=[with_length(canal, row.setting, figures) for canal in row.tooth.canals.all()],
        roots=[root_input(root) for root in row.tooth.roots.all()],
        overrides=list(row.overrides.all()),
        status=plans.plan_status(row),
        version=plans.current(row),
    )


def overrides(case_id: UUID) -> list[CautionOverride]:
    """What supervisors let pass in the case, in the order of time."""
    rows = CautionOverride.objects.filter(case_id=case_id)
    return list(rows.select_related("canal", "supervisor", "withdrawn_by").order_by("at", "pk"))


def canal_shown(case_id: UUID, canal_id: Any) -> CanalShown:
    """One canal of a case."""
    return next(canal for canal in shown(case_id).canals if canal.row.pk == canal_id)


def with_length(row: Canal, setting: str, figures: Figures) -> CanalShown:
    """The canal; its readings and junctions come with it, in order."""
    junction = last_junction(row)
    try:
        return CanalShown(row, length_of(row, setting, figures), "", junction)
    except PlanningError as refusal:
        # Readings that cannot be right together are shown all the same, or nobody could put them right.
        return CanalShown(row, None, str(refusal), junction)
