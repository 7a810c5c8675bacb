"""Which plan is in force; a new one takes the work over where it stands."""

from __future__ import annotations

from dataclasses import replace

from cases.domain.events.payloads import ReplanPayload
from cases.domain.events.registry import BY_SERVER
from cases.domain.plans.carry_over import carries_over
from cases.domain.progress.progress_of import progress_of
from cases.mapping import folds
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, Person, ToothPlanVersion
from cases.services.planning import versions
from cases.services.planning.remembered import planned
from cases.services.treatment import after_events, server_events
from planning.contract.plan_input import PlanInput, Progress
from planning.contract.plan_value import Plan


def progress(case: Case) -> dict[str, Progress]:
    """How far the work on each canal has come; empty before anything was done."""
    work = folds.ongoing_work(case.pk)
    if work is None:
        return {}
    version = ToothPlanVersion.objects.get(case=case, hash=work.course.plan)
    return progress_of(work.course, work.plans, work.events, plan_input_of(version), plan_of(version))


def approval_for(case: Case, plan_input: PlanInput, made: Plan) -> ToothPlanVersion | None:
    """The version that is worked, where its approval holds for this plan too."""
    work = folds.ongoing_work(case.pk)
    # An approval that was withdrawn is carried over to nothing.
    if work is None or work.course.revoked_by is not None:
        return None
    version = ToothPlanVersion.objects.get(case=case, hash=work.course.plan)
    holds = carries_over(plan_input_of(version), plan_of(version), plan_input, made)
    return version if holds else None


def take_over(*, actor: Person, case: Case, version: ToothPlanVersion) -> ToothPlanVersion:
    """Puts the approved version into force, from where the work stands now. Returns the version that is in force.

    It counts from its approval, even before any work: what a device did by an older plan and tells later moves nothing.
    Where work has gone on since the version was made, its approval is carried over to a new one that knows of the work.
    The caller holds the case's lock.
    """
    course = folds.course_of(case.pk)
    if course is not None and course.plan == version.hash and course.revoked_by is None:
        return version
    # Before any work there is none that the version would have to know of.
    if case.events.exclude(kind__in=BY_SERVER).exists():
        version = _brought_up_to_date(actor, case, version)
    payload = ReplanPayload(replaces=course.plan if course else version.hash)
    server_events.write(actor=actor, case=case, version=version, payload=payload)
    after_events.keep(case)
    return version


def _brought_up_to_date(actor: Person, case: Case, version: ToothPlanVersion) -> ToothPlanVersion:
    plan_input, now = plan_input_of(version), progress(case)
    current = replace(
        plan_input, canals=tuple(replace(canal, progress=now.get(canal.name)) for canal in plan_input.canals)
    )
    if current == plan_input:
        return version
    again = versions.CreatedVersion.of(
        current, planned(current).plan, kit_id=version.kit_id, technique_key=version.technique_key
    )
    later = versions.create(actor=actor, author=version.author, case=case, made=again)
    versions.carry_over(version=later, approved=version, actor=actor)
    return later
