"""Versions of a case's plan: where it stands, what was decided, what changed."""

from __future__ import annotations

import gzip
import json
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any
from uuid import UUID

from django.db.models import BooleanField, Exists, ExpressionWrapper, F, OuterRef, Prefetch, Q, QuerySet

from cases.domain.errors import NotHere
from cases.domain.plans.changes import PlanChanges, Planned, compare
from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.status import PlanStatus, PlanStatusState, VersionFacts, status
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, PlanTexts, Review, ReviewRemark, Revocation, ToothPlanVersion


def _approved() -> Q:
    """The condition that a version was approved at some time. An approval that was carried over is one too."""
    reviews = Review.objects.filter(version=OuterRef("pk"), decision=Decision.APPROVED)
    return Q(Exists(reviews)) | Q(carried_from__isnull=False)


def with_decisions(versions: QuerySet[ToothPlanVersion]) -> QuerySet[ToothPlanVersion]:
    """Versions with `was_approved`."""
    was_approved = ExpressionWrapper(_approved(), output_field=BooleanField())
    carried = F("carried_from__number")
    return versions.annotate(was_approved=was_approved, carried_number=carried).order_by("number")


def with_status() -> Prefetch[str, QuerySet[ToothPlanVersion], str]:
    """Brings with cases what `plan_status` needs."""
    return Prefetch("versions", queryset=with_decisions(ToothPlanVersion.objects.all()))


def plan_status(case: Case) -> PlanStatus:
    """Where the case's plan stands; `case` comes with `with_status`."""
    return status([facts_of(row) for row in case.versions.all()], case.revision)


def standing_at(cases: QuerySet[Case], state: PlanStatusState) -> QuerySet[Case]:
    """Those of the cases whose plan has this status: what `status` says, as a condition of the database."""
    of_case = ToothPlanVersion.objects.filter(case=OuterRef("pk"))
    current = of_case.exclude(state=PlanState.SUPERSEDED)
    approved = Q(Exists(current.filter(state=PlanState.APPROVED)))
    fits = Q(Exists(current.filter(state=PlanState.APPROVED, case_revision=OuterRef("revision"))))
    draft = Q(Exists(current.filter(state=PlanState.DRAFT)))
    was_approved = Q(Exists(of_case.filter(_approved())))
    match state:
        case PlanStatusState.NONE:
            return cases.filter(~Exists(current))
        case PlanStatusState.APPROVED:
            return cases.filter(fits)
        case PlanStatusState.DRAFT:
            return cases.filter(draft & ~was_approved)
        case PlanStatusState.APPROVAL_VOID:
            return cases.filter(approved & ~fits | draft & was_approved)
        case _:
            return cases.filter(Exists(current.filter(state=state.value)))


def status_of(case: Case) -> PlanStatus:
    """The same for one case alone."""
    return status([facts_of(row) for row in with_decisions(case.versions.all())], case.revision)


def facts_of(row: ToothPlanVersion) -> VersionFacts:
    was_approved: bool = row.was_approved  # type: ignore[attr-defined]
    return VersionFacts(
        number=row.number,
        state=PlanState(row.state),
        case_revision=row.case_revision,
        was_approved=was_approved,
        not_released=tuple(row.not_released),
        carried_from=row.carried_number,  # type: ignore[attr-defined]
    )


def current(case: Case) -> ToothPlanVersion | None:
    """The version that stands; `case` comes with `with_status`."""
    rows: Iterable[ToothPlanVersion] = case.versions.all()
    return next((row for row in rows if row.state != PlanState.SUPERSEDED), None)


def reviewed(versions: QuerySet[ToothPlanVersion]) -> QuerySet[ToothPlanVersion]:
    """Versions with their reviews, remarks and authors."""
    remarks = ReviewRemark.objects.select_related("canal_plan").order_by("canal_plan__place")
    reviews = Review.objects.select_related("supervisor").order_by("at", "asked")
    return (
        versions.select_related("author")
        .annotate(carried_number=F("carried_from__number"))
        .prefetch_related(
            Prefetch("reviews", queryset=reviews),
            Prefetch("reviews__remarks", queryset=remarks),
            Prefetch("revocations", queryset=Revocation.objects.select_related("actor").order_by("at")),
        )
    )


@dataclass(frozen=True, slots=True)
class VersionShown:
    """A version as it is listed and shown."""

    row: ToothPlanVersion
    stale: bool
    status: PlanStatus | None = None
    given: Any = None
    """What it was made from, as JSON data of the stored text."""
    plan: Any = None


def versions_listed(case: Case) -> list[VersionShown]:
    """All versions of a case, the latest first."""
    rows = reviewed(case.versions.all()).order_by("-number")
    return [VersionShown(row, row.case_revision != case.revision) for row in rows]


def packed_texts(version_id: UUID) -> bytes:
    """What the version was made from and what it says, as one JSON object in gzip."""
    return bytes(PlanTexts.objects.get(pk=version_id).packed)


def version_shown(version_id: UUID, *, texts: bool) -> VersionShown:
    """One version; what it was made from and what it says only with its texts."""
    row = reviewed(ToothPlanVersion.objects.select_related("case")).get(pk=version_id)
    version = VersionShown(row, row.case_revision != row.case.revision, status_of(row.case))
    return replace(version, **json.loads(gzip.decompress(packed_texts(version_id)))) if texts else version


def last_decided(version: ToothPlanVersion) -> ToothPlanVersion | None:
    """The version before this one that a supervisor last decided on."""
    review = (
        Review.objects.filter(version__case_id=version.case_id)
        .exclude(version=version)
        .order_by("-at", "-version__number")
        .select_related("version")
        .first()
    )
    return review.version if review else None


def changes(version: ToothPlanVersion, against: int | None) -> PlanChanges | None:
    """What changed since version `against`, by default since the one last decided on; None where there is none.

    Raises NotHere for a number the case does not have.
    """
    earlier = last_decided(version)
    if against is not None:
        earlier = version.case.versions.filter(number=against).first()
        if earlier is None:
            raise NotHere(what=f"version {against}")
    return None if earlier is None else compare(_planned(earlier), _planned(version))


def _planned(version: ToothPlanVersion) -> Planned:
    return Planned(number=version.number, plan_input=plan_input_of(version), plan=plan_of(version))
