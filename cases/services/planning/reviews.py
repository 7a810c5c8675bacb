"""A supervisor decides on a plan."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from typing import Any
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access.permissions import May
from cases.domain.errors import ChangedSince, DecidedBefore, NoSuchCanal, NotAllowed, NothingSaid, NotUsable
from cases.domain.plans.acknowledged import Named, refuse_unacknowledged
from cases.domain.plans.lifecycle import Decision, PlanState, Verb, after
from cases.domain.plans.own_lengths import OwnLength, refuse_unusable
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_of
from cases.models import CanalPlan, Person, Review, ReviewRemark, ToothPlanVersion
from cases.services.common import audit, idempotency
from cases.services.common.guard import guard
from cases.services.planning import release, replan
from cases.services.planning.plans import lock_version, refuse_stale

VERB = {Decision.APPROVED: Verb.APPROVE, Decision.RETURNED: Verb.RETURN}


@dataclass(frozen=True, slots=True, kw_only=True)
class Remark:
    canal: str
    text: str
    returned: bool = False
    """The approval leaves this canal out."""


@transaction.atomic
def decide(
    *,
    supervisor: Person,
    version: ToothPlanVersion,
    decision: Decision,
    seen_hash: str,
    note: str = "",
    remarks: Sequence[Remark] = (),
    acknowledged: Sequence[Named] = (),
    own_lengths: Sequence[OwnLength] = (),
    id: UUID | None = None,
) -> tuple[Review, bool]:
    """Approves or returns exactly the version that was on the screen; False where it was sent before.

    Where work goes on, it goes on by the approved version. An approval may leave canals out that a remark returns: they
    wait with what ends in one with them, the others go on. What must be put right is acknowledged by its name.

    Raises NotAllowed, ChangedSince, MoveNotPossible, DecidedBefore (another supervisor was first), PlanStale,
    NothingSaid, NoSuchCanal, NotAcknowledged, NotUsable where nothing is left to approve, SentDifferently.
    """
    guard(May.REVIEW, supervisor, version.case)
    if supervisor.pk in (version.author_id, version.case.student_id):
        raise NotAllowed(reason="Nobody decides on a plan of their own.")
    case, version = lock_version(version)
    what: dict[str, Any] = {"decision": decision.value, "note": note, "remarks": list(remarks), "hash": seen_hash}
    # What an older sender left out changes nothing of what it sent.
    more = (("acknowledged", acknowledged), ("own_lengths", own_lengths))
    what |= {name: list(values) for name, values in more if values}
    sent_hash = idempotency.fingerprint(actor=supervisor, to=version.pk, what=what)
    if before := idempotency.sent_before(Review, id, sent_hash):
        return before, False
    if seen_hash != version.hash:
        raise ChangedSince(what="The plan")
    _refuse_decided(version)
    to = after(PlanState(version.state), VERB[decision])
    refuse_stale(version, case, "submit")
    _refuse_lacking(version, decision, note, remarks, acknowledged, own_lengths)
    version.state, version.decided_at = to, timezone.now()
    version.save(update_fields=["state", "decided_at"])
    review = Review.objects.create(
        id=id or uuid7(),
        sent_hash=sent_hash,
        version=version,
        asked=version.asked,
        supervisor=supervisor,
        decision=decision,
        note=note,
        acknowledged=[asdict(named) for named in acknowledged] if decision is Decision.APPROVED else [],
        own_lengths=[asdict(own) for own in own_lengths],
    )
    _remark(review, version, remarks)
    if decision is Decision.APPROVED:
        # First the plan comes into force, then its canals are released: a release counts only for the plan in force.
        worked = replan.take_over(actor=supervisor, case=case, version=version)
        returned = {remark.canal: remark.text for remark in remarks if remark.returned}
        release.let_go(supervisor=supervisor, case=case, version=worked, returned=returned)
    audit.changed(actor=supervisor, verb=VERB[decision], subject=version, case=case, after={"state": version.state})
    return review, True


def _refuse_lacking(
    version: ToothPlanVersion,
    decision: Decision,
    note: str,
    remarks: Sequence[Remark],
    acknowledged: Sequence[Named],
    own_lengths: Sequence[OwnLength],
) -> None:
    """Raises NothingSaid for a return without a word, NotAcknowledged for an approval past what must be put right,
    and whatever `refuse_unusable` does.
    """
    if decision is Decision.RETURNED and not note.strip() and not remarks:
        raise NothingSaid(at=("remarks",))
    if decision is Decision.APPROVED:
        refuse_unacknowledged(plan_of(version).cautions, acknowledged)
    if own_lengths:
        refuse_unusable(own_lengths, _canals(version))


def _canals(version: ToothPlanVersion) -> dict[str, CanalPlan]:
    return {row.canal: row for row in version.canal_plans.order_by("place")}


def _refuse_decided(version: ToothPlanVersion) -> None:
    """Raises DecidedBefore: who was first, and with what."""
    first = version.reviews.filter(asked=version.asked).select_related("supervisor").first()
    if first is not None and version.state == first.decision:
        when = f"{first.at:%H:%M} UTC"
        raise DecidedBefore(by=first.supervisor, number=version.number, decision=first.decision, when=when)


def _remark(review: Review, version: ToothPlanVersion, remarks: Sequence[Remark]) -> None:
    canals = _canals(version)
    said: set[str] = set()
    for number, remark in enumerate(remarks):
        if remark.canal not in canals:
            raise NoSuchCanal(canal=remark.canal, canals=", ".join(canals), at=("remarks", number, "canal"))
        if remark.canal in said:
            reason = f"Put what you have to say of {remark.canal} into one remark."
            raise NotUsable(reason=reason, at=("remarks", number, "canal"))
        if remark.returned and review.decision != Decision.APPROVED:
            reason = "A returned plan returns every canal: only an approval leaves some out."
            raise NotUsable(reason=reason, at=("remarks", number, "returned"))
        said.add(remark.canal)
    ReviewRemark.objects.bulk_create(
        ReviewRemark(review=review, canal_plan=canals[remark.canal], text=remark.text, returned=remark.returned)
        for remark in remarks
    )
