"""An approved plan is released canal by canal: a returned canal waits, and so does one that shares its end."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from django.db import transaction

from cases.domain.access.permissions import May
from cases.domain.errors import ChangedSince, Conflict, NoSuchCanal, NotUsable
from cases.domain.events.kinds import EventKind
from cases.domain.events.payloads import ReleasePayload
from cases.domain.plans.lifecycle import PlanState
from cases.domain.plans.release import Joins, left_out
from cases.mapping import courses, folds
from cases.mapping.plans import plan_of
from cases.models import Case, Person, ToothPlanVersion
from cases.services.common import audit
from cases.services.common.guard import guard
from cases.services.planning.plans import lock_version, refuse_stale
from cases.services.treatment import after_events, server_events


def let_go(*, supervisor: Person, case: Case, version: ToothPlanVersion, returned: Mapping[str, str]) -> None:
    """Tells the course which canals of the approved version wait; `returned` has the remark on each.

    The caller holds both, and has brought the version into the course where work was going on. Raises NotUsable where
    nothing is left to approve.
    """
    joins = _joins(version)
    if returned and set(returned) == set(joins):
        raise NotUsable(reason="Every canal is returned: return the plan instead.", at=("decision",))
    waits = left_out(returned, joins)
    version.not_released = [waiting.canal for waiting in waits]
    version.save(update_fields=["not_released"])
    # Also where nothing waits any more but something did: the chair has to learn that it may go on.
    if waits or _some_wait(case):
        payload = ReleasePayload(not_released=waits)
        server_events.write(actor=supervisor, case=case, version=version, payload=payload)
        after_events.keep(case)


@transaction.atomic
def release(
    *, supervisor: Person, version: ToothPlanVersion, canals: Sequence[str], seen_hash: str
) -> ToothPlanVersion:
    """Lets canals go that the approval had left out; sent twice it changes nothing.

    Raises NotAllowed, ChangedSince, Conflict where the plan is not approved, PlanStale, NoSuchCanal, NotUsable where
    the partner of a canal stays returned.
    """
    guard(May.REVIEW, supervisor, version.case)
    case, version = lock_version(version)
    if seen_hash != version.hash:
        raise ChangedSince(what="The plan")
    if version.state != PlanState.APPROVED:
        raise Conflict(reason="Only canals of an approved plan can be released. Decide on the plan first.")
    refuse_stale(version, case, "release")
    joins = _joins(version)
    for number, name in enumerate(canals):
        if name not in joins:
            raise NoSuchCanal(canal=name, canals=", ".join(joins), at=("canals", number))
    before = list(version.not_released)
    if not set(canals) & set(before):
        return version  # sent twice
    returned = {canal: remark for canal, remark in _returned(case).items() if canal not in canals}
    _refuse_alone(canals, returned, joins)
    let_go(supervisor=supervisor, case=case, version=version, returned=returned)
    now = {"not_released": version.not_released}
    audit.changed(
        actor=supervisor, verb="release", subject=version, case=case, before={"not_released": before}, after=now
    )
    return version


def _refuse_alone(canals: Sequence[str], returned: Mapping[str, str], joins: Joins) -> None:
    """Raises NotUsable where a canal would be released while its partner stays returned."""
    still = {left.canal: left.joins for left in left_out(returned, joins)}
    for number, name in enumerate(canals):
        if name in still:
            reason = f"{name} ends in one with {still[name]}, which is returned: release both."
            raise NotUsable(reason=reason, at=("canals", number))


def _returned(case: Case) -> dict[str, str]:
    """The canals that the last decision returned, with its remarks; it may have been on the version before."""
    last = case.events.filter(kind=EventKind.RELEASE).order_by("-position").first()
    decision = courses.payload_of(last) if last else None
    left_out = decision.not_released if isinstance(decision, ReleasePayload) else ()
    return {canal.canal: canal.remark for canal in left_out if not canal.joins}


def _joins(version: ToothPlanVersion) -> dict[str, str | None]:
    return {canal.canal: canal.joins for canal in plan_of(version).canals}


def _some_wait(case: Case) -> bool:
    course = folds.course_of(case.pk)
    return course is not None and any(not canal.released for canal in course.canals.values())
