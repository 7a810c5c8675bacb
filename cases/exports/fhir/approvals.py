"""Who was asked to approve a version of the plan, and what they decided: a Task for each asking, a Provenance for each
decision."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from cases.domain.plans.lifecycle import Decision, PlanState
from cases.exports.fhir.elements import (
    Annotation,
    CodeableConcept,
    Coding,
    Element,
    Identifier,
    Reference,
    Resource,
    meta,
    urn,
)
from cases.exports.fhir.plans import plan_reference
from cases.exports.fhir.tooth import practitioner, subject
from cases.models import Case, Person, Review, Revocation, ToothPlanVersion

APPROVE = Coding(
    system="http://hl7.org/fhir/CodeSystem/task-code", code="approve", display="Activate/approve the focal resource"
)
VERIFIER = Coding(
    system="http://terminology.hl7.org/CodeSystem/provenance-participant-type", code="verifier", display="Verifier"
)
_ANSWERED = {Decision.APPROVED: "completed", Decision.RETURNED: "rejected"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Task(Resource):
    resource_type: ClassVar[str] = "Task"
    identifier: tuple[Identifier, ...]
    status: str
    intent: str = "proposal"
    code: CodeableConcept
    focus: Reference
    for_: Reference
    authored_on: datetime | None = None
    last_modified: datetime
    requester: Reference
    owner: Reference | None = None
    note: tuple[Annotation, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Agent(Element):
    type: CodeableConcept
    who: Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class Provenance(Resource):
    resource_type: ClassVar[str] = "Provenance"
    target: tuple[Reference, ...]
    occurred_date_time: datetime
    recorded: datetime
    reason: tuple[CodeableConcept, ...] = ()
    activity: CodeableConcept
    agent: tuple[Agent, ...]


def tasks(version: ToothPlanVersion, case: Case, at: datetime) -> Iterator[Task]:
    """One for each time that the version was submitted: requested, completed (approved), rejected (returned) or
    cancelled (the student took it back, or another plan took its place). `at` is when the version last changed.
    """
    answers = {review.asked: review for review in version.reviews.all()}
    for asked in range(1, version.asked + 1):
        review = answers.get(asked)
        last = asked == version.asked
        waits = last and version.state == PlanState.WAITING
        owner = review.supervisor if review else case.supervisor
        yield Task(
            id=f"{version.pk}-{asked}",
            meta=meta(review.at if review else at),
            identifier=(Identifier(system=urn(version.pk).value, value=str(asked)),),
            status=_ANSWERED[Decision(review.decision)] if review else "requested" if waits else "cancelled",
            code=CodeableConcept(coding=(APPROVE,), text="Approve the plan"),
            focus=plan_reference(version),
            for_=subject(case),
            # Of earlier ones it is not kept when they were submitted.
            authored_on=version.submitted_at if last else None,
            last_modified=review.at if review else at,
            requester=practitioner(version.author),
            owner=practitioner(owner) if owner else None,
            note=tuple(_notes(review)) if review else (),
        )


def provenances(version: ToothPlanVersion) -> Iterator[Provenance]:
    """Each decision on the version, and each approval of it that was withdrawn, in the order of time."""
    rows: list[Review | Revocation] = [*version.reviews.all(), *version.revocations.all()]
    for row in sorted(rows, key=lambda each: each.at):
        if isinstance(row, Review):
            decided, who, why = f"Plan {row.decision}", row.supervisor, row.note
        else:
            decided, who, why = "Approval of the plan withdrawn", row.actor, row.reason
        yield _provenance(version, row, decided, who, why)


def _provenance(version: ToothPlanVersion, row: Review | Revocation, decided: str, who: Person, why: str) -> Provenance:
    return Provenance(
        id=str(row.pk),
        meta=meta(row.at),
        target=(plan_reference(version),),
        occurred_date_time=row.at,
        recorded=row.at,
        reason=(CodeableConcept(text=why),) if why else (),
        activity=CodeableConcept(text=decided),
        agent=(Agent(type=CodeableConcept(coding=(VERIFIER,)), who=practitioner(who)),),
    )


def _notes(review: Review) -> Iterator[Annotation]:
    """The note on the whole plan, then the remarks canal by canal."""
    if review.note:
        yield Annotation(text=review.note, time=review.at, author_string=str(review.supervisor))
    for remark in review.remarks.all():
        says = f"{remark.canal_plan.canal}{', returned' if remark.returned else ''}: {remark.text}"
        yield Annotation(text=says, time=review.at, author_string=str(review.supervisor))
