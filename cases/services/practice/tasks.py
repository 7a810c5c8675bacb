"""Tasks of practice: one hidden canal that a supervisor sets for a group."""

from __future__ import annotations

from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access.permissions import May, refuse_unless
from cases.domain.access.roles import Role
from cases.domain.errors import NotUsable
from cases.domain.uuid7 import uuid7
from cases.models import Membership, Person, PracticeTask
from cases.services.common import audit, idempotency
from cases.services.common.guard import actor_in
from cases.services.practice import seeds
from planning.foundation.errors import PlanningError
from planning.practice.levels import canals_of


@transaction.atomic
def set_task(
    *, actor: Person, programme_id: UUID, level: str, group: str = "", id: UUID | None = None
) -> tuple[PracticeTask, bool]:
    """A task for the students of a group, or all for none, and True; False where it was sent before.

    Raises UnknownLevel, NotAllowed, NotUsable, SentDifferently.
    """
    refuse_unless(May.SET_PRACTICE, actor_in(actor, programme_id))
    # One supervisor sets one at a time: the same sent twice at once finds the first.
    Membership.objects.select_for_update(no_key=True).get(person=actor, programme_id=programme_id)
    sent_hash = idempotency.fingerprint(actor=actor, to=programme_id, what={"level": level, "group": group})
    if before := idempotency.sent_before(PracticeTask, id, sent_hash):
        return before, False
    try:
        canals_of(level)
    except PlanningError as refusal:
        raise refusal.below("level") from None
    students = Membership.objects.filter(programme=programme_id, role=Role.STUDENT)
    if group and not students.filter(group=group).exists():
        raise NotUsable(reason=f"No student is in the group '{group}'. Choose another.", at=("group",))
    row = PracticeTask.objects.create(
        id=id or uuid7(),
        sent_hash=sent_hash,
        programme_id=programme_id,
        level=level,
        seed=seeds.new_seed(),
        group=group,
        set_by=actor,
    )
    after = {"level": level, "group": group}
    audit.changed(actor=actor, verb="set", subject=row, programme_id=programme_id, after=after)
    return row, True


@transaction.atomic
def withdraw(*, actor: Person, task: PracticeTask) -> PracticeTask:
    """Nobody begins it any more; what was begun stays. Raises NotAllowed."""
    refuse_unless(May.SET_PRACTICE, actor_in(actor, task.programme_id))
    row = PracticeTask.objects.select_for_update(no_key=True).get(pk=task.pk)
    if row.withdrawn_at is None:
        row.withdrawn_at = timezone.now()
        row.save(update_fields=["withdrawn_at"])
        audit.changed(actor=actor, verb="withdraw", subject=row, programme_id=row.programme_id)
    return row
