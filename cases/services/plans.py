"""Planning a case, and asking for the plan to be approved."""

from __future__ import annotations

import json
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.errors import ChangedSince, PlanStale, ReasonMissing
from cases.domain.plan_life import PlanState, Verb, after
from cases.domain.uuid7 import uuid7
from cases.domain.who_may import May
from cases.models import CanalPlan, Case, Person, ToothPlanVersion, values
from cases.services import log, sent
from cases.services.doer import guard
from cases.services.locking import locked
from cases.services.plan_input import Asked, intent_hash, snapshot
from planning.encoding import canonical_text, digest
from planning.plan import plan
from planning.plan_value import Plan, Severity

# As many for a preview as for a version: fewer move the medians, and a plan would differ from itself.
SAMPLES = 500


def preview(*, actor: Person, case: Case, asked: Asked) -> Plan:
    """The plan as it would be; nothing is stored. Raises NotAllowed, NotUsable and what the planner refuses."""
    guard(May.PLAN, actor, case)
    return plan(snapshot(case, asked, samples=SAMPLES))


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
    the same version, taken up again. Raises NotAllowed, NotUsable, SentDifferently and what the planner refuses.
    """
    guard(May.PLAN, actor, case)
    case = locked(case.pk)
    what = {"kit": str(asked.kit_id), "technique": asked.technique, "choices": asked.choices}
    sent_hash = sent.fingerprint(actor=actor, to=case.pk, what=what)
    if before := sent.known(ToothPlanVersion, id, sent_hash):
        return before, False
    given = snapshot(case, asked, samples=SAMPLES)
    made = plan(given)
    input_text, output_text = canonical_text(given), canonical_text(made)
    content = digest(f"{input_text}\n{output_text}")
    same = case.versions.filter(hash=content).first()
    standing = case.versions.exclude(state=PlanState.SUPERSEDED).exclude(hash=content).first()
    if standing is not None:
        _move(standing, Verb.SUPERSEDE, actor, case)
    if same is not None:
        return _taken_up_again(same, actor, case), False
    version = ToothPlanVersion.objects.create(
        id=id or uuid7(),
        sent_hash=sent_hash,
        case=case,
        number=case.versions.count() + 1,
        author=actor,
        kit_id=asked.kit_id,
        technique_key=asked.technique,
        input_text=input_text,
        output_text=output_text,
        hash=content,
        intent_hash=intent_hash(given, made),
        planner_version=made.planner_version,
        stops=sum(caution.severity is Severity.STOP and caution.overridden is None for caution in made.cautions),
        cautions=sum(caution.severity is Severity.CAUTION for caution in made.cautions),
        difficulty=made.difficulty.level if made.difficulty else "",
        case_revision=case.revision,
    )
    _list_canals(version, made)
    log.changed(actor=actor, verb="propose", subject=version, case=case, after={"number": version.number})
    return version, True


def _list_canals(version: ToothPlanVersion, made: Plan) -> None:
    CanalPlan.objects.bulk_create(
        CanalPlan(
            version=version,
            place=place,
            canal=canal.canal,
            length_state=canal.length.state,
            stop_um=values.micrometres(canal.length.stop_mm),
            end_um=values.micrometres(canal.end_mm),
            final_size=canal.final_size,
            final_taper=canal.final_taper,
        )
        for place, canal in enumerate(made.canals)
    )


def _taken_up_again(version: ToothPlanVersion, actor: Person, case: Case) -> ToothPlanVersion:
    """The same content once more. What was decided while another stood, or before the case changed, is over."""
    over = version.state == PlanState.SUPERSEDED or (
        version.case_revision != case.revision and version.state in (PlanState.WAITING, PlanState.APPROVED)
    )
    if version.case_revision != case.revision:
        version.case_revision = case.revision
        version.save(update_fields=["case_revision"])
    if over:
        _move(version, Verb.TAKE_UP_AGAIN, actor, case)
    return version


@transaction.atomic
def submit(*, actor: Person, version: ToothPlanVersion, seen_hash: str | None = None) -> ToothPlanVersion:
    """Asks for approval. Raises NotAllowed, MoveNotPossible, PlanStale, ReasonMissing, ChangedSince."""
    guard(May.SUBMIT, actor, version.case)
    case, version = held(version)
    if seen_hash not in (None, version.hash):
        raise ChangedSince(what="The plan")
    if version.state == PlanState.WAITING and version.case_revision == case.revision:
        return version  # sent twice
    after(PlanState(version.state), Verb.SUBMIT)
    refuse_stale(version, case, "submit")
    _refuse_unreasoned(version)
    version.asked += 1
    version.submitted_at = timezone.now()
    _move(version, Verb.SUBMIT, actor, case, "asked", "submitted_at")
    return version


def _refuse_unreasoned(version: ToothPlanVersion) -> None:
    """Raises ReasonMissing where a final size lies outside the advised range and nothing says why."""
    for caution in json.loads(version.output_text)["cautions"]:
        if caution["code"] == "size-reason-missing":
            raise ReasonMissing(canal=caution["canal"], at=("choices", "canals"))


@transaction.atomic
def withdraw(*, actor: Person, version: ToothPlanVersion) -> ToothPlanVersion:
    """Takes the asking back. Raises NotAllowed, MoveNotPossible."""
    guard(May.SUBMIT, actor, version.case)
    case, version = held(version)
    _move(version, Verb.WITHDRAW, actor, case)
    return version


def held(version: ToothPlanVersion) -> tuple[Case, ToothPlanVersion]:
    """Case and version, both held until the transaction ends."""
    case = locked(version.case_id)
    return case, ToothPlanVersion.objects.select_for_update(no_key=True).get(pk=version.pk)


def refuse_stale(version: ToothPlanVersion, case: Case, verb: str) -> None:
    """Raises PlanStale where the case has changed since the version was made."""
    if version.case_revision != case.revision:
        raise PlanStale(number=version.number, verb=verb)


def _move(version: ToothPlanVersion, verb: Verb, actor: Person, case: Case, *also: str) -> None:
    before = PlanState(version.state)
    version.state = after(before, verb)
    version.save(update_fields=["state", *also])
    log.changed(
        actor=actor, verb=verb, subject=version, case=case, before={"state": before}, after={"state": version.state}
    )
