"""Which plan is in force; a new one takes the work over where it stands."""

from __future__ import annotations

from dataclasses import replace

from cases.domain.carry_over import carries_over
from cases.domain.so_far import so_far
from cases.domain.told import ReplanTold
from cases.models import Case, Person, ToothPlanVersion, courses, values
from cases.services import from_here, running_work, versions
from planning.begun import Begun
from planning.plan import plan
from planning.plan_input import PlanInput
from planning.plan_value import Plan


def begun(case: Case) -> dict[str, Begun]:
    """How far the work on each canal has come; empty before anything was done."""
    found = courses.in_hand(case.pk)
    if found is None:
        return {}
    version = ToothPlanVersion.objects.get(case=case, hash=found.course.plan)
    return so_far(found.course, found.plans, found.events, values.given(version), values.made(version))


def approval_for(case: Case, given: PlanInput, made: Plan) -> ToothPlanVersion | None:
    """The version that is worked, where its approval holds for this plan too."""
    found = courses.in_hand(case.pk)
    if found is None or found.course.revoked_by is not None:
        return None
    version = ToothPlanVersion.objects.get(case=case, hash=found.course.plan)
    holds = carries_over(values.given(version), values.made(version), given, made)
    return version if holds else None


def take_over(*, actor: Person, case: Case, version: ToothPlanVersion) -> ToothPlanVersion:
    """The version that is in force from now on: the approved one, begun where the work stands by now.

    It rules from its approval, also before any work: what a device did by an older one and tells later moves nothing.
    Where work had gone on since it was made, its approval is carried over to one that knows of it. The caller holds
    the case.
    """
    events = list(case.events.order_by("position"))
    course = courses.course(case.pk, events)
    if course is not None and course.plan == version.hash and course.revoked_by is None:
        return version
    if courses.work_has_begun(events):
        version = _brought_up_to_date(actor, case, version)
    told = ReplanTold(replaces=course.plan if course else version.hash)
    from_here.write(actor=actor, case=case, version=version, told=told)
    running_work.keep(case)
    return version


def _brought_up_to_date(actor: Person, case: Case, version: ToothPlanVersion) -> ToothPlanVersion:
    given, now = values.given(version), begun(case)
    current = replace(given, canals=tuple(replace(one, begun=now.get(one.name)) for one in given.canals))
    if current == given:
        return version
    again = versions.Made.of(current, plan(current), kit_id=version.kit_id, technique_key=version.technique_key)
    later = versions.create(actor=actor, author=version.author, case=case, made=again)
    versions.carry_over(version=later, approved=version, actor=actor)
    return later
