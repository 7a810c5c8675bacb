"""Planning a case, and asking for the plan to be approved."""

from __future__ import annotations

import json
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access.permissions import May
from cases.domain.errors import ChangedSince, EmptyPlan, NotHere, PlanStale, ReasonMissing
from cases.domain.feed import FeedKind
from cases.domain.plans.changes import GivenChanges, given_changes
from cases.domain.plans.lifecycle import PlanState, Verb, after
from cases.mapping.plans import plan_input_of
from cases.models import Case, Person, ToothPlanVersion
from cases.services.common import feed, idempotency
from cases.services.common.guard import guard, refuse_unless_treats
from cases.services.common.locking import locked
from cases.services.planning import replan, versions
from cases.services.planning.plan_input import Asked, snapshot
from cases.services.planning.remembered import PlanAtHand, planned
from cases.services.planning.versions import CreatedVersion
from planning.lengths.readings import LengthState

# As many for a preview as for a version: fewer move the medians, and a plan would differ from itself.
SAMPLES = 500


def preview(*, actor: Person, case: Case, asked: Asked) -> PlanAtHand:
    """The plan as it would be; nothing is stored. Raises NotAllowed, NotUsable and what the planner refuses."""
    guard(May.PLAN, actor, case)
    return planned(snapshot(case, asked, samples=SAMPLES, progress=replan.progress(case)))


def preview_changes(*, actor: Person, case: Case, asked: Asked, against: int) -> GivenChanges:
    """How the input would differ from that of a version; no plan is made. Raises NotAllowed, NotHere, NotUsable."""
    guard(May.PLAN, actor, case)
    version = case.versions.filter(number=against).first()
    if version is None:
        raise NotHere(what=f"version {against}")
    plan_input = snapshot(case, asked, samples=SAMPLES, progress=replan.progress(case))
    return given_changes(against, plan_input_of(version), plan_input)


@transaction.atomic
def propose(
    *,
    actor: Person,
    case: Case,
    asked: Asked,
    id: UUID | None = None,
) -> tuple[ToothPlanVersion, bool]:
    """The version of the case's plan as it is now, and whether it is new.

    It stands in the place of any other: one that waited or was approved is superseded. The same content as before is
    the same version, taken up again. In the middle of the work it begins where that stands; where nothing has changed
    but lengths, by little, the approval is carried over and the work goes on by it.

    Raises NotAllowed, NotUsable, SentDifferently and what the planner refuses.
    """
    guard(May.PLAN, actor, case)
    case = locked(case.pk)
    what = {"kit": str(asked.kit_id), "technique": asked.technique, "choices": asked.choices}
    sent_hash = idempotency.fingerprint(actor=actor, to=case.pk, what=what)
    if before := idempotency.sent_before(ToothPlanVersion, id, sent_hash):
        return before, False
    plan_input = snapshot(case, asked, samples=SAMPLES, progress=replan.progress(case))
    made = CreatedVersion.of(plan_input, planned(plan_input).plan, kit_id=asked.kit_id, technique_key=asked.technique)
    if same := case.versions.filter(hash=made.hash).first():
        versions.supersede(case, but=same.hash, actor=actor)
        return _taken_up_again(same, actor, case), False
    approved = replan.approval_for(case, plan_input, made.plan)
    version = versions.create(actor=actor, author=actor, case=case, made=made, id=id, sent_hash=sent_hash)
    if approved is not None:
        versions.carry_over(version=version, approved=approved, actor=actor)
        replan.take_over(actor=actor, case=case, version=version)
    return version, True


def _taken_up_again(version: ToothPlanVersion, actor: Person, case: Case) -> ToothPlanVersion:
    """Takes up a version of the same content once more. What was decided on it while another stood, or before the case
    changed, is over.
    """
    over = version.state == PlanState.SUPERSEDED or (
        version.case_revision != case.revision and version.state in (PlanState.WAITING, PlanState.APPROVED)
    )
    outdated = version.case_revision != case.revision
    if outdated:
        version.case_revision = case.revision
        version.save(update_fields=["case_revision"])
    if over:
        versions.move(version, Verb.TAKE_UP_AGAIN, actor, case)
    elif outdated:
        feed.tell(actor=actor, kind=FeedKind.VERSION_TAKEN_UP_AGAIN, subject_id=version.pk, case=case)
    return version


@transaction.atomic
def submit(*, actor: Person, version: ToothPlanVersion, seen_hash: str | None = None) -> ToothPlanVersion:
    """Asks for approval. Raises NotAllowed, MoveNotPossible, PlanStale, ReasonMissing, EmptyPlan, ChangedSince.

    For a patient by a student who may treat them today: what is approved is worked.
    """
    guard(May.SUBMIT, actor, version.case)
    case, version = lock_version(version)
    if seen_hash not in (None, version.hash):
        raise ChangedSince(what="The plan")
    if version.state == PlanState.WAITING and version.case_revision == case.revision:
        return version  # sent twice
    refuse_unless_treats(actor, case.programme_id, case.setting)
    # Asked of the table of moves first: a plan that was decided is refused as that, and not as outdated.
    after(PlanState(version.state), Verb.SUBMIT)
    refuse_stale(version, case, "submit")
    _refuse_unreasoned(version)
    _refuse_empty(version)
    version.asked += 1
    version.submitted_at = timezone.now()
    versions.move(version, Verb.SUBMIT, actor, case, "asked", "submitted_at")
    return version


def _refuse_unreasoned(version: ToothPlanVersion) -> None:
    """Raises ReasonMissing where a final size lies outside the advised range and nothing says why."""
    for caution in json.loads(version.output_text)["cautions"]:
        if caution["code"] == "size-reason-missing":
            raise ReasonMissing(canal=caution["canal"], at=("choices", "canals"))


def _refuse_empty(version: ToothPlanVersion) -> None:
    """Raises EmptyPlan where no canal has a length. What only waits to be put right can be judged."""
    if not version.canal_plans.exclude(length_state=LengthState.MISSING).exists():
        raise EmptyPlan(number=version.number)


@transaction.atomic
def withdraw(*, actor: Person, version: ToothPlanVersion) -> ToothPlanVersion:
    """Takes the asking back. Raises NotAllowed, MoveNotPossible."""
    guard(May.SUBMIT, actor, version.case)
    case, version = lock_version(version)
    versions.move(version, Verb.WITHDRAW, actor, case)
    return version


def lock_version(version: ToothPlanVersion) -> tuple[Case, ToothPlanVersion]:
    """Case and version, both held until the transaction ends."""
    case = locked(version.case_id)
    return case, ToothPlanVersion.objects.select_for_update(no_key=True).get(pk=version.pk)


def refuse_stale(version: ToothPlanVersion, case: Case, verb: str) -> None:
    """Raises PlanStale where the case has changed since the version was made."""
    if version.case_revision != case.revision:
        raise PlanStale(number=version.number, verb=verb)
