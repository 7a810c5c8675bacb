"""A version of the plan, its groups of steps, and who was asked to approve it and did."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from cases.domain.plans.lifecycle import PlanState
from cases.exports.fhir.codes import Codes
from cases.exports.fhir.elements import (
    Annotation,
    CodeableConcept,
    Element,
    Extension,
    Identifier,
    Reference,
    Resource,
    hash_name,
    meta,
    urn,
)
from cases.exports.fhir.tooth import TARGET, practitioner, site, subject
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, ToothPlanVersion
from planning.contract.plan_value import CanalPlan, Caution
from planning.foundation.quantities import in_mm
from planning.run_sheet.graph import Step

# FHIR has no "waits for approval": that is the Task's.
_STATUS = {
    PlanState.DRAFT: "draft",
    PlanState.WAITING: "draft",
    PlanState.RETURNED: "draft",
    PlanState.APPROVED: "active",
    PlanState.REVOKED: "revoked",
    PlanState.SUPERSEDED: "revoked",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Activity(Element):
    reference: Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class CarePlan(Resource):
    resource_type: ClassVar[str] = "CarePlan"
    identifier: tuple[Identifier, ...]
    replaces: tuple[Reference, ...] = ()
    status: str
    intent: str = "plan"
    title: str
    description: str
    subject: Reference
    created: datetime
    author: Reference
    activity: tuple[Activity, ...]
    note: tuple[Annotation, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ServiceRequest(Resource):
    resource_type: ClassVar[str] = "ServiceRequest"
    extension: tuple[Extension, ...]
    identifier: tuple[Identifier, ...]
    based_on: tuple[Reference, ...]
    status: str
    intent: str = "plan"
    code: CodeableConcept
    order_detail: tuple[CodeableConcept, ...] = ()
    subject: Reference
    authored_on: datetime
    requester: Reference
    body_site: tuple[CodeableConcept, ...]


def status_of(version: ToothPlanVersion, case: Case) -> str:
    """An approval of a plan that the case has changed under counts no longer: the plan is on hold."""
    state = PlanState(version.state)
    stale = version.case_revision != case.revision
    return "on-hold" if state is PlanState.APPROVED and stale else _STATUS[state]


def plan_reference(version: ToothPlanVersion) -> Reference:
    """Exactly this version: beside its id, the hash of what was planned and what it was planned from."""
    return Reference(reference=f"CarePlan/{version.pk}", identifier=hash_name(version.hash))


def care_plan(version: ToothPlanVersion, versions: Sequence[ToothPlanVersion], case: Case, at: datetime) -> CarePlan:
    """One version is one plan, whose content never changes; it replaces the version before it."""
    plan = plan_of(version)
    before = max(
        (each for each in versions if each.number < version.number), key=lambda each: each.number, default=None
    )
    left_out = f" Not released: {', '.join(version.not_released)}." if version.not_released else ""
    return CarePlan(
        id=str(version.pk),
        meta=meta(at),
        identifier=(urn(version.pk), hash_name(version.hash)),
        replaces=(Reference(reference=f"CarePlan/{before.pk}"),) if before else (),
        status=status_of(version, case),
        title=f"Plan {version.number} of tooth {plan.tooth.iso}",
        description=f"{plan_input_of(version).technique.name}, {plan.kit}. {plan.notice}{left_out}",
        subject=subject(case),
        created=version.created_at,
        author=practitioner(version.author),
        activity=tuple(
            Activity(reference=Reference(reference=f"ServiceRequest/{id_}")) for id_, _, _ in _groups(version)
        ),
        note=tuple(Annotation(text=_in_words(each)) for each in plan.cautions),
    )


def service_requests(
    version: ToothPlanVersion, case: Case, canals: Mapping[str, object], codes: Codes, at: datetime
) -> Iterator[ServiceRequest]:
    """One for each phase of each canal: what is done there, with which instruments and to which stops. `canals` are
    the charted ones, each with its id; what was planned of one that has another name now is of the tooth.
    """
    titles = {phase.key: phase.title for phase in plan_input_of(version).technique.phases}
    instruments = {each.key: each.name for each in plan_input_of(version).kit.instruments}
    for id_, canal, phase in _groups(version):
        steps = [step for step in canal.run_sheet.nodes.values() if isinstance(step, Step) and step.phase == phase]
        details = dict.fromkeys(_step(step, instruments) for step in steps)
        yield ServiceRequest(
            id=id_,
            meta=meta(at),
            extension=site(TARGET, canals.get(canal.canal, case.pk)),
            identifier=(Identifier(system=urn(version.pk).value, value=f"{canal.canal}/{phase}"),),
            based_on=(Reference(reference=f"CarePlan/{version.pk}"),),
            status=status_of(version, case),
            code=CodeableConcept(text=f"{canal.canal}: {titles.get(phase, phase)}"),
            order_detail=tuple(CodeableConcept(text=detail) for detail in details if detail),
            subject=subject(case),
            authored_on=version.created_at,
            requester=practitioner(version.author),
            body_site=(codes.tooth(case.tooth.iso),),
        )


def group_id(version: ToothPlanVersion, canal: str, phase: str) -> str | None:
    """The id of the group of steps that a phase of a canal is; None where the plan has none."""
    return next((id_ for id_, plan, name in _groups(version) if (plan.canal, name) == (canal, phase)), None)


def _groups(version: ToothPlanVersion) -> Iterator[tuple[str, CanalPlan, str]]:
    """Each phase of each canal in the plan's order, with an id made of the version's, the canal's and the phase's
    number: a version never changes, so the id never does.
    """
    for place, canal in enumerate(plan_of(version).canals, start=1):
        phases = dict.fromkeys(node.phase for node in canal.run_sheet.nodes.values() if isinstance(node, Step))
        for number, phase in enumerate(phases, start=1):
            yield f"{version.pk}-{place}-{number}", canal, phase


def _step(step: Step, instruments: dict[str, str]) -> str:
    stop = f"to {in_mm(step.stop_um)} mm" if step.stop_um is not None and step.target else ""
    name = instruments.get(step.instrument or "", step.instrument or "")
    return " ".join(part for part in (name, stop) if part) or step.say


def _in_words(caution: Caution) -> str:
    where = f"{caution.canal}: " if caution.canal else ""
    passed = f" Let pass: {caution.overridden}" if caution.overridden else ""
    return f"{caution.severity.capitalize()}. {where}{caution.says} {caution.do}{passed}"
