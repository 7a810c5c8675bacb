"""The rows of plan versions: made once, moved through their life."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Self
from uuid import UUID

from django.utils import timezone

from cases.domain.plans.lifecycle import PlanState, Verb, after
from cases.domain.uuid7 import uuid7
from cases.mapping.charts import micrometres
from cases.models import CanalPlan, Case, Person, PlanTexts, ToothPlanVersion
from cases.services.common import audit
from cases.services.planning.plan_input import intent_hash
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan, Severity
from planning.foundation.encoding import canonical_text, digest


@dataclass(frozen=True, slots=True, kw_only=True)
class CreatedVersion:
    """A plan with the texts it is kept as."""

    plan_input: PlanInput
    plan: Plan
    input_text: str
    output_text: str
    kit_id: UUID
    technique_key: str

    @classmethod
    def of(cls, plan_input: PlanInput, plan: Plan, *, kit_id: UUID, technique_key: str) -> Self:
        return cls(
            plan_input=plan_input,
            plan=plan,
            input_text=canonical_text(plan_input),
            output_text=canonical_text(plan),
            kit_id=kit_id,
            technique_key=technique_key,
        )

    @property
    def hash(self) -> str:
        # No canonical text has a line break in it, so that the two cannot run into each other.
        return digest(f"{self.input_text}\n{self.output_text}")


def create(
    *, actor: Person, author: Person, case: Case, made: CreatedVersion, id: UUID | None = None, sent_hash: str = ""
) -> ToothPlanVersion:
    """A draft; the one that stood until now is superseded. The caller holds the case."""
    # First, as at most one version of a case stands; the database holds that too.
    supersede(case, but=made.hash, actor=actor)
    cautions = made.plan.cautions
    version = ToothPlanVersion.objects.create(
        id=id or uuid7(),
        sent_hash=sent_hash,
        case=case,
        programme_id=case.programme_id,
        number=case.versions.count() + 1,
        author=author,
        kit_id=made.kit_id,
        technique_key=made.technique_key,
        hash=made.hash,
        intent_hash=intent_hash(made.plan_input, made.plan),
        planner_version=made.plan.planner_version,
        stops=sum(caution.severity is Severity.STOP and caution.overridden is None for caution in cautions),
        cautions=sum(caution.severity is Severity.CAUTION for caution in cautions),
        difficulty=made.plan.difficulty.level if made.plan.difficulty else "",
        case_revision=case.revision,
    )
    PlanTexts.of(version, plan_input=made.input_text, plan=made.output_text).save(force_insert=True)
    _list_canals(version, made.plan)
    audit.changed(actor=actor, verb="propose", subject=version, case=case, after={"number": version.number})
    return version


def supersede(case: Case, *, but: str, actor: Person) -> None:
    """The version that stands is superseded, unless it is the one with this hash."""
    standing = case.versions.exclude(state=PlanState.SUPERSEDED).exclude(hash=but).first()
    if standing is not None:
        move(standing, Verb.SUPERSEDE, actor, case)


def carry_over(*, version: ToothPlanVersion, approved: ToothPlanVersion, actor: Person) -> None:
    """The draft is approved as the other one was, with the canals that one left out."""
    version.carried_from, version.decided_at = approved, timezone.now()
    version.not_released = approved.not_released
    move(version, Verb.CARRY_OVER, actor, version.case, "carried_from", "decided_at", "not_released")


def move(version: ToothPlanVersion, verb: Verb, actor: Person, case: Case, *also: str) -> None:
    before = PlanState(version.state)
    version.state = after(before, verb)
    version.save(update_fields=["state", *also])
    audit.changed(
        actor=actor, verb=verb, subject=version, case=case, before={"state": before}, after={"state": version.state}
    )


def _list_canals(version: ToothPlanVersion, made: Plan) -> None:
    CanalPlan.objects.bulk_create(
        CanalPlan(
            version=version,
            place=place,
            canal=canal.canal,
            length_state=canal.length.state,
            stop_um=micrometres(canal.length.stop_mm),
            end_um=micrometres(canal.end_mm),
            final_size=canal.final_size,
            final_taper=canal.final_taper,
        )
        for place, canal in enumerate(made.canals)
    )
