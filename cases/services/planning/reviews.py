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
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_of
from cases.models import Person, Review, ReviewRemark, ToothPlanVersion
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
    if acknowledged:
        what["acknowledged"] = list(acknowledged)
    sent_hash = idempotency.fingerprint(actor=supervisor, to=version.pk, what=what)
    if before := idempotency.sent_before(Review, id, sent_hash):
        return before, False
    if seen_hash != version.hash:
        raise ChangedSince(what="The plan")
    _refuse_decided(version)
    to = after(PlanState(version.state), VERB[decision])
    refuse_stale(version, case, "submit")
    if decision is Decision.RETURNED and not note.strip() and not remarks:
        raise NothingSaid(at=("remarks",))
    if decision is Decision.APPROVED:
        refuse_unacknowledged(plan_of(version).cautions, acknowledged)
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
    )
    _remark(review, version, remarks)
    if decision is Decision.APPROVED:
        returned = {remark.canal: remark.text for remark in remarks if remark.returned}
        # First the plan comes into force, then its canals are released: a release counts only for the plan in force.
        worked = replan.take_over(actor=supervisor, case=case, version=version)
        release.let_go(supervisor=supervisor, case=case, version=worked, returned=returned)
    audit.changed(actor=supervisor, verb=VERB[decision], subject=version, case=case, after={"state": version.state})
    return review, True


def _refuse_decided(version: ToothPlanVersion) -> None:
    """Raises DecidedBefore: who was first, and with what."""
    first = version.reviews.filter(asked=version.asked).select_related("supervisor").first()
    if first is not None and version.state == first.decision:
        when = f"{first.at:%H:%M} UTC"
        raise DecidedBefore(by=first.supervisor, number=version.number, decision=first.decision, when=when)


def _remark(review: Review, version: ToothPlanVersion, remarks: Sequence[Remark]) -> None:
    canals = {row.canal: row for row in version.canal_plans.order_by("place")}
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
