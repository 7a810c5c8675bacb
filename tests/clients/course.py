"""From a case to 'approved' with the client that `manage.py api_client` makes: what another system would write.

Checked by the type checker against that client, and run, by `test_python_client.py`.
"""

from __future__ import annotations

from typing import TypeVar
from uuid import UUID

from fourth_canal_client import AuthenticatedClient
from fourth_canal_client.api.canal import canal_update, readings_create
from fourth_canal_client.api.case import cases_create
from fourth_canal_client.api.plan import (
    plan_version_retrieve,
    plan_version_submit,
    plan_versions_create,
    reviews_create,
)
from fourth_canal_client.api.programme import kits_list, programme_changes
from fourth_canal_client.models import (
    CaseGivenRequest,
    CaseShown,
    ChoicesRequest,
    ConfirmingImageRequest,
    Decision,
    Finding,
    NeedleRequest,
    Notation,
    PatchedCanalChangesRequest,
    Plan,
    PlanVersionRetrieveExpandItem,
    PreOperativeImageRequest,
    Problem,
    ReadingGivenRequest,
    ReviewGivenRequest,
    Setting,
    ToothNameRequest,
    VersionGivenRequest,
    VersionShown,
)

Shown = TypeVar("Shown")


def enter_case(service: AuthenticatedClient, programme_id: UUID, student_id: UUID) -> CaseShown:
    """A case of a named student, opened by a service, with two readings of each canal."""
    body = CaseGivenRequest(
        patient_alias="Reed 12",
        tooth=ToothNameRequest(designation="27", notation=Notation.ISO_3950),
        setting=Setting.EXTRACTED,
        student_id=student_id,
    )
    case = answered(cases_create.sync(programme_id, client=service, body=body))
    for canal in case.canals:
        at = canal.reference_point
        seen = PatchedCanalChangesRequest(finding=Finding.FOUND)
        answered(canal_update.sync(canal.id, client=service, body=seen))
        readings: list[PreOperativeImageRequest | ConfirmingImageRequest] = [
            PreOperativeImageRequest(tooth_mm=21.5, reference_point=at, method="pre_operative_image"),
            ConfirmingImageRequest(set_mm=20.0, tip_short_mm=0.5, reference_point=at, method="confirming_image"),
        ]
        for reading in readings:
            taken = ReadingGivenRequest(reading=reading)
            answered(readings_create.sync(canal.id, client=service, body=taken))
    return case


def ask_for_approval(student: AuthenticatedClient, programme_id: UUID, case_id: UUID) -> VersionShown:
    """A version of the plan, submitted by the student's own script."""
    kit = answered(kits_list.sync(programme_id, client=student)).results[0]
    needle = NeedleRequest.from_dict({"gauge": 30, "tip": "open"})
    body = VersionGivenRequest(kit_id=kit.id, technique="crown-down", choices=ChoicesRequest(needle=needle))
    version = answered(plan_versions_create.sync(case_id, client=student, body=body))
    return answered(plan_version_submit.sync(version.id, client=student, if_match=f'"{version.hash_}"'))


def approve(supervisor: AuthenticatedClient, version: VersionShown) -> Plan:
    """Returns the plan that was read before."""
    expand = [PlanVersionRetrieveExpandItem.PLAN, PlanVersionRetrieveExpandItem.CHOICES]
    plan = answered(plan_version_retrieve.sync(version.id, client=supervisor, expand=expand)).plan
    assert isinstance(plan, Plan)
    body = ReviewGivenRequest(decision=Decision.APPROVED)
    answered(reviews_create.sync(version.id, client=supervisor, body=body, if_match=f'"{version.hash_}"'))
    return plan


def kinds_since(service: AuthenticatedClient, programme_id: UUID, after: str) -> list[str]:
    """What happened in the programme."""
    page = answered(programme_changes.sync(programme_id, client=service, after=after))
    return [change.kind.value for change in page.results]


def answered(answer: Shown | Problem | None) -> Shown:
    """The answer; a refusal ends the course with its words."""
    if isinstance(answer, Problem):
        raise SystemExit(answer.detail)
    assert answer is not None
    return answer
