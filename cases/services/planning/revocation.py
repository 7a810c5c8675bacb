"""An approval is withdrawn by whoever gave it, or by a coordinator: the work halts at its next step."""

from __future__ import annotations

from uuid import UUID

from django.db import transaction

from cases.domain.access.permissions import May
from cases.domain.access.roles import Role
from cases.domain.errors import ChangedSince, Conflict, NotAllowed, NothingSaid
from cases.domain.events.payloads import RevokedPayload
from cases.domain.plans.lifecycle import Decision, PlanState, Verb
from cases.domain.uuid7 import uuid7
from cases.models import Case, Person, Revocation, ToothPlanVersion
from cases.services.common import idempotency
from cases.services.common.guard import guard
from cases.services.planning import versions
from cases.services.planning.plans import lock_version
from cases.services.treatment import after_events, server_events


@transaction.atomic
def revoke(
    *, actor: Person, version: ToothPlanVersion, seen_hash: str, reason: str, id: UUID | None = None
) -> tuple[Revocation, bool]:
    """Withdraws the approval of exactly the version that was on the screen; False where it was sent before.

    Nothing that is told after it counts until a plan is approved again; what was done stays. The approval is not
    edited: this is an entry of its own. Raises NotAllowed, NothingSaid, ChangedSince, Conflict where the plan is not
    approved, SentDifferently.
    """
    who = guard(May.REVOKE, actor, version.case)
    case, version = lock_version(version)
    sent_hash = idempotency.fingerprint(actor=actor, to=version.pk, what={"reason": reason, "hash": seen_hash})
    if before := idempotency.sent_before(Revocation, id, sent_hash):
        return before, False
    if seen_hash != version.hash:
        raise ChangedSince(what="The plan")
    if version.state != PlanState.APPROVED:
        raise Conflict(reason="Only an approval that stands can be withdrawn. Look at the plan as it is now.")
    if who.role is Role.SUPERVISOR and actor.pk != _approved_by(version):
        raise NotAllowed(reason="Another supervisor gave this approval. They or a coordinator withdraw it.")
    if not reason.strip():
        raise NothingSaid(at=("reason",))
    row = Revocation.objects.create(
        id=id or uuid7(), sent_hash=sent_hash, version=version, asked=version.asked, actor=actor, reason=reason
    )
    versions.move(version, Verb.REVOKE, actor, case)
    _halt(actor, case, version, reason)
    return row, True


def _approved_by(version: ToothPlanVersion) -> UUID | None:
    """Who gave the approval that holds for the version, on it or on the one it was carried over from."""
    while version.carried_from is not None:
        version = version.carried_from
    last = version.reviews.filter(decision=Decision.APPROVED).order_by("-asked").first()
    return last.supervisor_id if last else None


def _halt(actor: Person, case: Case, version: ToothPlanVersion, reason: str) -> None:
    server_events.write(actor=actor, case=case, version=version, payload=RevokedPayload(reason=reason))
    after_events.keep(case)
