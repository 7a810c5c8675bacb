"""A version of a plan as it is printed before the work."""

from __future__ import annotations

from datetime import UTC
from uuid import UUID

from cases.domain.plans.lifecycle import Decision, PlanState
from cases.domain.plans.work_sheet import WorkSheet
from cases.mapping.plans import plan_of
from cases.models import ToothPlanVersion
from cases.queries.plans import reviewed, status_of


def work_sheet(version_id: UUID) -> WorkSheet:
    """The version as it is printed. Its plan is as it was made; whether it is approved, as it stands now."""
    rows = reviewed(ToothPlanVersion.objects.select_related("case__patient", "case__student", "case__supervisor"))
    row = rows.select_related("case__programme", "author").get(pk=version_id)
    case = row.case
    approved = row.state == PlanState.APPROVED and row.case_revision == case.revision
    return WorkSheet(
        case_id=str(case.pk),
        patient_alias=case.patient.alias,
        programme=case.programme.name,
        invented=case.programme.invented,
        student=str(case.student),
        supervisor=str(case.supervisor) if case.supervisor else "",
        number=row.number,
        hash=row.hash,
        made_at=row.created_at,
        approved=approved,
        approval=_approval(row) if approved else _lacking(row),
        not_released=tuple(row.not_released),
        plan=plan_of(row),
    )


def _approval(row: ToothPlanVersion) -> str:
    by = next((each for each in reversed(row.reviews.all()) if each.decision == Decision.APPROVED), None)
    if by is None:
        return status_of(row.case).says
    return f"Approved by {by.supervisor}, {by.at.astimezone(UTC):%Y-%m-%d %H:%M}."


def _lacking(row: ToothPlanVersion) -> str:
    """Why nobody may work by it."""
    status = status_of(row.case)
    if row.number != status.number:
        return f"Plan {status.number} stands in its place."
    return " ".join(each for each in (status.says, status.do) if each)
